// What is a cutting problem, once kerfs and trims are taken into its widths and everything equal is one row?
import { countSteps } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";

/** Pieces of one length. */
export interface Part {
  /** Length of the piece and one kerf [mm]. */
  readonly width: number;
  readonly demand: number;
}

/** Bars of one length. */
export interface Bar {
  /** Stock length [mm]. */
  readonly length: number;
  /** What widths may add up to: length less both trims, and one kerf, because the last piece of a full bar needs no cut [mm]. */
  readonly capacity: number;
  /** What the objective counts for one bar, in whole units that all bars share. */
  readonly value: number;
}

export interface Cutting {
  /** Widest first. */
  readonly parts: readonly Part[];
  /** Least capacity first; each costs less than the next, as others are never worth buying. */
  readonly bars: readonly Bar[];
}

/** How often each part is cut from one bar, by index of the part. */
export interface Pattern {
  readonly counts: readonly number[];
  readonly bar: Bar;
}

/** A solution: patterns that together cut at least what is asked. */
export type Solution = readonly Pattern[];

/**
 * Room for a width in a capacity, but for the dust of doubles.
 *
 * @param width - sum of what is cut [mm]
 * @param capacity - of the bar, or what is left of it [mm]
 * @returns true when it fits [yes or no]
 * @throws never
 * Source: derived
 */
export const fits = (width: number, capacity: number): boolean => width <= capacity + SAME_mm;

/**
 * Widths of all pieces together.
 *
 * @param parts - widths [mm] with their demands [count]
 * @returns their sum [mm]
 * @throws never
 * Source: derived
 */
export const totalWidth = (parts: readonly Part[]): number => parts.reduce((sum, part) => sum + part.width * part.demand, 0);

/**
 * What all bars of a solution cost together.
 *
 * @param solution - its patterns, one a bar, values in units [units]
 * @returns the sum of their values [units]
 * @throws never
 * Source: derived
 */
export const totalValue = (solution: Solution): number => solution.reduce((sum, pattern) => sum + pattern.bar.value, 0);

/**
 * Width that one pattern takes up.
 *
 * @param counts - how often each part is cut [count], shape (parts)
 * @param parts - their widths [mm], shape (parts)
 * @returns sum of the widths [mm]
 * @throws never
 * Source: derived
 */
export const widthOf = (counts: readonly number[], parts: readonly Part[]): number =>
  counts.reduce((sum, count, index) => sum + count * (parts[index]?.width ?? 0), 0);

/** Finest difference between two values of the objective: a millionth of a millimetre, of a cent, of a bar. */
const FINEST = 1e-6;

/**
 * Greatest unit of which all values are whole multiples, so that totals of the objective are exact whole numbers.
 *
 * @param values - what each bar costs in the objective's own measure [mm, money or count], > 0
 * @returns the unit in the same measure [mm, money or count]
 * @throws never
 * Source: Euclid's algorithm
 */
export function commonUnit(values: readonly number[]): number {
  const whole = values.map((value) => countSteps(value, { step: FINEST, rounding: "nearest" }));
  const common = whole.reduce((a, b) => greatestCommonDivisor(a, b), 0);
  return common === 0 ? 1 : common * FINEST;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [large, small] = a > b ? [a, b] : [b, a];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}
