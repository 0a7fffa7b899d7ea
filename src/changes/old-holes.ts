// How much is left between a new bore and the holes that the issued plan asked for and the new one does not?
import type { Job } from "../job/job.ts";
import type { Bore, Vertical } from "../plan/plan.ts";
import type { Mm } from "../units/quantity.ts";
import { withoutDust } from "../units/round.ts";

interface Beside {
  /** The least between the edges of two holes; below 0 they cut each other. */
  readonly left: Mm;
  /** Too little: less than `limits: wood between bores`, or the old hole lies under the washer. */
  readonly isNear: boolean;
}

/** null where no old hole is in the post. */
export function besideHoles(
  bore: Bore,
  { holes, post, job }: { readonly holes: readonly Bore[]; readonly post: Vertical; readonly job: Job },
): Beside | null {
  const apart = holes.map((hole) => ({ distance: distanceOf(bore, hole, post), radius: radiusOf(hole) }));
  if (apart.length === 0) return null;
  const left = withoutDust(Math.min(...apart.map(({ distance, radius }) => distance - radius - radiusOf(bore))));
  const washer = washerOf(bore, job) / 2;
  const isUnderWasher = washer > 0 && apart.some(({ distance, radius }) => distance < washer + radius);
  return { left, isNear: isUnderWasher || left < job.limits.betweenBores_min.value };
}

/** Square to parallel bores; in a corner post bores may cross, so their heights alone keep them apart. */
function distanceOf(a: Bore, b: Bore, { corner }: Vertical): Mm {
  const up = (a.height - b.height) * Math.cos(a.angle);
  return Math.hypot(up, corner === undefined ? a.offset - b.offset : 0);
}

const radiusOf = ({ diameter, counterbore }: Bore): Mm => Math.max(diameter, counterbore?.diameter ?? 0) / 2;

/** What bears on the face round a bore; 0 where nothing does. */
function washerOf({ kind }: Bore, { fittings: { stud, grip } }: Job): Mm {
  if (kind === "stud end") return stud.washerDiameter.value;
  return kind === "grip end" ? grip.washerDiameter.value : 0;
}
