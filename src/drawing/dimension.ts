// How is a length shown: between two points, or counted from a datum?
import type { Point } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";
import { spread } from "./leader.ts";
import { circle, go, group, type Line, type Part, strokes } from "./shape.ts";
import { label, lineHeight, MARK_mm, readable, SMALLEST_mm, textWidth } from "./text.ts";

/** Extension lines stay this far off what they measure, and reach this far past the dimension line. */
const CLEAR_mm = 0.8;
const PAST_mm = 1;
const TICK_mm = 1.1;

export interface DimensionOptions {
  readonly from: Point;
  readonly to: Point;
  /** How far the dimension line lies off the two points, to the right of the way from one to the other. */
  readonly offset: Mm;
  readonly text: string;
  /** Puts the text beyond an end even where it would fit between. */
  readonly beyond?: "from" | "to";
}

/** Whether a text has room between the ends of a dimension line. */
export const fitsBetween = (text: string, length: Mm): boolean => textWidth(text) + 2 * TICK_mm <= length;

/** A dimension line with ticks; the text stands in its middle or, where it has no room, beyond its second point. */
export function dimension({ from, to, offset, text, beyond }: DimensionOptions): Part {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const step = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const side = { x: -step.y, y: step.x };
  const sign = offset < 0 ? -1 : 1;
  const [a, b] = [go(from, side, offset), go(to, side, offset)];
  const tick = (at: Point): Line => [
    { x: at.x - TICK_mm * 0.7, y: at.y + TICK_mm * 0.7 },
    { x: at.x + TICK_mm * 0.7, y: at.y - TICK_mm * 0.7 },
  ];
  const reach = (point: Point): readonly Line[] =>
    Math.abs(offset) < CLEAR_mm ? [] : [[go(point, side, sign * CLEAR_mm), go(point, side, offset + sign * PAST_mm)]];
  const { angle } = readable(step);
  const out = beyond ?? (fitsBetween(text, length) ? null : "to");
  const away = textWidth(text) / 2 + 1.6;
  const at = out === null ? go(a, step, length / 2) : out === "to" ? go(b, step, away) : go(a, step, -away);
  const tail: Line = out === "to" ? [a, go(b, step, 1.2)] : out === "from" ? [go(a, step, -1.2), b] : [a, b];
  return group([
    strokes("thin", [...reach(from), ...reach(to), tail]),
    strokes("edge", [tick(a), tick(b)]),
    label(text, at, { anchor: "middle", angle, ground: out === null }),
  ]);
}

/** The same dimension with its text in its middle, if it has room there, and beyond either end: the wish first. */
export function dimensionWays(options: DimensionOptions): readonly Part[] {
  const { from, to, text, beyond } = options;
  const { beyond: _, ...middle } = options;
  const ends = (["from", "to"] as const).map((end) => dimension({ ...options, beyond: end }));
  const first = beyond === "to" ? [...ends].reverse() : ends;
  return fitsBetween(text, Math.hypot(to.x - from.x, to.y - from.y)) ? [...first, dimension(middle)] : first;
}

/** One place on a line of running dimensions. */
export interface Ordinate {
  /** Along the line, from its origin. */
  readonly at: Mm;
  /** Printed bold next to the drawing. */
  readonly mark?: string;
  /** Prints the mark in the size and weight of the value. */
  readonly minor?: true;
  readonly value: string;
}

export interface OrdinateOptions {
  readonly origin: Point;
  /** Unit steps on paper: along the line that is measured, and away from the drawing. */
  readonly along: Point;
  readonly outward: Point;
  readonly ordinates: readonly Ordinate[];
  /** Where the lines to the labels begin, off the line that is measured. */
  readonly start: Mm;
  /** Text along the measured line, mark above value, or square to it, mark beside value. */
  readonly lay: "along" | "outward";
  readonly from?: Mm;
  readonly to?: Mm;
  /** Draws the datum, a small circle at the origin. */
  readonly datum?: boolean;
}

/** How far labels are led away from the drawing while they are pushed apart. */
const JOG_mm = 4;
const GAP_mm = 1.2;

/** Room that a label takes along the measured line. */
export const ordinateSize = (ordinate: Ordinate, lay: "along" | "outward"): Mm =>
  lay === "outward"
    ? lineHeight(ordinate.mark === undefined ? SMALLEST_mm : markStyle(ordinate).size)
    : Math.max(textWidth(ordinate.value), markWidth(ordinate)) + 2 * GAP_mm;

const markStyle = ({ minor }: Ordinate): { readonly size: Mm; readonly weight: 400 | 700 } =>
  minor ? { size: SMALLEST_mm, weight: 400 } : { size: MARK_mm, weight: 700 };

const markWidth = (ordinate: Ordinate): Mm => (ordinate.mark === undefined ? 0 : textWidth(ordinate.mark, markStyle(ordinate)));

/** Distance from the measured line to the far end of the labels. */
export function ordinateDepth({ ordinates, start, lay }: Pick<OrdinateOptions, "ordinates" | "start" | "lay">): Mm {
  const widest = widestMark(ordinates);
  const value = Math.max(0, ...ordinates.map((ordinate) => textWidth(ordinate.value)));
  const lines = (widest > 0 ? lineHeight(MARK_mm) : 0) + (value > 0 ? lineHeight() : 0);
  return start + JOG_mm + (lay === "along" ? lines : widest + (widest > 0 && value > 0 ? GAP_mm : 0) + value) + 0.8;
}

/** Running dimensions from a datum: each label on a line of its own, pushed apart where they would meet. */
export function runningDimensions(options: OrdinateOptions): Part {
  const { origin, along, outward, ordinates, start, lay, datum = false } = options;
  const places = spread(
    ordinates.map((ordinate) => ({ at: ordinate.at, size: ordinateSize(ordinate, lay) })),
    options,
  );
  const spot = (u: Mm, v: Mm): Point => go(go(origin, along, u), outward, v);
  const lines = ordinates.map(({ at }, index): Line => {
    const place = places[index] ?? at;
    const bent = Math.abs(place - at) > 0.05;
    return bent
      ? [spot(at, start), spot(at, start + 0.8), spot(place, start + JOG_mm - 0.8), spot(place, start + JOG_mm)]
      : [spot(at, start), spot(at, start + JOG_mm)];
  });
  const words = lay === "outward" ? wordsOutward(options, places, spot) : wordsAlong(options, places, spot);
  return group([strokes("thin", lines), ...(datum ? [circle(spot(0, start), 0.9, { pen: "edge", fill: "white" })] : []), ...words]);
}

type Spot = (u: Mm, v: Mm) => Point;

function wordsOutward({ ordinates, outward, start }: OrdinateOptions, places: readonly Mm[], spot: Spot): readonly Part[] {
  const { angle, against } = readable(outward);
  const anchor = against ? "end" : "start";
  const widest = widestMark(ordinates);
  const valueAt = start + JOG_mm + 0.8 + (widest > 0 ? widest + GAP_mm : 0);
  return ordinates.flatMap((ordinate, index) => {
    const { at, mark, value } = ordinate;
    const u = places[index] ?? at;
    return [
      ...(mark === undefined ? [] : [label(mark, spot(u, start + JOG_mm + 0.8), { ...markStyle(ordinate), anchor, angle })]),
      ...(value === "" ? [] : [label(value, spot(u, valueAt), { anchor, angle })]),
    ];
  });
}

function wordsAlong({ ordinates, along, outward, start }: OrdinateOptions, places: readonly Mm[], spot: Spot): readonly Part[] {
  const { angle } = readable(along);
  const marked = widestMark(ordinates) > 0;
  // The mark is always the upper line of the two.
  const upward = outward.y < 0;
  const valued = ordinates.some(({ value }) => value !== "");
  const first = start + JOG_mm + 0.6 + lineHeight(marked && !upward ? MARK_mm : SMALLEST_mm) / 2;
  const second = first + (lineHeight(MARK_mm) + lineHeight()) / 2;
  return ordinates.flatMap((ordinate, index) => {
    const { at, mark, value } = ordinate;
    const u = places[index] ?? at;
    const [markAt, valueAt] = upward && valued ? [second, first] : [first, second];
    return [
      ...(mark === undefined ? [] : [label(mark, spot(u, markAt), { ...markStyle(ordinate), anchor: "middle", angle })]),
      ...(value === "" ? [] : [label(value, spot(u, marked ? valueAt : first), { anchor: "middle", angle })]),
    ];
  });
}

const widestMark = (ordinates: readonly Ordinate[]): Mm => Math.max(0, ...ordinates.map(markWidth));
