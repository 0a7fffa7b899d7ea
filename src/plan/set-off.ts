// Where the bores of two runs cross in one corner post: how much higher do the cables of every second stretch lie?
import type { Job } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundDown, roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { gapsOf } from "./gaps.ts";
import type { Course, Gap, SidePlan } from "./plan.ts";
import type { Opening } from "./rake-plan.ts";

/** Cables from one corner post whose bores are set off to the next lie higher than those before it, then low again. */
export interface SetOff {
  /** Heights of raised sides over those of the others: on a mark of the tape. */
  readonly by: Mm;
  /** The least by which two bores that cross are set off, from middle to middle, before rounding. */
  readonly least: Mm;
  /** Of the raised sides. */
  readonly gaps: readonly Gap[];
}

/** Sides and runs know whether their cables lie raised. */
export interface Level {
  readonly isRaised?: true;
}

/** Height at which a course is bored on a side or for a run. */
export const courseHeight = ({ height, raised }: Pick<Course, "height" | "raised">, { isRaised }: Level): Mm =>
  isRaised === true ? (raised ?? height) : height;

/** All heights of a course, from the lowest up. */
export const levelsOf = ({ height, raised }: Pick<Course, "height" | "raised">): readonly Mm[] =>
  raised === undefined ? [height] : [height, raised];

/** Gaps between the cables and rails of a level side. */
export const levelGaps = (plan: { readonly gaps: readonly Gap[]; readonly setOff: SetOff | null }, { isRaised }: Level): readonly Gap[] =>
  isRaised === true ? (plan.setOff?.gaps ?? plan.gaps) : plan.gaps;

/** "between course 10 and top rail"; where some sides are raised also on which this opening is. */
export function whereGap(gap: Gap, { sides, setOff }: { readonly sides: readonly SidePlan[]; readonly setOff: SetOff | null }): string {
  const between = `between ${gap.below} and ${gap.above}`;
  if (setOff === null) return between;
  const ids = sides.filter(({ isRaised }) => (isRaised === true) === setOff.gaps.includes(gap)).map(({ id }) => id);
  return `${between}, ${ids.length === 1 ? "side" : "sides"} ${ids.join(", ")}`;
}

/** Of the level sides together: those of the guard, and of its raised sides. */
export const allLevelGaps = ({ gaps, setOff }: { readonly gaps: readonly Gap[]; readonly setOff: SetOff | null }): readonly Gap[] => [
  ...gaps,
  ...(setOff?.gaps ?? []),
];

/** Widest hole that an end behind a corner post may need; its grips have no counterbore. */
export const widestEndBore = ({ fittings: { stud, grip } }: Pick<Job, "fittings">): Mm => Math.max(stud.bore.value, grip.boreNoBack.value);

/**
 * From the middle of a bore to that of one which crosses it at another height: half of each, and the wood between them.
 *
 * @returns [mm]; 0 where no side is raised
 * @throws never
 */
export const leastSetOff = (sides: readonly Level[], job: Job): Mm =>
  sides.some(({ isRaised }) => isRaised) ? widestEndBore(job) + job.limits.betweenBores_min.value : 0;

/**
 * By how much N courses may be set off, the better way first: c / (2 N + 1) puts each bore half-way between two of the other side, but no
 * more than leaves their spacing, (c + d) / (N + 1), within the largest; else the least.
 *
 * @param clear - of the opening that they fill [mm]
 * @returns [mm], on marks of the tape
 * @throws never
 */
export function waysToSetOff(
  { clear, count, least }: { readonly clear: Mm; readonly count: number; readonly least: Mm },
  job: Job,
): readonly Mm[] {
  if (least === 0) return [0];
  const step = job.limits.tapeStep.value;
  const lowest = roundUp(least, step);
  const half = Math.min(clear / (2 * count + 1), (count + 1) * job.limits.cableSpacing_max.value - clear);
  const even = half > lowest ? roundDown(half, step) : lowest;
  return even > lowest ? [even, lowest] : [lowest];
}

/** The courses with their raised heights, and what is left beside these; null where none is raised. */
export function raise(
  courses: readonly Course[],
  { by, least, opening }: Pick<SetOff, "by" | "least"> & { readonly opening: Opening },
  job: Job,
): { readonly courses: readonly Course[]; readonly setOff: SetOff | null } {
  if (by === 0) return { courses, setOff: null };
  const raised = courses.map((course): Course & { readonly raised: Mm } => ({ ...course, raised: course.height + by }));
  const gaps = gapsOf(
    raised.map((course) => ({ ...course, height: course.raised })),
    { opening, cosine: 1 },
    job,
  );
  return { courses: raised, setOff: { by, least, gaps } };
}

/** Least from the middle of a bore to that of a crossing one, above it or below. */
export function nearestCrossing(courses: readonly Course[], by: Mm): Mm {
  const spacings = courses.slice(1).map(({ height }, below) => height - (courses[below]?.height ?? 0));
  return Math.min(by, ...spacings.map((spacing) => spacing - by));
}

/** Bores of one side that come too near to those of the other, in whatever way they are set off. */
export function crossingProblems(
  courses: readonly Course[],
  setOff: SetOff | null,
  sides: readonly SidePlan[],
  job: Job,
): readonly Problem[] {
  if (setOff === null || nearestCrossing(courses, setOff.by) >= setOff.least - SAME_mm) return [];
  const tape = { units: job.units, style: "tape" } as const;
  const index = sides.findIndex((side) => job.sides[side.index]?.corner === SET_OFF);
  return [
    {
      severity: "error",
      path: ["guard", "sides", index, "corner"],
      what: `cables so close leave no room in the corner post for a bore of the other side between two of them: each needs ${length(setOff.least, tape)} from middle to middle to the next`,
      fix: "allow a larger `largest cable spacing` under limits, use fittings with smaller bores, or make the corner with two posts (corner: two posts)",
    },
  ];
}

/** The corner of the job file at which heights change. */
export const SET_OFF = "one post, bores set off";

/** Whether the cables of some sides lie raised. */
export const isSetOff = ({ sides }: Pick<Job, "sides">): boolean => sides.some(({ corner }) => corner === SET_OFF);

/** Whether the cables of a side lie raised: behind the first such corner, and behind every second one after it. */
export const levelAt = ({ sides }: Job, index: number): Level =>
  sides.slice(0, index).filter(({ corner }) => corner === SET_OFF).length % 2 === 1 ? { isRaised: true } : {};
