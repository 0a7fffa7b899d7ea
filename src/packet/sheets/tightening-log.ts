// Which reading, and what is written beside it, for each cable of a run in each pass?
import type { Plan, Run } from "../../plan/plan.ts";
import type { RunTightening, TighteningStep } from "../../plan/readings.ts";
import type { Block, Cell, Column, Table, Text } from "../packet.ts";
import { runSpan } from "../wording.ts";
import { drawnTightening } from "./drawn.ts";
import { blank, bold, column, heading, listed, pageBreak, pullingEnds, type SheetContext, strong, table, unique } from "./kit.ts";
import { atLeast, atMost } from "./readings.ts";

/** One diagram where all runs are pulled in the same order; each log has a page, so that its readings stand above every row. */
export function logBlocks(context: SheetContext): readonly Block[] {
  const { plan } = context;
  const [first] = plan.tightening;
  return plan.tightening.flatMap((tightening) => {
    const run = plan.runs.find(({ id }) => id === tightening.runId);
    if (!run) {
      return [];
    }
    const isDrawn = tightening === first || tightening.order.join() !== first?.order.join();
    return [
      ...(isDrawn ? [heading(`tightening-order-${run.id}`, orderWords(plan, run, isDrawn)), ...drawnTightening(plan, run.id)] : []),
      pageBreak,
      heading(
        `tightening-${run.id}`,
        `Log of run ${run.id}, ${runSpan(run)}: pull at ${listed(pullingEnds(run).map(({ postId }) => postId))}`,
      ),
      logTable(context, run, tightening),
    ];
  });
}

const orderWords = ({ runs }: Plan, run: Run, all: boolean): Text =>
  all && runs.length > 1 ? `Order, drawn for run ${run.id}; the same in every run` : `Run ${run.id}, ${runSpan(run)}: order`;

interface Pass {
  readonly number: number;
  readonly isCheck: boolean;
  readonly steps: readonly TighteningStep[];
}

/** The last pass checks when it asks for the same reading as the one before it. */
function passesOf({ steps }: RunTightening): readonly Pass[] {
  const numbers = unique(steps.map(({ pass }) => pass));
  return numbers.map((number, index) => {
    const own = steps.filter(({ pass }) => pass === number);
    const before = steps.find(({ pass }) => pass === numbers[index - 1]);
    return { number, steps: own, isCheck: index === numbers.length - 1 && before?.reading === own[0]?.reading };
  });
}

function logTable(context: SheetContext, run: Run, tightening: RunTightening): Table {
  const passes = passesOf(tightening);
  const ends = pullingEnds(run).map(({ postId }) => postId);
  const columns = logColumns(context, passes, ends);
  // At one end there is room for the turns of each pass, at two ends for those of all passes.
  const each = ends.length === 1 ? 2 : ends.length;
  const planRow = (name: Text, print: (step: TighteningStep) => Text): readonly Cell[] => {
    const readings = passes.flatMap(({ steps }): readonly Cell[] => {
      // The unit stands in the head of the column.
      const reading: Cell = strong(unique(steps.map((step) => print(step).replace(` ${context.show.forceUnit}`, ""))).join(" / "));
      return ends.length === 1 ? [reading, ""] : ends.map(() => reading);
    });
    return [name, "", ...readings, ...Array.from({ length: columns.length - 2 - passes.length * each }, () => "")];
  };
  return table({
    id: `tightening-log-${run.id}`,
    caption: `Stop each nut at its reading; turns expected ${turnsWords(run, context)}`,
    columns,
    rows: [
      planRow("Stop at", ({ reading }) => context.show.force(reading)),
      planRow("At least", ({ reading_low }) => atLeast(reading_low, context)),
      planRow("At most", ({ reading_high }) => atMost(reading_high, context)),
      ...tightening.order.map((course, index) => {
        const mark = passes[0]?.steps.find((step) => step.course === course)?.mark ?? "";
        return [bold(mark), String(index + 1), ...columns.slice(2).map(() => blank())];
      }),
    ],
    rowHeads: true,
    writeIn: true,
    notes: notesOf(context, run, passes),
  });
}

function logColumns({ show }: SheetContext, passes: readonly Pass[], ends: readonly string[]): readonly Column[] {
  const [only] = ends;
  const one = ends.length === 1;
  return [
    column("mark", "Cable", one ? 0.11 : 0.1),
    column("turn", "Order", 0.07, { align: "center" }),
    ...passes.flatMap(({ number, isCheck }) => {
      const name = isCheck ? `Pass ${number} check` : `Pass ${number}`;
      const reading = (end: string, index: number): Column =>
        column(`pass-${number}-${index + 1}`, name, one ? 0.15 : 0.1, { sub: `${end}, ${show.forceUnit}` });
      return one ? [reading(only ?? "", 0), column(`turns-${number}`, "Turns", 0.085, { sub: `pass ${number}` })] : ends.map(reading);
    }),
    ...(one ? [] : ends.map((end, index) => column(`turns-${index + 1}`, "Turns", 0.08, { sub: `${end}, all` }))),
    column("initials", one ? "Initials" : "Init.", one ? 0.11 : 0.08),
  ];
}

const turnsWords = ({ takeUp }: Run, { show }: SheetContext): Text =>
  takeUp.ends
    .map(
      ({ postId, turns, turns_low, turns_high }) =>
        `at ${postId} ${show.decimal(turns, 1)} (${show.decimal(turns_low, 1)} - ${show.decimal(turns_high, 1)})`,
    )
    .join(", ");

function notesOf({ show, plan }: SheetContext, run: Run, passes: readonly Pass[]): readonly Text[] {
  const check = passes.find(({ isCheck }) => isCheck);
  const { slackToPull, threadLeft, reserve } = run.takeUp;
  const ends = pullingEnds(run);
  return [
    `${slackToPull > 0 ? `**Slack to pull past hand-tight before the far end is set or cut: ${show.tape(slackToPull)}.** ` : ""}Thread left about ${show.tapeDown(threadLeft)}; keep ${show.tape(reserve)} for later visits.`,
    ...(plan.runs.length > 1 ? ["Do one pass on every run before the next pass on any."] : []),
    ...(ends.length > 1
      ? [
          `**Turn the nuts at ${listed(ends.map(({ postId }) => postId))} alternately, so that both gauges rise together;** both in the band before the next cable.`,
        ]
      : []),
    ...(check
      ? [`Pass ${check.number} checks: turn a nut only where the reading is outside its band. If any nut was turned, read all once more.`]
      : []),
  ];
}
