// How does a cable pass a corner made with two posts?
import type { Mm, Radian } from "../units/quantity.ts";

export interface CornerPath {
  /** Free length between the post it leaves and the post it enters. */
  readonly chord: Mm;
  /** Change of direction where it leaves the left post, and where it enters the right one; positive to the right. */
  readonly angle_left: Radian;
  readonly angle_right: Radian;
}

/** The cable leaves one post and enters the other at their faces nearest to the corner point; equal setbacks halve the turn. */
export function cornerPath(options: { readonly setback_left: Mm; readonly setback_right: Mm; readonly turn: Radian }): CornerPath {
  const { setback_left: a, setback_right: b, turn } = options;
  const forward = a + b * Math.cos(turn);
  const sideways = b * Math.sin(turn);
  const angle_left = Math.atan2(sideways, forward);
  return { chord: Math.hypot(forward, sideways), angle_left, angle_right: turn - angle_left };
}
