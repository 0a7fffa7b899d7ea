// Which jobs are planned, but have no sheets that could be trusted yet?
import type { Job } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";

/**
 * Sides that slope: the plan knows their bores, lengths, checks and frame, but schedules, elevations and templates still show every bore
 * at one height, which would be drilled wrong.
 */
export const undrawnProblems = ({ sides }: Pick<Job, "sides">): readonly Problem[] =>
  sides.flatMap(({ rake }, index): readonly Problem[] =>
    rake === null
      ? []
      : [
          {
            severity: "error",
            path: ["guard", "sides", index, "rake"],
            what: "sheets for a side that slopes are not made yet",
            why: "on a slope a bore enters and leaves a post at different heights, which the schedules and templates do not show yet",
            fix: "build the level sides by themselves, without this side; have the sloping one laid out by hand",
          },
        ],
  );
