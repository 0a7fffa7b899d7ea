// Which drill sizes can be bought, and which is the next one up? Fractional, number and letter sizes.
import { type Cited, cite } from "../sources/cited.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { inches } from "./customary.ts";

export interface Drill {
  /** "1/4", "#7" or "F". */
  readonly name: string;
  readonly kind: "fraction" | "number" | "letter";
  readonly diameter: Mm;
}

type Rows = readonly (readonly [name: string, diameter_in: number])[];

/** The rows that were read; number sizes between them are sold too but are not needed here. */
const numbers_in: Rows = [
  ["#30", 0.1285],
  ["#29", 0.136],
  ["#25", 0.1495],
  ["#20", 0.161],
  ["#19", 0.166],
  ["#18", 0.1695],
  ["#16", 0.177],
  ["#14", 0.182],
  ["#12", 0.189],
  ["#11", 0.191],
  ["#10", 0.1935],
  ["#9", 0.196],
  ["#8", 0.199],
  ["#7", 0.201],
  ["#5", 0.2055],
  ["#4", 0.209],
  ["#3", 0.213],
  ["#2", 0.221],
  ["#1", 0.228],
];

const letters_in: Rows = [
  ["A", 0.234],
  ["B", 0.238],
  ["C", 0.242],
  ["D", 0.246],
  ["E", 0.25],
  ["F", 0.257],
  ["G", 0.261],
  ["H", 0.266],
  ["I", 0.272],
  ["J", 0.277],
  ["K", 0.281],
  ["L", 0.29],
  ["M", 0.295],
  ["N", 0.302],
  ["O", 0.316],
  ["P", 0.323],
  ["Q", 0.332],
  ["R", 0.339],
  ["S", 0.348],
  ["T", 0.358],
  ["U", 0.368],
  ["V", 0.377],
  ["W", 0.386],
  ["X", 0.397],
  ["Y", 0.404],
  ["Z", 0.413],
];

const SIXTY_FOURTHS = 64;
const FIRST_64 = 4;

/** 16/64 is sold as 1/4, 64/64 as 1. */
function fractionName(count_64: number): string {
  let top = count_64;
  let bottom = SIXTY_FOURTHS;
  while (top % 2 === 0 && bottom > 1) {
    top /= 2;
    bottom /= 2;
  }
  return bottom === 1 ? `${top}` : `${top}/${bottom}`;
}

const fractions: readonly Drill[] = Array.from({ length: SIXTY_FOURTHS - FIRST_64 + 1 }, (_, index) => {
  const count_64 = index + FIRST_64;
  return { name: fractionName(count_64), kind: "fraction", diameter: inches(count_64 / SIXTY_FOURTHS) };
});

const named = (kind: Drill["kind"], rows: Rows): readonly Drill[] =>
  rows.map(([name, diameter_in]) => ({ name, kind, diameter: inches(diameter_in) }));

/** All sizes, thinnest first; of equal sizes the fraction comes first. */
export const drills: Cited<readonly Drill[]> = cite(
  [...fractions, ...named("number", numbers_in), ...named("letter", letters_in)].sort((a, b) => a.diameter - b.diameter),
  "unit-constants",
  "definitions.units, drill sizes",
);

/**
 * The thinnest drill that is not thinner than a wanted bore.
 *
 * @param diameter - wanted bore [mm], > 0
 * @param kinds - which sets of drills may be used [words]; all of them when left out
 * @returns the drill with its diameter [mm], or null above the thickest (1 in; letters end at Z)
 * @throws RangeError when the diameter is not positive
 * Source: unit-constants, drill sizes
 */
export function nextDrillUp(diameter: Mm, kinds: readonly Drill["kind"][] = ["fraction", "number", "letter"]): Drill | null {
  if (!(diameter > 0)) throw new RangeError(`a bore of ${diameter} mm`);
  return drills.value.find((drill) => kinds.includes(drill.kind) && drill.diameter >= diameter - SAME_mm) ?? null;
}
