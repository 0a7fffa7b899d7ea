// At which stress does a member buckle, sideways under compression or sideways in bending? Wood and metal.
import type { Megapascal, Mm } from "../units/quantity.ts";

/** How sharply strength turns to buckling: sawn lumber in compression, and any beam. */
const SAWN_COLUMN = 0.8;
const BEAM = 0.95;
const SLENDERNESS_max = 50;
const BEAM_SLENDERNESS_max = 50;

/** The root that the two stability factors share, with the load as a share of strength r and the sharpness c. */
function stability(share: number, sharpness: number): number {
  // No length, no buckling.
  if (share === Infinity) return 1;
  const middle = (1 + share) / (2 * sharpness);
  // As (share / c) / (t + root): the printed form t - root loses all digits for stiff members.
  const root = Math.sqrt(middle ** 2 - share / sharpness);
  return share / sharpness / (middle + root);
}

/**
 * Column stability factor of a sawn wood member: FcE = 0.822 Emin' / (le/d)^2, t = (1 + FcE/Fc*) / (2c), CP = t - sqrt(t^2 - (FcE/Fc*)/c),
 * c = 0.8.
 *
 * @param column - length le that buckles [mm], size d of the section in the direction in which it buckles [mm], adjusted least modulus Emin'
 *   [MPa], compression Fc* with all factors but CP [MPa]
 * @returns slenderness le/d [1], buckling stress FcE [MPa], factor CP [1]
 * @throws RangeError when le/d is more than 50, or a size or stress is not positive
 * Source: nds-2018, 3.7.1
 */
export function woodColumn(column: {
  readonly length: Mm;
  readonly size: Mm;
  readonly modulus_min: Megapascal;
  readonly compression: Megapascal;
}): { readonly slenderness: number; readonly bucklingStress: Megapascal; readonly factor: number } {
  const { length, size, modulus_min, compression } = column;
  if (!(length >= 0 && size > 0 && modulus_min > 0 && compression > 0)) throw new RangeError("sizes and stresses must be positive");
  const slenderness = length / size;
  if (slenderness > SLENDERNESS_max) throw new RangeError(`length over size is ${slenderness}: a wood column may have ${SLENDERNESS_max}`);
  const bucklingStress = (0.822 * modulus_min) / slenderness ** 2;
  return { slenderness, bucklingStress, factor: stability(bucklingStress / compression, SAWN_COLUMN) };
}

/**
 * Beam stability factor of a wood member: RB = sqrt(le d / b^2), FbE = 1.2 Emin' / RB^2, t = (1 + FbE/Fb*) / 1.9,
 * CL = t - sqrt(t^2 - (FbE/Fb*)/0.95). A member that is no deeper than wide doesn't turn over: CL = 1, FbE infinite.
 *
 * @param beam - free length lu [mm], its share that counts as a lu + b d: lengths a [1] and depths b [1], for long members and, under 7
 *   depths, for short ones; depth d in the plane of bending [mm], breadth b [mm], adjusted least modulus Emin' [MPa], bending Fb* with all
 *   factors but CL and Cfu [MPa]
 * @returns length le [mm], slenderness RB [1], buckling stress FbE [MPa], factor CL [1]
 * @throws RangeError when RB is more than 50, or a size or stress is not positive
 * Source: nds-2018, 3.3.3
 */
export function woodBeam(beam: {
  readonly length: Mm;
  readonly share: readonly [short: BendingLengthShare, long: BendingLengthShare];
  readonly depth: Mm;
  readonly breadth: Mm;
  readonly modulus_min: Megapascal;
  readonly bending: Megapascal;
}): { readonly length: Mm; readonly slenderness: number; readonly bucklingStress: Megapascal; readonly factor: number } {
  const { depth, breadth, modulus_min, bending } = beam;
  if (!(beam.length >= 0 && depth > 0 && breadth > 0 && modulus_min > 0 && bending > 0)) {
    throw new RangeError("sizes and stresses must be positive");
  }
  const { lengths, depths } = beam.share[beam.length < 7 * depth ? 0 : 1];
  const length = lengths * beam.length + depths * depth;
  const slenderness = Math.sqrt(length * depth) / breadth;
  if (depth <= breadth) return { length, slenderness, bucklingStress: Infinity, factor: 1 };
  if (slenderness > BEAM_SLENDERNESS_max)
    throw new RangeError(`a beam's slenderness of ${slenderness} is more than ${BEAM_SLENDERNESS_max}`);
  const bucklingStress = (1.2 * modulus_min) / slenderness ** 2;
  return { length, slenderness, bucklingStress, factor: stability(bucklingStress / bending, BEAM) };
}

/** Length that buckles = lengths x free length + depths x depth. */
export interface BendingLengthShare {
  readonly lengths: number;
  readonly depths: number;
}

/**
 * Elastic buckling stress: Fe = pi^2 E / (le/r)^2 with r^2 = I / A.
 *
 * @param column - length le that buckles [mm], second moment I [mm4], area A [mm2], modulus E [MPa]
 * @returns slenderness le/r [1] and stress Fe [MPa], infinite for no length
 * @throws RangeError when a value is not positive
 * Source: derived, Euler
 */
export function eulerColumn(column: {
  readonly length: Mm;
  readonly inertia_mm4: number;
  readonly area_mm2: number;
  readonly modulus: Megapascal;
}): { readonly slenderness: number; readonly bucklingStress: Megapascal } {
  const { length, inertia_mm4, area_mm2, modulus } = column;
  if (!(length >= 0 && inertia_mm4 > 0 && area_mm2 > 0 && modulus > 0)) throw new RangeError("sizes and modulus must be positive");
  const slenderness = length / Math.sqrt(inertia_mm4 / area_mm2);
  return { slenderness, bucklingStress: (Math.PI ** 2 * modulus) / slenderness ** 2 };
}
