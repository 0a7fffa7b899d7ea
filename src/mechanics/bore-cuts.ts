// What does a bore with its counterbores take out of the section at its own height?
import type { Mm } from "../units/quantity.ts";
import type { Cut, NetSection, Section } from "./section.ts";

export interface Counterbore {
  readonly diameter: Mm;
  readonly depth: Mm;
}

export interface Bore {
  /** Axis of the section that the bore runs along. */
  readonly along: "x" | "y";
  readonly diameter: Mm;
  /** Distance of the bore's axis from the middle of the face. */
  readonly offset?: Mm;
  /** From the face on the negative side. */
  readonly near?: Counterbore;
  /** From the face on the positive side. */
  readonly far?: Counterbore;
}

/** A rectangle seen along the bore: from, to, width. */
type Stretch = readonly [from: Mm, to: Mm, width: Mm];

const cutsOf = (bore: Bore, stretches: readonly Stretch[]): readonly Cut[] =>
  stretches
    .filter(([from, to]) => to > from)
    .map(([from, to, width]) => {
      const [length, at, offset] = [to - from, (from + to) / 2, bore.offset ?? 0];
      return bore.along === "x" ? { x: length, y: width, atX: at, atY: offset } : { x: width, y: length, atX: offset, atY: at };
    });

const NO_COUNTERBORE: Counterbore = { diameter: 0, depth: 0 };

/**
 * What a bore takes out of a solid piece in the plane through its axis, where it is widest: a strip of its diameter through the whole
 * piece, and wider strips as deep as the counterbores.
 *
 * @param whole - section [mm]
 * @param bore - axis it runs along [word], diameter [mm], offset [mm], counterbores with diameter and depth [mm]
 * @returns rectangles that don't overlap [mm], for netSection
 * @throws RangeError when the counterbores meet, or one is narrower than the bore
 * Source: derived, section through the axis of the bore
 */
export function solidBoreCuts(whole: Section, bore: Bore): readonly Cut[] {
  const half = whole[bore.along].size / 2;
  const near = bore.near ?? NO_COUNTERBORE;
  const far = bore.far ?? NO_COUNTERBORE;
  if (near.depth + far.depth > 2 * half) throw new RangeError(`counterbores of ${near.depth} and ${far.depth} mm meet in ${2 * half} mm`);
  for (const { diameter, depth } of [near, far]) {
    if (depth > 0 && diameter < bore.diameter) throw new RangeError(`a counterbore of ${diameter} mm is narrower than its bore`);
  }
  return cutsOf(bore, [
    [-half, -half + near.depth, near.diameter],
    [-half + near.depth, half - far.depth, bore.diameter],
    [half - far.depth, half, far.diameter],
  ]);
}

/**
 * What a bore takes out of a tube: its diameter out of the two walls it goes through. In a round tube the cut is taken as square to the
 * bore, a little more than the bent wall there.
 *
 * @param whole - section [mm]
 * @param bore - axis it runs along [word], diameter [mm], offset [mm], wall of the tube [mm]
 * @returns two rectangles [mm], for netSection
 * @throws never
 * Source: derived, section through the axis of the bore
 */
export function tubeBoreCuts(whole: Section, { wall, ...bore }: Omit<Bore, "near" | "far"> & { readonly wall: Mm }): readonly Cut[] {
  const half = whole[bore.along].size / 2;
  return cutsOf(bore, [
    [-half, -half + wall, bore.diameter],
    [half - wall, half, bore.diameter],
  ]);
}

/**
 * What a blind hole takes out of a solid piece or of one wall of a tube: a strip of its diameter, as deep as the hole.
 *
 * @param whole - section [mm]
 * @param hole - axis it runs along [word], diameter [mm], offset [mm], depth [mm], the side it begins on [word]
 * @returns one rectangle [mm], for netSection
 * @throws RangeError when the hole is deeper than the piece
 * Source: derived, section through the axis of the hole
 */
export function blindHoleCuts(
  whole: Section,
  { depth, from, ...hole }: Omit<Bore, "near" | "far"> & { readonly depth: Mm; readonly from: "near" | "far" },
): readonly Cut[] {
  const half = whole[hole.along].size / 2;
  if (depth > 2 * half) throw new RangeError(`a hole of ${depth} mm is deeper than ${2 * half} mm`);
  return cutsOf(hole, [from === "near" ? [-half, -half + depth, hole.diameter] : [half - depth, half, hole.diameter]]);
}

interface MitredBore {
  readonly diameter: Mm;
  /** Design wall of a tube; null in a solid post. */
  readonly wall: Mm | null;
}

/** What is lost along a diagonal: area, and its first and second moment about the corner where the diagonal begins. */
export interface DiagonalLoss {
  readonly area_mm2: number;
  readonly first_mm3: number;
  readonly second_mm4: number;
}

/**
 * What a bore on the mitre takes out of a square post, from the middle of one face to the middle of the next, counted from the corner
 * between them along the diagonal. Of a solid post a strip of its diameter, a quarter of the diagonal off the corner, twice as wide as it is
 * off; of a tube a hole out of each of both walls, wider by the square root of 2 as it goes in aslant.
 *
 * @param size - width of the post [mm]
 * @param bore - diameter [mm], design wall of a tube, null in a solid post [mm]
 * @returns area [mm2], first moment [mm3] and second moment [mm4] about the corner
 * @throws RangeError when the bore reaches the corner
 * Source: derived, section through the axis of the bore
 */
export function mitreLoss(size: Mm, { diameter, wall }: MitredBore): DiagonalLoss {
  if (wall !== null) {
    const [width, at] = [diameter * Math.SQRT2, (size + wall) / 2 / Math.SQRT2];
    const area_mm2 = 2 * width * wall;
    return { area_mm2, first_mm3: area_mm2 * at, second_mm4: area_mm2 * (at ** 2 + (width ** 2 + wall ** 2) / 24) };
  }
  const axis = size / 2 / Math.SQRT2;
  const [near, far] = [axis - diameter / 2, axis + diameter / 2];
  if (!(near > 0)) throw new RangeError(`a bore of ${diameter} mm on the mitre reaches the corner of a post of ${size} mm`);
  return { area_mm2: far ** 2 - near ** 2, first_mm3: (2 / 3) * (far ** 3 - near ** 3), second_mm4: (far ** 4 - near ** 4) / 2 };
}

/**
 * What a bore on the mitre leaves of a square post. The cables on both sides of it push the post towards the corner that the bore cuts off,
 * where it is stressed most: (Mx + My) e / (sqrt(2) I), with I about the line square to the diagonal through the new middle, and e from
 * there to that corner. So each axis has the modulus sqrt(2) I / e; moments that bend it otherwise stress it less.
 *
 * @param whole - section of the post [mm2, mm4]
 * @param bore - diameter [mm], design wall of a tube [mm]
 * @returns net area [mm2], section modulus for the sum of both moments [mm3]
 * @throws RangeError when the post is not square or the bore reaches the corner
 * Source: derived, bending about the axes of symmetry of the net section
 */
export function mitredSection(whole: Section, bore: MitredBore): NetSection {
  const { size, inertia_mm4 } = whole.x;
  if (Math.abs(size - whole.y.size) > HAIR)
    throw new RangeError(`a post of ${size} x ${whole.y.size} mm has no mitre from middle to middle`);
  const lost = mitreLoss(size, bore);
  const middle = size / Math.SQRT2;
  const area_mm2 = whole.area_mm2 - lost.area_mm2;
  const arm = (whole.area_mm2 * middle - lost.first_mm3) / area_mm2;
  const inertia = inertia_mm4 + whole.area_mm2 * middle ** 2 - lost.second_mm4 - area_mm2 * arm ** 2;
  const axis = { modulus_mm3: (Math.SQRT2 * inertia) / arm };
  return { area_mm2, x: axis, y: axis };
}

/** Sizes given in mm are rounded copies of inches. */
const HAIR: Mm = 1e-6;
