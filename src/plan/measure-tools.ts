// Which tools measure what is compared with the plan before anything is bored?
import type { Job } from "../job/job.ts";
import { angleDegrees, force, length } from "../units/print.ts";
import { trialPull } from "./frame-members.ts";
import type { Plan } from "./plan.ts";
import type { Line } from "./tools.ts";

/** Every row of the survey that a tape does not read has its tool here. */
export function surveyTools(job: Job): readonly Line[] {
  const { pull, height } = trialPull(job);
  return [
    {
      item: "caliper",
      size: job.units === "inch" ? "reads 1/64 in" : "reads 0.1 mm",
      source: "have",
      note: `cable, fittings, ${job.posts.section.material === "wood" ? "bores in scrap" : "bores in scrap, walls of tubes"}`,
    },
    {
      item: "scale for the lone post, and a strap",
      size: `reads ${force(pull, job.units, { both: false })}`,
      source: "rent",
      note: `at ${length(height, { units: job.units, both: false })} on a post without its rails, as Z-003 says`,
    },
    ...(job.posts.wood === null
      ? []
      : [{ item: "moisture meter for wood", size: "reads whole %", source: "rent", note: "posts, on the day the cables go in" } as const]),
    ...(job.sides.some(({ turn }) => turn !== null && turn !== 0)
      ? [{ item: "angle finder", size: "reads whole degrees", source: "have", note: "turns of the corners" } as const]
      : []),
  ];
}

/** The slope is measured over the whole flight, and carried to posts, rails and guide blocks. */
export function rakeTools(rakes: Plan["rakes"]): readonly Line[] {
  if (rakes.length === 0) return [];
  const surface = rakes.some(({ kind }) => kind === "stair") ? "nosings" : "ramp";
  return [
    { item: "straight board", size: "as long as the slope", source: "have", note: `on the ${surface}: its lower edge is the datum` },
    { item: "angle gauge", size: "reads 0.1 deg", source: "buy", note: `on the board, both ways round: ${slopesOf(rakes)}` },
    { item: "sliding bevel", source: "have", note: "carries the slope to cuts and guide blocks" },
  ];
}

/** Each slope once, without its sign. */
export const slopesOf = (rakes: Plan["rakes"]): string => [...new Set(rakes.map(({ slope }) => angleDegrees(Math.abs(slope))))].join(", ");
