// What was built, as somebody wrote it down? Types of the record: plain data, each value as it was measured.
import type { Celsius, Mm, Newton } from "../units/quantity.ts";

/** A bore as it was made: on a level side one height, on a slope one on each face. Heights are from the same datum as the plan's. */
export interface BuiltBore {
  readonly mark: string;
  readonly height: Mm | null;
  readonly left: Mm | null;
  readonly right: Mm | null;
}

/** What was read and counted at an end that pulls. */
export interface BuiltEnd {
  readonly postId: string;
  /** The last reading, when all cables stood. */
  readonly last: Newton;
  readonly turns: number | null;
  readonly threadLeft: Mm | null;
}

export interface BuiltCable {
  readonly mark: string;
  readonly length: Mm | null;
  readonly lot: string;
  /** The reading at which each pass stopped, in their order. */
  readonly passes: readonly Newton[];
  readonly ends: readonly BuiltEnd[];
  /** In the bay where the run is proved. */
  readonly proof: Newton | null;
  readonly initials: string;
}

/** How far a post was out of plumb before the first pass and after the last: positive the way its cables pull it. */
export interface BuiltPost {
  readonly postId: string;
  readonly before: Mm;
  readonly after: Mm;
  readonly note: string;
}

export interface Deviation {
  /** Of a bore, a cable or an upright; anything else in words. */
  readonly mark: string;
  readonly planned: string;
  readonly built: string;
  readonly why: string;
  readonly acceptedBy: string;
  readonly date: string;
}

export interface Lot {
  readonly item: string;
  readonly lot: string;
  readonly certificate: string;
  readonly from: string;
}

export interface AsBuilt {
  readonly jobNumber: string;
  /** Of the packet that was built from. */
  readonly revision: string;
  readonly writtenBy: string;
  /** The instrument and when it was last checked. */
  readonly gauge: string;
  /** Of the air at the last readings; null where nobody looked. */
  readonly temperature: Celsius | null;
  readonly bores: readonly BuiltBore[];
  readonly cables: readonly BuiltCable[];
  readonly posts: readonly BuiltPost[];
  readonly deviations: readonly Deviation[];
  readonly lots: readonly Lot[];
  readonly closing: {
    readonly inspection: string;
    readonly completed: string;
    readonly keepUntil: string;
    /** True where it follows from the date of completion and `KEPT_years`. */
    readonly isKeepDefault: boolean;
    readonly openItems: string;
  };
}

/** Years that a record is kept where the firm says nothing else: our own default. Laws of limitation differ by place, from 4 years to 20. */
export const KEPT_years = 12;
