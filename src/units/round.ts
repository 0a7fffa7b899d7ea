// How is a number brought to a step, and in which direction? The only file that rounds, beside the one that prints.
import { DUST_share } from "./tolerance.ts";

export type Rounding = "up" | "down" | "nearest";

/** `value` as a whole multiple of `step`, towards `rounding`; a value that is a multiple but for dust stays where it is. */
export function roundBy(value: number, step: number, rounding: Rounding): number {
  return multiple(stepsIn(value, step, rounding), step);
}

/** The next multiple of `step` that is not below `value`. */
export const roundUp = (value: number, step: number): number => roundBy(value, step, "up");

/** The next multiple of `step` that is not above `value`. */
export const roundDown = (value: number, step: number): number => roundBy(value, step, "down");

/** The nearest multiple of `step`; half-way goes away from zero, so that mirrored values stay mirrored. */
export const roundNearest = (value: number, step: number): number => roundBy(value, step, "nearest");

/** `value` with at most so many decimals. */
export const roundTo = (value: number, decimals: number): number => roundNearest(value, 10 ** -decimals);

/** Lengths that differ by the rounding of the arithmetic alone are one length: so that equal bays and holes compare equal. */
export const withoutDust = (value: number): number => roundTo(value, 6);

/** How many whole steps `value` is, towards `rounding`. */
export const countSteps = (value: number, { step, rounding }: { readonly step: number; readonly rounding: Rounding }): number =>
  stepsIn(value, step, rounding);

function stepsIn(value: number, step: number, rounding: Rounding): number {
  if (!(step > 0) || !Number.isFinite(step)) throw new RangeError(`a step must be above zero, not ${step}`);
  if (!Number.isFinite(value)) throw new RangeError(`cannot round ${value}`);
  const exact = value / step;
  const near = Math.round(exact);
  if (Math.abs(exact - near) <= DUST_share * Math.max(1, Math.abs(exact))) return near + 0;
  if (rounding === "up") return Math.ceil(exact) + 0;
  if (rounding === "down") return Math.floor(exact) + 0;
  const size = Math.abs(exact);
  const below = Math.floor(size);
  const half = size - below - 0.5;
  const steps = half >= -DUST_share * Math.max(1, size) ? below + 1 : below;
  return exact < 0 ? 0 - steps : steps;
}

/** Tenths and sixteenths are divided, not multiplied: 3 / 10 is the double nearest to 0.3, and 3 * 0.1 is not. */
function multiple(count: number, step: number): number {
  const perUnit = Math.round(1 / step);
  const isPart = Math.abs(perUnit * step - 1) <= 4 * Number.EPSILON;
  return isPart ? count / perUnit : count * step;
}
