// At what does each step stop on a colder or a warmer day?
import type { Plan, Run } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import { hardestTexts } from "../hardest-day.ts";
import type { Cell, Column, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { bold, column, type SheetContext, strong, table } from "./kit.ts";
import { atLeast, atMost, pitchDigits } from "./readings.ts";

/** Temperatures stand side by side: the stop of a step is found in the column of the day, and below it what is read when all is done. */
export function dayTables(context: SheetContext, run: Run, tightening: RunTightening): readonly Table[] {
  const { show } = context;
  const { days, steps, passes } = tightening;
  const several = passes.length > 1;
  return [
    table({
      id: `tightening-days-${run.id}`,
      caption: `Run ${run.id}: "stop at" by the temperature of the air, in ${show.forceUnit}`,
      columns: dayColumns(context, days, column("cable", "Cable", 0.12, several ? { sub: "pass" } : {})),
      rows: steps.map(({ mark, pass }, place): readonly Cell[] => [
        bold(several ? `${mark}, ${pass}` : mark),
        ...days.map(({ readings }): Cell => {
          const reading = readings[place] ?? null;
          return reading === null ? "wait" : strong(show.gauge(reading));
        }),
      ]),
      rowHeads: true,
    }),
    endTable(context, run, days),
  ];
}

/** One line for all cables of a run: the one that needs most on a day sets it. */
function endTable(context: SheetContext, run: Run, days: RunTightening["days"]): Table {
  const { show } = context;
  const bare = (text: Text): Text => text.replace(` ${show.forceUnit}`, "");
  return table({
    id: `tightening-days-end-${run.id}`,
    caption: `Run ${run.id}, every cable, when all is done: readings by the temperature of the air, in ${show.forceUnit}`,
    columns: dayColumns(context, days, column("what", "All cables", 0.12)),
    rows: [
      [bold("read"), ...days.map(({ added }): Cell => strong(show.gauge(run.tension.target + added)))],
      ["at least", ...days.map(({ end }): Cell => bare(atLeast(end.low, context)))],
      ["at most", ...days.map(({ end }): Cell => bare(atMost(end.high, context)))],
      [`bay ${run.proof.bayId}, Hz`, ...days.map(({ end }): Cell => pitchDigits(end.pitch_Hz, context))],
    ],
    rowHeads: true,
    notes: dayNotes(context, run, days),
  });
}

function dayColumns({ plan, show }: SheetContext, days: RunTightening["days"], first: Column): readonly Column[] {
  const { reference } = plan.job.site;
  const isReference = (temperature: number): boolean => Math.abs(temperature - reference.value) < SAME_C;
  return [
    first,
    ...days.map(({ temperature }, index) =>
      column(`day-${index + 1}`, show.heat(temperature).replace(` ${show.heatUnit}`, ""), 0.12, {
        sub: isReference(temperature) ? `${show.heatUnit}, as in the log` : show.heatUnit,
        align: "center",
      }),
    ),
  ];
}

/** Temperatures that are one but for rounding. */
const SAME_C = 0.05;

/** What is true of all runs stands below the first. */
function dayNotes(context: SheetContext, run: Run, days: RunTightening["days"]): readonly Text[] {
  const [first = run] = context.plan.runs;
  return [
    ...(first.id === run.id
      ? commonNotes(context, run, days)
      : [`Read these two tables as those of ${first.id}: what stands below them holds here too.`]),
    ...(days.some(({ readings }) => readings.includes(null))
      ? ['"wait": the reading would be above the strand\'s working limit, or the cable would hang slack. Tighten on a milder day.']
      : []),
  ];
}

function commonNotes({ plan, show, rules }: SheetContext, run: Run, days: RunTightening["days"]): readonly Text[] {
  const { site } = plan.job;
  const apart = (days[1]?.temperature ?? 0) - (days[0]?.temperature ?? 0);
  return [
    `**Read the air in the shade and stop each nut at the value of the nearest column (they stand ${show.heatStep(apart)} apart); "at least" and "at most" of the log move by as much, but no reading ever goes above ${show.forceDown(plan.target.workingLimit)}.** When all is done every cable reads the value of the lower table, from "at least" to "at most"; plucked, the bay named in its last line sounds at that pitch. The log's own values are for ${show.heat(site.reference.value)} ${sourceMark(site.reference.source)}. The cable that needs most on a day sets its column, so that none is left short.`,
    `Pitch and sag in the log are for its own values. On another day the pitch of a step is about the log's, times the square root of (stop of that day / stop of the log) ${sourceMark("derived")}; do not read a sag then.`,
    ...hardestTexts(plan, show),
    ...expansionNotes(plan, show, { runId: run.id, rules }),
  ];
}

/** How much each part grows: for those who check the plan. */
function expansionNotes(
  plan: Plan,
  show: SheetContext["show"],
  { runId, rules }: { readonly runId: string; readonly rules: boolean },
): readonly Text[] {
  const expansion = plan.climate.find((climate) => climate.runId === runId)?.expansion;
  if (expansion === undefined || !rules) return [];
  return [
    `Strand grows ${perMillion(expansion.strand.value, show)} ${sourceMark(expansion.strand.source)}, ${floorWord(plan.job)} ${perMillion(expansion.deck.value, show)} ${sourceMark(expansion.deck.source)}, rail ${perMillion(expansion.rail.value, show)} ${sourceMark(expansion.rail.source)} millionths per deg C.`,
  ];
}

const perMillion = (expansion: number, show: SheetContext["show"]): Text => show.decimal(expansion * 1e6, 1);
