// How many cables, and at what heights are they bored?
import type { Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundDown, roundNearest, roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { gapsOf } from "./gaps.ts";
import type { Course, Gap, SidePlan } from "./plan.ts";
import type { Opening, RakePlan } from "./rake-plan.ts";
import { levelOpening, neverMeets, openingOnRake, railRoom, rakeOf, rakeProblems, spacingPath } from "./rakes.ts";
import { allLevelGaps, crossingProblems, leastSetOff, raise, type SetOff, waysToSetOff } from "./set-off.ts";

export interface CoursePlan {
  readonly courses: readonly Course[];
  /** Of the sides that decide: the level ones, or where there are none the rake that slopes least. */
  readonly gaps: readonly Gap[];
  readonly opening: Opening;
  readonly setOff: SetOff | null;
  readonly rakes: readonly RakePlan[];
}

/**
 * Divides the clear opening evenly, rounds each height to the tape's step and looks at every gap again afterwards. A course has one
 * height, plumb above the walking surface, at every post, so that cables meet wherever the slope changes; on a rake they come closer to
 * each other, by the cosine of its slope. Where the rails of a side lie lower or higher than the opening that is divided, its lowest or
 * highest course moves towards them rather than that more cables close the gap. Where sides are raised by d the opening is divided as if it began d lower: then the gap over the
 * raised cables is d less than their spacing, and so is the one under the others.
 */
export function layOutCourses(sides: readonly SidePlan[], job: Job): Outcome<CoursePlan> {
  const spacing_max = job.limits.cableSpacing_max.value;
  const openings = raked(sides).map((side) => ({ side, opening: openingOnRake(side.slope, job), cosine: Math.cos(side.slope) }));
  const flattest = openings.reduce<(typeof openings)[number] | null>((best, one) => (one.cosine > (best?.cosine ?? 0) ? one : best), null);
  const isLevel = flattest === null || openings.length < sides.length;
  const { opening, cosine } = isLevel ? { opening: levelOpening(job), cosine: 1 } : flattest;
  const { bottom } = opening;
  // Kept as the job has it where it has it: a sum and a difference would leave dust.
  const clear = isLevel ? job.frame.clearOpening : opening.top - opening.bottom;
  if (clear * cosine <= spacing_max) return { value: undefined, problems: [tooLow(clear, job)] };
  const least = leastSetOff(sides, job);
  const first = roundUp((clear * cosine + least) / spacing_max, 1) - 1;
  if (first > COURSES_most) return { value: undefined, problems: [tooMany(first, clear, job)] };
  const reaches = [...(isLevel ? [{ opening, cosine }] : []), ...openings];
  for (let count = first; count <= COURSES_times * first + 1; count++) {
    const ways = waysToSetOff({ clear, count, least }, job).flatMap((by) => {
      const even = heights({ bottom: bottom - by, clear: clear + by, count, step: job.limits.tapeStep.value });
      return [even, ...towardsRails(even, reaches, job)].map((courses) => ({ by, given: courses }));
    });
    for (const { by, given } of ways) {
      const { courses, setOff } = raise(given, { by, least, opening }, job);
      const gaps = gapsOf(courses, { opening, cosine }, job);
      const rakes = openings.map((one) => rakeOf({ ...one, courses, leads: !isLevel && one === flattest }, job));
      const level = allLevelGaps({ gaps, setOff });
      if ([level, ...rakes.map((rake) => rake.gaps)].flat().every((gap) => gap.spacing <= spacing_max + SAME_mm)) {
        const crossing = crossingProblems(courses, setOff, sides, job);
        const problems = [...openingProblems(level, job), ...rakes.flatMap((rake) => rakeProblems(rake, job)), ...crossing];
        return { value: { courses, gaps, opening, setOff, rakes }, problems };
      }
    }
  }
  return { value: undefined, problems: openings.map((one) => neverMeets({ ...one, reference: opening }, job)).slice(0, 1) };
}

interface Reach {
  readonly opening: Opening;
  readonly cosine: number;
}

/**
 * The same courses with the lowest and the highest as near to the rails of every side as the largest spacing asks, the others even between
 * them; none where they already are, or where a bore would cut a rail.
 */
function towardsRails(even: readonly Course[], reaches: readonly Reach[], job: Job): readonly (readonly Course[])[] {
  const [lowest, highest] = [even[0], even.at(-1)];
  if (lowest === undefined || highest === undefined || even.length < 2) return [];
  const { cableSpacing_max, tapeStep } = job.limits;
  const plumb = (square: Mm, { cosine }: Reach): Mm => square / cosine;
  const most = Math.min(...reaches.map((one) => one.opening.bottom + plumb(cableSpacing_max.value, one)));
  const least = Math.max(...reaches.map((one) => one.opening.top - plumb(cableSpacing_max.value, one)));
  const first = Math.min(lowest.height, roundDown(most + SAME_mm, tapeStep.value));
  const last = Math.max(highest.height, roundUp(least - SAME_mm, tapeStep.value));
  const fits = reaches.every((one) => {
    const room = plumb(railRoom(job), one);
    return first - one.opening.bottom >= room && one.opening.top - last >= room;
  });
  if ((first === lowest.height && last === highest.height) || !fits) return [];
  const courses = even.map((course, index): Course => {
    const height = roundNearest(first + ((last - first) * index) / (even.length - 1), tapeStep.value);
    return { ...course, height, moved: height - course.height };
  });
  return [courses];
}

/** With more courses than this times the fewest, a gap beside a rail is not closed by more of them. */
const COURSES_times = 3;

/** No guard has more: two metres at the customary spacing are 26. A sheet names every course beside its side. */
const COURSES_most = 30;

const raked = (sides: readonly SidePlan[]): readonly SidePlan[] => sides.filter(({ slope }) => slope !== 0);

export function heights(options: {
  readonly bottom: Mm;
  readonly clear: Mm;
  readonly count: number;
  readonly step: Mm;
}): readonly Course[] {
  const { bottom, clear, count, step } = options;
  return Array.from({ length: count }, (_, index) => {
    const height_exact = bottom + (clear * (index + 1)) / (count + 1);
    return { number: index + 1, height: roundNearest(height_exact, step), height_exact, moved: 0 };
  });
}

function tooLow(clear: Mm, job: Job): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  return {
    severity: "error",
    path: ["frame", "clear opening"],
    what: `a clear opening of ${length(clear, tape)} is no more than one gap of ${length(job.limits.cableSpacing_max.value, tape)}: there is no room for a cable`,
    fix: "measure between the rails (or from the deck to the top rail) again, or give a smaller `largest cable spacing` under limits",
  };
}

function tooMany(count: number, clear: Mm, job: Job): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  return {
    severity: "error",
    path: ["frame", "clear opening"],
    what: `a clear opening of ${length(clear, tape)} at gaps of at most ${length(job.limits.cableSpacing_max.value, tape)} takes ${count} cables above each other; more than ${COURSES_most} are not planned`,
    fix: "measure between the rails again, look at `largest cable spacing` under limits, or divide the opening by a middle rail and plan the part below it",
  };
}

function openingProblems(gaps: readonly Gap[], job: Job): readonly Problem[] {
  const sphere = job.code.openingSphere;
  const widest = Math.max(...gaps.map((gap) => gap.clear));
  const tape = { units: job.units, style: "tape" } as const;
  const problems: Problem[] = [];
  if (widest >= sphere.value) {
    problems.push({
      severity: "error",
      path: spacingPath(job),
      what: `a clear gap of ${length(widest, tape)} lets the sphere of ${length(sphere.value, tape)} through before any cable moves`,
      fix: "give a smaller `largest cable spacing` under limits; at most 3 in is customary for the 4 in sphere (common practice, no source)",
    });
  }
  if (job.frame.bottomRail !== null && job.frame.gapBelow >= sphere.value) {
    problems.push({
      severity: "error",
      path: ["frame", "gap below"],
      what: `the gap of ${length(job.frame.gapBelow, tape)} under the bottom rail lets the sphere of ${length(sphere.value, tape)} through`,
      fix: "lower the bottom rail",
    });
  }
  return problems;
}
