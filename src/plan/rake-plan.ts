// What does the plan say of sides that slope? Types of the Plan.
import type { Rake } from "../job/slope.ts";
import type { Cited } from "../sources/cited.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import type { Gap } from "./plan.ts";

/** Heights above the datum, plumb: lower edge and upper edge that the cables fill, top of the guard. */
export interface Opening {
  readonly bottom: Mm;
  readonly top: Mm;
  readonly guardHeight: Mm;
}

/** The opening between riser, tread and what bounds it above. */
export interface Triangle {
  readonly riser: Mm;
  readonly tread: Mm;
  /** How far the edge of a tread stands before the riser below it: the corner of the opening lies so far back. */
  readonly nosing: Cited<Mm>;
  /** Plumb from the line of the nosings to the bottom rail, or without one to the lowest cable. */
  readonly gap: Mm;
  readonly under: "bottom rail" | "lowest cable";
  /** The largest sphere that goes in. */
  readonly sphere: Mm;
  /** With this gap a sphere of the code's size goes in; 0 or less where none does; null where the code names no size. */
  readonly gap_max: Mm | null;
}

export interface RakePlan {
  readonly sideId: string;
  readonly kind: Rake["kind"];
  readonly givenAs: Rake["givenAs"];
  /** Above level, from left to right. */
  readonly slope: Radian;
  /** Over the whole side, from left to right. */
  readonly rise: Mm;
  /** Of the side, along the slope. */
  readonly slopeLength: Mm;
  readonly opening: Opening;
  /** Its heights and gaps stand for the guard's: no side is level, and none slopes less. */
  readonly leads: boolean;
  readonly gaps: readonly Gap[];
  /** null on a ramp, and where riser and tread are not known. */
  readonly triangle: Triangle | null;
  /** Square to the slope, from the line of the nosings to the bottom rail; null on a ramp, and without that rail, where a gap holds it. */
  readonly aboveNosings: Mm | null;
  /** Sphere that must not pass between its cables. */
  readonly openingSphere: Cited<Mm>;
  readonly guardHeight_min: Cited<Mm>;
}

/** What one way past a transition comes to, over the whole guard. */
export interface Way {
  readonly runs: number;
  readonly cables: number;
  /** Nuts and gripping fittings. */
  readonly fittings: number;
  readonly longest: Mm;
  /** Most turn of one run, in space. */
  readonly turned: Radian;
  /** Of a pull at one end of that run, what friction leaves at the other. */
  readonly farShare: number;
}

export interface Transition {
  /** A/B */
  readonly id: string;
  readonly leftSideId: string;
  readonly rightSideId: string;
  /** Of the cable in space, both posts together. */
  readonly bend: Radian;
  readonly passes: boolean;
  /** null where the limits do not allow it. */
  readonly pass: Way | null;
  readonly end: Way | null;
  readonly why: string;
}
