// Z-803: in which order are the cables pulled, to which reading, and how is a reading taken?
import { FRAME_SHEET, frameFails } from "../frame-verdict.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { howToMeasure, measuredWords } from "./calibration.ts";
import { keptInTarget } from "./kept.ts";
import {
  blank,
  blankRow,
  bold,
  column,
  facts,
  greatest,
  heading,
  list,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
  unique,
} from "./kit.ts";
import { piersOf } from "./piers.ts";
import { highAtNut, leansOf, lowAtNut, movedWords } from "./readings.ts";
import { safetyFor } from "./safety-messages.ts";
import { spanTable, waysToRead } from "./span-readings.ts";
import { logBlocks } from "./tightening-log.ts";

/** Where a post moves most along its side when all cables stand at their targets, and how far. */
function mostMoved(context: SheetContext, postId: string): Text {
  const { plan, show } = context;
  const most = plan.frame.sides
    .flatMap(({ posts }) => posts.filter((post) => post.postId === postId))
    .reduce((largest, post) => (Math.abs(post.movement) > Math.abs(largest.movement) ? post : largest), { movement: 0, height: 0 });
  const far = movedWords(most.movement, context);
  return far.startsWith("under") ? far : `${far} at ${show.tape(most.height)}`;
}

export const tighteningSheet: SheetMaker = (context, head): Sheet => {
  const { plan, home } = context;
  return sheet(head, "portrait", [
    ...(home ? [prose(...introduction.tightening)] : []),
    // What else is dangerous stands at the step.
    ...safetyFor("tighten", plan).slice(0, 1),
    targetFacts(context),
    spanTable(context),
    ...(context.issue === "record"
      ? []
      : [heading("tightening-ways-head", "Ways to read the tension"), list(...waysToRead(context), howToMeasure(context))]),
    plumbTable(context),
    instrumentTable(context),
    signatures("tightening-sign", home ? "Read by you, checked by a second person" : "Read by, checked by"),
    ...logBlocks(context),
  ]);
};

function targetFacts(context: SheetContext): Block {
  const { plan, show } = context;
  const { tightening } = plan.job;
  const { target } = plan;
  return facts("tightening-target", [
    ...plan.runs.map((run): readonly [Text, Text, true] => [
      `${run.id}: target at the nut`,
      `${show.forceBoth(run.tension.target)} when all is done; at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}, at ${show.heat(plan.job.site.reference.value)}; proved in bay ${run.proof.bayId}`,
      true,
    ]),
    [
      "Never above",
      `**"at most" of the step${frameFails(plan) ? `: yet the frame fails its checks at these pulls (${FRAME_SHEET}), so that nothing may be pulled` : ": on a day of the log's temperature the posts are checked for no more"}.** Working limit of the strand: ${show.forceBothDown(target.workingLimit)}`,
    ],
    [
      "Where the target comes from",
      `${target.criterionText} ${sourceMark(target.source)} ${target.sourceWhere}: ${show.tape(target.worstSpan)} ${tightening.criterion.kind === "table" ? "clear between posts" : "free"}, cables ${show.tape(target.worstSpacing)} apart: ${show.forceBothUp(target.required)} needed there${coveredWords(context)}`,
    ],
    [
      "Each step has its own reading",
      `each cable that is pulled later slackens those before it, so the first ones are pulled higher; band +/- ${show.percent(tightening.band.value)} ${sourceMark(tightening.band.source)} at the end, narrower at each step`,
    ],
    ...(plan.runs.length > 1 && plan.tightening.some(({ passes }) => passes.length > 1)
      ? ([["Several runs", "**pass 1 on every run before pass 2 on any**"]] as const)
      : []),
    ...measuredWords(context).map((words): readonly [Text, Text] => ["Measured here", words]),
  ]);
}

/** What the target holds in store beyond the criterion. */
function coveredWords({ plan, show }: SheetContext): Text {
  const { what, source } = keptInTarget(plan);
  const covered = greatest(plan.runs.map(({ tension }) => tension.covered));
  return covered > 0
    ? `; up to ${show.forceUp(covered)} of the target is kept for ${what} ${sourceMark(source)}`
    : "; nothing is kept for weather, drying or bedding-in";
}

/** Runs and passes are done on days of their own: each has its air, which decides what it stops at. */
function instrumentTable({ plan, show }: SheetContext): Table {
  const columns = [
    column("run", "Run", 0.12, { sub: "pass" }),
    column("gauge", "Gauge: kind, serial no.", 0.22),
    column("step", "Smallest step", 0.12, { sub: show.forceUnit }),
    column("checked", "Checked against, date", 0.2),
    column("day", "Date, weather", 0.16),
    column("start", "Air, start", 0.09, { sub: show.heatUnit }),
    column("end", "Air, end", 0.09, { sub: show.heatUnit }),
  ];
  return table({
    id: "tightening-instrument",
    caption: "Instrument and day",
    columns,
    rows: plan.tightening.flatMap(({ runId, passes }) =>
      passes.map(({ number }) => blankRow(columns, bold(passes.length > 1 ? `${runId}, ${number}` : runId))),
    ),
    rowHeads: true,
    writeIn: true,
  });
}

function plumbTable(context: SheetContext): Table {
  const { plan, show } = context;
  const passes = unique(plan.tightening.flatMap((one) => one.passes.map(({ number }) => number)));
  // After a single pass stands the end.
  const between = passes.length > 1 ? passes : [];
  const limit = plan.frame.movement_max;
  return table({
    id: "tightening-plumb",
    caption: "Plumb of the posts that hold or bend cables: distance from the plumb line at the height given",
    columns: [
      column("post", "Post", 0.09),
      column("runs", "Runs", 0.08, { sub: "plan" }),
      column("way", "Leans to", 0.15, { sub: "plan" }),
      column("planned", "Most at target", 0.16, { sub: "plan, above datum" }),
      column("before", "Before", 0.12, { sub: "field" }),
      ...between.map((pass) => column(`pass-${pass}`, `Pass ${pass}`, 0.12, { sub: "after, field" })),
      column("end", "At the end", 0.12, { sub: "field" }),
      column("moved", "Moved", 0.12, { sub: "calculated" }),
    ],
    rows: [
      [
        bold("Limit"),
        "all",
        "",
        bold(show.fine(limit.value)),
        blank(show.lengthUnit),
        "other, from:",
        ...Array.from({ length: between.length + 1 }, () => blank()),
      ],
      ...leansOf(plan).map(({ postId, runIds, way }) => [
        postId,
        runIds.join(", "),
        way,
        mostMoved(context, postId),
        ...Array.from({ length: between.length + 3 }, () => blank(show.lengthUnit)),
      ]),
    ],
    rowHeads: true,
    writeIn: true,
    notes: [
      `Limit: ${limit.where} ${sourceMark(limit.source)}, unless the engineer or the authority names another; H1 needs it. Stop there, or when a post moves far more than planned.`,
      ...piersOf(plan).map(({ id }) => `**${id} is taken to stand still: stop as soon as it moves, whatever the limit.**`),
    ],
  });
}
