// How much of its strength may a metal tube be used to: safety factors, columns, walls, combined loads? By metal, as remembered.
import { type Cited, fromMemory } from "../sources/cited.ts";
import type { Megapascal } from "../units/quantity.ts";
import { ksi } from "./customary.ts";

export type FrameMetal = "steel" | "stainless" | "aluminium";

/** Columns that buckle by base^(Fy/Fe) while short and by a share of the elastic stress when slender. */
export interface PowerColumn {
  readonly kind: "power";
  readonly base: number;
  readonly elasticShare: number;
  /** Slenderness where the two meet, in units of sqrt(E/Fy). */
  readonly limit: number;
}

/** Columns that buckle on a straight line while short: share x (B - D x slenderness), never more than yield. */
export interface LineColumn {
  readonly kind: "line";
  readonly share: number;
  /** B = Fy (1 + sqrt(Fy / this)). */
  readonly stress: Megapascal;
}

export interface MetalBasis {
  /** Divides the yield stress in bending, in shear and in compression. */
  readonly yieldSafety: Cited<number>;
  /** Divides the ultimate stress, where that is less. */
  readonly ruptureSafety: Cited<number>;
  /** Shear yield as a share of yield. */
  readonly shearShare: Cited<number>;
  readonly column: Cited<PowerColumn | LineColumn>;
  /** Greatest flat width over wall, in units of sqrt(E/Fy): up to here the wall reaches yield without buckling. */
  readonly flatWall_max: Cited<number>;
  /** Greatest outside diameter over wall, in units of E/Fy. */
  readonly roundWall_max: Cited<number>;
  /** H1: with eight ninths of the bending once compression is a fifth; linear: the plain sum. */
  readonly interaction: Cited<"H1" | "linear">;
  /** What the load is multiplied by before it is compared with elastic buckling. */
  readonly amplification: Cited<number>;
}

export const metalBasis: Readonly<Record<FrameMetal, MetalBasis>> = {
  steel: {
    yieldSafety: fromMemory(1.67, "AISC 360-16, F7, E3 and G4, allowable strength; yield moment in place of the plastic one"),
    ruptureSafety: fromMemory(2, "AISC 360-16, D2(b)"),
    shearShare: fromMemory(0.6, "AISC 360-16, G4"),
    column: fromMemory({ kind: "power", base: 0.658, elasticShare: 0.877, limit: 4.71 }, "AISC 360-16, E3"),
    flatWall_max: fromMemory(1.4, "AISC 360-16, table B4.1, walls of rectangular tube"),
    roundWall_max: fromMemory(0.11, "AISC 360-16, table B4.1, round tube in compression"),
    interaction: fromMemory("H1", "AISC 360-16, H1.1"),
    amplification: fromMemory(1.6, "AISC 360-16, appendix 8, allowable strength"),
  },
  stainless: {
    yieldSafety: fromMemory(1.67, "AISC design guide 27, allowable strength; yield moment in place of the plastic one"),
    ruptureSafety: fromMemory(2, "AISC design guide 27"),
    shearShare: fromMemory(0.6, "AISC design guide 27"),
    column: fromMemory({ kind: "power", base: 0.5, elasticShare: 0.531, limit: 3.77 }, "AISC design guide 27, columns"),
    flatWall_max: fromMemory(1.24, "AISC design guide 27, walls of rectangular tube"),
    roundWall_max: fromMemory(0.1, "AISC design guide 27, round tube in compression"),
    interaction: fromMemory("H1", "AISC design guide 27, as for steel"),
    amplification: fromMemory(1.6, "AISC design guide 27, as for steel"),
  },
  aluminium: {
    yieldSafety: fromMemory(1.65, "Aluminum Design Manual, yielding of building structures"),
    ruptureSafety: fromMemory(1.95, "Aluminum Design Manual, rupture of building structures"),
    shearShare: fromMemory(0.6, "Aluminum Design Manual, shear yield"),
    column: fromMemory({ kind: "line", share: 0.85, stress: ksi(2250) }, "Aluminum Design Manual, E and table B.4.2, tempers T5 and T6"),
    // The manual's own limits (20.8 for 6061-T6 walls held at both edges) lie above these.
    flatWall_max: fromMemory(
      1.12,
      "kept below the limit that the Aluminum Design Manual gives as remembered (19.0 against 20.8 for 6061-T6)",
    ),
    roundWall_max: fromMemory(0.07, "kept below the limit that the Aluminum Design Manual gives as remembered"),
    interaction: fromMemory("linear", "Aluminum Design Manual, H.1"),
    amplification: fromMemory(1.65, "the safety factor on yielding, taken for the load too"),
  },
};
