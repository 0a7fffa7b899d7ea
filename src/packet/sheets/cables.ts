// Z-601: how long is every cable, how does it end, and how far must its nut travel?

import type { Change } from "../../changes/changes.ts";
import { isOnFace } from "../../plan/face-end.ts";
import { jointsOf, jointsWord } from "../../plan/joints.ts";
import type { Plan, RunEnd } from "../../plan/plan.ts";
import type { EndTakeUp } from "../../plan/readings.ts";
import type { Block, Cell, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { endName, introduction, runSpan } from "../wording.ts";
import { deltaNotes, withDeltas } from "./deltas.ts";
import { drawnFriction } from "./drawn.ts";
import { hasTails, secondStuds } from "./ends.ts";
import { eyeDistances, eyeEnds, eyeIds, faceOfEnd } from "./face-ends.ts";
import { keptInTarget } from "./kept.ts";
import {
  blank,
  bold,
  caution,
  column,
  groupBy,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  sideBySide,
  strong,
  table,
  tick,
  unique,
  upperFirst,
} from "./kit.ts";
import { backOfEnd, heightForRun } from "./set-off-words.ts";
import { lengthName, lengthSub } from "./sleeve-words.ts";

export const cablesSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.cables)] : []),
    lengthsTable(context),
    endsTable(context),
    takeUpTable(context),
    frictionTable(context),
    ...drawnFriction(plan),
    ...(context.issue === "permit" ? [] : cutBlocks(context)),
  ]);
};

function lengthsTable(context: SheetContext): Table {
  const { plan, show } = context;
  const ready = plan.job.supply.kind === "ready";
  const joints = jointsWord(plan, jointsOf(plan.runs));
  return table({
    id: "cables-lengths",
    caption: `Lengths per run; ${plan.courses.length} cables in each`,
    columns: [
      column("run", "Run", 0.08),
      column("posts", "Posts", 0.14),
      column("cables", "Cables", 0.09, { align: "right" }),
      column("path", "Path length", 0.23, { sub: "between bearing faces" }),
      column("outside", upperFirst(lengthName(plan)), 0.23, {
        sub: eyeEnds(plan).length > 0 ? "or to the face of an end" : lengthSub(plan),
      }),
      column("order", ready ? "Ready length" : "Cut length", 0.23, { sub: ready ? "to order" : "from the spool" }),
    ],
    rows: plan.runs.map((run) => [
      runCell(context, run.id, ["strand", "cable"]),
      runSpan(run),
      String(plan.cables.filter(({ runId }) => runId === run.id).length),
      show.feetBoth(run.pathLength),
      show.feetBoth(run.outsideLength),
      strong(show.feetUp(run.orderLength)),
    ]),
    rowHeads: true,
    notes: [
      ...deltaNotes(context, ({ subject }) => ["strand", "cable", "end", "tension"].includes(subject)),
      `Path and outside lengths follow the line of the bores${joints === "" ? "" : `, past ${joints} from bore to bore`}.`,
      ...(eyeEnds(plan).length > 0
        ? [
            `At ${eyeIds(plan)} the length counts to the face of the ${standWord(plan)}: the cable ends at the eye, ${eyeDistances({ plan, show })} before it.`,
          ]
        : []),
      plan.job.supply.kind === "ready"
        ? `Ready length: the next step above ${lengthName(plan)}. The rest is cut off at the far end, ${cutWhen(plan)}.`
        : `Cut length: ${lengthName(plan)} and ${show.tapeBoth(plan.job.supply.allowance.value)} ${sourceMark(plan.job.supply.allowance.source)}, rounded up.`,
    ],
  });
}

/** The mark of a run with what has changed of it in this table. */
const runCell = (context: SheetContext, id: string, subjects: readonly Change["subject"][]): Cell =>
  withDeltas(context, id, ({ subject, marks }) => subjects.includes(subject) && marks.includes(id));

/** What eyes stand on. */
const standWord = (plan: Plan): Text => {
  const kinds = unique(eyeEnds(plan).map(({ kind }) => (kind === "anchor" ? "pier" : "post")));
  return kinds.toSorted().reverse().join(" or ");
};

/** When the rest of a ready cable comes off. */
const cutWhen = (plan: Plan): Text =>
  [
    ...(hasTails(plan) ? ["last of all"] : []),
    ...(secondStuds(plan).length > 0 ? ["when the second stud is fitted"] : []),
    ...(eyeEnds(plan).length > 0 ? ["at an eye when its fitting is put on"] : []),
  ].join(", ");

const endWords = (plan: Plan, end: RunEnd): Text =>
  isOnFace(end)
    ? `${endName[end.kind]} at ${end.postId}, ${faceOfEnd(plan, end)}`
    : `${endName[end.kind]} at ${end.postId}, ${backOfEnd(plan, end)}${end.access === "drill" ? "" : end.access === "hand" ? "; hand and wrench only" : "; **no room behind**"}`;

function endsTable(context: SheetContext): Table {
  const { plan, show } = context;
  return table({
    id: "cables-ends",
    caption: "Ends and bends per run",
    columns: [
      column("run", "Run", 0.08),
      column("left", "Left end", 0.26),
      column("right", "Right end", 0.26),
      column("pull", "Tightened at", 0.14),
      column("bends", "Bends", 0.26),
    ],
    rows: plan.runs.map((run) => [
      runCell(context, run.id, ["end"]),
      endWords(plan, run.left),
      endWords(plan, run.right),
      bold(
        [run.left, run.right]
          .filter(({ pulls }) => pulls)
          .map(({ postId }) => postId)
          .join(" and "),
      ),
      run.bends.length === 0
        ? "none"
        : groupBy(run.bends, ({ postId }) => postId)
            // One post at a corner bends its cable twice, by the same.
            .map(([{ postId, angle }, ...more]) => `${postId} ${more.length === 0 ? "" : "twice "}${show.angle(Math.abs(angle))}`)
            .join(", "),
    ]),
    rowHeads: true,
  });
}

/** A row for each nut: on a run with corners the nuts of its two ends may travel differently. */
function takeUpTable({ plan, show }: SheetContext): Table {
  return table({
    id: "cables-take-up",
    caption: "Take-up: from hand-tight until every cable stands at its target",
    columns: [
      column("run", "Run, nut at", 0.12),
      column("stretch", "Stretch", 0.11),
      column("bedding", "Bedding", 0.11),
      column("seating", "Seating", 0.11),
      column("closing", "Closing", 0.11, { sub: "of the frame" }),
      column("travel", "Travel of this nut", 0.14),
      column("turns", "Turns of this nut", 0.19, { sub: "(stiff - soft strand)" }),
      column("left", "Thread left", 0.12, { sub: "per nut" }),
      column("slack", "Slack to pull first", 0.14),
    ],
    rows: plan.runs.flatMap(({ id, takeUp }) =>
      takeUp.ends.map((end) => [
        `${id}, ${end.postId}`,
        show.fine(takeUp.elongation),
        show.fine(takeUp.bedding),
        show.fine(takeUp.seating),
        show.fine(takeUp.closing),
        show.travel(end.travel),
        bold(turnsOf(end, show)),
        show.tapeDown(end.threadLeft),
        takeUp.slackToPull > 0 ? bold(show.tape(takeUp.slackToPull)) : "none",
      ]),
    ),
    rowHeads: true,
    notes: [
      `Stretch, bedding, seating and closing (its ends come nearer under all cables ${sourceMark("derived")}) are those of the whole run; rounded each by itself, the travel upwards: they may miss their sum by ${show.fine(ROUNDED_mm)}.`,
    ],
  });
}

/** Four parts, each printed to the nearest step, and a sum printed to the next: what they may miss each other by. */
const ROUNDED_mm = 1.6;

const turnsOf = ({ turns, turns_low, turns_high }: EndTakeUp, show: SheetContext["show"]): Text =>
  `${show.decimal(turns, 1)} (${show.decimal(turns_low, 1)} - ${show.decimal(turns_high, 1)})`;

function frictionTable(context: SheetContext): Table {
  const { plan, show } = context;
  const { friction } = plan.job.tightening;
  const kept = keptInTarget(plan);
  const bays = new Map(plan.bays.map(({ id, kind }) => [id, kind]));
  return table({
    id: "cables-friction",
    caption: "How much of the pull reaches the far spans, and what is kept for the weather, drying and bedding-in",
    columns: [
      column("run", "Run", 0.07),
      column("target", "Target at the nut", 0.2),
      column("least", "Least along the run", 0.17, { sub: "in bay" }),
      column("ratio", "Far share", 0.1, { align: "right" }),
      column("asked-least", "Nearest to what is asked", 0.17, { sub: "in bay" }),
      column("asked", "Asked for", 0.13, { sub: "in the worst span" }),
      column("covered", "Kept for losses", 0.16, { sub: "in the target" }),
    ],
    rows: plan.runs.map(({ id, tension, spans }) => {
      // Where the pull has least to spare over what is asked: a corner gap, of which nothing is tested, is none of them.
      const [first, ...others] = spans.filter(({ required, bayId }) => required > 0 && bays.get(bayId) === "bay");
      const weakest =
        first && others.reduce((most, span) => (span.tension * most.required < most.tension * span.required ? span : most), first);
      return [
        runCell(context, id, ["tension"]),
        strong(show.forceBoth(tension.target)),
        `${show.forceDown(tension.least)} in ${tension.leastBayId}`,
        show.percent(tension.farRatio),
        weakest === undefined ? "nothing is asked" : `${show.forceDown(weakest.tension)} in ${weakest.bayId}`,
        show.forceUp(tension.required),
        tension.covered > 0 ? show.forceUp(tension.covered) : "nothing",
      ];
    }),
    rowHeads: true,
    notes: [
      `${plan.runs.some(({ bends }) => bends.length > 0) ? `At each bend the tension falls by exp(-mu x angle), mu = ${show.decimal(friction.value, 2)} ${sourceMark(friction.source)}. ` : ""}Kept for losses: ${kept.what} ${sourceMark(kept.source)}${lossWords(plan, show)}.`,
    ],
  });
}

/** What the worst cable loses by each cause. */
function lossWords({ climate }: SheetContext["plan"], show: SheetContext["show"]): Text {
  const each = climate.map(
    ({ runId, heat, cold, settling }) =>
      `${runId} ${show.force(Math.max(0, heat.worst, cold.worst))} on the ${cold.worst > heat.worst ? "coldest" : "warmest"} day, ${show.force(Math.max(0, settling.worst))} by drying and bedding-in`,
  );
  return `; the cable that loses most: ${each.join("; ")} ${sourceMark("derived")}`;
}

const cutRules = ({ plan }: SheetContext): readonly Text[] => [
  ...(plan.job.supply.kind === "spool"
    ? [
        "Do not cut from the spool before the posts stand and the outside length has been measured on site. Cut from a fixed stop, measured twice.",
      ]
    : []),
  ...(hasTails(plan)
    ? ["Do not cut a tail before the nut has its first turns, the grip end is set and all readings are in their band."]
    : []),
  ...(secondStuds(plan).length > 0
    ? ["Do not cut for the second stud before the nut has its first turns and the cable is hand-tight and marked."]
    : []),
  ...(eyeEnds(plan).length > 0
    ? [`Do not cut for the fitting at the eye (${eyeIds(plan)}) before the nut has its first turns and the cable is hand-tight and marked.`]
    : []),
];

/** Cables side by side: what differs between them is their height alone. */
const BESIDE = 2;

function cutBlocks(context: SheetContext): readonly Block[] {
  const { plan, show } = context;
  const columns = [
    column("mark", "Mark", 0.09),
    column("height", "Height", 0.2, { sub: "from the datum" }),
    column("lot", "Lot or spool", 0.13, { sub: "field" }),
    column("done", "Reeved", 0.08, { align: "center" }),
  ];
  const rows = plan.cables.flatMap((cable): readonly (readonly Cell[])[] => {
    const course = plan.courses.find(({ number }) => number === cable.course);
    return course ? [[bold(cable.mark), show.tapeBoth(heightForRun(plan, cable.runId, course)), blank(), tick]] : [];
  });
  return [
    caution("caution", ...cutRules(context)),
    table({
      id: "cables-marks",
      caption: "Every cable: its length is that of its run",
      ...sideBySide(columns, rows, BESIDE),
      writeIn: true,
    }),
  ];
}
