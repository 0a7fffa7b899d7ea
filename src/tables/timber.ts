// How big is a piece of lumber really, and in which lengths is it sold? Dressed sizes, dry, by nominal size.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { Megapascal, Mm } from "../units/quantity.ts";
import { feet, inches, ksi } from "./customary.ts";

/** nominal [in] -> dressed dry [in] */
type Sizes = Readonly<Record<number, number>>;

/** Thickness of dimension lumber. */
const thicknesses_in: Sizes = { 2: 1.5, 2.5: 2, 3: 2.5, 4: 3.5 };

/** Width of dimension lumber and boards. */
const widths_in: Sizes = { 2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25 };

/** Boards and decking: the table read starts at 2 in, these two are remembered. */
const boards_in: Sizes = { 1: 0.75, 1.25: 1 };

/** Timbers, nominal 5 in and more on both faces, are dressed half an inch under. */
const TIMBER_UNDER_in = 0.5;
const TIMBER_LEAST_in = 5;

const where = "table 1A, dressed dry";

/**
 * Dressed dry size of one face of a sawn piece from its nominal size.
 *
 * @param nominal_in - nominal size as it is sold [in]: 1, 1.25 (five-quarter), 2, 4 ...
 * @param dimension - which face [word]: thickness or width of dimension lumber, or either face of a timber
 * @returns dressed size [mm] with its source
 * @throws RangeError when the table has no such size
 * Source: nds-supplement, table 1A; timber-note for nominal 5 in and more; 1 and 1-1/4 in thickness from memory
 */
export function dressedSize(nominal_in: number, dimension: "thickness" | "width" | "timber"): Cited<Mm> {
  if (dimension === "timber" && nominal_in >= TIMBER_LEAST_in) {
    return cite(inches(nominal_in - TIMBER_UNDER_in), "timber-note", "5x5 and larger: 1/2 in under nominal");
  }
  const board_in = dimension === "thickness" ? boards_in[nominal_in] : undefined;
  if (board_in !== undefined) return fromMemory(inches(board_in), "dressed thickness of boards and five-quarter decking");
  const dressed_in = dimension === "timber" ? undefined : (dimension === "thickness" ? thicknesses_in : widths_in)[nominal_in];
  if (dressed_in === undefined) throw new RangeError(`no dressed ${dimension} for nominal ${nominal_in} in`);
  return cite(inches(dressed_in), "nds-supplement", where);
}

export interface LumberSection {
  /** The smaller face. */
  readonly thickness: Mm;
  /** The larger face. */
  readonly width: Mm;
  /** The name with the source of both faces. */
  readonly cited: Cited<string>;
}

type Names = Readonly<Record<string, readonly [thickness_in: number, width_in: number]>>;

/** The sections that a job file may name. */
const sections_in: Names = {
  "1x4": [1, 4],
  "1x6": [1, 6],
  "5/4x4": [1.25, 4],
  "5/4x6": [1.25, 6],
  "2x2": [2, 2],
  "2x3": [2, 3],
  "2x4": [2, 4],
  "2x6": [2, 6],
  "2x8": [2, 8],
  "2x10": [2, 10],
  "2x12": [2, 12],
  "4x4": [4, 4],
  "4x6": [4, 6],
  "6x6": [6, 6],
};

/** In the order of the table, for "did you mean". */
export const lumberNames: readonly string[] = Object.keys(sections_in);

/**
 * Dressed dry section of a piece of lumber by its name; the smaller face first.
 *
 * @param name - nominal section as it is sold [word]: "4x4", "2x6", "5/4x6"; spaces and a capital X are let pass
 * @returns thickness and width [mm] with their source, or null for an unknown name
 * @throws never
 * Source: as for dressedSize
 */
export function lumberSection(name: string): LumberSection | null {
  const plain = name.toLowerCase().replaceAll(" ", "");
  const nominal_in = Object.hasOwn(sections_in, plain) ? sections_in[plain] : undefined;
  if (nominal_in === undefined) return null;
  const isTimber = nominal_in[0] >= TIMBER_LEAST_in;
  const thickness = dressedSize(nominal_in[0], isTimber ? "timber" : "thickness");
  const width = dressedSize(nominal_in[1], isTimber ? "timber" : "width");
  // Where one face is remembered, the pair is no better than that face.
  const weaker = thickness.source === "memory" ? thickness : width;
  return { thickness: thickness.value, width: width.value, cited: { ...weaker, value: plain } };
}

/**
 * Least reference value for bearing across the grain among the usual framing species: what a washer may press on wood of a size or a
 * grade that has no row of its own. Hem-Fir; Douglas Fir-Larch has 625 psi, Southern Pine 565 psi.
 */
export const bearingAcrossGrain_min: Cited<Megapascal> = cite(
  ksi(0.405),
  "nds-supplement",
  "table 4A, compression across the grain 405 psi of Hem-Fir, the least of the usual woods; 0.67 of it where the wood is wet",
);

/** Lengths in which dimension lumber is sold. */
export const lumberStockLengths: Cited<readonly Mm[]> = fromMemory(
  [8, 10, 12, 14, 16, 20].map(feet),
  "stock lengths of dimension lumber, even feet",
);

/** Lengths in which treated posts are sold. */
export const postStockLengths: Cited<readonly Mm[]> = cite([8, 10, 12, 16].map(feet), "carpentry-stock-list", "treated 4x4 and 6x6");

/** Lengths in which metal tube is sold. */
export const tubeStockLengths: Cited<readonly Mm[]> = fromMemory([20, 24].map(feet), "stock lengths of steel and aluminium tube");
