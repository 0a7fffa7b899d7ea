// What does the end of a run need in its post: counterbore, offset, place behind it?
import type { Job } from "../job/job.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import { sectionOfPost } from "./as-found.ts";
import type { Face, RunEnd } from "./plan.ts";

/**
 * Depth to which the back of a post is counterbored, so that the body of a gripping fitting lies in the post and its collar bears on
 * a washer on the back face; 0 where the body's bore goes right through instead: in metal, where no drill reaches the back, in a sleeve, where
 * bores of another run cross, and where less than half of the post would be left (common practice, no source).
 */
export function counterboreDepth(end: Pick<RunEnd, "kind" | "access" | "postId" | "isCrossed">, job: Job): Mm {
  if (job.posts.sleeve !== null || end.isCrossed === true) return 0;
  const { material, along } = sectionOfPost(job, end.postId);
  const depth = job.fittings.grip.bodyLength.value;
  return end.kind === "grip" && material === "wood" && end.access === "drill" && depth <= along / 2 ? depth : 0;
}

/** Diameter of the bore that goes right through an end post. */
export function endBore(end: Pick<RunEnd, "kind" | "access" | "postId" | "isCrossed">, job: Job): Mm {
  if (end.kind === "stud") return job.fittings.stud.bore.value;
  return counterboreDepth(end, job) > 0 ? job.fittings.grip.bore.value : job.fittings.grip.boreNoBack.value;
}

/** Diameter of the washer under the nut or the collar of an end, or of the flange on the face. */
const washerOf = (kind: RunEnd["kind"], { fittings }: Job): Mm =>
  kind === "stud" || kind === "grip" ? fittings[kind].washerDiameter.value : (fittings.face?.flange.value ?? 0);

/** Edges of the bevelled washer under an end that is bored at an angle, along the bore. */
export function bevelOf(kind: RunEnd["kind"], slope: Radian, job: Job): { readonly across: Mm; readonly thin: Mm; readonly thick: Mm } {
  const [across, thin] = [washerOf(kind, job), job.fittings.bevelEdge.value];
  return { across, thin, thick: thin + across * Math.tan(Math.abs(slope)) };
}

/** Thickness of that washer in its middle: so much of the stud stands in it; 0 where nut and collar bear on the face itself. */
export function seatOf(kind: RunEnd["kind"], slope: Radian, job: Job): Mm {
  const { thin, thick } = bevelOf(kind, slope, job);
  return slope === 0 ? 0 : (thin + thick) / 2;
}

/**
 * Which edge of a bevelled washer is the thick one. Where the bore rises out of the back face, a plane square to it leans over the face and
 * comes nearest to it at the top: the thick edge is down. It is up where the bore falls outwards.
 */
export const thickEdge = (backFace: Face, slope: Radian): "up" | "down" => ((backFace === "right" ? slope : 0 - slope) > 0 ? "down" : "up");

/** Wood left between the washer of one run and the bore of the other where two runs end on one post (common practice, no source). */
const BETWEEN_BORES_mm = 6.35;

/** How far the bores of two runs that end on one post stand off its middle, one to each side. */
export function endOffset(job: Job): Mm {
  const { stud, grip } = job.fittings;
  const { sleeve } = job.posts;
  const washer = Math.max(stud.washerDiameter.value, grip.washerDiameter.value) + (sleeve?.washerClearance.value ?? 0);
  const bore = Math.max(stud.bore.value, grip.counterbore.value, grip.boreNoBack.value) + (sleeve?.boreClearance.value ?? 0);
  return roundUp((washer / 2 + bore / 2 + BETWEEN_BORES_mm) / 2, job.limits.tapeStep.value);
}
