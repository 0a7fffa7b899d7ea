// Z-804: how is it shown that the work is right, and who signs? Every hold point is signed here and nowhere else.
import type { Plan } from "../../plan/plan.ts";
import { allLevelGaps } from "../../plan/set-off.ts";
import { frameFails, frameWords } from "../frame-verdict.ts";
import type { Cell, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { frameAccepted, introduction, peopleOf } from "../wording.ts";
import { drawnOpenings } from "./drawn.ts";
import { cutEnds, farFitting } from "./ends.ts";
import { liftedText } from "./frame-posts.ts";
import {
  blank,
  blankRow,
  bold,
  caution,
  column,
  facts,
  greatest,
  least,
  list,
  listed,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  sideBySide,
  strong,
  table,
} from "./kit.ts";
import { slopeTables } from "./proof-slopes.ts";
import { atLeast, atMost, bandDay, bandWords, pullWords } from "./readings.ts";
import { bayName, forceWords, openingRoute, type Route, sagBays, testedBays, testPlaces } from "./route.ts";
import { slotTables } from "./slots.ts";
import { spansInBay } from "./spans.ts";

const DEVIATION_rows = 4;
/** Beyond so many times the force of the test a computed push is told by words. */
const FAR_times = 10;

export const proofSheet: SheetMaker = (context, head): Sheet => {
  const { plan, issue } = context;
  const route = openingRoute(context);
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.proof)] : []),
    caution(
      frameFails(plan) ? "danger" : "warning",
      `${frameWords(plan)} ${frameFails(plan) ? "H1 is not to be signed for this packet." : "Whoever signs H1 accepts it."}`,
    ),
    ...(issue === "crew" ? [answersTable(context, route)] : []),
    holdTable(context, route),
    facts("proof-opening-facts", route.facts),
    ...(issue === "crew" ? [deviationTable()] : []),
    ...drawnOpenings(plan),
    list(...howToTest(context, route)),
    openingTable(context, route),
    ...slotTables(context),
    ...slopeTables(context, "proof-slopes"),
    ...sagTables(context),
    pullTable(context),
    conditionsTable(context, route),
  ]);
};

/** A crew has no sheet of questions: what was answered stands here. */
function answersTable({ show }: SheetContext, { push }: Route): Table {
  const columns = [
    ...(push === "never"
      ? []
      : [column("force", push === "agreed" ? "Force of the test" : "Force, if pushed", 0.15, { sub: show.forceUnit })]),
    column("sphere", "Sphere", 0.12, { sub: show.lengthUnit }),
    column("level", "Level cables", 0.13, { sub: "yes / no" }),
    column("permit", "Permit no.", 0.18),
    column("by", "By whom", 0.26),
    column("date", "Date", 0.16),
  ];
  return table({ id: "proof-answers", caption: "Answers of the authority", columns, rows: [blankRow(columns)], writeIn: true });
}

/** Hold: stop until signed. Witness: invite, go on if nobody comes. */
function holdTable(context: SheetContext, route: Route): Table {
  const { plan, home, issue } = context;
  const people = peopleOf(home);
  const lifted = liftedText(context);
  // One set is signed; the others are for those who read.
  const copy = issue === "permit" || issue === "record";
  const points: readonly (readonly [Text, Text, Text, Text])[] = [
    ["H0 questions answered", "H", `no blank on ${refer(context, "authority")}`, home ? "you, authority" : "office, authority"],
    [
      `H1 ${frameAccepted}`,
      "H",
      `all cables of a run pull at most: ${pullWords(context)}${lifted === "" ? "" : `; feet held down that the cables lift: ${lifted}`}; limit for the lean is on ${refer(context, "tightening")}; survey and fittings as ${refer(context, "survey")}`,
      "engineer or authority",
    ],
    cutEnds(plan).length > 0
      ? [
          "H2 marked, before the final cut",
          "H",
          `each cable hand-tight, marked at its far end, none crossed; marks measured twice; none cut to its final length for its ${farFitting(plan)} before`,
          people.second,
        ]
      : ["H2 ends set", "H", "first turns on, grip ends set, nothing crossed; tails stay long until H3", people.second],
    [
      "H3 last pass read",
      "H",
      `every last reading: ${plan.runs.map((run) => bandWords(run, context)).join("; ")}, ${bandDay(context)}`,
      people.lead,
    ],
    ["Opening check", "W", `called before the test; ${route.criterion}`, "authority"],
    ["H4 hand-over", "H", "proof and log complete, caps on, owner's card given", home ? `you, ${people.handsOver}` : "office, owner"],
  ];
  return table({
    // The signers of somebody who does it once are others than those of a firm.
    id: copy ? "proof-holds-copy" : home ? "proof-holds-home" : "proof-holds",
    caption: `Hold points (H: stop until signed; W: invite a witness): ${copy ? "copy; the signed one is in the crew (homeowner) set" : "signed here only"}`,
    columns: [
      column("point", "Point", 0.21),
      column("kind", "H/W", 0.05, { align: "center" }),
      column("criterion", "Criterion", 0.46),
      column("who", "Who", 0.12),
      column("sign", "Signed, date", 0.16),
    ],
    rows: points.map(([point, kind, criterion, who]) => [bold(point), kind, criterion, who, copy ? "in the signed set" : blank()]),
    ...(copy ? {} : { writeIn: true }),
  });
}

const widestClear = (plan: Plan): number => greatest(allLevelGaps(plan).map(({ clear }) => clear));

function openingTable(context: SheetContext, route: Route): Table {
  const { plan, show } = context;
  const push = route.push !== "never";
  const columns = [
    column("bay", "Bay", 0.11),
    ...(push
      ? [
          column("push", "Passes at", 0.17, { sub: "free to slide - held" }),
          column("force", "Force used", 0.1, { sub: route.push === "agreed" ? show.forceUnit : `${show.forceUnit}, if pushed` }),
        ]
      : [column("built", "Widest built", 0.18, { sub: show.lengthUnit })]),
    column("result", "Held?", 0.09, { sub: "yes / no" }),
    column("initials", "Init.", 0.08),
  ];
  const rows = testedBays(plan).map(({ id }): readonly Cell[] =>
    blankRow(columns, bold(bayName(plan, id)), ...(push ? [pushWords(context, id, route)] : [])),
  );
  return table({
    id: "proof-openings",
    caption: `Opening check, bay by bay (${HOW[route.push]}); widest gap planned ${show.tape(widestClear(plan))} clear`,
    ...sideBySide(columns, rows, 2),
    writeIn: true,
    ...(push
      ? {
          notes: [
            `Passes at: computed without friction, rounded down ${sourceMark("derived")}. It is no acceptance value: the authority's force decides.`,
          ],
        }
      : {}),
  });
}

const HOW: Readonly<Record<Route["push"], Text>> = {
  agreed: "push",
  "if asked": "set in by hand, pushed only if the authority asks",
  never: "set in by hand",
};

/** Where a sag was agreed: what hangs where, and what it may do. */
function sagTables({ plan, show }: SheetContext): readonly Table[] {
  const { criterion } = plan.job.tightening;
  if (criterion.kind !== "sag") {
    return [];
  }
  const columns = [
    column("bay", "Bay", 0.12),
    column("cable", "Cable", 0.24),
    column("weight", "Weight", 0.14, { sub: "mid-span" }),
    column("limit", "At most", 0.14, { sub: "plan" }),
    column("mark", "Its mark", 0.12),
    column("sag", "Sag read", 0.14, { sub: show.lengthUnit }),
    column("initials", "Init.", 0.1),
  ];
  const rows = plan.runs.flatMap(({ id, proof }) =>
    [`${id}, lowest in the log`, `${id}, any other`].map((which) =>
      blankRow(columns, bold(proof.bayId), which, show.force(criterion.weight), strong(show.fine(criterion.sag_max))),
    ),
  );
  return [table({ id: "proof-sag", caption: "Sag test", columns, rows, writeIn: true })];
}

/** Rounded down, as the sphere must be held up to there; where it does not go in between the uprights, they stop it and not the cables. */
function pushWords(context: SheetContext, bayId: string, { force }: Route): Text {
  const spans = spansInBay(context.plan, bayId).map(({ span }) => span);
  if (spans.length === 0) {
    return "-";
  }
  if (greatest(spans.map(({ free }) => free)) < context.plan.job.code.openingSphere.value) {
    return "rigid, no value";
  }
  const pushes = spans.map(({ pushThrough }) => pushThrough);
  const words = (value: number): Text => (force !== null && value > FAR_times * force ? "far above" : atMost(value, context));
  const [sliding, held] = [least(pushes.map((push) => push.sliding)), least(pushes.map((push) => push.held))].map(words);
  return sliding === held ? `${sliding}` : `${sliding} - ${held}`;
}

function howToTest(context: SheetContext, { push }: Route): readonly Text[] {
  const { plan, show, home } = context;
  const sphere = show.tape(plan.job.code.openingSphere.value);
  const { criterion } = plan.job.tightening;
  const how: Readonly<Record<Route["push"], Text>> = {
    agreed: `Push the ${sphere} sphere square to the guard, slowly, with a spring scale, up to the agreed force (${forceWords(context)}).`,
    "if asked": `Set the ${sphere} sphere in by hand. Push it only if the authority asks, with its force and a spring scale.`,
    never: `Measure the widest opening of each bay. Set the ${sphere} sphere in by hand; do not push.`,
  };
  return [
    `**Call the official before the test.** Begin with ${listed(plan.openingBayIds.map((id) => bayName(plan, id)))}.`,
    `Try it ${testPlaces(plan)}. ${how[push]}`,
    ...(criterion.kind === "sag"
      ? [`Hang ${show.force(criterion.weight)} mid-span in bay ${sagBays(plan)}: at most ${show.fine(criterion.sag_max)}.`]
      : []),
    `A bay that fails: write it down, read the tension there, ask ${peopleOf(home).office}. Do not tighten above the band.`,
  ];
}

function pullTable(context: SheetContext): Table {
  const { plan, show } = context;
  const columns = [
    column("run", "Run", 0.07),
    column("bay", "Read in bay", 0.12, { sub: "plan" }),
    column("plan", "At least", 0.15, { sub: "plan" }),
    column("limit", "At most", 0.15, { sub: "plan" }),
    column("lowest", "Lowest cable", 0.13, { sub: `reads, ${show.forceUnit}` }),
    column("cable", "Any other cable", 0.15, { sub: "its mark" }),
    column("reading", "It reads", 0.13, { sub: show.forceUnit }),
    column("initials", "Initials", 0.12),
  ];
  return table({
    id: "proof-pulls",
    caption: "Readings at the proof",
    columns,
    rows: plan.runs.map((run) =>
      blankRow(columns, run.id, run.proof.bayId, strong(atLeast(run.proof.low, context)), strong(atMost(run.proof.high, context))),
    ),
    rowHeads: true,
    writeIn: true,
    notes: [`**Values ${bandDay(context)}${shareWords(context)}.** Air: below.`],
  });
}

/** Behind bends a bay has its share of the nut, and moves by that share of what the nut moves by. */
function shareWords({ plan, show }: SheetContext): Text {
  const shares = plan.runs.map(({ id, proof, tension }) => ({ id, bayId: proof.bayId, share: show.percent(proof.low / tension.low) }));
  const less = shares.filter(({ share }) => share !== show.percent(1));
  return less.length === 0 ? "" : `: ${listed(less.map(({ id, bayId, share }) => `${id} in ${bayId} by ${share} of it`))}`;
}

function conditionsTable({ show }: SheetContext, route: Route): Table {
  return table({
    id: "proof-conditions",
    caption: "Conditions and signatures",
    columns: [
      column("date", "Date, weather", 0.18),
      column("air", "Air", 0.08, { sub: show.heatUnit }),
      column("sphere", "Sphere", 0.12, { sub: `built, ${show.lengthUnit}` }),
      column("scale", route.push === "never" ? "Tape or caliper" : "Scale: no., checked", 0.18),
      column("tester", "Tested by", 0.22),
      column("authority", "For the authority", 0.22),
    ],
    rows: [[blank(), blank(), blank(), blank(), blank(), blank()]],
    writeIn: true,
  });
}

function deviationTable(): Table {
  const columns = [
    column("mark", "Mark", 0.12),
    column("planned", "Planned", 0.2),
    column("built", "Built", 0.2),
    column("why", "Why", 0.28),
    column("accepted", "Accepted by, date", 0.2),
  ];
  return table({
    id: "proof-deviations",
    caption: "Deviations, told to the office",
    columns,
    rows: Array.from({ length: DEVIATION_rows }, () => blankRow(columns)),
    writeIn: true,
  });
}
