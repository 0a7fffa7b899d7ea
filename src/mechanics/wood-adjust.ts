// What may a piece of wood be stressed to once all factors are applied, and how did that come about?
import type { Megapascal } from "../units/quantity.ts";

export interface Factor {
  readonly name: string;
  readonly value: number;
}

export interface AdjustedValue<F extends Factor> {
  readonly reference: Megapascal;
  readonly value: Megapascal;
  /** Every factor in its order, those that are 1 too: the chain for the sheet. */
  readonly factors: readonly F[];
}

/**
 * Adjusted value: the reference value times every factor.
 *
 * @param reference - value of the table [MPa]
 * @param factors - named, in order [1]
 * @returns reference value and adjusted value [MPa] with the chain of factors
 * @throws RangeError when the reference or a factor is not positive
 * Source: nds-2018, 4.3.1
 */
export function adjusted<F extends Factor>(reference: Megapascal, factors: readonly F[]): AdjustedValue<F> {
  if (!(reference > 0)) throw new RangeError(`reference value ${reference} MPa must be positive`);
  for (const { name, value } of factors) if (!(value > 0)) throw new RangeError(`factor ${name} = ${value} must be positive`);
  return { reference, value: factors.reduce((product, factor) => product * factor.value, reference), factors };
}
