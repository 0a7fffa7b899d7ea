// What stress may sawn lumber carry before any adjustment, and how stiff is it? By species, grade and size; a source on each row.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { Megapascal, Mm } from "../units/quantity.ts";
import { inches, ksi } from "./customary.ts";

export type WoodSpecies = "Douglas Fir-Larch" | "Hem-Fir" | "Spruce-Pine-Fir" | "Southern Pine" | "Redwood" | "Western Cedars";
export type WoodGrade = "Select Structural" | "No.1" | "No.2";

/** Dimension lumber is nominal 2 to 4 in thick; nominal 5x5 and more, nearly square, are posts and timbers. */
export type WoodClass = "dimension lumber" | "post or timber";

/** A sawn piece: the smaller face is the thickness. */
export interface WoodPiece {
  readonly species: WoodSpecies;
  readonly grade: WoodGrade;
  readonly thickness: Mm;
  readonly width: Mm;
}

/** Reference design values, not adjusted. */
export interface WoodValues {
  /** Fb. */
  readonly bending: Megapascal;
  /** Ft, along the grain. */
  readonly tension: Megapascal;
  /** Fv, along the grain. */
  readonly shear: Megapascal;
  /** Fc across the grain. */
  readonly bearingAcross: Megapascal;
  /** Fc along the grain. */
  readonly compression: Megapascal;
  /** E, mean: for deflection. */
  readonly modulus: Megapascal;
  /** Emin: for stability. */
  readonly modulus_min: Megapascal;
}

/** Fb, Ft, Fv, Fc across, Fc [psi], E [10^6 psi], Emin [10^3 psi], as the tables print them. */
type Row = readonly [bending: number, tension: number, shear: number, across: number, along: number, modulus: number, least: number];

const values = ([bending, tension, shear, across, along, modulus, least]: Row): WoodValues => ({
  bending: ksi(bending / 1000),
  tension: ksi(tension / 1000),
  shear: ksi(shear / 1000),
  bearingAcross: ksi(across / 1000),
  compression: ksi(along / 1000),
  modulus: ksi(modulus * 1000),
  modulus_min: ksi(least),
});

const read = (row: Row, where: string, note?: string): Cited<WoodValues> => cite(values(row), "nds-design-values", where, note);
const remembered = (row: Row, where: string): Cited<WoodValues> => fromMemory(values(row), `NDS Supplement, ${where}`);

type Grades = Readonly<Partial<Record<WoodGrade, Cited<WoodValues>>>>;

/** Visually graded dimension lumber, 2 to 4 in thick; the size factor is still to be applied. */
const dimension: Readonly<Record<Exclude<WoodSpecies, "Southern Pine">, Grades>> = {
  "Douglas Fir-Larch": {
    "Select Structural": read([1500, 1000, 180, 625, 1700, 1.9, 690], "table 4A, Douglas Fir-Larch, Select Structural"),
    "No.1": read([1000, 675, 180, 625, 1500, 1.7, 620], "table 4A, Douglas Fir-Larch, No.1"),
    "No.2": read([900, 575, 180, 625, 1350, 1.6, 580], "table 4A, Douglas Fir-Larch, No.2"),
  },
  "Hem-Fir": {
    "No.1": read([975, 625, 150, 405, 1350, 1.5, 550], "table 4A, Hem-Fir, No.1"),
    "No.2": read([850, 525, 150, 405, 1300, 1.3, 470], "table 4A, Hem-Fir, No.2"),
  },
  "Spruce-Pine-Fir": {
    "Select Structural": read([1150, 700, 135, 425, 1400, 1.5, 550], "table 4A, Spruce-Pine-Fir, Select Structural"),
    "No.1": read([875, 450, 135, 425, 1150, 1.4, 510], "table 4A, Spruce-Pine-Fir, No.1/No.2"),
    "No.2": read([875, 450, 135, 425, 1150, 1.4, 510], "table 4A, Spruce-Pine-Fir, No.1/No.2"),
  },
  Redwood: {
    "No.1": remembered([975, 575, 160, 650, 1200, 1.3, 470], "table 4A, Redwood, No.1"),
    "No.2": remembered([925, 525, 160, 650, 950, 1.2, 440], "table 4A, Redwood, No.2"),
  },
  "Western Cedars": {
    "No.1": remembered([725, 425, 155, 425, 1000, 1.0, 370], "table 4A, Western Cedars, No.1"),
    "No.2": remembered([700, 425, 155, 425, 650, 1.0, 370], "table 4A, Western Cedars, No.2"),
  },
};

const inMetric = "read in MPa to one decimal; the psi figure is remembered and rounds to it";
const partly = "bending, shear, bearing and modulus read, the rest not";

interface BySize {
  /** Greatest dressed width of the row [in]. */
  readonly upTo_in: number;
  readonly grades: Grades;
}

/** Southern Pine has its size built into the rows. */
const southernPine: readonly BySize[] = [
  {
    upTo_in: 3.5,
    grades: {
      "No.1": read([1500, 1000, 175, 565, 1650, 1.6, 580], "table 4B, Southern Pine, No.1, 2 to 4 in wide", inMetric),
      "No.2": read([1100, 675, 175, 565, 1450, 1.4, 510], "table 4B, Southern Pine, No.2, 2 to 4 in wide", inMetric),
    },
  },
  {
    upTo_in: 5.5,
    grades: {
      "No.1": read([1350, 875, 175, 565, 1550, 1.6, 580], "table 4B, Southern Pine, No.1, 5 to 6 in wide", inMetric),
      "No.2": read([1000, 600, 175, 565, 1400, 1.4, 510], "table 4B, Southern Pine, No.2, 5 to 6 in wide", inMetric),
    },
  },
  {
    upTo_in: 7.25,
    grades: {
      "No.1": remembered([1250, 800, 175, 565, 1500, 1.6, 580], "table 4B, Southern Pine, No.1, 8 in wide"),
      "No.2": remembered([925, 550, 175, 565, 1350, 1.4, 510], `table 4B, Southern Pine, No.2, 8 in wide; ${partly}`),
    },
  },
  {
    upTo_in: 9.25,
    grades: {
      "No.1": remembered([1050, 700, 175, 565, 1450, 1.6, 580], "table 4B, Southern Pine, No.1, 10 in wide"),
      "No.2": remembered([800, 475, 175, 565, 1300, 1.4, 510], `table 4B, Southern Pine, No.2, 10 in wide; ${partly}`),
    },
  },
  {
    upTo_in: 11.25,
    grades: {
      "No.1": remembered([1000, 650, 175, 565, 1400, 1.6, 580], "table 4B, Southern Pine, No.1, 12 in wide"),
      "No.2": remembered([750, 450, 175, 565, 1250, 1.4, 510], `table 4B, Southern Pine, No.2, 12 in wide; ${partly}`),
    },
  },
];

/** Posts and timbers, nominal 5x5 and larger, width at most 2 in more than the thickness: none of these rows was read. */
const timbers: Readonly<Record<WoodSpecies, Grades>> = {
  "Douglas Fir-Larch": {
    "No.1": remembered([1200, 825, 170, 625, 1000, 1.6, 580], "table 4D, posts and timbers, Douglas Fir-Larch, No.1"),
    "No.2": remembered([750, 475, 170, 625, 700, 1.3, 470], "table 4D, posts and timbers, Douglas Fir-Larch, No.2"),
  },
  "Hem-Fir": {
    "No.1": remembered([975, 650, 140, 405, 850, 1.3, 470], "table 4D, posts and timbers, Hem-Fir, No.1"),
    "No.2": remembered([575, 375, 140, 405, 575, 1.1, 400], "table 4D, posts and timbers, Hem-Fir, No.2"),
  },
  "Spruce-Pine-Fir": {
    "No.1": remembered([850, 550, 125, 425, 700, 1.3, 470], "table 4D, posts and timbers, Spruce-Pine-Fir, No.1"),
    "No.2": remembered([500, 325, 125, 425, 500, 1.0, 370], "table 4D, posts and timbers, Spruce-Pine-Fir, No.2"),
  },
  "Southern Pine": {
    "No.1": remembered([1350, 900, 165, 375, 825, 1.5, 550], "table 4D, posts and timbers, Southern Pine, No.1, wet or dry"),
    "No.2": remembered([850, 550, 165, 375, 525, 1.2, 440], "table 4D, posts and timbers, Southern Pine, No.2, wet or dry"),
  },
  // Their rows were neither read nor remembered with any certainty.
  Redwood: {},
  "Western Cedars": {
    "No.1": remembered([900, 600, 140, 425, 800, 1.0, 370], "table 4D, posts and timbers, Western Cedars, No.1"),
    "No.2": remembered([550, 350, 140, 425, 475, 0.8, 290], "table 4D, posts and timbers, Western Cedars, No.2"),
  },
};

/** A hair for sizes that a job states in whole millimetres: 38 mm is what 1-1/2 in is sold as. */
const SLACK: Mm = 0.5;

/**
 * Which table of design values a sawn piece belongs to, by its dressed size.
 *
 * @param piece - thickness, the smaller face [mm], and width, the larger face [mm]
 * @returns the class [word], or null for boards thinner than 1-1/2 in and for timbers more than 2 in wider than thick, which have none here
 * @throws never
 * Source: nds-design-values, heads of tables 4A and 4D; 5x5 and larger are timbers
 */
export function woodClass({ thickness, width }: Pick<WoodPiece, "thickness" | "width">): WoodClass | null {
  if (thickness < inches(1.5) - SLACK) return null;
  if (thickness < inches(4.5) - SLACK) return "dimension lumber";
  return width - thickness <= inches(2) + SLACK ? "post or timber" : null;
}

/**
 * Reference design values of a sawn piece.
 *
 * @param piece - species [word], grade [word], thickness [mm], width [mm]
 * @returns the values [MPa] with the source of their row; null where no row stands here
 * @throws never
 * Source: nds-design-values, tables 4A, 4B and 4D
 */
export function woodStrength(piece: WoodPiece): Cited<WoodValues> | null {
  const kind = woodClass(piece);
  if (kind === null) return null;
  return rowsFor(piece, kind)?.[piece.grade] ?? null;
}

function rowsFor({ species, width }: WoodPiece, kind: WoodClass): Grades | undefined {
  if (kind === "post or timber") return timbers[species];
  if (species !== "Southern Pine") return dimension[species];
  return southernPine.find(({ upTo_in }) => width <= inches(upTo_in) + SLACK)?.grades;
}

/** Oven-dry specific gravity for fasteners. */
export const specificGravity: Readonly<Record<WoodSpecies, Cited<number>>> = {
  "Douglas Fir-Larch": cite(0.5, "nds-2018", "table 12.3.3A"),
  "Hem-Fir": cite(0.43, "nds-2018", "table 12.3.3A"),
  "Spruce-Pine-Fir": cite(0.42, "nds-2018", "table 12.3.3A"),
  "Southern Pine": cite(0.55, "nds-2018", "table 12.3.3A"),
  Redwood: cite(0.37, "nds-2018", "table 12.3.3A", "open grain, as remembered"),
  "Western Cedars": cite(0.36, "nds-2018", "table 12.3.3A"),
};
