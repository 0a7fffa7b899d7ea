// Of posts that lean along their sides: how far off their stations do they stand at a course, and how long are the bays beside them there?
import { along as pointAlong } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { Bay, Vertical } from "./plan.ts";

/** How a post leans along its side: its station is that of its middle at `height`. */
export interface LeanAlong {
  /** Of its middle towards the right for each mm of height. */
  readonly slant: number;
  /** Above the datum: the course at which its station was read. */
  readonly height: Mm;
  /** How far to the right of its station its middle is at the lowest and at the highest course. */
  readonly low: Mm;
  readonly high: Mm;
  /** Of an end post beside a wall, which is plumb: the widest gap from the datum to the top of the guard, the narrowest at a cable. */
  readonly gap?: { readonly widest: Mm; readonly narrowest: Mm };
}

/** Stations run straight with height, so the longest of all courses is the lowest or the highest; null: that of the stations. */
export type Level = "low" | "high" | null;

type Leaning = Pick<Vertical, "leansAlong"> | undefined;

const shiftAt = (one: Leaning, level: Level): Mm => (level === null ? 0 : (one?.leansAlong?.[level] ?? 0));

/** How much farther apart two verticals are at a level than their stations [mm]. */
const apart = (left: Leaning, right: Leaning, level: Level): Mm => shiftAt(right, level) - shiftAt(left, level);

/** Where two verticals are farthest apart. */
export function longestLevel(left: Leaning, right: Leaning): Level {
  const [low, high] = [apart(left, right, "low"), apart(left, right, "high")];
  if (Math.max(low, high) <= SAME_mm) return null;
  return high >= low ? "high" : "low";
}

/** How much longer than by the stations the longest cable between two verticals is [mm]. */
export const longestMore = (left: Leaning, right: Leaning): Mm => apart(left, right, longestLevel(left, right));

/** Whether two verticals are as far apart at every course as their stations: plumb, or leaning alike. */
export const standParallel = (left: Leaning, right: Leaning): boolean =>
  (["low", "high"] as const).every((level) => Math.abs(apart(left, right, level)) <= SAME_mm);

/** Free length of a bay at a level [mm]. */
export const freeAt = (bay: Bay, left: Vertical, right: Vertical, level: Level): Mm =>
  bay.longestCourse === undefined ? bay.free : roundTo(bay.free - longestMore(left, right) + apart(left, right, level), 6);

/** A vertical where it stands at a level. */
export function standingAt(vertical: Vertical | undefined, level: Level): Vertical | undefined {
  const shift = shiftAt(vertical, level);
  if (vertical === undefined || shift === 0) return vertical;
  return { ...vertical, centre: pointAlong(vertical.centre, vertical.direction, shift) };
}

/** How far to the right of its station its middle is at a height above the datum [mm]. */
export const slantAt = ({ slant, height }: Pick<LeanAlong, "slant" | "height">, at: Mm): Mm => slant * (at - height);
