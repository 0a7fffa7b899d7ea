// Which jobs are planned, but have no sheets that could be trusted yet?
import type { Job } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";

/**
 * Sides that slope: they are planned and drawn, but their sheets have not been read through as a whole, and a number that is drilled
 * must not rest on that.
 */
export const undrawnProblems = ({ sides }: Pick<Job, "sides">): readonly Problem[] =>
  sides.flatMap(({ rake }, index): readonly Problem[] =>
    rake === null
      ? []
      : [
          {
            severity: "error",
            path: ["guard", "sides", index, "rake"],
            what: "sheets for a side that slopes are not released yet",
            why: "on a slope every bore enters and leaves its post at different heights, and the sheets that say so have not been proven yet",
            fix: "build the level sides by themselves, without this side; have the sloping one laid out by hand",
          },
        ],
  );
