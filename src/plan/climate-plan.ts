// What do warm days, drying posts and a strand that beds in take from the cables, and what must be read on another day? Types of the Plan.
import type { Cited } from "../sources/cited.ts";
import type { Celsius, Mm, Newton } from "../units/quantity.ts";

/** What one cause takes from the cables of a run, at the nut. */
export interface Loss {
  /** Of the cable that loses most. */
  readonly worst: Newton;
  /** Of each cable from the lowest. */
  readonly each: readonly Newton[];
  /** Courses that hang slack then. */
  readonly slackCourses: readonly number[];
}

/** The reading at which a cable stands right on a day of this temperature. */
export interface DayReading {
  readonly temperature: Celsius;
  /** At the nut, for the cable that changes least and for the one that changes most. */
  readonly low: Newton;
  readonly high: Newton;
  /** Of each cable from the lowest, all of them at their target at the reference temperature. */
  readonly each: readonly Newton[];
}

export interface RunClimate {
  readonly runId: string;
  readonly heat: Loss;
  readonly cold: Loss;
  readonly settling: Loss;
  /** Settling and the day of the site's range that slackens most, at once. */
  readonly both: Loss;
  /** That day: the warmest, unless the frame grows more than the strand. */
  readonly slackest: { readonly temperature: Celsius };
  /** What the day of the site's range that pulls hardest adds to each cable as it was tightened; 0 where no day adds anything. */
  readonly hardest: {
    readonly each: readonly Newton[];
    readonly worst: Newton;
    /** Of that day: the coldest, unless the frame grows more than the strand. */
    readonly temperature: Celsius;
  };
  /** What the target makes up for. */
  readonly covered: Newton;
  /** Readings over the site's range. */
  readonly days: readonly DayReading[];
  readonly shrinkage: {
    /** Of each end post along the cable. */
    readonly left: Mm;
    readonly right: Mm;
    /** How much nearer the anchors come. */
    readonly closing: Mm;
  };
  readonly bedding: Mm;
  /** At the visit after drying and bedding-in. */
  readonly visit: { readonly months: number; readonly turnsPerEnd: number; readonly travelPerEnd: Mm };
  readonly expansion: { readonly strand: Cited<number>; readonly deck: Cited<number>; readonly rail: Cited<number> };
  /** What drying is computed with; null for metal posts. */
  readonly wood: {
    readonly name: string;
    /** From green to oven-dry; it counts where the change does not go evenly. */
    readonly shrinkage_percent: Cited<number>;
    /** Change of size per percent of moisture, where it goes evenly with it; null where it does not. */
    readonly changeShare: Cited<number> | null;
    readonly from_percent: number;
    readonly to_percent: number;
  } | null;
  /** Share of the length by which the strand beds in after the first tightening. */
  readonly beddingShare: Cited<number>;
}
