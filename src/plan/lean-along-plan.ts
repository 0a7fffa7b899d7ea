// Posts that lean along their sides: which bays and cables become longer, now that the heights of the courses are known?
import type { Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { slantOf } from "./as-found.ts";
import { layRun } from "./lay-run.ts";
import { type LeanAlong, longestLevel, longestMore, slantAt, standParallel } from "./lean-along.ts";
import type { Bay, Course, SidePlan, Vertical } from "./plan.ts";
import { type Layout, orderLengthOf, type RunGeometry } from "./runs.ts";

interface LaidOut extends Layout {
  readonly geometries: readonly RunGeometry[];
}

/** The course at whose height the stations of posts that lean along their sides are read: the middle one, of two the lower. */
export const middleCourse = <T>(courses: readonly T[]): T => {
  const middle = courses[(courses.length - 1) >> 1];
  if (middle === undefined) throw new RangeError("a guard without courses");
  return middle;
};

/**
 * Bays and runs as they are between posts that lean along their sides, all lengths in mm: the free length of a bay and the length of a run
 * are those of the longest of its cables. The width of a post along a level bore is taken as it is square to it: up to 1 in 20 they differ
 * by 1/800.
 * @refuses a lean on a slope, at a corner, at a change of slope or at a wall, and a run that no ready length reaches any more.
 */
export function leaningAlong<T extends LaidOut>(layout: T, courses: readonly Course[], job: Job): Outcome<T> {
  const verticals = layout.verticals.map((vertical) => leaningOne(vertical, courses, job));
  const problems = verticals.flatMap((vertical) => refusedLean(vertical, layout.sides, job));
  if (problems.length > 0) return { value: undefined, problems };
  if (verticals.every(({ leansAlong }) => leansAlong === undefined)) return { value: layout, problems };
  const bays = layout.bays.map((bay) => longestBay(bay, verticals, courses));
  const geometries = layout.geometries.map((run) => ({
    ...run,
    ...layRun({ left: run.left, right: run.right, layout: { sides: layout.sides, verticals, bays } }),
  }));
  const tooLong = geometries.filter(({ outsideLength }) => orderLengthOf(outsideLength, job) === null).map((run) => beyondReady(run, job));
  return tooLong.length > 0 ? { value: undefined, problems: tooLong } : { value: { ...layout, verticals, bays, geometries }, problems };
}

function leaningOne(vertical: Vertical, courses: readonly Course[], job: Job): Vertical {
  const slant = slantOf(job, vertical.id);
  if (slant === 0) return vertical;
  const { height } = middleCourse(courses);
  const at = (course: Course | undefined): Mm => slantAt({ slant, height }, course?.height ?? height);
  const leansAlong: LeanAlong = { slant, height, low: at(courses[0]), high: at(courses.at(-1)) };
  return { ...vertical, leansAlong };
}

/** What is not planned: where the cables turn or slope, and where a gap beside the post is open to the sphere. */
function refusedLean(
  { id, role, slope, sideIndex, station, corner, leansAlong }: Vertical,
  sides: readonly SidePlan[],
  job: Job,
): readonly Problem[] {
  if (leansAlong === undefined) return [];
  const side = sides[sideIndex];
  const path = [
    "posts",
    "as found",
    job.posts.asFound.findIndex((one) => one.post === id),
    "leans",
    leansAlong.slant > 0 ? "right" : "left",
  ];
  const refuse = (where: string, why: string): readonly Problem[] => [
    {
      severity: "error",
      path,
      what: `${id} leans along the guard ${where}, which is not planned here`,
      why,
      fix: `set ${id} plumb or replace it`,
    },
  ];
  if (slope !== 0 || role === "transition") return refuse("on a slope", "there each course meets it at a height of its own");
  if (role === "corner" || corner !== undefined) return refuse("at a corner", "there each course would turn by another angle");
  const end = role !== "end" || side === undefined ? null : 2 * station < side.startsAt + side.endsAt ? side.begins : side.ends;
  if (end?.kind === "wall") return refuse("beside a wall", "the gap between them would change with height, and is checked once");
  return [];
}

/** The bay with the free length of its longest cable, and the course that has it. */
function longestBay(bay: Bay, verticals: readonly Vertical[], courses: readonly Course[]): Bay {
  const [left, right] = [bay.leftId, bay.rightId].map((id) => verticals.find((one) => one.id === id));
  if (standParallel(left, right)) return bay;
  const level = longestLevel(left, right);
  const course = level === "low" ? courses[0] : level === "high" ? courses.at(-1) : middleCourse(courses);
  return { ...bay, free: roundTo(bay.free + longestMore(left, right), 6), longestCourse: course?.number ?? 1 };
}

const beyondReady = ({ id, outsideLength }: RunGeometry, job: Job): Problem => ({
  severity: "error",
  path: ["supply", "lengths"],
  what: `run ${id} is ${length(outsideLength, { units: job.units, style: "feet" })} long at the course where its end posts lean apart, more than the longest cable to be had`,
  fix: "add a longer cable under supply, or set the end posts plumb",
});
