// How much of its capacity does a demand use? The form that every check of strength answers in.
import type { Megapascal, Mm } from "../units/quantity.ts";

/** A number of the formula, to be printed with its numbers put in; "1" is a bare ratio. */
export interface Part {
  readonly name: string;
  readonly value: number;
  readonly unit: "MPa" | "N" | "N/mm" | "N mm" | "mm" | "mm2" | "mm3" | "1";
}

export interface StrengthCheck {
  readonly demand: number;
  readonly capacity: number;
  /** Demand over capacity: up to 1 holds. Infinite where the member buckles before it can answer. */
  readonly ratio: number;
  readonly parts: readonly Part[];
}

/**
 * A demand against its capacity: ratio = |demand| / capacity.
 *
 * @param of - demand [any unit] and capacity [the same]
 * @param parts - the numbers that led to them [each with its own unit]
 * @returns demand without its sign, capacity, their ratio [1] and the parts
 * @throws RangeError when the capacity is not positive
 * Source: derived, ratio
 */
export function strengthCheck(of: { readonly demand: number; readonly capacity: number }, parts: readonly Part[]): StrengthCheck {
  if (!(of.capacity > 0)) throw new RangeError(`capacity ${of.capacity} must be positive`);
  const demand = Math.abs(of.demand);
  return { demand, capacity: of.capacity, ratio: demand / of.capacity, parts };
}

/**
 * Bending stress against what is allowed: f = M / S.
 *
 * @param bending - moment M [N mm], section modulus S, net of bores [mm3], allowable stress [MPa]
 * @returns stress [MPa], allowable stress [MPa], ratio [1]
 * @throws RangeError when the section modulus or the allowable stress is not positive
 * Source: nds-2018, 3.3; aisc-360, chapter F, on the elastic section
 */
export function bendingCheck(bending: {
  readonly moment_Nmm: number;
  readonly modulus_mm3: number;
  readonly allowable: Megapascal;
}): StrengthCheck {
  const { moment_Nmm, modulus_mm3, allowable } = bending;
  if (!(modulus_mm3 > 0)) throw new RangeError(`section modulus ${modulus_mm3} mm3 must be positive`);
  return strengthCheck({ demand: moment_Nmm / modulus_mm3, capacity: allowable }, [
    { name: "M", value: moment_Nmm, unit: "N mm" },
    { name: "S", value: modulus_mm3, unit: "mm3" },
  ]);
}

/**
 * Stress along the piece against what is allowed: f = P / A.
 *
 * @param axial - force P [N], area A: net at a bore in a braced place, else whole [mm2], allowable stress [MPa]
 * @returns stress [MPa], allowable stress [MPa], ratio [1]
 * @throws RangeError when the area or the allowable stress is not positive
 * Source: nds-2018, 3.6.3; aisc-360, chapters D and E
 */
export function axialCheck(axial: { readonly force: number; readonly area_mm2: number; readonly allowable: Megapascal }): StrengthCheck {
  const { force, area_mm2, allowable } = axial;
  if (!(area_mm2 > 0)) throw new RangeError(`area ${area_mm2} mm2 must be positive`);
  return strengthCheck({ demand: force / area_mm2, capacity: allowable }, [
    { name: "P", value: force, unit: "N" },
    { name: "A", value: area_mm2, unit: "mm2" },
  ]);
}

/**
 * Movement against its limit.
 *
 * @param movement - deflection [mm], limit [mm]
 * @returns deflection [mm], limit [mm], ratio [1]
 * @throws RangeError when the limit is not positive
 * Source: derived, ratio; the limit is the job's or the code's
 */
export const deflectionCheck = ({ deflection, limit }: { readonly deflection: Mm; readonly limit: Mm }): StrengthCheck =>
  strengthCheck({ demand: deflection, capacity: limit }, []);
