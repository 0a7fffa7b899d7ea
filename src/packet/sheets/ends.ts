// How is a run begun and ended: where does the cable go in, and which ends are fitted once it lies in its bores?
import type { Run, RunEnd } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import { faceName } from "../wording.ts";

/** The end where reeving begins: the one that pulls. Its stud is on the cable before the cable goes in. */
export const startOf = (run: Run): RunEnd => (run.left.pulls ? run.left : run.right);
export const stopOf = (run: Run): RunEnd => (run.left.pulls ? run.right : run.left);

/** With room behind the post the cable goes in there; without, its plain end sets out in the first bay and the stud follows outward. */
export const startsInside = (run: Run): boolean => startOf(run).access !== "drill";

export function startWords(run: Run): Text {
  const { postId, backFace } = startOf(run);
  return startsInside(run)
    ? `${postId} (from inside, stud out at its ${faceName[backFace]})`
    : `${postId} (in at its ${faceName[backFace]})`;
}

export interface SiteEnds {
  /** Second studs, fitted when the cable has been pulled hand-tight and cut. */
  readonly studs: readonly RunEnd[];
  readonly grips: readonly RunEnd[];
}

export function siteEnds(run: Run): SiteEnds {
  const end = stopOf(run);
  return end.kind === "stud" ? { studs: [end], grips: [] } : { studs: [], grips: [end] };
}
