// How many cables, and at what heights are they bored?
import type { Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundNearest, roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { Course, Gap } from "./plan.ts";

export interface CoursePlan {
  readonly courses: readonly Course[];
  readonly gaps: readonly Gap[];
  readonly opening: { readonly bottom: Mm; readonly top: Mm; readonly guardHeight: Mm };
}

/** Divides the clear opening evenly, rounds each height to the tape's step and looks at every gap again afterwards. */
export function layOutCourses(job: Job): Outcome<CoursePlan> {
  const bottom = job.frame.gapBelow + (job.frame.bottomRail?.depth ?? 0);
  const top = bottom + job.frame.clearOpening;
  const opening = { bottom, top, guardHeight: top + job.frame.topRail.depth };
  const spacing_max = job.limits.cableSpacing_max.value;
  const clear = job.frame.clearOpening;
  if (clear <= spacing_max) return { value: undefined, problems: [tooLow(job)] };
  for (let count = roundUp(clear / spacing_max, 1) - 1; ; count++) {
    const courses = heights({ bottom, clear, count, step: job.limits.tapeStep.value });
    const gaps = gapsOf(courses, opening, job);
    if (gaps.every((gap) => gap.spacing <= spacing_max + SAME_mm)) {
      return { value: { courses, gaps, opening }, problems: openingProblems(gaps, job) };
    }
  }
}

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

export function gapsOf(courses: readonly Course[], opening: CoursePlan["opening"], job: Job): readonly Gap[] {
  const radius = job.cable.diameter / 2;
  const below = job.frame.bottomRail === null ? job.frame.datum : "bottom rail";
  const edges = [
    { name: below, height: opening.bottom, radius: 0 },
    ...courses.map((course) => ({ name: `course ${course.number}`, height: course.height, radius })),
    { name: "top rail", height: opening.top, radius: 0 },
  ];
  return edges.slice(1).map((upper, index) => {
    const lower = edges[index] ?? upper;
    const spacing = upper.height - lower.height;
    return { below: lower.name, above: upper.name, spacing, clear: spacing - lower.radius - upper.radius };
  });
}

function tooLow(job: Job): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  return {
    severity: "error",
    path: ["frame", "clear opening"],
    what: `a clear opening of ${length(job.frame.clearOpening, tape)} is no more than one gap of ${length(job.limits.cableSpacing_max.value, tape)}: there is no room for a cable`,
    fix: "measure between the rails (or from the deck to the top rail) again, or give a smaller `largest cable spacing` under limits",
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
      path: ["limits", "largest cable spacing"],
      what: `a clear gap of ${length(widest, tape)} lets the sphere of ${length(sphere.value, tape)} through before any cable moves`,
      fix: "give a smaller largest cable spacing; at most 3 in is customary for the 4 in sphere (common practice, no source)",
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
