// Where must a guard be cut into runs, and where is it cheapest to do so?
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm, SAME_rad } from "../units/tolerance.ts";
import { endOnFacesAt, isShut } from "./as-found.ts";
import { alongSlope, jointOf, jointPath } from "./corner-path.ts";
import { cornerPostAt } from "./corner-post.ts";
import type { Run, SidePlan } from "./plan.ts";
import { outsideAt, recessIn } from "./sleeve.ts";

/** A place where one run may end and the next begin. */
export interface Cut {
  /** corner post: the runs of both its sides end on it, so no run passes. */
  readonly kind: "start" | "corner" | "corner post" | "line" | "interruption" | "end";
  /** Side whose right-hand corner is cut, or whose post at `station` is. */
  readonly sideIndex: number;
  readonly station: Mm;
  /** Along the cable: the face that it bears on where a run from the left ends, and where a run to the right begins. */
  readonly endAt: Mm;
  readonly startAt: Mm;
  readonly corners_before: number;
  readonly corners_after: number;
}

interface Best {
  readonly runs: number;
  readonly posts: number;
  readonly longest: Mm;
  readonly from: number;
}

export interface StationsOfSide {
  readonly stations: readonly Mm[];
  /** Two runs on this side meet on two posts; else on one post with bores set off sideways. */
  readonly pairs: boolean;
}

/** All places where the guard may be cut, from left to right, its two ends included. */
export function cutsOf(sides: readonly SidePlan[], posts: readonly StationsOfSide[], job: Job): readonly Cut[] {
  const alongAt = (index: number, nth: number): Mm => outsideAt(job, index, nth).along;
  // From the middle of a post where runs meet to where the left-hand one ends: beyond it, or before it where they end on its faces.
  const half = (index: number, nth: number): Mm => {
    if (posts[index]?.pairs === true) return -job.posts.pairGap.value / 2;
    return (endOnFacesAt(job, index, nth) ? -1 : 1) * (alongAt(index, nth) / 2);
  };
  // In a sleeve nut and collar bear on the wood inside it.
  const recess = recessIn(job);
  const cuts: Cut[] = [
    { kind: "start", sideIndex: 0, station: sides[0]?.startsAt ?? 0, endAt: 0, startAt: recess, corners_before: 0, corners_after: 0 },
  ];
  // Distance along the cable to the outer or inner face of the side's first post.
  let origin = 0;
  for (const side of sides) {
    const stations = posts[side.index]?.stations ?? [];
    const [first, last] = [side.begins?.kind === "pier" ? 0 : 1, stations.length - (side.ends?.kind === "pier" ? 0 : 1)];
    const firstFace =
      first === 0 ? side.startsAt : (cornerPostAt(job, side.index - 1)?.setback ?? (stations[0] ?? 0) - alongAt(side.index, 0) / 2);
    const at = (station: Mm): Mm => origin + alongSlope(station - firstFace, side.slope);
    for (const [before, station] of stations.slice(first, last).entries()) {
      const nth = before + first;
      if (isShut(job, side.index, nth)) continue;
      const own = alongSlope(half(side.index, nth), side.slope);
      const [endAt, startAt] = [at(station) + own - recess, at(station) - own + recess];
      cuts.push({ kind: "line", sideIndex: side.index, station, endAt, startAt, corners_before: side.index, corners_after: side.index });
    }
    const lastFace = side.ends?.kind === "pier" ? side.endsAt : (stations.at(-1) ?? 0) + alongAt(side.index, stations.length - 1) / 2;
    const endAt = at(lastFace);
    const next = sides[side.index + 1];
    const onePost = cornerPostAt(job, side.index);
    if (onePost?.isPassed === true) {
      // All cables pass it: from the mouth of its bore to the other.
      origin = at(side.length - onePost.setback) + onePost.chord;
    } else if (onePost !== null) {
      // Through it to the face beyond, where the bores are set off.
      const through = onePost.isSetOff ? onePost.chord : 0;
      const endAt = at(side.length - onePost.setback) + through;
      // The next run starts anew, by any distance.
      origin = endAt + 1 + through;
      const count = { corners_before: side.index, corners_after: side.index + 1 };
      cuts.push({ kind: "corner post", sideIndex: side.index, station: lastFace, endAt, startAt: origin - through, ...count });
    } else if (next === undefined) {
      cuts.push({
        kind: "end",
        sideIndex: side.index,
        station: lastFace,
        endAt: endAt - recess,
        startAt: endAt - recess,
        corners_before: side.index,
        corners_after: side.index,
      });
    } else if (side.ends !== null) {
      // The next run starts anew, by any distance: no run passes.
      origin = endAt + 1;
      cuts.push({
        kind: "interruption",
        sideIndex: side.index,
        station: lastFace,
        endAt: endAt - recess,
        startAt: origin + recess,
        corners_before: side.index,
        corners_after: side.index + 1,
      });
    } else {
      const setback_right = (posts[next.index]?.stations[0] ?? 0) - alongAt(next.index, 0) / 2;
      const { chord } = jointPath({ setback_left: side.length - lastFace, setback_right, ...jointOf(side, next) });
      origin = endAt + chord;
      // Two runs may end here only where a hand and a wrench fit between the two posts, as between those of a pair.
      if (chord < job.posts.pairGap.value - SAME_mm) continue;
      if (isShut(job, side.index, stations.length - 1) || isShut(job, next.index, 0)) continue;
      cuts.push({
        kind: "corner",
        sideIndex: side.index,
        station: lastFace,
        endAt: endAt - recess,
        startAt: origin + recess,
        corners_before: side.index,
        corners_after: side.index + 1,
      });
    }
  }
  return cuts;
}

/** Whether a run may go from one place of the guard to another, by their numbers, beside all limits. */
type MayRun = (from: number, to: number) => boolean;
const anyRun: MayRun = () => true;

/** An end in a pier only holds: no run goes from one pier to the next. */
export function mayPull(cuts: readonly Cut[], sides: readonly SidePlan[]): MayRun {
  const at = (place: number, kinds: readonly Cut["kind"][]): Cut | undefined => {
    const cut = cuts[place];
    return cut !== undefined && kinds.includes(cut.kind) ? cut : undefined;
  };
  return (from, to) => {
    const [start, end] = [at(from, ["start", "interruption"]), at(to, ["end", "interruption"])];
    if (start === undefined || end === undefined) return true;
    const first = sides[start.sideIndex + (start.kind === "start" ? 0 : 1)];
    return first?.begins?.kind !== "pier" || sides[end.sideIndex]?.ends?.kind !== "pier";
  };
}

/** Fewest runs first, then fewest extra posts, then the shortest longest run; null when no choice keeps the limits. */
export function chooseCuts(cuts: readonly Cut[], job: Job, readyLength_max: Mm | null, mayRun: MayRun = anyRun): readonly Cut[] | null {
  const best: (Best | null)[] = cuts.map((_, index) => (index === 0 ? { runs: 0, posts: 0, longest: 0, from: -1 } : null));
  for (let to = 1; to < cuts.length; to++) {
    for (let from = 0; from < to; from++) {
      const before = best[from];
      const start = cuts[from];
      const end = cuts[to];
      if (before == null || start === undefined || end === undefined) continue;
      if (cuts.slice(from + 1, to).some(({ kind }) => kind === "interruption" || kind === "corner post")) continue;
      const length = end.endAt - start.startAt;
      if (!mayRun(from, to) || !isAllowed(length, cornersBetween(job, start.corners_after, end.corners_before), job, readyLength_max))
        continue;
      const candidate: Best = {
        runs: before.runs + 1,
        posts: before.posts + (end.kind === "line" ? 1 : 0),
        longest: Math.max(before.longest, length),
        from,
      };
      if (isBetter(candidate, best[to] ?? null)) best[to] = candidate;
    }
  }
  const chosen: Cut[] = [];
  for (let index = cuts.length - 1; index >= 0; index = best[index]?.from ?? -1) {
    const cut = cuts[index];
    if (cut === undefined || best[index] == null) return null;
    chosen.unshift(cut);
  }
  return chosen;
}

/** Corners between two sides, as they count among those of a run: small turns by their share of a right angle. */
export const cornersBetween = (job: Job, from: number, to: number): number =>
  job.sides.slice(from, to).reduce((sum, { turn }) => sum + cornerCount(turn, job), 0);

/** Those that a run turns. */
export function cornersOfRun({ sideIds }: Pick<Run, "sideIds">, sides: readonly SidePlan[], job: Job): number {
  const at = (id: string | undefined): number => sides.find((side) => side.id === id)?.index ?? 0;
  return cornersBetween(job, at(sideIds[0]), at(sideIds.at(-1)));
}

/** Where only the slope changes the cable turns too. */
export function cornerCount(turn: number | null, { limits }: Job): number {
  const size = Math.abs(turn ?? 0);
  return size > 0 && size <= limits.smallTurn_max.value + SAME_rad ? size / (Math.PI / 2) : 1;
}

function isAllowed(length: Mm, corners: number, job: Job, readyLength_max: Mm | null): boolean {
  const { bends_max, runWithBends_max, runStraight_max } = job.limits;
  if (length <= 0 || corners > bends_max.value + SAME_rad) return false;
  if (readyLength_max !== null && length >= readyLength_max) return false;
  return length <= (corners > 0 ? runWithBends_max.value : runStraight_max.value) + SAME_mm;
}

function isBetter(a: Best, b: Best | null): boolean {
  if (b === null) return true;
  if (a.runs !== b.runs) return a.runs < b.runs;
  if (a.posts !== b.posts) return a.posts < b.posts;
  return a.longest < b.longest - SAME_mm;
}

/** Of several guards that are cut into runs the one that is best by the same measures; undefined where none is. */
export function bestOf<T extends { readonly cuts: readonly Cut[] | null }>(options: readonly T[]): T | undefined {
  let [found, least]: [T | undefined, Best | null] = [undefined, null];
  for (const option of options) {
    const { cuts } = option;
    if (cuts === null) continue;
    const runs = cuts.slice(1).map((end, index) => end.endAt - (cuts[index]?.startAt ?? 0));
    const posts = cuts.filter(({ kind }) => kind === "line").length;
    const measures = { runs: runs.length, posts, longest: Math.max(...runs), from: -1 };
    if (isBetter(measures, least)) [found, least] = [option, measures];
  }
  return found;
}
