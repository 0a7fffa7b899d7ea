// At which reading does each step stop, and what is written beside it? One table for each pass of a run: programme and log at once.
import type { Run } from "../../plan/plan.ts";
import type { RunTightening, TighteningStep } from "../../plan/readings.ts";
import { laterRuns } from "../drawings/tension-steps.ts";
import type { Block, Cell, Column, Table, Text } from "../packet.ts";
import { runSpan } from "../wording.ts";
import { dayTables } from "./day-readings.ts";
import { drawnDays, drawnSteps, drawnTightening } from "./drawn.ts";
import {
  blankCells,
  bold,
  column,
  greatest,
  heading,
  listed,
  pageBreak,
  pullingEnds,
  type SheetContext,
  strong,
  table,
  unique,
} from "./kit.ts";
import { atLeast, atMost, highAtNut, lowAtNut, pitchDigits } from "./readings.ts";
import { whyBlocks, windowBlocks } from "./tightening-why.ts";

/** Why and in which order, on a warm day too; then the log of each run, on a page of its own with the diagram of its order. */
export function logBlocks(context: SheetContext): readonly Block[] {
  const { plan } = context;
  const runs = plan.tightening.flatMap((tightening) => {
    const run = plan.runs.find(({ id }) => id === tightening.runId);
    return run ? [{ run, tightening }] : [];
  });
  return [
    ...runs.flatMap(({ run, tightening }) => orderBlocks(context, run, tightening)),
    ...runs.flatMap(({ run, tightening }) => runLog(context, run, tightening)),
  ];
}

/** Those who pull have the log; what a plot tells is for those who want to see why. */
function orderBlocks(context: SheetContext, run: Run, tightening: RunTightening): readonly Block[] {
  const { plan, whole } = context;
  return [
    heading(`tightening-order-${run.id}`, `Run ${run.id}, ${runSpan(run)}: order and readings`),
    ...whyBlocks(context, run, tightening),
    ...dayTables(context, run, tightening),
    ...(whole ? drawnDays(plan, run.id) : []),
    ...windowBlocks(context, run),
    ...(whole ? drawnSteps(plan, run.id) : []),
  ];
}

function runLog(context: SheetContext, run: Run, tightening: RunTightening): readonly Block[] {
  return [
    pageBreak,
    heading(
      `tightening-${run.id}`,
      `Log of run ${run.id}, ${runSpan(run)}: pull at ${listed(pullingEnds(run).map(({ postId }) => postId))}`,
    ),
    ...drawnTightening(context.plan, run.id),
    ...tightening.passes.map((pass) => passTable(context, run, { tightening, number: pass.number })),
  ];
}

interface OfPass {
  readonly tightening: RunTightening;
  readonly number: number;
}

function passTable(context: SheetContext, run: Run, { tightening, number }: OfPass): Table {
  const { passes, steps } = tightening;
  const isLast = number === passes.at(-1)?.number;
  const columns = passColumns(context, run, isLast);
  return table({
    id: `tightening-log-${run.id}-${number}`,
    caption: passCaption(context, run, { tightening, number }),
    columns,
    rows: steps
      .filter(({ pass }) => pass === number)
      .map((step, index) => stepRow(context, step, { place: index + 1, columns: columns.length })),
    rowHeads: true,
    writeIn: true,
    notes: isLast ? [...notesOf(context, run), ...untilNote(context, run, tightening), lastNote(context, run, tightening)] : [],
  });
}

function passCaption(context: SheetContext, run: Run, { tightening, number }: OfPass): Text {
  const { passes } = tightening;
  const pass = passes.find((one) => one.number === number);
  const what =
    pass?.kind === "plain" ? `every cable to ${context.show.percent(pass.share)} of the target` : "each cable to its own reading";
  const of = passes.length > 1 ? `pass ${number} of ${passes.length}` : "one pass";
  return `${run.id}, ${of}, ${tightening.orderName}: ${what}; on another day as the table by temperature says`;
}

function passColumns({ show }: SheetContext, run: Run, isLast: boolean): readonly Column[] {
  const ends = pullingEnds(run).map(({ postId }) => postId);
  return [
    column("mark", "Cable", 0.1),
    column("order", "No.", 0.06, { align: "center" }),
    column("stop", "Stop at", 0.11, { sub: show.forceUnit }),
    column("low", "At least", 0.08, { sub: show.forceUnit }),
    column("high", "At most", 0.08, { sub: show.forceUnit }),
    column("turns", "Turns", 0.08, { sub: ends.length > 1 ? "mean of both" : "of the nut" }),
    column("pitch", "Pitch", 0.08, { sub: `${run.proof.bayId}, Hz` }),
    column("sag", "Sag", 0.08, { sub: `${run.proof.bayId}, ${show.lengthUnit}` }),
    ...ends.map((end, index) => column(`reading-${index + 1}`, `Read ${end}`, 0.11, { sub: show.forceUnit })),
    ...(isLast
      ? [column("end", "End", ends.length > 1 ? 0.16 : 0.11, { sub: ends.length > 1 ? `again: ${ends.join(" / ")}` : "read again" })]
      : []),
    column("initials", "Init.", 0.08),
  ];
}

/** The unit stands in the head of the column. */
function stepRow(
  context: SheetContext,
  step: TighteningStep,
  { place, columns }: { readonly place: number; readonly columns: number },
): readonly Cell[] {
  const { show } = context;
  const bare = (text: Text): Text => text.replace(` ${show.forceUnit}`, "");
  const planned: readonly Cell[] = [
    bold(step.mark),
    String(place),
    strong(show.gauge(step.reading)),
    bare(atLeast(step.reading_low, context)),
    bare(atMost(step.reading_high, context)),
    show.decimal(step.turnsPerEnd, 1),
    pitchDigits(step.pitch_Hz, context),
    show.fine(step.sag).replace(/ mm$|"$/, ""),
  ];
  return [...planned, ...blankCells(columns - planned.length)];
}

/** Runs that share a frame change each other: what the first ones read until the last one is pulled is no fault of theirs. */
function untilNote({ show }: SheetContext, { id, tension }: Run, { together, steps }: RunTightening): readonly Text[] {
  const later = laterRuns(id, together);
  const after = steps.at(-1)?.tensions ?? [];
  const [least, most] = [Math.min(...after), greatest(after)];
  if (later.length === 0 || show.force(least) === show.force(tension.target)) return [];
  const way = most <= tension.target ? "low" : least >= tension.target ? "high" : "low or high";
  const range = show.force(least) === show.force(most) ? show.force(least) : `${show.force(least)} to ${show.force(most)}`;
  return [
    `**${id} reads ${way} until ${listed(later)} ${later.length === 1 ? "is" : "are"} pulled: ${range} after its last step. This is planned: do not correct it.**`,
  ];
}

/** What ends the last pass. */
function lastNote(context: SheetContext, run: Run, { together }: RunTightening): Text {
  return `**${together.length > 1 ? `When all of ${listed(together)} are pulled,` : "Then"} read every cable again without turning a nut ("End"): at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}, on another day moved as the table by temperature says.** Turn a nut only where it reads outside; if any was turned, read all once more.`;
}

const turnsWords = ({ takeUp }: Run, { show }: SheetContext): Text =>
  takeUp.ends
    .map(
      ({ postId, turns, turns_low, turns_high }) =>
        `at ${postId} ${show.decimal(turns, 1)} (${show.decimal(turns_low, 1)} - ${show.decimal(turns_high, 1)})`,
    )
    .join(", ");

function notesOf(context: SheetContext, run: Run): readonly Text[] {
  const { show, plan } = context;
  const { slackToPull, ends: nuts, reserve } = run.takeUp;
  const left = unique(nuts.map(({ threadLeft }) => show.tapeDown(threadLeft)));
  const leftWords = left.length === 1 ? left[0] : listed(nuts.map(({ postId, threadLeft }) => `${show.tapeDown(threadLeft)} at ${postId}`));
  const ends = pullingEnds(run);
  const several = plan.tightening.some(({ runId, passes }) => runId === run.id && passes.length > 1);
  return [
    `${slackToPull > 0 ? `**Slack to pull past hand-tight before the far end is set or cut: ${show.tape(slackToPull)}.** ` : ""}Turns are counted from hand-tight; in all ${turnsWords(run, context)} (stiff - soft strand). Thread left about ${leftWords}; keep ${show.tape(reserve)} for later visits.`,
    ...(plan.runs.length > 1 && several ? ["Do one pass on every run before the next pass on any."] : []),
    ...(ends.length > 1
      ? [
          `**Turn the nuts at ${listed(ends.map(({ postId }) => postId))} alternately, so that both gauges rise together;** both in the band before the next cable.`,
        ]
      : []),
  ];
}
