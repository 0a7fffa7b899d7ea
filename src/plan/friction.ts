// How much of a pull at the nut is left along a run?
import type { Job } from "../job/job.ts";
import { type TensionProfile, tensionProfile } from "../mechanics/corner.ts";
import { strandFriction } from "../tables/friction.ts";
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import type { Bend } from "./plan.ts";
import type { RunGeometry } from "./runs.ts";

interface Rubbing {
  readonly length: Mm;
  readonly bends: readonly Pick<Bend, "at" | "angle">[];
  readonly pull_left: Newton | null;
  readonly pull_right: Newton | null;
}

const profile = ({ bends, ...run }: Rubbing, job: Job): TensionProfile =>
  tensionProfile({
    ...run,
    bends: bends.map(({ at, angle }) => ({ at, angle: angle * frictionShare(angle, job) })),
    friction: job.tightening.friction.value,
    wobble_perMm: job.tightening.wobble_perMm.value,
  });

/** Tension along a run when each of its pulling ends reads `pull`; it scales with the pull. */
export const profileOf = (
  { pathLength, bends, left, right }: Pick<RunGeometry, "pathLength" | "bends" | "left" | "right">,
  pull: Newton,
  job: Job,
): TensionProfile =>
  profile({ length: pathLength, bends, pull_left: left.pulls ? pull : null, pull_right: right.pulls ? pull : null }, job);

/** Of a pull at one end of a run what arrives at the other, by its length and its bends, wherever these are. */
export const farShare = (length: Mm, bends: readonly Radian[], job: Job): number =>
  profile({ length, bends: bends.map((angle) => ({ at: 0, angle })), pull_left: 1, pull_right: null }, job).segments.at(-1)?.tension_to ??
  0;

/** A bend too small for a bushing rubs on bare wood: as if it turned further on a bushing. */
export function frictionShare(angle: Radian, job: Job): number {
  const bushed = job.posts.section.material !== "wood" || angle > job.fittings.bushingAngle.value;
  return bushed ? 1 : Math.max(1, strandFriction("wood").value.nominal / job.tightening.friction.value);
}
