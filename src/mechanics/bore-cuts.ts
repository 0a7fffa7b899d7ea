// What does a bore with its counterbores take out of the section at its own height?
import type { Mm } from "../units/quantity.ts";
import type { Cut, Section } from "./section.ts";

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
