// How strong and stiff are the metals and tubes of posts and rails? A source on each row.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { Megapascal, Mm } from "../units/quantity.ts";
import { ksi } from "./customary.ts";

export interface Alloy {
  readonly yieldStress: Cited<Megapascal>;
  readonly ultimateStress: Cited<Megapascal>;
  readonly modulus: Cited<Megapascal>;
  /** Thermal expansion per degC. */
  readonly expansion_perC: Cited<number>;
}

const extruder = "alloy and temper limits, extruded";

const ALLOYS = {
  "6061-T6": {
    yieldStress: cite(ksi(35), "extruder-limits", extruder),
    ultimateStress: cite(ksi(38), "extruder-limits", extruder),
    modulus: fromMemory(ksi(10_000), "6061, 10.0 to 10.1 thousand ksi"),
    expansion_perC: fromMemory(23.6e-6, "6061"),
  },
  // Beside a weld the temper is lost: these are the values to check welded aluminium with.
  "6061-T6 at a weld": {
    yieldStress: cite(ksi(20), "mmpds-6061", "typical, welded"),
    ultimateStress: cite(ksi(24), "mmpds-6061", "typical, welded"),
    modulus: fromMemory(ksi(10_000), "6061, 10.0 to 10.1 thousand ksi"),
    expansion_perC: fromMemory(23.6e-6, "6061"),
  },
  "6063-T5": {
    yieldStress: cite(ksi(16), "extruder-limits", `${extruder}, to 0.5 in`),
    ultimateStress: cite(ksi(22), "extruder-limits", `${extruder}, to 0.5 in`),
    modulus: cite(ksi(10_000), "data-6063-t5", "modulus of elasticity"),
    expansion_perC: cite(23.4e-6, "data-6063-t5", "thermal expansion"),
  },
  "6063-T6": {
    yieldStress: cite(ksi(25), "extruder-limits", extruder),
    ultimateStress: cite(ksi(30), "extruder-limits", extruder),
    modulus: cite(ksi(10_000), "data-6063-t5", "modulus of elasticity, taken for T6 too"),
    expansion_perC: cite(21.8e-6, "data-6063-t6", "thermal expansion"),
  },
  304: {
    yieldStress: cite(206, "stainless-typical", "304, annealed, at least"),
    ultimateStress: cite(520, "stainless-typical", "304, annealed, at least"),
    modulus: cite(193_000, "stainless-typical", "304"),
    expansion_perC: fromMemory(17.2e-6, "304"),
  },
  316: {
    yieldStress: cite(206, "stainless-typical", "316, annealed, at least"),
    ultimateStress: cite(520, "stainless-typical", "316, annealed, at least"),
    modulus: cite(193_000, "stainless-typical", "316"),
    expansion_perC: cite(16.5e-6, "stainless-316", "20 to 100 degC"),
  },
  "A500 grade B": {
    yieldStress: fromMemory(ksi(46), "A500 grade B, rectangular"),
    ultimateStress: fromMemory(ksi(58), "A500 grade B"),
    modulus: fromMemory(ksi(29_000), "structural steel"),
    expansion_perC: fromMemory(11.7e-6, "structural steel"),
  },
  "A500 grade C": {
    yieldStress: fromMemory(ksi(50), "A500 grade C, rectangular"),
    ultimateStress: fromMemory(ksi(62), "A500 grade C"),
    modulus: fromMemory(ksi(29_000), "structural steel"),
    expansion_perC: fromMemory(11.7e-6, "structural steel"),
  },
} as const satisfies Record<string, Alloy>;

export type AlloyName = keyof typeof ALLOYS;

export const alloys: Readonly<Record<AlloyName, Alloy>> = ALLOYS;

/** A steel tube of the metric table; the wall is the design wall, 0.93 of the nominal one. */
export interface TubeRow {
  readonly name: string;
  readonly shape: "square" | "round";
  /** Outside size: side of a square, diameter of a round. */
  readonly outside: Mm;
  readonly wall: Mm;
  readonly area_mm2: number;
  /** Second moment of area. */
  readonly inertia_mm4: number;
  readonly elasticModulus_mm3: number;
  readonly plasticModulus_mm3: number;
  readonly mass_kgPerM: number;
}

const tube = (
  name: string,
  shape: TubeRow["shape"],
  [outside, wall]: readonly [Mm, Mm],
  [area_mm2, inertia_mm4, elasticModulus_mm3, plasticModulus_mm3]: readonly [number, number, number, number],
  mass_kgPerM: number,
): TubeRow => ({ name, shape, outside, wall, area_mm2, inertia_mm4, elasticModulus_mm3, plasticModulus_mm3, mass_kgPerM });

/** The whole table has one source: the metric table of hollow sections, as transcribed. */
export const tubes: Cited<readonly TubeRow[]> = cite(
  [
    tube("HSS2x2x1/8", "square", [50.8, 2.95], [542, 0.202e6, 7.96e3, 9.57e3], 4.53),
    tube("HSS2x2x3/16", "square", [50.8, 4.42], [768, 0.267e6, 10.5e3, 13.1e3], 6.4),
    tube("HSS2-1/2x2-1/2x1/8", "square", [63.5, 2.95], [690, 0.415e6, 13.1e3, 15.5e3], 5.8),
    tube("HSS3x3x1/8", "square", [76.2, 2.95], [839, 0.741e6, 19.5e3, 22.9e3], 7.06),
    tube("HSS1.900x0.145", "round", [48.26, 3.43], [483, 0.122e6, 5.06e3, 6.9e3], 4.05),
    tube("HSS2.375x0.154", "round", [60.325, 3.63], [645, 0.261e6, 8.65e3, 11.7e3], 5.44),
  ],
  "hollow-sections",
  "metric table of hollow structural sections",
  "the design wall is 0.93 of the nominal one",
);
