// What may a metal tube be stressed to, and does it hold bent and compressed at once? Allowable stress on the elastic section.
import type { Megapascal, Mm } from "../units/quantity.ts";
import { type StrengthCheck, strengthCheck } from "./strength-check.ts";

/**
 * Allowable stress in bending, shear and tension: the lesser of Fy over its safety factor and Fu over its own; shear on its share of Fy.
 *
 * @param metal - yield Fy [MPa], ultimate Fu [MPa], safety factors of both [1], shear yield as a share of Fy [1]
 * @returns allowable stress in bending and tension [MPa], and in shear [MPa]
 * @throws RangeError when a value is not positive
 * Source: aisc-360, D2, F7 and G4 with the yield moment in place of the plastic one; aluminum-design-manual, building structures
 */
export function metalAllowable(metal: {
  readonly yieldStress: Megapascal;
  readonly ultimateStress: Megapascal;
  readonly yieldSafety: number;
  readonly ruptureSafety: number;
  readonly shearShare: number;
}): { readonly bending: Megapascal; readonly shear: Megapascal } {
  const { yieldStress, ultimateStress, yieldSafety, ruptureSafety, shearShare } = metal;
  if (![yieldStress, ultimateStress, yieldSafety, ruptureSafety, shearShare].every((one) => one > 0)) {
    throw new RangeError("stresses and factors of a metal must be positive");
  }
  return {
    bending: Math.min(yieldStress / yieldSafety, ultimateStress / ruptureSafety),
    shear: (shearShare * yieldStress) / yieldSafety,
  };
}

/**
 * Shear in a tube, on the two walls that lie along the force: f = V / (2 h t) for a rectangle, 2 V / A for a round.
 *
 * @param shear - force V [N], area that takes it: 2 h t less the bores in these walls, or half the area of a round tube [mm2], allowable
 *   stress [MPa]
 * @returns mean stress [MPa], allowable stress [MPa], ratio [1]
 * @throws RangeError when the area or the allowable stress is not positive
 * Source: aisc-360, G4 and G5
 */
export function metalShearCheck(shear: {
  readonly force: number;
  readonly area_mm2: number;
  readonly allowable: Megapascal;
}): StrengthCheck {
  const { force, area_mm2, allowable } = shear;
  if (!(area_mm2 > 0)) throw new RangeError(`area ${area_mm2} mm2 must be positive`);
  return strengthCheck({ demand: force / area_mm2, capacity: allowable }, [
    { name: "V", value: force, unit: "N" },
    { name: "A", value: area_mm2, unit: "mm2" },
  ]);
}

/**
 * Slenderness of the wall of a tube against the limit up to which it reaches yield without buckling: a flat wall by b/t <= k sqrt(E/Fy), a
 * round one by D/t <= k E/Fy.
 *
 * @param wall - shape [word], width: outside size less two walls of a flat one, outside diameter of a round one [mm], thickness [mm],
 *   modulus E [MPa], yield Fy [MPa], limit k [1]
 * @returns slenderness [1], its limit [1], ratio [1]
 * @throws RangeError when the limit or the thickness is not positive
 * Source: aisc-360, table B4.1; flat width taken greater than its own, which is less three walls
 */
export function wallCheck(wall: {
  readonly shape: "flat" | "round";
  readonly width: Mm;
  readonly thickness: Mm;
  readonly modulus: Megapascal;
  readonly yieldStress: Megapascal;
  readonly limit: number;
}): StrengthCheck {
  const { shape, width, thickness, modulus, yieldStress, limit } = wall;
  if (!(thickness > 0)) throw new RangeError(`wall of ${thickness} mm must be positive`);
  const strain = modulus / yieldStress;
  return strengthCheck({ demand: width / thickness, capacity: limit * (shape === "flat" ? Math.sqrt(strain) : strain) }, [
    { name: shape === "flat" ? "b" : "D", value: width, unit: "mm" },
    { name: "t", value: thickness, unit: "mm" },
  ]);
}

/**
 * Bending stress at which a bar bent on edge turns over sideways, under the same moment all along: pi sqrt(E Iy G J) / (L S) of a thin
 * rectangle, 1.9 E t^2 / (L d) with G = E / 2.6.
 *
 * @param bar - free length L [mm], depth d along the bending [mm], thickness t across it [mm], modulus E [MPa]
 * @returns stress [MPa]
 * @throws RangeError when a size or the modulus is not positive
 * Source: derived, Iy = d t^3 / 12, J = d t^3 / 3, S = t d^2 / 6; aisc-360, F11 has the same, from memory
 */
export function barTurningStress(bar: {
  readonly length: Mm;
  readonly depth: Mm;
  readonly thickness: Mm;
  readonly modulus: Megapascal;
}): Megapascal {
  const { length, depth, thickness, modulus } = bar;
  if (!(length > 0 && depth > 0 && thickness > 0 && modulus > 0)) throw new RangeError("sizes and modulus of a bar must be positive");
  return (BAR_turning * modulus * thickness ** 2) / (length * depth);
}

/** pi / sqrt(2.6) = 1.95, as the standard rounds it. */
const BAR_turning = 1.9;

/** The curves of src/tables, by their own numbers. */
export type ColumnCurve =
  | { readonly kind: "power"; readonly base: number; readonly elasticShare: number; readonly limit: number }
  | { readonly kind: "line"; readonly share: number; readonly stress: Megapascal };

/**
 * Stress at which a metal column fails. Power curve: base^(Fy/Fe) Fy up to a slenderness of limit x sqrt(E/Fy), then share x Fe. Straight
 * line: the least of Fy, share x (B - D s) and share x Fe, with B = Fy (1 + sqrt(Fy/stress)), D = B/10 sqrt(B/E), Fe from
 * s = 0.41 B/D on.
 *
 * @param column - elastic buckling stress Fe [MPa], slenderness s [1], yield Fy [MPa], modulus E [MPa], curve with its own numbers [1, MPa]
 * @returns stress [MPa], to be divided by the safety factor
 * @throws RangeError when a value is not positive
 * Source: aisc-360, E3; aisc-stainless, columns; aluminum-design-manual, E and table B.4.2; all from memory
 */
export function columnStress(column: {
  readonly bucklingStress: Megapascal;
  readonly slenderness: number;
  readonly yieldStress: Megapascal;
  readonly modulus: Megapascal;
  readonly curve: ColumnCurve;
}): Megapascal {
  const { bucklingStress, slenderness, yieldStress, modulus, curve } = column;
  if (!(bucklingStress > 0 && slenderness >= 0 && yieldStress > 0 && modulus > 0)) {
    throw new RangeError("stresses and modulus of a column must be positive");
  }
  if (curve.kind === "power") {
    const isShort = slenderness <= curve.limit * Math.sqrt(modulus / yieldStress);
    return isShort ? curve.base ** (yieldStress / bucklingStress) * yieldStress : curve.elasticShare * bucklingStress;
  }
  const top = yieldStress * (1 + Math.sqrt(yieldStress / curve.stress));
  const slope = (top / 10) * Math.sqrt(top / modulus);
  const isShort = slenderness <= (0.41 * top) / slope;
  return Math.min(yieldStress, curve.share * (isShort ? top - slope * slenderness : bucklingStress));
}

/** One direction of bending of a tube under compression too. */
export interface TubeBending {
  /** Bending stress, first order. */
  readonly stress: Megapascal;
  /** Elastic buckling stress in the plane of this bending. */
  readonly bucklingStress: Megapascal;
}

/**
 * Bending about both axes with compression. Each bending is amplified by 1 / (1 - a fc/Fe). H1: fc/Fc + 8/9 (sum of fb/Fb) once fc/Fc is 0.2
 * or more, else fc/(2 Fc) + sum; linear: fc/Fc + sum.
 *
 * @param member - compression fc and what is allowed Fc [MPa], bending allowed Fb [MPa], bending along both axes with stress and elastic
 *   buckling stress [MPa], amplification a [1], rule [word]
 * @returns the sum against 1, infinite where the member buckles first; its terms as parts [1]
 * @throws RangeError when an allowable or buckling stress is not positive, or the compression is negative
 * Source: aisc-360, H1.1 and appendix 8; aluminum-design-manual, H.1; from memory
 */
export function metalCombinedCheck(member: {
  readonly compression: Megapascal;
  readonly compressionAllowable: Megapascal;
  readonly bendingAllowable: Megapascal;
  readonly bending: readonly [TubeBending, TubeBending];
  readonly amplification: number;
  readonly rule: "H1" | "linear";
}): StrengthCheck {
  const { compression, compressionAllowable, bendingAllowable, bending, amplification, rule } = member;
  const divisors = [compressionAllowable, bendingAllowable, ...bending.map((one) => one.bucklingStress)];
  if (!(compression >= 0 && divisors.every((one) => one > 0))) {
    throw new RangeError("stresses that are allowed must be positive and the compression must not be negative");
  }
  const axial = compression / compressionAllowable;
  const [first, second] = bending.map(({ stress, bucklingStress }) => {
    const room = 1 - (amplification * compression) / bucklingStress;
    return room > 0 ? Math.abs(stress) / bendingAllowable / room : Infinity;
  }) as [number, number];
  const isMostlyBending = rule === "H1" && axial < 0.2;
  const axialTerm = isMostlyBending ? axial / 2 : axial;
  const share = rule === "H1" && !isMostlyBending ? 8 / 9 : 1;
  return strengthCheck({ demand: axialTerm + share * (first + second), capacity: 1 }, [
    { name: "fc/Fc", value: axial, unit: "1" },
    { name: "fbx/Fb, amplified", value: first, unit: "1" },
    { name: "fby/Fb, amplified", value: second, unit: "1" },
  ]);
}
