// By what is a reference design value of sawn lumber multiplied: load duration, moisture, warmth, size, lay, incising? With the table.
import { type Cited, cite, fromMemory, practice } from "../sources/cited.ts";
import type { Celsius, Mm } from "../units/quantity.ts";
import { fahrenheit, inches, ksi } from "./customary.ts";
import { type WoodClass, type WoodPiece, type WoodValues, woodClass, woodStrength } from "./timber-strength.ts";

export type LoadDuration = "permanent" | "ten years" | "two months" | "seven days" | "ten minutes" | "impact";

const durations = "table 2.3.2; appendix B";

/** C_D by the time that the load lasts in sum over the life of the piece. */
export const durationFactor: Readonly<Record<LoadDuration, Cited<number>>> = {
  permanent: cite(0.9, "nds-2018", durations),
  "ten years": cite(1, "nds-2018", durations),
  "two months": cite(1.15, "nds-2018", durations),
  "seven days": cite(1.25, "nds-2018", durations),
  "ten minutes": cite(1.6, "nds-2018", durations),
  impact: cite(2, "nds-2018", durations, "not for connections, nor for wood treated with waterborne preservative"),
};

/** The table names wind and earthquake for ten minutes, not guards. */
export const guardLoadDuration: Cited<LoadDuration> = practice(
  "ten minutes",
  "people push on a guard for less than ten minutes in sum; the table of durations does not name guards, so ask where 1.0 is wanted",
);

/** Cables pull as long as the guard stands. */
export const cableLoadDuration: Cited<LoadDuration> = cite("permanent", "nds-2018", "table 2.3.2, permanent load");

export interface WoodConditions {
  readonly load: LoadDuration;
  /** Over 19 % moisture for long: outdoors without cover. */
  readonly wet: boolean;
  /** Warmth that the wood keeps for long, not an afternoon's. */
  readonly warmest: Celsius;
  /** Cut by knives for the preservative. */
  readonly incised: boolean;
  /** Bent about its weak axis by a load on the wide face. */
  readonly flat: boolean;
  /** Three members or more that share the load, not more than 24 in apart. */
  readonly repetitive: boolean;
}

/** A factor with the name that it has in the standard. */
export interface WoodFactor extends Cited<number> {
  readonly name: "C_D" | "C_M" | "C_t" | "C_F" | "C_fu" | "C_i" | "C_r";
}

export type WoodProperty = keyof WoodValues;

/** Which factors multiply which value, in the order of table 4.3.1; C_L, C_P and C_b depend on the member and come after these. */
const applicable: Readonly<Record<WoodProperty, readonly WoodFactor["name"][]>> = {
  bending: ["C_D", "C_M", "C_t", "C_F", "C_fu", "C_i", "C_r"],
  tension: ["C_D", "C_M", "C_t", "C_F", "C_i"],
  shear: ["C_D", "C_M", "C_t", "C_i"],
  bearingAcross: ["C_M", "C_t", "C_i"],
  compression: ["C_D", "C_M", "C_t", "C_F", "C_i"],
  modulus: ["C_M", "C_t", "C_i"],
  modulus_min: ["C_M", "C_t", "C_i"],
};

/**
 * The factors that multiply one reference value of a sawn piece, those that are 1 too, so that the whole chain can be printed.
 *
 * @param of - property [word], piece with species, grade, thickness and width [mm], conditions of use with warmth [degC]
 * @returns the factors [1] in order, each with its table
 * @throws RangeError when there is no reference value for the piece, or when it is kept warmer than 150 degF
 * Source: nds-2018, table 4.3.1; supplement, tables 4A, 4B, 4D
 */
export function woodFactors(of: WoodQuestion): readonly WoodFactor[] {
  const { property, piece, conditions } = of;
  const { load, wet, warmest, incised, flat, repetitive } = conditions;
  const asked = `${property} ${piece.species} ${piece.grade} ${piece.thickness} ${piece.width} ${load} ${wet} ${warmest} ${incised} ${flat} ${repetitive}`;
  const before = known.get(asked);
  if (before !== undefined) return before;
  const factors = lookUp(of);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(asked, factors);
  return factors;
}

interface WoodQuestion {
  readonly property: WoodProperty;
  readonly piece: WoodPiece;
  readonly conditions: WoodConditions;
}

/** Looked up once for each question, by all that it says: a guard asks some sixty times for a dozen chains, and the next guard for the same. */
const known = new Map<string, readonly WoodFactor[]>();
const MOST_KNOWN = 1000;

function lookUp({ property, piece, conditions }: WoodQuestion): readonly WoodFactor[] {
  const kind = woodClass(piece);
  const reference = woodStrength(piece);
  if (kind === null || reference === null) {
    throw new RangeError(`no design values for ${piece.species} ${piece.grade} of ${piece.thickness} x ${piece.width} mm`);
  }
  const size = sizeFactor(property, piece, kind);
  const make: Readonly<Record<WoodFactor["name"], () => Cited<number>>> = {
    C_D: () => durationFactor[conditions.load],
    C_M: () => wetFactor({ property, piece, kind, wet: conditions.wet, sized: reference.value[property] * size.value }),
    C_t: () => warmthFactor(property, conditions),
    C_F: () => size,
    C_fu: () => flatFactor(piece, kind, conditions.flat),
    C_i: () => incisingFactor(property, kind, conditions.incised),
    C_r: () => repetitiveFactor(kind, conditions.repetitive),
  };
  return applicable[property].map((name) => ({ ...make[name](), name }));
}

/** Wet service factor of bearing across the grain, the same for every species and class. */
export const wetBearing: Cited<number> = cite(0.67, "nds-design-values", "tables 4A and 4D, wet service factor");

const WET = {
  "dimension lumber": {
    bending: 0.85,
    tension: 1,
    shear: 0.97,
    bearingAcross: wetBearing.value,
    compression: 0.8,
    modulus: 0.9,
    modulus_min: 0.9,
  },
  "post or timber": { bending: 1, tension: 1, shear: 1, bearingAcross: wetBearing.value, compression: 0.91, modulus: 1, modulus_min: 1 },
} as const satisfies Record<WoodClass, Record<WoodProperty, number>>;

/** Low values suffer nothing from moisture. */
const wetExempt = { bending: ksi(1.15), compression: ksi(0.75) };
/** psi figures pass through a conversion: the exemption includes its own bound. */
const HAIR = 1 + 1e-9;

interface WetQuestion {
  readonly property: WoodProperty;
  readonly piece: WoodPiece;
  readonly kind: WoodClass;
  readonly wet: boolean;
  /** Reference value times C_F. */
  readonly sized: number;
}

function wetFactor({ property, piece, kind, wet, sized }: WetQuestion): Cited<number> {
  if (!wet) return cite(1, "nds-2018", "4.3.3", "dry: 19 % or less");
  if (kind === "dimension lumber") {
    const exempt = (property === "bending" || property === "compression") && sized <= wetExempt[property] * HAIR;
    if (exempt) return cite(1, "nds-design-values", "table 4A, wet service factor", "not reduced: the value times C_F is low");
    return cite(WET[kind][property], "nds-design-values", "table 4A, wet service factor");
  }
  // Its bearing value of 375 psi is already 0.67 of the 565 psi of the dry lumber.
  if (piece.species === "Southern Pine") return fromMemory(1, "NDS Supplement, table 4D: Southern Pine is tabulated for wet and dry alike");
  return cite(WET[kind][property], "nds-design-values", "table 4D, wet service factor");
}

/** Two steps above 100 degF, by what moisture does to the property. */
const WARM = { stiff: [0.9, 0.9], dry: [0.8, 0.7], wet: [0.7, 0.5] } as const;
const stiffProperties: readonly WoodProperty[] = ["tension", "modulus", "modulus_min"];

function warmthFactor(property: WoodProperty, { warmest, wet }: WoodConditions): Cited<number> {
  if (warmest > fahrenheit(150)) throw new RangeError(`wood kept at ${warmest} degC: the table ends at 150 degF`);
  const where = "table 2.3.3";
  if (warmest <= fahrenheit(100)) return cite(1, "nds-2018", where);
  const row = stiffProperties.includes(property) ? WARM.stiff : wet ? WARM.wet : WARM.dry;
  return cite(warmest <= fahrenheit(125) ? row[0] : row[1], "nds-2018", where);
}

interface SizeRow {
  readonly upTo_in: number;
  /** Bending and tension, 2 and 3 in thick; tension of 4 in thick too. */
  readonly thin: number;
  /** Bending, 4 in thick. */
  readonly thick: number;
  readonly compression: number;
  /** Laid flat, 2 and 3 in thick. */
  readonly flatThin: number;
  /** Laid flat, 4 in thick. */
  readonly flatThick: number;
  readonly read: boolean;
}

const sizeRows: readonly SizeRow[] = [
  { upTo_in: 2.5, thin: 1.5, thick: 1.5, compression: 1.15, flatThin: 1, flatThick: 1, read: false },
  { upTo_in: 3.5, thin: 1.5, thick: 1.5, compression: 1.15, flatThin: 1.1, flatThick: 1, read: true },
  { upTo_in: 4.5, thin: 1.4, thick: 1.4, compression: 1.1, flatThin: 1.1, flatThick: 1.05, read: false },
  { upTo_in: 5.5, thin: 1.3, thick: 1.3, compression: 1.1, flatThin: 1.15, flatThick: 1.05, read: true },
  { upTo_in: 7.25, thin: 1.2, thick: 1.3, compression: 1.05, flatThin: 1.15, flatThick: 1.05, read: true },
  { upTo_in: 9.25, thin: 1.1, thick: 1.2, compression: 1, flatThin: 1.2, flatThick: 1.1, read: true },
  { upTo_in: 11.25, thin: 1, thick: 1.1, compression: 1, flatThin: 1.2, flatThick: 1.1, read: true },
];
const widest: SizeRow = { upTo_in: Infinity, thin: 0.9, thick: 1, compression: 0.9, flatThin: 1.2, flatThick: 1.1, read: false };

const SLACK: Mm = 0.5;
const sizeRow = (width: Mm): SizeRow => sizeRows.find(({ upTo_in }) => width <= inches(upTo_in) + SLACK) ?? widest;
const isThick = (thickness: Mm): boolean => thickness > inches(3) + SLACK;

function sizeFactor(property: WoodProperty, { species, thickness, width }: WoodPiece, kind: WoodClass): Cited<number> {
  if (kind === "post or timber") return timberSizeFactor(property, width);
  if (species === "Southern Pine") return cite(1, "nds-design-values", "table 4B: the size is in the row");
  const row = sizeRow(width);
  const where = "table 4A, size factor";
  if (property === "compression") return row.read ? cite(row.compression, "nds-design-values", where) : fromMemory(row.compression, where);
  if (property === "tension") return fromMemory(row.thin, where);
  const value = isThick(thickness) ? row.thick : row.thin;
  return row.read ? cite(value, "nds-design-values", where) : fromMemory(value, where);
}

const TIMBER_DEEP_in = 12;

/** Timbers deeper than 12 in bend at less stress: (12/d)^(1/9). */
function timberSizeFactor(property: WoodProperty, depth: Mm): Cited<number> {
  const deep = property === "bending" && depth > inches(TIMBER_DEEP_in);
  return cite(deep ? (inches(TIMBER_DEEP_in) / depth) ** (1 / 9) : 1, "nds-design-values", "table 4D, size factor");
}

function flatFactor({ thickness, width }: WoodPiece, kind: WoodClass, flat: boolean): Cited<number> {
  const where = "tables 4A and 4B, flat use factor";
  if (!flat || kind === "post or timber") return cite(1, "nds-design-values", where);
  const row = sizeRow(width);
  const readHere = row.read && !isThick(thickness) && row.upTo_in <= 7.25;
  const value = isThick(thickness) ? row.flatThick : row.flatThin;
  return readHere ? cite(value, "nds-design-values", where) : fromMemory(value, where);
}

const INCISED: Readonly<Record<WoodProperty, number>> = {
  bending: 0.8,
  tension: 0.8,
  shear: 0.8,
  bearingAcross: 1,
  compression: 0.8,
  modulus: 0.95,
  modulus_min: 0.95,
};

function incisingFactor(property: WoodProperty, kind: WoodClass, incised: boolean): Cited<number> {
  const where = "table 4.3.8: dimension lumber, cuts along the grain";
  if (!incised || kind === "post or timber") return cite(1, "nds-2018", where);
  const isRemembered = property === "tension" || property === "compression" || property === "modulus_min";
  return isRemembered ? fromMemory(INCISED[property], `NDS, ${where}`) : cite(INCISED[property], "nds-2018", where);
}

const repetitiveFactor = (kind: WoodClass, repetitive: boolean): Cited<number> =>
  cite(repetitive && kind === "dimension lumber" ? 1.15 : 1, "nds-2018", "4.3.9");

/** Lengths of the bearing area factor C_b = (lb + 3/8 in) / lb: shorter than 6 in, 3 in or more from the end. */
export const bearingAreaRule: Cited<{ readonly beside: Mm; readonly shortBelow: Mm; readonly fromEnd_min: Mm }> = cite(
  { beside: inches(0.375), shortBelow: inches(6), fromEnd_min: inches(3) },
  "nds-2018",
  "3.10.4",
);

export type ColumnEnds = "held in place at both ends" | "fixed at one end, free at the other";

/** Length that buckles, as a share of the free length. */
export const bucklingLengthShare: Readonly<Record<ColumnEnds, Cited<number>>> = {
  "held in place at both ends": fromMemory(1, "NDS, appendix G, both ends turn"),
  "fixed at one end, free at the other": fromMemory(2.1, "NDS, appendix G, recommended for a free end (2.0 in theory)"),
};

/** Share of the free length that buckles sideways in bending, as a x length + b x depth. */
export interface BendingLength {
  readonly lengths: number;
  readonly depths: number;
}

export type BendingCase = "held at both ends, load in the middle" | "cantilever, load at the tip" | "any other";

/** By case; the first entry is for lengths under 7 depths, the second for longer ones. */
export const bendingLength: Readonly<Record<BendingCase, Cited<readonly [short: BendingLength, long: BendingLength]>>> = {
  "held at both ends, load in the middle": fromMemory(
    [
      { lengths: 1.8, depths: 0 },
      { lengths: 1.37, depths: 3 },
    ],
    "NDS, table 3.3.3, one load at the middle, no support there",
  ),
  "cantilever, load at the tip": fromMemory(
    [
      { lengths: 1.87, depths: 0 },
      { lengths: 1.44, depths: 3 },
    ],
    "NDS, table 3.3.3, one load at the free end",
  ),
  // For long ones the note has 1.63 lu + 3 d or 1.84 lu; from seven depths on 2.06 lu is more than either.
  "any other": fromMemory(
    [
      { lengths: 2.06, depths: 0 },
      { lengths: 2.06, depths: 0 },
    ],
    "NDS, table 3.3.3, note 1, its greatest value",
  ),
};
