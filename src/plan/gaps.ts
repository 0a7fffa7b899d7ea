// How wide are the openings between cables and rails of one side?
import type { Job } from "../job/job.ts";
import type { Course, Gap } from "./plan.ts";
import type { Opening } from "./rake-plan.ts";

/** Gaps from edge to edge of an opening; a slope of this cosine brings the cables closer together. */
export function gapsOf(
  courses: readonly Course[],
  { opening, cosine }: { readonly opening: Opening; readonly cosine: number },
  job: Job,
): readonly Gap[] {
  const radius = job.cable.diameter / 2;
  const below = job.frame.bottomRail === null ? job.frame.datum : "bottom rail";
  const edges = [
    { name: below, height: opening.bottom, radius: 0 },
    ...courses.map((course) => ({ name: `course ${course.number}`, height: course.height, radius })),
    { name: "top rail", height: opening.top, radius: 0 },
  ];
  return edges.slice(1).map((upper, index) => {
    const lower = edges[index] ?? upper;
    const plumb = upper.height - lower.height;
    const spacing = plumb * cosine;
    return { below: lower.name, above: upper.name, spacing, plumb, clear: spacing - lower.radius - upper.radius };
  });
}
