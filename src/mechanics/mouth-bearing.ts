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

/** At how many of its mouths a bore bends its cable. */
export type Mouths = 1 | 2;

/**
 * How the ends of what lies in a bore are cut: how much deeper it begins on the side that is pressed, for each length off its axis. The
 * tangent of the angle off square, negative where the pressed side is the longer one.
 */
export interface Slants {
  readonly near: number;
  readonly far: number;
}
export const SQUARE: Slants = { near: 0, far: 0 };

/**
 * Push that the wood round a plug in its bore may take at its mouth, where the axis comes out, the pressure even over the projected area
 * where it presses. A plug that is loaded at one mouth turns: near it it presses to one side, from a on to the other. An end at a slant t
 * begins at t sqrt(D^2 / 4 - z^2), z from the axis along the other diameter: in the mean at c = pi D t / 8, and the area up to a, D (a - c),
 * has the moment D (a^2 / 2 - t^2 D^2 / 12) about the mouth. So, with the far end at a slant u that takes d = pi D u / 8 from the length L:
 * stiff, a = sqrt(L^2 / 2 - L d + (t^2 + u^2) D^2 / 12) and N = p D (2 a - L - c + d), which is (sqrt(2) - 1) p D L where both are square;
 * stiff and loaded alike at both mouths, half of all at each, p D (L - c - d) / 2; bent, where shear is nothing at a, the moment M there:
 * a = sqrt(2 M / (p D) + t^2 D^2 / 6) and N = p D (a - c), which is sqrt(2 p D M) where the end is square.
 *
 * @param plug - pressure that the wood may take p [MPa], outside diameter D [mm], length along the axis L [mm], number of mouths at which it
 *   is loaded [1], moment that it may take M, infinite for a plug that stays straight [N mm], slants of its ends [ratio]
 * @returns push at each mouth [N]
 * @throws RangeError when the pressure, the diameter, the length or the moment is not positive, or its slants leave nothing of a side
 * Source: derived, plastic equilibrium; memory, NDS 2018, 12.3.1, modes II and IV, has the same for a dowel, whose ends are square
 */
export function plugCapacity(plug: {
  readonly pressure: Megapascal;
  readonly diameter: Mm;
  readonly length: Mm;
  readonly mouths: Mouths;
  readonly moment_Nmm: number;
  readonly slants: Slants;
}): Newton {
  const { pressure, diameter, length, mouths, moment_Nmm, slants } = plug;
  if (!(pressure > 0 && diameter > 0 && length > 0 && moment_Nmm > 0)) {
    throw new RangeError("pressure, diameter, length and moment of a plug must be positive");
  }
  if (!(pressedSide(plug) > 0)) throw new RangeError(`a plug ${length} mm long of ${diameter} mm has no pressed side between its slants`);
  const [near, far] = [(Math.PI * diameter * slants.near) / 8, (Math.PI * diameter * slants.far) / 8];
  const turned = Math.sqrt(length ** 2 / 2 - length * far + ((slants.near ** 2 + slants.far ** 2) * diameter ** 2) / 12);
  const straight = mouths === 1 ? 2 * turned - length - near + far : (length - near - far) / 2;
  const bent = Math.sqrt((2 * moment_Nmm) / (pressure * diameter) + (slants.near * diameter) ** 2 / 6) - near;
  return pressure * diameter * Math.min(straight, bent);
}

/**
 * Length of the side of a plug that is pressed, between its slants: L - (t + u) D / 2.
 *
 * @param plug - outside diameter D [mm], length along the axis L [mm], slants of its ends t, u [ratio]
 * @returns length; 0 or less where its slants meet [mm]
 * @throws never
 * Source: derived, plane geometry
 */
export const pressedSide = ({ diameter, length, slants }: { readonly diameter: Mm; readonly length: Mm; readonly slants: Slants }): Mm =>
  length - ((slants.near + slants.far) * diameter) / 2;
