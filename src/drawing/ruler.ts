// How can a reader see the scale, and whether the printer kept it?
import type { Point } from "../geometry/vector.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import type { Scale } from "./paper.ts";
import { penWidth } from "./pen.ts";
import { group, type Part, polygon, strokes } from "./shape.ts";
import { label, readable } from "./text.ts";

const INCH_mm = 25.4;

/** Lengths that a scale bar may stand for: 1 in to 64 ft, or 20 mm to 50 m. */
const inchBars: readonly Mm[] = [1, 2, 4, 6, 12, 24, 48, 96, 192, 384, 768].map((count) => count * INCH_mm);
const metricBars: readonly Mm[] = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];
const BAR_mm = 42;

/** A bar in four parts with its length, and the scale in words; `at` is its upper left corner. */
export function scaleBar(at: Point, { scale, units }: { readonly scale: Scale; readonly units: "inch" | "mm" }): Part {
  const bars = units === "inch" ? inchBars : metricBars;
  const bar = bars.findLast((one) => one * scale.ratio <= BAR_mm) ?? bars[0] ?? 0;
  const width = bar * scale.ratio;
  const top = at.y + 3.6;
  const block = (from: number, to: number, fill: "white" | "black"): Part => {
    const [left, right] = [at.x + 1 + (width * from) / 4, at.x + 1 + (width * to) / 4];
    const corners = [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: top + 1.4 },
      { x: left, y: top + 1.4 },
    ];
    return polygon(corners, { pen: "thin", fill });
  };
  return group([
    block(0, 4, "white"),
    block(0, 1, "black"),
    block(2, 3, "black"),
    label("0", { x: at.x + 1, y: at.y + 1.6 }, { anchor: "middle" }),
    label(length(bar, { units, style: "feet", both: false }), { x: at.x + 1 + width, y: at.y + 1.6 }, { anchor: "middle" }),
    label(`Scale ${scale.name}. Do not scale.`, { x: at.x, y: top + 3.9 }),
  ]);
}

/** Length of the bar that is measured on the printed sheet. */
const CALIBRATION_mm = 100;

/** One line of exactly 100 mm, found by its class, with ticks every 10 mm; `at` is its left end. */
export function calibrationLine(at: Point): Part {
  const ticks = Array.from({ length: 11 }, (_, index) => {
    const x = at.x + (CALIBRATION_mm * index) / 10;
    const high = index % 5 === 0 ? 2.6 : 1.6;
    return [
      { x, y: at.y - high },
      { x, y: at.y + high },
    ];
  });
  const to = { x: at.x + CALIBRATION_mm, y: at.y };
  const half = penWidth("heavy") / 2;
  const bar: Part = {
    mark: { kind: "calibration", from: at, to },
    box: { left: at.x, top: at.y - half, right: to.x, bottom: at.y + half },
    texts: [],
  };
  return group([strokes("thin", ticks), bar]);
}

/** How far a double ruler reaches to each side of its line. */
export const RULER_SIDE_mm = 7.6;
const LONG_in = 6;

/** A ruler in mm and one of 6 in back to back; `at` is their zero, `along` the unit step in which they run, mm to the left of it. */
export function doubleRuler(at: Point, along: Point, { millimetres }: { readonly millimetres: Mm }): Part {
  const outward = { x: along.y, y: -along.x };
  return group([
    halfRuler(
      { at, along, outward },
      { length: millimetres, step: 1, count: millimetres, sizes: [10, 5], named: 50, unit: 1, name: " mm" },
    ),
    halfRuler(
      { at, along, outward: { x: -outward.x, y: -outward.y } },
      { length: LONG_in * INCH_mm, step: INCH_mm / 8, count: LONG_in * 8, sizes: [8, 4], named: 8, unit: 8, name: " in" },
    ),
  ]);
}

interface Place {
  readonly at: Point;
  readonly along: Point;
  readonly outward: Point;
}

interface Marks {
  readonly length: Mm;
  readonly step: Mm;
  readonly count: number;
  /** Every so many steps a tick is long, or of middle length. */
  readonly sizes: readonly [long: number, middle: number];
  /** Every so many steps a tick has its number, in steps for one unit; the last one has the unit's name. */
  readonly named: number;
  readonly unit: number;
  readonly name: string;
}

const OFF_mm = 0.4;

function halfRuler({ at, along, outward }: Place, { length: reach, step, count, sizes, named, unit, name }: Marks): Part {
  const spot = (u: Mm, v: Mm): Point => ({ x: at.x + along.x * u + outward.x * v, y: at.y + along.y * u + outward.y * v });
  const tick = (index: number, high: Mm): readonly Point[] => [spot(index * step, OFF_mm), spot(index * step, OFF_mm + high)];
  const [long, middle] = sizes;
  const inner = Array.from({ length: count - 1 }, (_, index) => index + 1);
  const { angle } = readable(along);
  const numbers = Array.from({ length: count / named + 1 }, (_, index) => index * named);
  return group([
    strokes("edge", [[spot(0, OFF_mm), spot(reach, OFF_mm)], tick(0, END_mm), tick(count, END_mm)]),
    strokes(
      "thin",
      inner.map((index) => tick(index, index % long === 0 ? 2.6 : index % middle === 0 ? 1.9 : 1.1)),
    ),
    ...numbers.map((index) =>
      label(`${index / unit}${index === count ? name : ""}`, spot(index * step, OFF_mm + END_mm + 1.8), { anchor: "middle", angle }),
    ),
  ]);
}

/** The ticks from whose middles the whole length is measured. */
const END_mm = 3.4;
