// How much metal is in a strand, and how stiff is it when pulled and when bent?
import type { AxialStiffness, Megapascal, Mm } from "../units/quantity.ts";

export type StrandConstruction = "1x19" | "7x7" | "7x19";

/** Equal wires, and how many of their diameters make the outside diameter. */
const make: Readonly<Record<StrandConstruction, { readonly wires: number; readonly wiresAcross: number }>> = {
  "1x19": { wires: 19, wiresAcross: 5 },
  "7x7": { wires: 49, wiresAcross: 9 },
  "7x19": { wires: 133, wiresAcross: 15 },
};

/**
 * Share of the outside circle that is metal: f = n / k^2 with n wires of diameter D/k: 0.760, 0.605, 0.591.
 *
 * @param construction - strands by wires per strand [word]
 * @returns fill factor; for 7x7 and 7x19 an upper bound, as their strands do not fill their places [ratio]
 * @throws never
 * Source: derived, wire counts
 */
export const fillFactor = (construction: StrandConstruction): number => make[construction].wires / make[construction].wiresAcross ** 2;

/**
 * Metallic area of a strand: A = f pi D^2 / 4.
 *
 * @param strand - construction [word], outside diameter D [mm]
 * @returns area of the wires [mm2]
 * @throws RangeError when the diameter is not positive
 * Source: derived, wire counts; en-1993-1-11, table 2.2 gives f = 0.73 to 0.77 for spiral strand
 */
export function metallicArea({ construction, diameter }: { readonly construction: StrandConstruction; readonly diameter: Mm }): number {
  if (!(diameter > 0)) throw new RangeError(`a strand of diameter ${diameter} mm has no area`);
  return (fillFactor(construction) * Math.PI * diameter ** 2) / 4;
}

/**
 * Axial stiffness: EA = E A.
 *
 * @param strand - modulus E of the strand on its metallic area [MPa], metallic area A [mm2]
 * @returns axial stiffness [N]
 * @throws RangeError when modulus or area is not positive
 * Source: derived, Hooke's law
 */
export function axialStiffness({ modulus, area }: { readonly modulus: Megapascal; readonly area: number }): AxialStiffness {
  if (!(modulus > 0 && area > 0)) throw new RangeError(`modulus ${modulus} MPa and area ${area} mm2 must be positive`);
  return modulus * area;
}

/**
 * Bounds of the bending stiffness: wires that slide freely, EI = E A (D/k)^2 / 16, and a solid bar of the same EA, EI = E A D^2 / 16.
 *
 * @param strand - construction [word], outside diameter D [mm], modulus E on the metallic area [MPa]
 * @returns bending stiffness of loose wires and of a solid bar [N mm2]
 * @throws RangeError when the diameter is not positive
 * Source: derived, second moment of area of a circle, A d^2 / 16
 */
export function bendingStiffness({
  construction,
  diameter,
  modulus,
}: {
  readonly construction: StrandConstruction;
  readonly diameter: Mm;
  readonly modulus: Megapascal;
}): { readonly loose_Nmm2: number; readonly solid_Nmm2: number } {
  const solid_Nmm2 = (modulus * metallicArea({ construction, diameter }) * diameter ** 2) / 16;
  return { loose_Nmm2: solid_Nmm2 / make[construction].wiresAcross ** 2, solid_Nmm2 };
}
