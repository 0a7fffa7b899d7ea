// What does somebody who does this once do to set out, bore, reeve and set the ends? Sentences of at most 20 words.
import type { Plan, Run, RunEnd } from "../../plan/plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { faceName, floorWord } from "../wording.ts";
import { depthOf, gripEnds, isNarrow, meetingTails, postsWith, secondStuds, siteEnds, startOf, startsInside, stopOf } from "./ends.ts";
import { bevelItems, boreSlopes, levelFirst, markSlopes } from "./guide-slopes.ts";
import { count, listed, refer, type SheetContext } from "./kit.ts";
import { offMiddle } from "./leaning.ts";
import { isTreated, isTube, isWood } from "./material.ts";
import { boreSheets } from "./slopes.ts";
import type { Stage } from "./stage.ts";

export function setOutStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const offset = offMiddle(plan);
  return {
    key: "set-out",
    title: "Mark the holes",
    sheets: boreSheets(context),
    safety: null,
    items: [
      {
        text: `${levelFirst(context)}Take a straight stick. Mark all ${plan.courses.length} heights from ${refer(context, "bores")} on it.`,
        more: "Measure every mark from the same end. Do not add up small steps.",
      },
      {
        text: `${levelFirst(context)}Stand the stick on the datum${plan.rakes.length === 0 ? `: ${plan.job.frame.datum}` : ", on the level surface"}.`,
        more: 'Write "datum" on that end, so that you never turn it round.',
        killer: true,
      },
      {
        text: `${levelFirst(context)}Carry the marks to every post and spacer, in the middle of the face.`,
        ...(offset.length > 0 ? { more: `At ${listed(offset)} the holes are off the middle: use the table.` } : {}),
      },
      ...markSlopes(context),
      {
        text: `Measure the spacing on one post${plan.rakes.length > 0 ? " of each side" : ""}, middle to middle. Write down the widest.`,
        more: `None may be above ${show.tape(plan.job.limits.cableSpacing_max.value)}.${plan.rakes.length > 0 ? " On a slope measure square to the cables, not straight up." : ""}`,
        value: show.lengthUnit,
        killer: true,
      },
    ],
  };
}

export function boreStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const counterbored = plan.bores.filter(({ counterbore }) => counterbore !== null);
  const bushed = plan.bores.filter(({ bushing }) => bushing).length;
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
              text: "Bore each counterbore before its through hole. Use a flat-bottomed or piloted bit with a tape flag.",
              more: `Stop at the depth of ${show.tape(counterbored[0]?.counterbore?.depth ?? 0)}. Too deep leaves too little wood.`,
              killer: true as const,
            },
          ]
        : []),
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
      ...finishItems(plan),
      ...(bushed > 0 ? [{ text: `Put bushings in ${bushed} holes.`, more: "The table of bores says which." }] : []),
      { text: "Tick each hole. Write the real height if it is off." },
    ],
  };
}

/** A bit finds no centre once the through bore is there. */
const counterboreFirst = ({ bits }: Plan): Plan["bits"] => [
  ...bits.filter(({ use }) => use.includes("counterbore")),
  ...bits.filter(({ use }) => !use.includes("counterbore")),
];

function finishItems(plan: Plan): readonly StepItem[] {
  if (isTreated(plan)) {
    return [{ text: "Brush wood preservative into every hole. Wipe off the rest.", more: "The drill cut through the treated layer." }];
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
      ...plan.runs.map((run) => reeveItem(run, show.feetUp(run.orderLength))),
      { text: "Let a helper guide the cable at each post. Never drag it over an edge.", more: "A kink stays in the cable for good." },
      { text: "Put a tape flag with the mark on each cable, such as R1-05." },
    ],
  };
}

function reeveItem(run: Run, lengthText: Text): StepItem {
  const start = startOf(run);
  const more = `Each cable here is ${lengthText} long. Start with the lowest course.`;
  const on = `Push the plain end through to ${stopOf(run).postId}.`;
  return startsInside(run)
    ? { text: `Run ${run.id}: start inside, beside ${start.postId}. ${on} Then push the stud out through ${start.postId}.`, more }
    : { text: `Run ${run.id}: start at ${start.postId}, ${faceName[start.backFace]}. ${on}`, more };
}

export function endsStage(context: SheetContext): Stage {
  const { plan } = context;
  const studs = secondStuds(plan).length > 0;
  return {
    key: "ends",
    title: studs ? "Mark the far ends" : "Set the ends",
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: null,
    items: [
      {
        text: "Oil each thread. Run the nut on by hand once, then take it off again.",
        more: "Stainless threads seize when they are dry.",
        killer: true,
      },
      ...bevelItems(context),
      {
        text: `At ${postsWith(plan.runs.map(startOf))}: washer, then nut. Give it ${firstTurns(context)} full turns, no more.`,
        more: "The rest of the thread is needed for tightening.",
      },
      ...plan.runs.flatMap((run) => siteEnds(run).studs.map((end) => markItem(run, end))),
      ...(studs ? [] : slackItems(context, "pull out")),
      ...plan.runs.flatMap((run) => siteEnds(run).grips.flatMap((end) => gripItem(run, end))),
      ...meetingItems(plan),
      ...(gripEnds(plan).length > 0 ? [{ text: "Leave the tails long. They are cut after H3." }] : []),
    ],
    hold: studs
      ? `H2, signed on ${refer(context, "proof")}: no cable is cut to its final length for its second stud before H2.`
      : `H2, signed on ${refer(context, "proof")}: ends set. A second person checks. Tails stay long until H3.`,
  };
}

const firstTurns = ({ plan, show }: SheetContext): Text => show.decimal(plan.job.fittings.stud.firstTurns.value, 1);

/** The thread alone is too short where a run is long: the rest is taken out by hand. */
const slackItems = ({ plan, show }: SheetContext, how: "pull out" | "cut off"): readonly StepItem[] =>
  plan.runs
    .filter(({ takeUp }) => takeUp.slackToPull > 0)
    .map(
      (run): StepItem => ({
        text:
          how === "pull out"
            ? `Run ${run.id}: mark each tail at its fitting. Pull it ${show.tape(run.takeUp.slackToPull)} past hand-tight, then set the grip end.`
            : `Run ${run.id}: cut ${show.tape(run.takeUp.slackToPull)} shorter than the mark asks.`,
        more: `The thread alone is too short here. Write down the least that you reached.`,
        value: show.lengthUnit,
        killer: true,
      }),
    );

const markItem = (run: Run, end: RunEnd): StepItem => ({
  text: `Run ${run.id}, ${end.postId}: pull the cable hand-tight. Mark it where it leaves the ${faceName[end.backFace]}.`,
  more: "Mark every cable of the run. Measure twice. Do not cut yet.",
  killer: true,
});

const gripItem = (run: Run, end: RunEnd): readonly StepItem[] => [
  ...(isNarrow(end)
    ? [
        {
          text: `${end.postId} has little room behind. Lead each tail out sideways in a wide curve.`,
          more: "Seat that end as the next step says. Then do the next cable. A sharp bend kinks the strand.",
        },
      ]
    : []),
  {
    text: `Run ${run.id}: pull the slack by hand at ${end.postId}. Then set the grip end.`,
    more: "Most of these fittings go on one way only. They do not come off again.",
    killer: true,
  },
];

const meetingItems = (plan: Plan): readonly StepItem[] =>
  meetingTails(plan).map(
    ({ first, firstRun, second, secondRun }): StepItem => ({
      text: `At ${first.postId} and ${second.postId} tails meet. Finish ${firstRun} first, then ${secondRun}.`,
      more: `Cap the tails of ${firstRun}, or bend them aside.`,
    }),
  );

/** Only once the marks have been checked. */
export function secondStudStage(context: SheetContext): Stage {
  const { plan } = context;
  return {
    key: "second-studs",
    title: "Cut and fit the second studs",
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: "cut",
    items: [
      {
        text: "Read the stud's instruction. It says how far from the mark you cut.",
        more: "Do one cable to its end. Test it with a hard pull. Then do the rest.",
        killer: true,
      },
      ...slackItems(context, "cut off"),
      ...plan.runs.flatMap((run) => siteEnds(run).studs.flatMap((end) => fitItems(run, end, context))),
      {
        text: `Oil each thread. Washer, then nut by hand: ${firstTurns(context)} full turns at both ends.`,
        more: "Check that no cable has crossed another.",
      },
    ],
  };
}

function fitItems(run: Run, end: RunEnd, { plan, show }: SheetContext): readonly StepItem[] {
  const start = startOf(run);
  return isNarrow(end)
    ? [
        {
          text: `Run ${run.id}: take nut and washer off at ${start.postId}. Bow the cable towards the ${floorWord(plan.job)} over the bays.`,
          more: `There is no room to cut behind ${end.postId}. The slack comes from the other end.`,
        },
        {
          text: `Pull the end at ${end.postId} back into the bay. Lead it in a wide curve.`,
          more: `You need about ${show.tape(depthOf(plan, [end]))}, the depth of the post, and room for the press.`,
        },
        {
          text: "Try this with the tool on the first cable, before you cut any other.",
          more: "No room? Stop and ask the author. The stud may go on outside, with the end post left loose.",
          killer: true,
        },
        {
          text: `Cut and fit the stud there, in the bay. Then push the stud out through ${end.postId}.`,
          killer: true,
        },
      ]
    : [{ text: `Run ${run.id}: cut at ${end.postId} and fit the second stud.`, killer: true }];
}
