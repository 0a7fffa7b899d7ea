// What does somebody who does this once do to set out, bore, reeve and set the ends? Sentences of at most 20 words.

import { WASHER_HOLE } from "../../plan/bores.ts";
import type { BoreKind, Plan, Run } from "../../plan/plan.ts";
import { ownSheets } from "../issues.ts";
import type { StepItem, Text } from "../packet.ts";
import { boredFromOutside, MITRE_OFF_mm, mitredIds } from "./bore-corners.ts";
import { drillRoomItems } from "./bore-room.ts";
import { startOf, startsInside, stopOf } from "./ends.ts";
import { bushingItems, crossedItems, fasteningItems, holeItems } from "./guide-fittings.ts";
import { boreSlopes, levelFirst, markSlopes } from "./guide-slopes.ts";
import { count, listed, refer, type SheetContext } from "./kit.ts";
import { leaningAlongIds, offMiddle } from "./leaning.ts";
import { isTreated, isTube, isWood, onlyWood } from "./material.ts";
import { pierMarked, pierSteps } from "./piers.ts";
import { backOfEnd, cornerStick, levelGroups } from "./set-off-words.ts";
import { sunkElsewhere, sunkWord } from "./sleeve-words.ts";
import { sleeveRoomSteps } from "./sleeves.ts";
import { boreSheets, levelSides, sidesWord } from "./slopes.ts";
import type { Stage } from "./stage.ts";

export function setOutStage(context: SheetContext): Stage {
  const { plan, show } = context;
  return {
    key: "set-out",
    title: "Mark the holes",
    sheets: boreSheets(context),
    safety: null,
    items: [
      ...(levelSides(plan).length === 0 ? [] : stickItems(context)),
      ...markSlopes(context),
      {
        text: `Measure the spacing on one post${plan.rakes.length > 0 || plan.setOff !== null ? " of each side" : ""}, middle to middle. Write down the widest.`,
        more: `None may be above ${show.tape(plan.job.limits.cableSpacing_max.value)}.${plan.rakes.length > 0 ? " On a slope measure square to the cables, not straight up." : ""}`,
        value: show.lengthUnit,
        killer: true,
      },
    ],
  };
}

/** One stick for each height at which cables cross in a corner post. */
function twoStickItems(context: SheetContext): readonly StepItem[] {
  const { plan } = context;
  const groups = levelGroups(plan).map(({ sideIds }) => sidesWord(sideIds));
  return [
    {
      text: `Take two straight sticks. Mark the ${plan.courses.length} heights of ${groups.join(" on one, those of ")} on the other: ${refer(context, "bores")}.`,
      more: "Write on each stick its sides. Measure every mark from the same end.",
      killer: true,
    },
    {
      text: `Stand each stick on the datum: ${plan.job.frame.datum}.`,
      more: 'Write "datum" on that end, so that you never turn it round.',
      killer: true,
    },
    { text: "Carry the marks to every post and spacer of its sides, in the middle of the face." },
    { text: `${cornerStick(plan)}.`, more: "Look at both faces together: no mark of one is level with a mark of the other.", killer: true },
  ];
}

/** A stick gives the heights of level sides, of no other. */
function stickItems(context: SheetContext): readonly StepItem[] {
  const { plan } = context;
  const offset = offMiddle(plan);
  if (plan.setOff !== null) return twoStickItems(context);
  const sunk = sunkElsewhere(plan);
  const more = [
    ...(offset.length > 0 ? [`At ${listed(offset)} the holes are off the middle: use the table.`] : []),
    ...(sunk.length > 0 ? [`Mark ${listed(sunk)} on two faces: the ${sunkWord(plan)} has its own.`] : []),
  ];
  return [
    {
      text: `${levelFirst(context)}Take a straight stick. Mark all ${plan.courses.length} heights from ${refer(context, "bores")} on it.`,
      more: `Measure every mark from the same end. Do not add up small steps. Or glue on the strip of ${ownSheets.storyPole.id}, printed at 100 %. Check it by tape.`,
    },
    {
      text: `${levelFirst(context)}Stand the stick on the datum${plan.rakes.length === 0 ? `: ${plan.job.frame.datum}` : ", on the level surface"}.`,
      more: 'Write "datum" on that end, so that you never turn it round.',
      killer: true,
    },
    {
      text: `${levelFirst(context)}Carry the marks to every post and spacer${pierMarked(plan)}, in the middle of the face that ${refer(context, "bores")} names.`,
      ...(more.length > 0 ? { more: more.join(" ") } : {}),
    },
  ];
}

export function boreStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const counterbored = plan.bores.filter(({ counterbore }) => counterbore !== null);
  return {
    key: "bore",
    title: `Bore ${count(plan.bores.length, "hole")}`,
    sheets: boreSheets(context),
    safety: "bore",
    items: [
      {
        text: "Bore one hole of each size in a scrap. Slide the real part in.",
        more: "A test hole costs nothing. A wrong hole in a post stays.",
      },
      ...boreSlopes(context),
      ...(counterbored.length > 0
        ? [
            {
              text:
                plan.job.posts.sleeve === null
                  ? "Bore each counterbore before its through hole. Use a flat-bottomed or piloted bit with a tape flag."
                  : "First cut the washer's hole with a hole saw, through the sleeve only. Stop at the wood.",
              more: `Stop at the depth of ${show.tape(counterbored[0]?.counterbore?.depth ?? 0)}. ${plan.job.posts.sleeve === null ? "Too deep leaves too little wood." : "The washer must lie on whole wood, never on the sleeve."}`,
              killer: true as const,
            },
          ]
        : []),
      ...sleeveRoomSteps(plan),
      ...counterboreFirst(plan).map(
        (bit): StepItem => ({
          text: `Bore ${bit.holes} x **${show.diameterOne(bit.diameter)}** (${bit.use}). The bit is at least ${show.tape(bit.bitLength_min)} long.`,
        }),
      ),
      isWood(plan)
        ? {
            text: "Start at the face that the table names. Hold a block behind the post.",
            more: "The block keeps the far side from breaking out.",
          }
        : {
            text: "Start at the face that the table names. Punch each mark first, and use cutting oil.",
            more: isTube(plan)
              ? "The bit goes through two walls. Ease off before it breaks through each."
              : "Ease off before the bit breaks through.",
          },
      ...mitreItems(context),
      ...crossedItems(context),
      ...alongItems(plan),
      ...drillRoomItems(context),
      ...holeItems(context),
      ...pierSteps(plan, show),
      ...finishItems(plan),
      ...fasteningItems(context),
      ...bushingItems(plan),
      { text: "Tick each hole. Write the real height if it is off." },
    ],
  };
}

/** A bit held square to a leaning face bores a slope. */
function alongItems(plan: Plan): readonly StepItem[] {
  const along = leaningAlongIds(plan);
  if (along.length === 0) return [];
  return [
    {
      text: `At ${listed(along)} bore level, not square to the face. Hold a level to the bit.`,
      more: "A post that leans along the guard makes a bit run uphill or downhill. Hold the stick plumb beside it.",
      killer: true,
    },
  ];
}

const isFirst = (use: Text): boolean => use.includes("counterbore") || use.includes(WASHER_HOLE);

/** Bored with another bit, and only after a search: its steps stand by themselves. */
const IN_PIER: BoreKind = "anchor end";

/** A bit finds no centre once the through bore is there. */
const counterboreFirst = ({ bits }: Plan): Plan["bits"] => [
  ...bits.filter(({ use }) => isFirst(use)),
  ...bits.filter(({ use }) => !isFirst(use) && use !== IN_PIER),
];

function finishItems(plan: Plan): readonly StepItem[] {
  if (isTreated(plan)) {
    return [
      {
        text: `Brush wood preservative into every hole${onlyWood(plan).replace(/,$/, "")}. Wipe off the rest.`,
        more: "The drill cut through the treated layer.",
      },
    ];
  }
  if (isWood(plan)) {
    return [{ text: "Clean every hole. Take off sharp edges." }];
  }
  const { material } = plan.job.posts.section;
  return [
    {
      text: isTube(plan) ? "Deburr each hole on both walls, inside too where you can reach." : "Deburr each hole on both faces.",
      more: "A sharp edge cuts the strand.",
      killer: true,
    },
    ...(material === "steel"
      ? [{ text: "Paint the bare metal of each hole with cold zinc paint.", more: "Bare steel rusts and stains the cable." }]
      : []),
    ...(material === "aluminium"
      ? [
          {
            text: "Keep stainless parts off the bare metal with plastic sleeves and washers.",
            more: "Two metals that touch in the wet corrode.",
          },
        ]
      : []),
    { text: "Brush the chips off all stainless parts, every day." },
  ];
}

export function reeveStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const ready = plan.job.supply.kind === "ready";
  return {
    key: "reeve",
    title: `Thread ${count(plan.cables.length, "cable")}`,
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: "reeve",
    items: [
      ...(ready
        ? []
        : [
            {
              text: "Measure the run once more. Then cut each cable at its cut length.",
              more: "Tape the strand and cut through the tape.",
              killer: true as const,
            },
            { text: "Fit a stud on one end of each cable, as its instruction says.", more: "Test the first one with a hard pull." },
          ]),
      ...plan.runs.map((run) => reeveItem(plan, run, show.feetUp(run.orderLength))),
      { text: "Let a helper guide the cable at each post. Never drag it over an edge.", more: "A kink stays in the cable for good." },
      { text: "Put a tape flag with the mark on each cable, such as R1-05." },
    ],
  };
}

function reeveItem(plan: Plan, run: Run, lengthText: Text): StepItem {
  const start = startOf(run);
  const more = `Each cable here is ${lengthText} long. Start with the lowest course.`;
  const on = `Push the plain end through to ${stopOf(run).postId}.`;
  return startsInside(run)
    ? { text: `Run ${run.id}: start inside, beside ${start.postId}. ${on} Then push the stud out through ${start.postId}.`, more }
    : { text: `Run ${run.id}: start at ${start.postId}, ${backOfEnd(plan, start)}. ${on}`, more };
}

/** A corner post that is bored from the middle of one face to the middle of the next. */
function mitreItems({ plan, show }: SheetContext): readonly StepItem[] {
  const ids = mitredIds(plan);
  if (ids.length === 0) return [];
  const outside = boredFromOutside(plan);
  return [
    ...(outside.length === 0
      ? []
      : [
          {
            text: `${listed(outside)}: hold the drill outside the guard, at an outside corner. Stand on a ladder or a platform there.`,
            more: "The bit cuts the corner on the deck's side. Nobody leans out over the edge.",
            killer: true as const,
          },
        ]),
    {
      text: `${listed(ids)}: mark the middle on both faces. Clamp on a guide block with a hole at ${show.angle(Math.PI / 4)}.`,
      more: "Its hole sits on the mark and leans towards the other face. Try it on a scrap of the same size.",
      killer: true,
    },
    {
      text: `Bore slowly. The bit must come out on the other mark, within ${show.tape(MITRE_OFF_mm)}.`,
      more: "Is it further off? Stop and ask before you bore the next one.",
      killer: true,
    },
  ];
}
