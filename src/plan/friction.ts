// How much of a pull at the nut is left along a run?
import type { Job } from "../job/job.ts";
import { type TensionProfile, tensionProfile } from "../mechanics/corner.ts";
import { strandFriction } from "../tables/friction.ts";
import type { Newton, Radian } from "../units/quantity.ts";
import type { RunGeometry } from "./runs.ts";

/** Tension along a run when each of its pulling ends reads `pull`; it scales with the pull. */
export function profileOf(run: RunGeometry, pull: Newton, job: Job): TensionProfile {
  return tensionProfile({
    length: run.pathLength,
    bends: run.bends.map(({ at, angle }) => ({ at, angle: angle * frictionShare(angle, job) })),
    friction: job.tightening.friction.value,
    wobble_perMm: job.tightening.wobble_perMm.value,
    pull_left: run.left.pulls ? pull : null,
    pull_right: run.right.pulls ? pull : null,
  });
}

/** A bend too small for a bushing rubs on bare wood: as if it turned further on a bushing. */
export function frictionShare(angle: Radian, job: Job): number {
  const bushed = job.posts.section.material !== "wood" || angle > job.fittings.bushingAngle.value;
  return bushed ? 1 : Math.max(1, strandFriction("wood").value.nominal / job.tightening.friction.value);
}
