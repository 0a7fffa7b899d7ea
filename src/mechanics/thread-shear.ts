// With which force does a screw strip the thread that is cut into a plate or a wall?
import type { Mm } from "../units/quantity.ts";

/** From the outside diameter to the pitch diameter of the 60 degree profiles, in pitches. */
const TO_PITCH_DIAMETER = (3 * Math.sqrt(3)) / 8;

/**
 * Area of the inner thread that is sheared off along the outside diameter of the screw, for basic sizes without tolerances:
 * A = pi L / p x d x (p / 2 + (d - d2) / sqrt(3)), with the pitch diameter d2 = d - (3 sqrt(3) / 8) p.
 *
 * @param thread - outside diameter d [mm], pitch p [mm], length in the metal L [mm]
 * @returns shear area of the inner thread [mm2]
 * @throws RangeError when the diameter, the pitch or the length is not positive
 * Source: memory, FED-STD-H28/2, shear area of internal threads, with the basic profile in place of its limits
 */
export function innerThreadArea(thread: { readonly diameter: Mm; readonly pitch: Mm; readonly length: Mm }): number {
  const { diameter, pitch, length } = thread;
  if (!(diameter > 0 && pitch > 0 && length > 0)) throw new RangeError("diameter, pitch and length of a thread must be positive");
  const below = TO_PITCH_DIAMETER * pitch;
  return ((Math.PI * length) / pitch) * diameter * (pitch / 2 + below / Math.sqrt(3));
}
