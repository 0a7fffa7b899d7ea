// Which rules hold for screws and threads that hold the end of a cable on the face of a post?
import { type Cited, fromMemory, practice } from "../sources/cited.ts";
import type { Celsius, Mm } from "../units/quantity.ts";
import { fahrenheit, inches } from "./customary.ts";

/** Thread in the metal of a post, in diameters of the thread. */
export const engagement_min = {
  steel: practice(1, "thread in steel: at least one diameter of it, common practice"),
  aluminium: practice(2, "thread in aluminium: at least two diameters of it, common practice"),
} as const satisfies Readonly<Record<string, Cited<number>>>;

/** Lag screws pulled straight out of wood over 19 % moist in service. */
export const wetWithdrawal: Cited<number> = fromMemory(0.7, "NDS 2018, table 11.3.3: lag screws, withdrawal, wet in service");

/** From the middle of a lag screw to the edge of the piece, in diameters. */
export const lagEdge_diameters: Cited<number> = fromMemory(1.5, "NDS 2018, table 12.5.1E: lag screws in withdrawal, edge distance 1.5 D");

/** Thread in the wood without the tip, in diameters. */
export const lagPenetration_diameters: Cited<number> = fromMemory(4, "NDS 2018, 12.1.4.6: penetration at least 4 D without the tip");

/** Material left behind a blind hole, so that it neither comes out at the back nor meets one from there. */
export const behindHole: Cited<Mm> = practice(inches(1 / 4), "wood or metal left behind a blind hole, 1/4 in");

export interface PilotRange {
  readonly least: number;
  readonly most: number;
}

/**
 * Pilot hole for the thread of a lag screw, by the wood.
 *
 * @param gravity - specific gravity of the wood [1]
 * @returns least and greatest diameter as a share of the shank [1]
 * @throws never
 * Source: memory, NDS 2018, 12.1.4.2
 */
export function pilotRange(gravity: number): Cited<PilotRange> {
  const where = (range: string): string => `NDS 2018, 12.1.4.2: lead hole of the thread ${range} of the shank`;
  if (gravity > 0.6) return fromMemory({ least: 0.65, most: 0.85 }, where("65 to 85 %"));
  if (gravity > 0.5) return fromMemory({ least: 0.6, most: 0.75 }, where("60 to 75 %"));
  return fromMemory({ least: 0.4, most: 0.7 }, where("40 to 70 %"));
}

/** Two steps above 100 degF. */
const WARM = { dry: [0.8, 0.7], wet: [0.7, 0.5] } as const;

/**
 * C_t of connections in wood that stays warm for long.
 *
 * @param warmest - warmth that the wood keeps [degC]
 * @param wet - over 19 % moist in service [yes or no]
 * @returns factor [1]
 * @throws RangeError when it is kept warmer than 150 degF
 * Source: memory, NDS 2018, table 11.3.4
 */
export function warmConnection(warmest: Celsius, wet: boolean): Cited<number> {
  if (warmest > fahrenheit(150)) throw new RangeError(`wood kept at ${warmest} degC: the table ends at 150 degF`);
  const [warm, hot] = wet ? WARM.wet : WARM.dry;
  return fromMemory(warmest <= fahrenheit(100) ? 1 : warmest <= fahrenheit(125) ? warm : hot, "NDS 2018, table 11.3.4");
}
