// Where does hardware leave room for the bores, and which heights do the courses take then?

import type { Job } from "../job/job.ts";
import type { Hardware } from "../job/standing.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { makeBores } from "./bores.ts";
import { type CoursePlan, heights } from "./courses.ts";
import { gapsOf } from "./gaps.ts";
import { pierNamed } from "./pier.ts";
import type { Bore, BoreKind, Course, Vertical } from "./plan.ts";
import type { RunGeometry } from "./runs.ts";

/** Hardware on one post: no bore comes near it. */
export interface HardwareZone {
  readonly postId: string;
  readonly what: string;
  /** Heights above the datum. */
  readonly from: Mm;
  readonly to: Mm;
}

interface Standing {
  readonly verticals: readonly Vertical[];
  readonly geometries: readonly RunGeometry[];
}

/** A height at which the middle of no course may lie, ends excluded, and what is there. */
interface Blocked {
  readonly from: Mm;
  readonly to: Mm;
  readonly zone: HardwareZone;
}

/** The hardware of the job on each post that has some. */
export function hardwareZones(verticals: readonly Vertical[], job: Job): Outcome<readonly HardwareZone[]> {
  const posts = verticals.filter(({ kind }) => kind === "post").map(({ id }) => id);
  const problems = job.posts.hardware.flatMap(({ posts: marks }, index) =>
    (marks ?? []).flatMap((mark, place): readonly Problem[] => {
      if (posts.includes(mark)) return [];
      const path = ["posts", "hardware", index, "posts", place];
      return [
        { severity: "error", path, what: `there is no post ${mark}`, fix: `the posts of this guard are ${posts[0]} to ${posts.at(-1)}` },
      ];
    }),
  );
  const zones = job.posts.hardware.flatMap(({ posts: marks, what, from, to }: Hardware) =>
    posts.filter((id) => marks === null || marks.includes(id)).map((postId) => ({ postId, what, from, to })),
  );
  return { value: zones, problems };
}

/** Edge of what goes into or onto a post at a bore: the bore, its counterbore, and the washer or flange at an end. */
export function halfSeat(bore: Bore, job: Job): Mm {
  const { stud, grip, face } = job.fittings;
  const seats: Readonly<Record<BoreKind, Mm>> = {
    "stud end": stud.washerDiameter.value,
    "grip end": grip.washerDiameter.value,
    "face end": face?.flange.value ?? 0,
    "anchor end": bore.kind === "anchor end" ? pierNamed(job, bore.verticalId).anchor.flange.value : 0,
    pass: 0,
    bend: 0,
  };
  return Math.max(bore.diameter, bore.counterbore?.diameter ?? 0, seats[bore.kind]) / 2;
}

/**
 * Courses that keep clear of all hardware: as they were where nothing is in the way; else the heights on marks of the tape, with the
 * fewest courses that keep the largest spacing, whose spacings are most even (least sum of their squares). A course is level, so hardware
 * on one post moves it on all of them.
 */
export function clearOfHardware(plan: CoursePlan, zones: readonly HardwareZone[], standing: Standing, job: Job): Outcome<CoursePlan> {
  const blocked = blockedBy(zones, standing, plan, job);
  const isClear = (height: Mm): boolean => blocked.every(({ from, to }) => height <= from + SAME_mm || height >= to - SAME_mm);
  if (plan.courses.every(({ height }) => isClear(height))) return { value: plan, problems: [] };
  const { bottom, top } = plan.opening;
  const step = job.limits.tapeStep.value;
  const first = roundUp(bottom, step);
  const marks = Array.from({ length: roundUp((top - first) / step, 1) }, (_, index) => first + index * step).filter(
    (mark) => mark > bottom + SAME_mm && isClear(mark),
  );
  const spacing_max = job.limits.cableSpacing_max.value + SAME_mm;
  const stuck = [bottom, ...marks, top].find((mark, index, all) => (all[index + 1] ?? mark) - mark > spacing_max);
  if (stuck !== undefined) return { value: undefined, problems: [noWay(stuck, blocked, job)] };
  const even = plan.courses.length;
  for (let count = even; count <= marks.length; count++) {
    const chosen = mostEven({ marks, bottom, top, count, spacing_max });
    if (chosen === null) continue;
    const courses = heights({ bottom, clear: top - bottom, count, step }).map((course, index): Course => {
      const height = chosen[index] ?? course.height;
      return { ...course, height, moved: height - course.height };
    });
    return { value: { ...plan, courses, gaps: gapsOf(courses, { opening: plan.opening, cosine: 1 }, job) }, problems: [] };
  }
  return { value: undefined, problems: [noWay(bottom, blocked, job)] };
}

function blockedBy(zones: readonly HardwareZone[], { geometries }: Standing, { courses }: CoursePlan, job: Job): readonly Blocked[] {
  const clearance = job.posts.hardwareClearance.value;
  const bores = makeBores(geometries, courses.slice(0, 1), job);
  return zones.map((zone) => {
    const seats = bores.filter(({ verticalId }) => verticalId === zone.postId).map((bore) => halfSeat(bore, job));
    const away = Math.max(0, ...seats) + clearance;
    return { from: zone.from - away, to: zone.to + away, zone };
  });
}

function noWay(from: Mm, blocked: readonly Blocked[], job: Job): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  const found = blocked.find((one) => from >= one.from - job.limits.tapeStep.value && from < one.to) ?? blocked[0];
  const zone = found?.zone;
  const reach =
    found === undefined
      ? ""
      : `no bore has its middle between ${length(found.from, tape)} and ${length(found.to, tape)} there, half the washer or bore of that post and the clearance counted; `;
  const index = job.posts.hardware.findIndex(({ what, from: low }) => what === zone?.what && low === zone.from);
  return {
    severity: "error",
    path: ["posts", "hardware", Math.max(0, index)],
    what: `${zone?.what ?? "hardware"} on ${zone?.postId ?? "a post"} leaves no height for a course within ${length(job.limits.cableSpacing_max.value, tape)} of its neighbour`,
    why: `${reach}a course is level through all posts, and the spacing of cables is limited`,
    fix: "move the hardware or use a smaller one or a smaller washer, have the rail carried from its end or from below instead, or end the opening above or below it",
  };
}

interface Choosing {
  readonly marks: readonly Mm[];
  readonly bottom: Mm;
  readonly top: Mm;
  readonly count: number;
  readonly spacing_max: Mm;
}

interface Way {
  readonly cost: number;
  readonly before: number;
}

/** The heights of `count` courses with the least sum of squared spacings, by dynamic programming over the marks; null: there are none. */
function mostEven({ marks, bottom, top, count, spacing_max }: Choosing): readonly Mm[] | null {
  let ways: readonly (Way | null)[] = marks.map((mark) =>
    mark - bottom <= spacing_max ? { cost: (mark - bottom) ** 2, before: -1 } : null,
  );
  const all = [ways];
  for (let course = 1; course < count; course++) {
    const last = ways;
    ways = marks.map((mark, index) => {
      let best: Way | null = null;
      for (let before = index - 1; before >= 0 && mark - (marks[before] ?? 0) <= spacing_max; before--) {
        const way = last[before];
        const cost = (way?.cost ?? Number.POSITIVE_INFINITY) + (mark - (marks[before] ?? 0)) ** 2;
        if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { cost, before };
      }
      return best;
    });
    all.push(ways);
  }
  let end = -1;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, way] of ways.entries()) {
    const rest = top - (marks[index] ?? 0);
    if (way === null || rest > spacing_max || way.cost + rest ** 2 >= least) continue;
    least = way.cost + rest ** 2;
    end = index;
  }
  if (end < 0) return null;
  const chosen: Mm[] = [];
  for (let course = count - 1; course >= 0; course--) {
    chosen.unshift(marks[end] ?? 0);
    end = all[course]?.[end]?.before ?? -1;
  }
  return chosen;
}
