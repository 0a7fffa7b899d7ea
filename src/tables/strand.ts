// How strong, how heavy and how stiff is stainless strand of a given make and size?
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import { GRAVITY_mPerS2 } from "../units/print.ts";
import type { AxialStiffness, Megapascal, Mm, Newton } from "../units/quantity.ts";
import { inches, poundsForce } from "./customary.ts";

type Construction = "1x19" | "7x7" | "7x19";
type Grade = "304" | "316";

/** A value known only within bounds. */
export interface Band<T> {
  readonly low: T;
  readonly nominal: T;
  readonly high: T;
}

/** Two diameters nearer than this are the same row; 1/8 in (3.175) and 3.2 mm are not. */
const SAME_DIAMETER_mm = 0.01;
const KILOGRAM_PER_POUND = 0.45359237;

/**
 * Share of the outside circle that is metal: 19/25, 49/81 and 133/225 for equal wires.
 *
 * @param construction - strands by wires per strand [word]
 * @returns fill factor [ratio] with its source; for 7x7 and 7x19 an upper bound
 * @throws never
 * Source: derived, wire counts; en-1993-1-11, table 2.2: 0.73 to 0.77 for spiral strand; rigging-magazine: 29.23 mm2 for 1x19 of 7 mm
 */
export function metallicShare(construction: Construction): Cited<number> {
  switch (construction) {
    case "1x19":
      return cite(19 / 25, "derived", "19 equal wires of a fifth of the diameter");
    case "7x7":
      return cite(49 / 81, "derived", "49 equal wires of a ninth of the diameter, an upper bound");
    case "7x19":
      return cite(133 / 225, "derived", "133 equal wires of a fifteenth of the diameter, an upper bound");
  }
}

/**
 * Modulus of elasticity of a stainless strand on its metallic area.
 *
 * @param construction - strands by wires per strand [word]
 * @returns low, nominal and high modulus [MPa] with their source
 * @throws never
 * Source: en-1993-1-11, table 3.1: 130 +- 10 GPa for spiral strand of stainless wires; stranded rope 90 +- 10 GPa from memory
 */
export function strandModulus(construction: Construction): Cited<Band<Megapascal>> {
  return construction === "1x19"
    ? cite({ low: 120e3, nominal: 130e3, high: 140e3 }, "en-1993-1-11", "table 3.1, spiral strand, stainless wires")
    : fromMemory({ low: 80e3, nominal: 90e3, high: 100e3 }, "EN 1993-1-11, table 3.1, stranded rope, stainless");
}

/**
 * Axial stiffness of a stainless strand: EA = E f pi D^2 / 4.
 *
 * @param strand - construction [word], outside diameter D [mm]
 * @returns low, nominal and high axial stiffness [N] with the source of the modulus
 * @throws RangeError when the diameter is not positive
 * Source: en-1993-1-11, table 3.1, on the metallic area of metallicShare
 */
export function strandStiffness(strand: { readonly construction: Construction; readonly diameter: Mm }): Cited<Band<AxialStiffness>> {
  const { value, ...origin } = strandModulus(strand.construction);
  const area = areaOf(strand);
  return { value: { low: value.low * area, nominal: value.nominal * area, high: value.high * area }, ...origin };
}

function areaOf({ construction, diameter }: { readonly construction: Construction; readonly diameter: Mm }): number {
  if (!(diameter > 0)) throw new RangeError(`a strand of diameter ${diameter} mm has no area`);
  return (metallicShare(construction).value * Math.PI * diameter ** 2) / 4;
}

interface StrengthRow {
  readonly construction: Construction;
  readonly grade: Grade;
  readonly diameter: Mm;
  readonly force: Cited<Newton>;
}

type Strengths = readonly (readonly [diameter_in: number, force_lbf: number])[];

const rowsOf = (construction: Construction, grade: Grade, strengths: Strengths, origin: (force: Newton) => Cited<Newton>): StrengthRow[] =>
  strengths.map(([diameter_in, force_lbf]) => ({
    construction,
    grade,
    diameter: inches(diameter_in),
    force: origin(poundsForce(force_lbf)),
  }));

const aircraft = (force: Newton): Cited<Newton> => cite(force, "ac-43-13", "table 7-3, corrosion resistant, composition B");
const remembered = (force: Newton): Cited<Newton> => fromMemory(force, "strand makers' lists");
const smallStrand = (force: Newton): Cited<Newton> => cite(force, "strand-catalogue-note", "1/16 in");
const largeStrand = (force: Newton): Cited<Newton> => cite(force, "sailing-forum", "1x19, type 316");

/** Least breaking forces, printed in lbf. Aircraft cable is of 302 or 305 wire and stands with 304. */
const strengths: readonly StrengthRow[] = [
  ...rowsOf("1x19", "304", [[1 / 16, 500]], smallStrand),
  ...rowsOf(
    "1x19",
    "304",
    [
      [3 / 32, 1200],
      [1 / 8, 2100],
      [5 / 32, 3300],
      [3 / 16, 4700],
      [7 / 32, 6300],
      [1 / 4, 8200],
    ],
    remembered,
  ),
  ...rowsOf("1x19", "316", [[1 / 16, 480]], smallStrand),
  ...rowsOf(
    "1x19",
    "316",
    [
      [1 / 8, 1780],
      [5 / 32, 2800],
      [3 / 16, 4000],
    ],
    remembered,
  ),
  ...rowsOf(
    "1x19",
    "316",
    [
      [1 / 4, 6900],
      [5 / 16, 10600],
    ],
    largeStrand,
  ),
  ...rowsOf(
    "7x7",
    "304",
    [
      [1 / 16, 480],
      [3 / 32, 920],
    ],
    aircraft,
  ),
  ...rowsOf(
    "7x7",
    "304",
    [
      [1 / 8, 1700],
      [5 / 32, 2600],
      [3 / 16, 3700],
      [1 / 4, 6100],
    ],
    remembered,
  ),
  ...rowsOf(
    "7x19",
    "304",
    [
      [1 / 16, 480],
      [3 / 32, 920],
      [1 / 8, 1760],
      [5 / 32, 2400],
      [3 / 16, 3700],
      [7 / 32, 5000],
      [1 / 4, 6400],
      [5 / 16, 9000],
    ],
    aircraft,
  ),
];

/** The rule below is a fit through rows of 3, 4 and 6 mm and is not read beyond them. */
const METRIC_RULE_kNPerMm2 = 0.786;
const METRIC_RULE_FROM_mm = 3;
const METRIC_RULE_TO_mm = 6;

/**
 * Least breaking force of stainless strand: a row of the lists in inches, or for 1x19 of grade 316 from 3 to 6 mm F = 0.786 d^2 [kN].
 *
 * @param strand - construction [word], outside diameter d [mm], grade [word]
 * @returns breaking force [N] with its source, or null when no row and no rule covers the strand
 * @throws never
 * Source: ac-43-13, table 7-3; strand-catalogue-note; sailing-forum; catamaran-forum and yacht-rigging for the metric rule; others from memory
 */
export function breakingForce({
  construction,
  diameter,
  grade,
}: {
  readonly construction: Construction;
  readonly diameter: Mm;
  readonly grade: Grade;
}): Cited<Newton> | null {
  const row = strengths.find((one) => one.construction === construction && one.grade === grade && isSame(one.diameter, diameter));
  if (row !== undefined) return row.force;
  const ruled = diameter >= METRIC_RULE_FROM_mm && diameter <= METRIC_RULE_TO_mm;
  if (construction !== "1x19" || grade !== "316" || !ruled) return null;
  return cite(
    METRIC_RULE_kNPerMm2 * 1000 * diameter ** 2,
    "catamaran-forum",
    "0.786 d^2 kN, fitted to 720, 1285 and 2878 kgf at 3, 4 and 6 mm",
    "the 6 mm value is from yacht-rigging",
  );
}

const isSame = (one: Mm, other: Mm): boolean => Math.abs(one - other) <= SAME_DIAMETER_mm;

/** Pounds per thousand feet, by diameter in inches. */
const masses: Readonly<Record<Construction, Strengths>> = {
  "1x19": [
    [1 / 8, 35],
    [5 / 32, 55],
    [3 / 16, 77],
    [1 / 4, 135],
  ],
  "7x7": [
    [1 / 8, 28],
    [5 / 32, 43],
    [3 / 16, 62],
    [1 / 4, 106],
  ],
  "7x19": [
    [1 / 8, 29],
    [5 / 32, 45],
    [3 / 16, 65],
    [1 / 4, 110],
  ],
};

/** Unit weight of spiral strand on its metallic area: 83 kN/m3 = 83e-6 N/mm3. */
const UNIT_WEIGHT_NPerMm3 = 83e-6;

/**
 * Mass of stainless strand per metre: a row of the lists in inches, else m = 83 kN/m3 A / g on the metallic area.
 *
 * @param strand - construction [word], outside diameter [mm]
 * @returns mass per length [kg/m] with its source; a weighed sample is better, as 10 % of mass is 10 % of a tension read by pitch
 * @throws RangeError when the diameter is not positive
 * Source: rigging-code-notes for 7x19 of 1/8 and 5/32 in; other rows from memory; en-1993-1-11, unit weight of spiral strand
 */
export function mass(strand: { readonly construction: Construction; readonly diameter: Mm }): Cited<number> {
  const row = masses[strand.construction].find(([diameter_in]) => isSame(inches(diameter_in), strand.diameter));
  if (row === undefined) {
    const weight_NPerMm = UNIT_WEIGHT_NPerMm3 * areaOf(strand);
    return cite((weight_NPerMm * 1000) / GRAVITY_mPerS2, "en-1993-1-11", "unit weight of spiral strand, 83 kN/m3 on the metallic area");
  }
  const [diameter_in, mass_lbPer1000Ft] = row;
  const mass_kgPerM = (mass_lbPer1000Ft * KILOGRAM_PER_POUND) / inches(12);
  const isRead = strand.construction === "7x19" && diameter_in < 3 / 16;
  return isRead
    ? cite(mass_kgPerM, "rigging-code-notes", "7x19, lb per ft")
    : fromMemory(mass_kgPerM, "strand makers' lists, lb per 1000 ft");
}
