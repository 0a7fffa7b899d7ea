// How does a side slope, and at which heights does its guard stand?
import type { Cited } from "../sources/cited.ts";
import type { Mm, Radian } from "../units/quantity.ts";

/**
 * A slope of the walking surface along a side: of a ramp its surface, of a stair the line through its nosings. Between two sides the
 * surface does not jump: a stair's side reaches from the edge of the landing to where the line of the nosings meets the lower floor.
 */
export interface Rake {
  readonly kind: "stair" | "ramp";
  /** Above level, from left to right; negative where the side goes down. */
  readonly slope: Radian;
  /** One step of a stair; null where the job gives only the slope. */
  readonly step: { readonly riser: Mm; readonly tread: Mm } | null;
  /** How far the edge of a tread stands before the riser below it. */
  readonly nosing: Cited<Mm>;
  /** Whether nothing closes the risers; null where the job does not say. */
  readonly openRisers: boolean | null;
  /** As the job gives the slope, in words: "7 in by 10-1/2 in". */
  readonly givenAs: "pitch" | "rise and run" | "riser and tread" | "counts of risers and treads";
}

/** Heights on raked sides, all plumb above the walking surface or the line of the nosings. */
export interface RakeFrame {
  readonly gapBelow: Cited<Mm>;
  /** null: so that the tops of raked and level rails meet at one height. */
  readonly clearOpening: Cited<Mm> | null;
  /** Length of a post below the datum at its middle, for the cut list. */
  readonly postBelow: Cited<Mm>;
}

/** What the code asks of the open side of a stair; heights are plumb above the line of the nosings. */
export interface StairBasis {
  readonly guardHeight_min: Cited<Mm>;
  readonly openingSphere: Cited<Mm>;
  /** Below what an opening is none. */
  readonly openingFrom: "steps" | "line of the nosings";
  /** Sphere at the triangle of riser, tread and bottom rail; null where the code names none. */
  readonly triangleSphere: Cited<Mm> | null;
  /** Where the top rail is the handrail too. */
  readonly handrail: { readonly low: Cited<Mm>; readonly high: Cited<Mm> | null };
}
