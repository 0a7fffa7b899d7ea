// Z-003: what must be measured and seen on site before anything is bored, and when does the packet no longer fit?

import type { Plan } from "../../plan/plan.ts";
import { SET_OFF } from "../../plan/set-off.ts";
import { crossedTurn_off } from "../../tables/practice.ts";
import { threadOf } from "../../tables/thread.ts";
import { gateAlone, gateCaution, gatesOf, guardEnds } from "../guard-ends.ts";
import { slopeChanges, turns } from "../joints.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { introduction } from "../wording.ts";
import { washerWarning } from "./bearing.ts";
import { bushingRows } from "./bushings.ts";
import { faceRows } from "./face-ends.ts";
import {
  blank,
  bold,
  caution,
  column,
  endPostIds,
  heading,
  list,
  listed,
  minor,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
  unique,
  upperFirst,
} from "./kit.ts";
import { readWords } from "./leaning.ts";
import { pierRows, piersOf } from "./piers.ts";
import { sidesWord, slopedSides } from "./slopes.ts";
import { bayRows } from "./survey-bays.ts";
import { cornerRows } from "./survey-corners.ts";
import { frameRows } from "./survey-frame.ts";
import { atLeast } from "./survey-least.ts";
import { datumWords, rakeMeasures, rakeRows } from "./survey-rakes.ts";
import { endRows, existingRows, NOTHING, pairRows, practice, runRows, type SurveyRow, sideStop, strengthRows } from "./survey-rows.ts";
import { asFoundRows, interruptionRows } from "./survey-standing.ts";

export const surveySheet: SheetMaker = (context, head): Sheet => {
  const { show } = context;
  const { site } = context.plan.job;
  const rows = [...guardRows(context), ...frameRows(context), ...strengthRows(context), ...fittingRows(context)];
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.survey)] : []),
    caution(
      "warning",
      "Compare before anything is bored. Past a stop value the packet does not fit: write the measured values here, correct the job file and make the packet again.",
      ...(rows.every(([, , , stop]) => !stop.includes(NOTHING))
        ? []
        : [
            "Rows that say **nothing to spare**: build to the plan or a little less, never more. A side longer than planned, but not past its stop, shares the difference among its bays.",
          ]),
    ),
    ...gatesOf(context.plan).map((gate) => caution("caution", gateCaution(gate))),
    surveyTable(context, rows),
    heading("survey-how-head", "How to measure"),
    list(...howToMeasure(context)),
    verifyTable(context),
    signatures(
      "survey-sign",
      `Measured and compared by; number of the tape; temperature (computed for ${show.heat(site.coldest.value)} to ${show.heat(site.warmest.value)})`,
    ),
  ]);
};

function surveyTable({ show }: SheetContext, rows: readonly SurveyRow[]): Table {
  return table({
    id: "survey-measure",
    caption: "Sides and surroundings, frame, fittings and cable as bought",
    columns: [
      column("what", "What", 0.29),
      column("plan", "Plan", 0.185),
      column("stop", "Stop if", 0.23),
      column("measured", "Measured", 0.105),
      column("key", "Key in the job file", 0.19),
    ],
    rows: rows.map(([key, what, planned, stopIf]) => [what, bold(planned), stopIf, blank(unitOf(planned, show)), minor(key)]),
    writeIn: true,
  });
}

const turnText = (turn: number, show: SheetContext["show"]): Text =>
  `${show.angle(turn < 0 ? -turn : turn)} ${turn < 0 ? "left" : "right"}`;

function unitOf(planned: Text, show: SheetContext["show"]): string {
  // The N of a force, not that of "No.1" on a stamp.
  if (new RegExp(`[0-9] k?${show.forceUnit}\\b`).test(planned)) return show.forceUnit;
  if (planned.includes("%")) return "%";
  return planned.includes("deg") ? "deg" : /[0-9](?: mm|")/.test(planned) ? show.lengthUnit : "";
}

function guardRows(context: SheetContext): readonly SurveyRow[] {
  const { plan, show } = context;
  const { job } = plan;
  const sides = plan.sides.flatMap((side): readonly SurveyRow[] => {
    const key = `guard / sides / ${side.id} /`;
    return [
      [
        `${key} length`,
        `Side ${side.id} along the bores${side.slope === 0 ? "" : ", **level**, not along the slope"}`,
        show.feetBoth(side.length),
        sideStop(context, side.id, side.length),
      ],
      ...(side.turn === null || side.turn === 0
        ? []
        : ([
            [
              `${key} turn`,
              "Turn at its right-hand end",
              turnText(side.turn, show),
              `off by more than ${plan.job.sides[side.index]?.corner === SET_OFF ? show.angle(crossedTurn_off.value) : "2 deg"} ${practice}`,
            ],
          ] as const)),
    ];
  });
  return [
    ...sides,
    ...interruptionRows({ plan, show }),
    ...existingRows(context),
    ...asFoundRows({ plan, show }),
    ...bayRows(context),
    ...pairRows(context),
    ...rakeRows(context),
    ...cornerRows(context),
    ...runRows(context),
    ...endRows(context),
    ["code / drop", "From the walking surface to the ground", show.feetBoth(job.code.drop), `above ${show.feet(job.code.drop)}: ask`],
  ];
}

/** Only what is bored and fitted in this job is asked for. */
function fittingRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const { cable, fittings } = plan.job;
  const { stud, grip } = fittings;
  const grips = plan.bores.filter(({ kind }) => kind === "grip end");
  const isSunk = ({ counterbore, sleeveHole }: (typeof grips)[number]): boolean => counterbore !== null && sleeveHole === undefined;
  const counterbored = grips.some(isSunk);
  const through = unique(grips.filter((bore) => !isSunk(bore)).map(({ diameter }) => diameter));
  const slides = `does not slide, or more than ${show.fine(LOOSE_mm)} loose ${practice}`;
  // The bore of a stud is planned wider than its thread: only more play than that is a fault.
  const play = stud.bore.value - (threadOf(stud.thread)?.value.diameter ?? stud.bore.value);
  const slidesOnThread = `does not slide, or more than ${show.fine(play + LOOSE_mm)} loose ${practice}`;
  const strength = show.forceBoth(cable.breakingForce.value);
  return [
    ["cable / diameter", "Cable, measured over the crowns", show.diameter(cable.diameter), "outside its certificate"],
    ["cable / breaking force", "Breaking force, from its certificate", strength, `below ${show.force(cable.breakingForce.value)}, or none`],
    ["fittings / stud / bore", `Stud ${stud.thread}: slides through a bore of`, show.diameter(stud.bore.value), slidesOnThread],
    [
      "fittings / stud / thread length",
      "Thread of the stud that the nut can use",
      ...atLeast(stud.threadLength.value, show.tapeBoth, show.tape),
    ],
    [
      "fittings / stud / washer",
      `Washer of the stud, across${washerWarning(plan, "stud")}`,
      ...atLeast(stud.washerDiameter.value, show.diameter, show.diameterOne),
    ],
    ...(counterbored
      ? ([
          [
            "fittings / grip / counterbore",
            "Gripping fitting: slides into a counterbore of",
            show.diameter(grip.counterbore.value),
            slides,
          ],
        ] as const)
      : []),
    ...through.map(
      (diameter): SurveyRow => [
        `fittings / grip / ${diameter === grip.boreNoBack.value ? "bore without back" : "bore"}`,
        "Gripping fitting: slides into a bore of",
        show.diameter(diameter),
        slides,
      ],
    ),
    ...(grips.length > 0
      ? ([
          [
            "fittings / grip / body length",
            "Gripping fitting: body in the post",
            show.tapeBoth(grip.bodyLength.value),
            `above ${show.tape(grip.bodyLength.value)}`,
          ],
          [
            "fittings / grip / washer",
            `Washer under its collar, across${washerWarning(plan, "grip")}`,
            ...atLeast(grip.washerDiameter.value, show.diameter, show.diameterOne),
          ],
        ] as const)
      : []),
    ...faceRows({ plan, show }),
    ...pierRows({ plan, show }),
    ...bushingRows({ plan, show }),
  ];
}

/** A fitting with more play than this does not sit square: common practice, no source. */
const LOOSE_mm = 0.8;

/** Where a side begins, but for its end posts. */
const startsWords = (plan: Plan): Text =>
  [
    ...unique(guardEnds(plan).flatMap(({ end, against }) => (end.kind === "wall" ? [` or from the face of the ${against}`] : []))),
    ...(turns(plan) ? [" or from the corner point (where the lines of the bores cross)"] : []),
    ...(slopeChanges(plan).length === 0 ? [] : [" or from where the slope changes"]),
  ].join("");

/** No tape reaches the corner point of one post. */
function insidePost({ verticals }: Plan): readonly Text[] {
  const ids = verticals.flatMap(({ id, corner }) => (corner === undefined ? [] : [id]));
  return ids.length === 0
    ? []
    : [
        `The corner point at ${listed(ids)} lies in the post. Measure along the bores to the middle of its face on that side, and add what the row of the post says.`,
      ];
}

function howToMeasure(context: SheetContext): readonly Text[] {
  const { plan } = context;
  return [
    "Hook the tape on a face, not on a rounded edge. Read twice, from both ends; the larger counts.",
    `Measure a side along the line of the bores, from the outer face of an end post${startsWords(plan)}${piersOf(plan).length > 0 ? " or the face of a pier" : ""} to the next one.`,
    ...insidePost(plan),
    ...rakeMeasures(context),
    `Measure the clear opening at every post${plan.rakes.length === 0 ? "" : `, on ${sidesWord(slopedSides(plan))} plumb`}. Rails sag: the largest value counts.`,
    ...(plan.job.posts.existing
      ? [
          `A post that leans along the guard: read its station, and at an end post the length of the side and the gap to a wall, at ${readWords(context) ?? "the height of the middle cable"}. One that leans out or in${readWords(context) === null ? "" : ", or along"}: hold a level to it.`,
        ]
      : []),
    "Hold a level on two faces of each post. Push each post by hand at the rail: nothing may rattle, click or stay displaced. How far it may give is the row of the lone post.",
    "Base of a post: pull both ways, read against a stick that touches nothing; the larger counts.",
  ];
}

function verifyTable(context: SheetContext): Table {
  const { plan } = context;
  const { posts } = plan.job;
  const ids = [...piersOf(plan).map(({ id }) => id), ...endPostIds(plan)];
  const ends = listed(ids);
  const gates = gatesOf(plan);
  const things: readonly Text[] = [
    datumWords(context),
    `No bolt, screw or bracket sits in the path of a bore (post feet, rail brackets): compare with ${refer(context, "bores")}`,
    `${ends} ${ids.length === 1 ? "holds" : "hold"} the ends of cables: the engineer or the authority accepted ${ids.length === 1 ? "it" : "them"} before anything is bored`,
    ...(posts.existing ? ["Standing posts are sound, without rot, cracks or rust, and stand where the elevation shows them"] : []),
    ...(posts.section.material === "wood"
      ? posts.treatment === "treated"
        ? ["Treated wood: the product for the treatment of bores is at hand"]
        : []
      : ["The tube's wall is as stated; metal is compatible with stainless steel or kept apart from it"]),
    ...(posts.section.material === "wood" || plan.job.site.floor !== null
      ? []
      : [
          `What the feet of the posts stand on grows with warmth as ${posts.section.material} does; else the job file says what it is (site: floor)`,
        ]),
    "Room behind each pulling end for the wrench, now and for later visits",
    ...(gates.length === 0
      ? ["Nothing else will be fixed to the posts (screens, planters, gates)"]
      : ["Nothing else will be fixed to the posts (screens, planters)", ...gates.map((gate) => upperFirst(gateAlone(gate)))]),
  ];
  return table({
    id: "survey-verify",
    caption: "Assumed; true on site?",
    columns: [
      column("no", "No.", 0.06),
      column("what", "Assumption", 0.66),
      column("yes", "Yes", 0.07, { align: "center" }),
      column("else", "If not: what is there", 0.21),
    ],
    rows: things.map((what, index) => [`${index + 1}`, what, { tick: true }, blank()]),
    writeIn: true,
  });
}
