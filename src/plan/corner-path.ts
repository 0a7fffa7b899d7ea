// How does a cable pass a corner made with two posts?
import type { Job } from "../job/job.ts";
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

/** Setback at which the inner edges of the two posts of a corner touch. */
export const touchingSetback = (turn: Radian | null, job: Job): Mm => (job.posts.section.across / 2) * Math.tan(Math.abs(turn ?? 0) / 2);

/** From the corner point to the near face of each of its posts: as the job says, else where they would touch and a clearance more. */
export const cornerSetback = (turn: Radian | null, job: Job): Mm =>
  job.posts.cornerSetback?.value ?? touchingSetback(turn, job) + job.posts.cornerClearance.value;

/** Narrowest passage between the two posts of a corner, between the edges that face each other. */
export function cornerSlot(options: {
  readonly setback_left: Mm;
  readonly setback_right: Mm;
  readonly turn: Radian;
  readonly across: Mm;
}): Mm {
  const { setback_left, setback_right, turn, across } = options;
  // Corner point at 0,0; the left side comes along x, the right side leaves turned clockwise by `turn`.
  const edge = (sign: number): Mm => {
    const x = setback_right * Math.cos(turn) + sign * (across / 2) * Math.sin(turn) + setback_left;
    const y = -setback_right * Math.sin(turn) + sign * (across / 2) * Math.cos(turn) - (sign * across) / 2;
    return Math.hypot(x, y);
  };
  return Math.min(edge(1), edge(-1));
}
