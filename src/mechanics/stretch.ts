// How far does a cable stretch, how many turns of the nut is that, and is the thread long enough?
import type { AxialStiffness, Celsius, Mm, Newton } from "../units/quantity.ts";

/**
 * Elastic stretch under an even tension: dL = T L / EA.
 *
 * @param cable - tension T [N], length L [mm], axial stiffness EA [N]
 * @returns stretch [mm]
 * @throws RangeError when the stiffness is not positive
 * Source: derived, Hooke's law
 */
export function elongation({
  tension,
  length,
  stiffness,
}: {
  readonly tension: Newton;
  readonly length: Mm;
  readonly stiffness: AxialStiffness;
}): Mm {
  if (!(stiffness > 0)) throw new RangeError(`axial stiffness ${stiffness} N must be positive`);
  return (tension * length) / stiffness;
}

/**
 * Length of a cable when it is slack and at the reference temperature: L0 = L / (1 + T/EA) / (1 + alpha dt).
 *
 * @param cable - length L as it stands [mm], tension T [N], axial stiffness EA [N], expansion alpha per degree [1/degC], warmth above the reference dt [degC]
 * @returns slack length [mm]
 * @throws RangeError when the stiffness is not positive
 * Source: en-1993-1-11, as a public validation note applies it
 */
export function unstressedLength({
  length,
  tension,
  stiffness,
  expansion_perC = 0,
  warmer = 0,
}: {
  readonly length: Mm;
  readonly tension: Newton;
  readonly stiffness: AxialStiffness;
  readonly expansion_perC?: number;
  readonly warmer?: Celsius;
}): Mm {
  if (!(stiffness > 0)) throw new RangeError(`axial stiffness ${stiffness} N must be positive`);
  return length / (1 + tension / stiffness) / (1 + expansion_perC * warmer);
}

/**
 * Turns of a nut on a single thread: n = travel / pitch.
 *
 * @param nut - travel along the thread [mm], pitch of the thread [mm]
 * @returns turns, not rounded [count]
 * @throws RangeError when the pitch is not positive
 * Source: derived, lead of a single-start thread
 */
export function nutTurns({ travel, pitch }: { readonly travel: Mm; readonly pitch: Mm }): number {
  if (!(pitch > 0)) throw new RangeError(`pitch ${pitch} mm must be positive`);
  return travel / pitch;
}

interface TakeUpInput {
  readonly elongation: Mm;
  readonly elongation_low: Mm;
  readonly elongation_high: Mm;
  readonly bedding: Mm;
  readonly seating: Mm;
  readonly pullingEnds: number;
  readonly pitch: Mm;
  readonly threadLength: Mm;
  readonly firstTurns: number;
}

/**
 * Travel of the nut and what is left of its thread: travel = stretch + bedding-in + seating, shared evenly by the pulling ends;
 * thread available = thread length - first turns x pitch; slack to pull = what the threads of all pulling ends lack.
 *
 * @param parts - stretch with its low and high bound [mm], bedding-in of the strand [mm], seating of posts and wood [mm], number of
 *   pulling ends [count], pitch [mm], thread that the nut can travel [mm], turns of the nut before any tension [count]
 * @returns the parts, travel in all and per pulling end [mm], turns per pulling end with the low and high bound [count], thread
 *   available and left per pulling end (left is negative when it lacks) [mm], slack to pull through before the nut is turned [mm]
 * @throws RangeError when the pitch or the number of pulling ends is not positive
 * Valid: thread left and slack go with the nominal stretch; compare turns_high x pitch with the thread available for the worst case
 * Source: derived, sum of lengths
 */
export function takeUp(parts: TakeUpInput): {
  readonly elongation: Mm;
  readonly bedding: Mm;
  readonly seating: Mm;
  readonly travel: Mm;
  readonly travelPerEnd: Mm;
  readonly turns: number;
  readonly turns_low: number;
  readonly turns_high: number;
  readonly threadAvailable: Mm;
  readonly threadLeft: Mm;
  readonly slackToPull: Mm;
} {
  const { bedding, seating, pullingEnds, pitch } = parts;
  if (!(pullingEnds > 0)) throw new RangeError(`${pullingEnds} pulling ends: a cable is pulled from one end at least`);
  const turnsFor = (stretch: Mm): number => nutTurns({ travel: (stretch + bedding + seating) / pullingEnds, pitch });
  const travel = parts.elongation + bedding + seating;
  const travelPerEnd = travel / pullingEnds;
  const threadAvailable = parts.threadLength - parts.firstTurns * pitch;
  const threadLeft = threadAvailable - travelPerEnd;
  return {
    elongation: parts.elongation,
    bedding,
    seating,
    travel,
    travelPerEnd,
    turns: turnsFor(parts.elongation),
    turns_low: turnsFor(parts.elongation_low),
    turns_high: turnsFor(parts.elongation_high),
    threadAvailable,
    threadLeft,
    slackToPull: Math.max(0, -threadLeft) * pullingEnds,
  };
}
