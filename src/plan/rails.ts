// From where to where does each rail reach? One answer for the cut list and for what is drawn.
import type { Mm } from "../units/quantity.ts";
import { leftMouth, rightMouth, supportsOn } from "./corner-post.ts";
import type { SidePlan, Vertical } from "./plan.ts";

/** A stretch of a side, in its stations. */
export interface Reach {
  readonly from: Mm;
  readonly to: Mm;
}

/** Between two posts. */
export interface BetweenPosts extends Reach {
  readonly fromId: string;
  readonly toId: string;
}

/** The bottom rail stands between the posts of a side. Across a corner there is none: a slot that no sphere passes is checked there. */
export function bottomRailReaches(side: SidePlan, verticals: readonly Vertical[]): readonly BetweenPosts[] {
  const posts = supportsOn(side.index, verticals);
  return posts.slice(1).map((post, index) => {
    const before = posts[index] ?? post;
    return { from: rightMouth(before), to: leftMouth(post), fromId: before.id, toId: post.id };
  });
}

/** The top rail lies over the posts: from end post to end post, at a corner to the corner point, where its mitre is cut. */
export const topRailReach = ({ begins, ends, startsAt, endsAt, length }: SidePlan): Reach => ({
  from: begins === null ? 0 : startsAt,
  to: ends === null ? length : endsAt,
});
