// Which ends are held on the face of their post, and what hole does their fastening need?
import type { FaceEnd } from "../job/face-end.ts";
import type { Access, Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import type { Bore, Run, RunEnd } from "./plan.ts";

/** Stud and grip bear on the back of their post; this one is an eye that is fastened on the face of a post or pier which the cable comes to. */
export const isOnFace = ({ kind }: Pick<RunEnd, "kind">): boolean => kind === "face" || kind === "anchor";

/** Nothing reaches the back of the post: an end there is on the face, where the job has a fitting for it. */
export const mustBeOnFace = (access: Access, { fittings }: Job): boolean => access === "none" && fittings.face !== null;

/** Runs meet on one post, an end on each of its faces, in place of two posts or two bores. */
export const meetOnFaces = ({ fittings }: Job): boolean => fittings.ends === "on the face";

/** New posts stand in pairs where runs meet, unless these end on the two faces of one post. */
export const meetOnPairs = (job: Job): boolean => job.posts.split === "two posts" && !meetOnFaces(job);

/** What holds an end on the face; a plan has such ends only where the job has it. */
export function faceOf({ fittings }: Job): FaceEnd {
  if (fittings.face === null) throw new RangeError("an end on the face without a fitting for it");
  return fittings.face;
}

/** How deep the hole of an end on the face is: to the point of a lag screw, through the wall of a tube, or as deep as the thread. */
export function faceDepth(postId: string, job: Job): Mm {
  const { fastening } = faceOf(job);
  const { wall } = sectionOfPost(job, postId);
  if (fastening.kind === "lag screw") return fastening.depth.value;
  const solid = fastening.kind === "tapped hole" ? fastening.depth : null;
  const depth = wall ?? solid?.value;
  if (depth === undefined) throw new RangeError(`no depth of the thread in ${postId}`);
  return depth;
}

/** In a tube a blind hole goes through the wall that the cable comes to, and leaves the far one whole. */
export const goesThroughOneWall = ({ kind, verticalId }: Pick<Bore, "kind" | "verticalId">, job: Job): boolean =>
  kind === "face end" && sectionOfPost(job, verticalId).wall !== null;

export interface FaceAt {
  readonly run: Run;
  readonly end: RunEnd;
}

/** Ends on faces of posts, run by run. */
export const faceEndsOf = ({ runs }: { readonly runs: readonly Run[] }): readonly FaceAt[] =>
  runs.flatMap((run) => [run.left, run.right].filter(({ kind }) => kind === "face").map((end) => ({ run, end })));

/** A shorter plain shank goes into its pilot hole: common practice, no source. */
const SHANK_least_mm = 1;

/**
 * Plain shank of a lag screw in the wood, between the face and its thread: the pilot hole is opened to its diameter for its length.
 *
 * @returns length and diameter [mm]; null where there is none to speak of
 * @throws never
 * Source: memory, NDS 2018, 12.1.4.2: a clearance hole as wide and as long as the unthreaded shank
 */
export function plainShankOf({
  runs,
  job,
}: {
  readonly runs: readonly Run[];
  readonly job: Job;
}): { readonly length: Mm; readonly diameter: Mm } | null {
  if (faceEndsOf({ runs }).length === 0) return null;
  const { fastening } = faceOf(job);
  if (fastening.kind !== "lag screw") return null;
  const length = fastening.depth.value - fastening.threadLength.value;
  return length < SHANK_least_mm ? null : { length, diameter: fastening.diameter.value };
}
