// At what does each step stop on a colder or a warmer day?
import type { RunClimate } from "../../plan/climate-plan.ts";
import type { Run } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import { hardestTexts } from "../hardest-day.ts";
import type { Cell, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { bold, column, type SheetContext, strong, table } from "./kit.ts";

/** Temperatures stand side by side: the stop of a step is found in the column of the day. */
export function dayTable(context: SheetContext, run: Run, tightening: RunTightening): Table {
  const { plan, show } = context;
  const { days, steps, passes } = tightening;
  const { reference } = plan.job.site;
  const bare = (text: Text, unit: Text): Text => text.replace(` ${unit}`, "");
  const isReference = (temperature: number): boolean => Math.abs(temperature - reference.value) < SAME_C;
  return table({
    id: `tightening-days-${run.id}`,
    caption: `Run ${run.id}: "stop at" by the temperature of the air, in ${show.forceUnit}`,
    columns: [
      column("cable", "Cable", 0.12, passes.length > 1 ? { sub: "pass" } : {}),
      ...days.map(({ temperature }, index) =>
        column(`day-${index + 1}`, bare(show.heat(temperature), show.heatUnit), 0.12, {
          sub: isReference(temperature) ? `${show.heatUnit}, as in the log` : show.heatUnit,
          align: "center",
        }),
      ),
    ],
    rows: [
      ...steps.map(({ mark, pass }, place): readonly Cell[] => [
        bold(passes.length > 1 ? `${mark}, ${pass}` : mark),
        ...days.map(({ readings }): Cell => {
          const reading = readings[place] ?? null;
          return reading === null ? "wait" : strong(show.gauge(reading));
        }),
      ]),
      [bold("End, all"), ...days.map(({ added }): Cell => show.gauge(run.tension.target + added))],
    ],
    rowHeads: true,
    notes: dayNotes(
      context,
      plan.climate.find(({ runId }) => runId === run.id),
      days.some(({ readings }) => readings.includes(null)),
    ),
  });
}

/** Temperatures that are one but for rounding. */
const SAME_C = 0.05;

function dayNotes({ plan, show, rules }: SheetContext, climate: RunClimate | undefined, waits: boolean): readonly Text[] {
  const { site } = plan.job;
  return [
    `**Read the air in the shade and stop each nut at the value of the nearest column; "at least" and "at most" of the log move by as much, but no reading ever goes above ${show.forceDown(plan.target.workingLimit)}.** "End" is what every cable reads when all are done. The log's own values are for ${show.heat(site.reference.value)} ${sourceMark(site.reference.source)}. The cable that needs most on a day sets its column, so that none is left short.`,
    `Pitch and sag in the log are for its own values. On another day the pitch is about the log's, times the square root of (stop of that day / stop of the log) ${sourceMark("derived")}; do not read a sag then.`,
    ...(waits
      ? ['"wait": the reading would be above the strand\'s working limit, or the cable would hang slack. Tighten on a milder day.']
      : []),
    ...hardestTexts(plan, show),
    ...(climate === undefined || !rules
      ? []
      : [
          `Strand grows ${perMillion(climate.expansion.strand.value, show)} ${sourceMark(climate.expansion.strand.source)}, ${floorWord(plan.job)} ${perMillion(climate.expansion.deck.value, show)} ${sourceMark(climate.expansion.deck.source)}, rail ${perMillion(climate.expansion.rail.value, show)} ${sourceMark(climate.expansion.rail.source)} millionths per deg C.`,
        ]),
  ];
}

const perMillion = (expansion: number, show: SheetContext["show"]): Text => show.decimal(expansion * 1e6, 1);
