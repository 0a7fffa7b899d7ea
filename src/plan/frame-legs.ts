// Where does a run lie on one side of the frame, and how much of its pull arrives there?
import type { Job } from "../job/job.ts";
import { leastBetween } from "../mechanics/corner.ts";
import type { Radian } from "../units/quantity.ts";
import { profileOf } from "./friction.ts";
import type { SidePlan, Vertical } from "./plan.ts";
import type { RunGeometry } from "./runs.ts";

/** A run's part on one side. */
export interface Leg {
  readonly run: RunGeometry;
  /** Number of the run in its group. */
  readonly index: number;
  /** Its posts among those of the side. */
  readonly from: number;
  readonly to: number;
  readonly share: number;
  /** Turn of the cable at the corner post where the leg begins or ends; 0 where the run is anchored. */
  readonly turnLeft: Radian;
  readonly turnRight: Radian;
}

/** The sides of a line and their posts. */
interface OnLine {
  readonly sides: readonly Pick<SidePlan, "id">[];
  readonly posts: readonly Vertical[];
}

export function legOf(run: RunGeometry, index: number, { sides, posts }: OnLine, job: Job): Leg {
  // By their ids: a post that two runs share is laid before anybody knows that it is shared.
  const placeOf = (id: string): number => posts.findIndex((post) => post.id === id);
  const own = run.members.filter(({ id }) => placeOf(id) >= 0);
  const [first, last] = [own[0], own.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError(`run ${run.id} has no post on its side`);
  const unit = profileOf(run, 1, job);
  const spans = run.spans.filter(({ bay }) => bay.kind !== "corner" && sides.some(({ id }) => id === bay.sideId));
  const shares = spans.map(({ from, to }) => leastBetween(unit, from, to));
  const turnAt = (post: Vertical): Radian => {
    if (post.id === run.left.postId || post.id === run.right.postId) return 0;
    return run.bends.find((bend) => bend.postId === post.id)?.angle ?? 0;
  };
  return {
    run,
    index,
    from: placeOf(first.id),
    to: placeOf(last.id),
    share: shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length),
    turnLeft: turnAt(first),
    turnRight: turnAt(last),
  };
}
