// Posts that lean along their sides: which bays and cables become longer, now that the heights of the courses are known?
import type { GuardEnd, Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { slantOf } from "./as-found.ts";
import { layRun } from "./lay-run.ts";
import { longestLevel, longestMore, slantAt, standParallel } from "./lean-along.ts";
import type { Bay, Course, SidePlan, Vertical } from "./plan.ts";
import type { Opening } from "./rake-plan.ts";
import { type Layout, orderLengthOf, type RunGeometry } from "./runs.ts";

interface LaidOut extends Layout {
  readonly geometries: readonly RunGeometry[];
}

interface Heights {
  readonly courses: readonly Course[];
  readonly opening: Pick<Opening, "guardHeight">;
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
 * @refuses a lean on a slope, at a corner or at a change of slope, and a run that no ready length reaches any more.
 */
export function leaningAlong<T extends LaidOut>(layout: T, { courses, opening }: Heights, job: Job): Outcome<T> {
  const verticals = layout.verticals.map((vertical) => leaningOne(vertical, { ...layout, courses, opening }, job));
  const problems = verticals.flatMap((vertical) => refusedLean(vertical, job));
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

function leaningOne(vertical: Vertical, { courses, opening, sides }: Heights & Pick<Layout, "sides">, job: Job): Vertical {
  const slant = slantOf(job, vertical.id);
  if (slant === 0) return vertical;
  const { height } = middleCourse(courses);
  const at = (level: Mm): Mm => slantAt({ slant, height }, level);
  const [low, high] = [at(courses[0]?.height ?? height), at(courses.at(-1)?.height ?? height)];
  const { end, towards } = endAt(vertical, sides[vertical.sideIndex]);
  const gap = end?.gap ?? null;
  const widths = (...shifts: readonly Mm[]): readonly Mm[] => shifts.map((shift) => roundTo((gap ?? 0) - towards * shift, 6));
  const beside = {
    gap: { widest: Math.max(...widths(at(0), at(opening.guardHeight))), narrowest: Math.min(...widths(low, high)) },
  };
  return { ...vertical, leansAlong: { slant, height, low, high, ...(gap === null ? {} : beside) } };
}

/** The end of the guard at which a post stands, and whether that is towards its left or its right. */
function endAt({ role, station }: Vertical, side: SidePlan | undefined): { readonly end: GuardEnd | null; readonly towards: -1 | 1 } {
  if (role !== "end" || side === undefined) return { end: null, towards: 1 };
  return 2 * station < side.startsAt + side.endsAt ? { end: side.begins, towards: -1 } : { end: side.ends, towards: 1 };
}

/** What is not planned: where the cables turn or slope. */
function refusedLean({ id, role, slope, corner, leansAlong }: Vertical, job: Job): readonly Problem[] {
  if (leansAlong === undefined) return [];
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
