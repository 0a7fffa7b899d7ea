// How hard does a cable that bends press on the mouth of its bore, and what may the wood there be pressed with?
import type { Megapascal, Mm, Newton, Radian } from "../units/quantity.ts";

/**
 * Push of a cable at a bend: the resultant of its two tensions, N = 2 T sin(a / 2). With the greater tension on both sides it is never less
 * than what presses across the bore, which is the tension outside of it times sin(a).
 *
 * @param bend - greater of the tensions before and behind the bend [N], angle between the two stretches, sign ignored [rad]
 * @returns push, along the bisector of the two stretches [N]
 * @throws RangeError when the tension is negative
 * Source: derived, triangle of forces
 */
export function bendPush({ tension, angle }: { readonly tension: Newton; readonly angle: Radian }): Newton {
  if (!(tension >= 0)) throw new RangeError(`tension ${tension} N must not be negative`);
  return 2 * tension * Math.sin(Math.abs(angle) / 2);
}

/**
 * What wood may be pressed with at an angle to its grain: F = Fc* Fcp / (Fc* sin^2 a + Fcp cos^2 a).
 *
 * @param wood - along the grain Fc* [MPa], across it Fcp [MPa], angle between load and grain a [rad]
 * @returns allowable stress F: Fc* at 0, Fcp at a right angle [MPa]
 * @throws RangeError when a stress is not positive
 * Source: memory, NDS 2018, 3.10.3, eq. 3.10-1, and appendix J, eq. J-1 (Hankinson)
 */
export function atAngleToGrain(wood: { readonly along: Megapascal; readonly across: Megapascal; readonly angle: Radian }): Megapascal {
  const { along, across, angle } = wood;
  if (!(along > 0 && across > 0)) throw new RangeError("stresses along and across the grain must be positive");
  return (along * across) / (along * Math.sin(angle) ** 2 + across * Math.cos(angle) ** 2);
}

/**
 * Share of even pressure all along a stiff plug in its bore that is left when it is loaded at its mouth. It turns: near the mouth it presses
 * to one side, further in to the other. Pressure p D changes sides at a; moments about the mouth: a^2 / 2 = (L^2 - a^2) / 2, so
 * a = L / sqrt(2), and the push is p D (2 a - L). It is yield mode II of a dowel between two members alike.
 */
const ONE_mouth = Math.SQRT2 - 1;
/** Loaded alike at both mouths it presses evenly to one side, half for each. */
const BOTH_mouths = 1 / 2;

/** At how many of its mouths a bore bends its cable. */
export type Mouths = 1 | 2;

/**
 * Push that the wood round a plug in its bore may take at its mouth, the pressure even over the projected area where it presses: with D the
 * diameter and L the length, p D L (sqrt(2) - 1), and p D L / 2 at each where it is loaded alike at both mouths; a plug that bends takes
 * no more than sqrt(2 p D M), as shear is nothing at a = N / (p D) and the moment there is N a / 2.
 *
 * @param plug - pressure that the wood may take p [MPa], outside diameter [mm], length in the wood [mm], number of mouths at which it is
 *   loaded [1], moment that it may take M; infinite for a plug that stays straight [N mm]
 * @returns push at each mouth [N]
 * @throws RangeError when the pressure, the diameter, the length or the moment is not positive
 * Source: derived, plastic equilibrium; memory, NDS 2018, 12.3.1, modes II and IV, has the same for a dowel
 */
export function plugCapacity(plug: {
  readonly pressure: Megapascal;
  readonly diameter: Mm;
  readonly length: Mm;
  readonly mouths: Mouths;
  readonly moment_Nmm: number;
}): Newton {
  const { pressure, diameter, length, mouths, moment_Nmm } = plug;
  if (!(pressure > 0 && diameter > 0 && length > 0 && moment_Nmm > 0)) {
    throw new RangeError("pressure, diameter, length and moment of a plug must be positive");
  }
  const straight = (mouths === 1 ? ONE_mouth : BOTH_mouths) * pressure * diameter * length;
  return Math.min(straight, Math.sqrt(2 * pressure * diameter * moment_Nmm));
}
