// What must a nut read on a colder or warmer day?
import type { Room } from "../../drawing/paper.ts";
import { circle, hatched, type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, textLines, wrap } from "../../drawing/text.ts";
import type { DayReading, RunClimate } from "../../plan/climate-plan.ts";
import type { Plan, Run } from "../../plan/plan.ts";
import type { Celsius, Mm, Newton } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { finishDrawing, showOf } from "./kit.ts";
import { type NamedValue, namesLeftOf, namesWidth } from "./plot-values.ts";

const HEIGHT_mm = 25;
/** The notes stand to the right. */
const NOTES_mm = 62;
const GAP_mm = 10;
const DOT_mm = 0.65;

export function dayPlot(plan: Plan, runId: string, box: Room): Drawing {
  const run = plan.runs.find(({ id }) => id === runId);
  const climate = plan.climate.find((one) => one.runId === runId);
  if (run === undefined || climate === undefined) throw new RangeError(`no run ${runId}`);
  const show = showOf(plan);
  const { reference } = plan.job.site;
  const notes = [
    `Last reading for the day: the upper line for the cable that changes most with cold or least with heat, the lower line for the other end.`,
    `At ${show.heatBoth(reference.value)} it is the target, ${show.force(run.tension.target)}. The upper line is the one to use: no cable is left short.`,
  ];
  return finishDrawing({
    id: `day-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: last reading against the temperature of the air`,
    description: describe(run, climate, show),
    parts: [
      ...plot(run, climate, { show, reference: reference.value, width: box.width - 1.2 - NOTES_mm - GAP_mm }),
      ...textLines(
        notes.flatMap((note) => wrap(note, NOTES_mm)),
        { x: box.width - 1.2 - NOTES_mm, y: 0 },
      ),
    ],
  });
}

interface Plotting {
  readonly show: Show;
  readonly reference: Celsius;
  readonly width: Mm;
}

function plot(run: Run, { days }: RunClimate, { show, reference, width }: Plotting): readonly Part[] {
  const { target } = run.tension;
  const readings = days.flatMap(({ low, high }) => [low, high]);
  const [least, most] = [Math.min(...readings, target), Math.max(...readings, target)];
  const margin = 0.08 * (most - least) + 1;
  const yOf = (reading: Newton): Mm => (HEIGHT_mm * (most + margin - reading)) / (most - least + 2 * margin);
  // As the table of days prints it: the two are read side by side.
  const read = (day: DayReading | undefined): Text => `${show.gauge(day?.high ?? target)} ${show.forceUnit}`;
  const values: readonly NamedValue[] = [
    { text: `coldest ${read(days[0])}`, y: yOf(days[0]?.high ?? target) },
    { text: `target ${show.force(target)}`, y: yOf(target) },
    { text: `warmest ${read(days.at(-1))}`, y: yOf(days.at(-1)?.high ?? target) },
  ];
  const left = namesWidth(values);
  const [cold, warm] = [days[0]?.temperature ?? 0, days.at(-1)?.temperature ?? 1];
  const xOf = (temperature: Celsius): Mm => left + ((width - left) * (temperature - cold)) / (warm - cold);
  const line = (of: (day: DayReading) => Newton): Line => days.map((day) => ({ x: xOf(day.temperature), y: yOf(of(day)) }));
  const [upper, lower] = [line(({ high }) => high), line(({ low }) => low)];
  const right = xOf(warm);
  return [
    hatched({ outlines: [[...upper, ...[...lower].reverse()]], spacing: 1.4, angle: Math.PI / 4 }),
    strokes("edge", [
      [
        { x: left, y: 0 },
        { x: left, y: HEIGHT_mm },
        { x: right, y: HEIGHT_mm },
      ],
    ]),
    strokes("hidden", [
      [
        { x: left, y: yOf(target) },
        { x: right, y: yOf(target) },
      ],
      [
        { x: xOf(reference), y: 0 },
        { x: xOf(reference), y: HEIGHT_mm },
      ],
    ]),
    strokes("outline", [upper]),
    strokes("edge", [lower]),
    ...upper.map((at) => circle(at, DOT_mm, { pen: "thin", fill: "black" })),
    ...namesLeftOf(left, values),
    ...days.flatMap(({ temperature }) => [
      strokes("thin", [
        [
          { x: xOf(temperature), y: HEIGHT_mm },
          { x: xOf(temperature), y: HEIGHT_mm + 1.2 },
        ],
      ]),
      label(show.heat(temperature).replace(` ${show.heatUnit}`, ""), { x: xOf(temperature), y: HEIGHT_mm + 3.6 }, { anchor: "middle" }),
    ]),
    label(show.heatUnit, { x: left - 3, y: HEIGHT_mm + 3.6 }, { anchor: "end" }),
  ];
}

function describe(run: Run, { days }: RunClimate, show: Show): Text {
  const each = days.map(({ temperature, low, high }) => `${show.heat(temperature)} ${show.force(low)} to ${show.force(high)}`);
  return `Last reading of run ${run.id} for the temperature of the air: ${each.join("; ")}. The target is ${show.forceBoth(run.tension.target)}. The table of days says where each step stops.`;
}
