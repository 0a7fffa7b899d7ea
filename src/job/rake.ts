// How does the slope of a side follow from what the job gives, and what stands at its rails?
import { fromJob } from "../sources/cited.ts";
import { nosing_max } from "../tables/limits.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { stated } from "./fitting-defaults.ts";
import type { JobFile } from "./schema.ts";
import type { Rake, RakeFrame } from "./slope.ts";

export type RakeText = NonNullable<JobFile["guard"]["sides"][number]["rake"]>;

/** Without a run of its own the rise belongs to the whole length of the side. */
export function rakeOf(text: RakeText, length: Mm): Rake {
  const { kind, goes } = text;
  const nosing = stated(text.nosing, "guard: sides: rake: nosing", nosing_max);
  const { steepness, step, givenAs } = slopeOf(text, length);
  return { kind, slope: goes === "down" ? 0 - steepness : steepness, step, givenAs, nosing, openRisers: text["open risers"] ?? null };
}

interface Slope {
  readonly steepness: Radian;
  readonly step: Rake["step"];
  readonly givenAs: Rake["givenAs"];
}

function slopeOf({ pitch, rise, run, riser, tread, risers, treads }: RakeText, length: Mm): Slope {
  if (pitch !== undefined) return { steepness: pitch, step: null, givenAs: "pitch" };
  if (riser !== undefined && tread !== undefined)
    return { steepness: Math.atan2(riser, tread), step: { riser, tread }, givenAs: "riser and tread" };
  if (rise !== undefined && run !== undefined && risers !== undefined && treads !== undefined) {
    const step = { riser: rise / risers, tread: run / treads };
    return { steepness: Math.atan2(step.riser, step.tread), step, givenAs: "counts of risers and treads" };
  }
  if (rise !== undefined) return { steepness: Math.atan2(rise, run ?? length), step: null, givenAs: "rise and run" };
  throw new Error("a rake passed the checks without a slope");
}

export function rakeFrameOf(frame: JobFile["frame"], posts: JobFile["posts"]): RakeFrame {
  const { "gap below": gap, "clear opening": opening, "below datum": below } = frame["on rakes"] ?? {};
  return {
    gapBelow: gap === undefined ? fromJob(frame["gap below"] ?? 0, "frame: gap below") : fromJob(gap, "frame: on rakes: gap below"),
    clearOpening: opening === undefined ? null : fromJob(opening, "frame: on rakes: clear opening"),
    postBelow:
      below === undefined ? fromJob(posts["below datum"] ?? 0, "posts: below datum") : fromJob(below, "frame: on rakes: below datum"),
  };
}
