// Does a piece of wood hold: sheared, pressed across its grain, bent and compressed at once?
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import { type StrengthCheck, strengthCheck } from "./strength-check.ts";

/**
 * Shear along the grain in a rectangular piece: fv = 3 V / (2 A). At a bore A is the net area there; a notched piece is not covered, since
 * a guard post must not be notched.
 *
 * @param shear - force V [N], area A, net at a bore [mm2], allowable stress Fv' [MPa]
 * @returns stress [MPa], allowable stress [MPa], ratio [1]
 * @throws RangeError when the area or the allowable stress is not positive
 * Source: nds-2018, 3.4.2; the posts' rule is R507.10.2 of irc-2021
 */
export function woodShearCheck(shear: {
  readonly force: Newton;
  readonly area_mm2: number;
  readonly allowable: Megapascal;
}): StrengthCheck {
  const { force, area_mm2, allowable } = shear;
  if (!(area_mm2 > 0)) throw new RangeError(`area ${area_mm2} mm2 must be positive`);
  return strengthCheck({ demand: (1.5 * force) / area_mm2, capacity: allowable }, [
    { name: "V", value: force, unit: "N" },
    { name: "A", value: area_mm2, unit: "mm2" },
  ]);
}

/** A short bearing is helped by the wood beside it, unless it lies near the end of the piece. */
export interface BearingAreaRule {
  /** Length of wood that helps. */
  readonly beside: Mm;
  readonly shortBelow: Mm;
  readonly fromEnd_min: Mm;
}

/**
 * Bearing area factor: Cb = (lb + beside) / lb for short bearings that lie far enough from the end, else 1.
 *
 * @param bearing - length lb along the grain, a washer's diameter [mm], distance from the end of the piece [mm], rule with its three lengths
 *   [mm]
 * @returns factor Cb [1]
 * @throws RangeError when the length is not positive
 * Source: nds-2018, 3.10.4
 */
export function bearingAreaFactor({
  length,
  fromEnd,
  rule,
}: {
  readonly length: Mm;
  readonly fromEnd: Mm;
  readonly rule: BearingAreaRule;
}): number {
  if (!(length > 0)) throw new RangeError(`bearing length ${length} mm must be positive`);
  return length < rule.shortBelow && fromEnd >= rule.fromEnd_min ? (length + rule.beside) / length : 1;
}

/**
 * Bearing across the grain: f = P / A against Fc' across.
 *
 * @param bearing - force P [N], area A of the washer or plate less its hole [mm2], length along the grain [mm], distance from the end [mm],
 *   rule of the bearing area factor [mm], allowable stress with all factors but Cb [MPa]
 * @returns stress [MPa], allowable stress with Cb [MPa], ratio [1]
 * @throws RangeError when the area, the length or the allowable stress is not positive
 * Source: nds-2018, 3.10.2 and 3.10.4
 */
export function bearingAcrossCheck(bearing: {
  readonly force: Newton;
  readonly area_mm2: number;
  readonly length: Mm;
  readonly fromEnd: Mm;
  readonly rule: BearingAreaRule;
  readonly allowable: Megapascal;
}): StrengthCheck {
  const { force, area_mm2, allowable } = bearing;
  if (!(area_mm2 > 0)) throw new RangeError(`area ${area_mm2} mm2 must be positive`);
  const factor = bearingAreaFactor(bearing);
  return strengthCheck({ demand: force / area_mm2, capacity: allowable * factor }, [
    { name: "P", value: force, unit: "N" },
    { name: "A", value: area_mm2, unit: "mm2" },
    { name: "C_b", value: factor, unit: "1" },
  ]);
}

/** One direction of bending of a member under compression too. */
export interface BendingSide {
  /** fb. */
  readonly stress: Megapascal;
  /** Fb', all factors. */
  readonly allowable: Megapascal;
  /** FcE of buckling in the plane of this bending; infinite where it can't. */
  readonly bucklingStress: Megapascal;
}

/**
 * Bending about both axes with compression:
 * (fc/Fc')^2 + fb1/(Fb1'(1 - fc/FcE1)) + fb2/(Fb2'(1 - fc/FcE2 - (fb1/FbE)^2)) <= 1, and fc/FcE2 + (fb1/FbE)^2 < 1 with each of its terms
 * and fc/FcE1 below 1.
 *
 * @param member - compression fc [MPa] and Fc' [MPa]; edge: bending 1, on the narrow face, fb1, Fb1', FcE1 [MPa]; flat: bending 2, on the
 *   wide face, fb2, Fb2', FcE2 [MPa]; beam buckling stress FbE, infinite for a square [MPa]
 * @returns the sum against 1, infinite where the member buckles first; terms of the sum as parts [1]
 * @throws RangeError when an allowable or buckling stress is not positive, or the compression is negative
 * Source: nds-2018, 3.9.2, eq. 3.9-3 and 3.9-4
 */
export function woodCombinedCheck(member: {
  readonly compression: Megapascal;
  readonly compressionAllowable: Megapascal;
  readonly edge: BendingSide;
  readonly flat: BendingSide;
  readonly beamBucklingStress: Megapascal;
}): StrengthCheck {
  const { compression, compressionAllowable, edge, flat, beamBucklingStress } = member;
  const divisors = [compressionAllowable, edge.allowable, flat.allowable, edge.bucklingStress, flat.bucklingStress, beamBucklingStress];
  if (!(compression >= 0 && divisors.every((one) => one > 0))) {
    throw new RangeError("stresses that are allowed must be positive and the compression must not be negative");
  }
  const turning = (edge.stress / beamBucklingStress) ** 2;
  const roomEdge = 1 - compression / edge.bucklingStress;
  const roomFlat = 1 - compression / flat.bucklingStress - turning;
  const terms = [
    (compression / compressionAllowable) ** 2,
    loaded(Math.abs(edge.stress) / edge.allowable, roomEdge),
    loaded(Math.abs(flat.stress) / flat.allowable, roomFlat),
  ] as const;
  return strengthCheck({ demand: terms[0] + terms[1] + terms[2], capacity: 1 }, [
    { name: "(fc/Fc')^2", value: terms[0], unit: "1" },
    { name: "fb1/(Fb1'(1 - fc/FcE1))", value: terms[1], unit: "1" },
    { name: "fb2/(Fb2'(1 - fc/FcE2 - (fb1/FbE)^2))", value: terms[2], unit: "1" },
    { name: "fc/FcE1", value: 1 - roomEdge, unit: "1" },
    { name: "fc/FcE2 + (fb1/FbE)^2", value: 1 - roomFlat, unit: "1" },
  ]);
}

/** Bending that compression makes worse; without room left the member buckles, bent or not. */
const loaded = (share: number, room: number): number => (room > 0 ? share / room : Infinity);
