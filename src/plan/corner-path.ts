// How does a cable pass a corner made with two posts?

import { angleBetween3, direction3, length3, type Point3 } from "../geometry/space.ts";
import type { Job } from "../job/job.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import type { Face, SidePlan, Vertical } from "./plan.ts";
import { outsideOf } from "./sleeve.ts";

export interface CornerPath {
  /** Free length between the post it leaves and the post it enters. */
  readonly chord: Mm;
  /** Change of direction where it leaves the left post, and where it enters the right one; positive to the right. */
  readonly angle_left: Radian;
  readonly angle_right: Radian;
}

/** Two sides that meet, and how far from there the near faces of their posts stand, level. */
export interface Joint {
  readonly setback_left: Mm;
  readonly setback_right: Mm;
  readonly turn: Radian;
  readonly slope_left: Radian;
  readonly slope_right: Radian;
}

/** From where the cable leaves the left post to where it enters the right one; x along the left side, z up. */
export const jointChord = ({ setback_left: a, setback_right: b, turn, slope_left, slope_right }: Joint): Point3 => ({
  x: a + b * Math.cos(turn),
  y: -b * Math.sin(turn),
  z: a * Math.tan(slope_left) + b * Math.tan(slope_right),
});

/** The same as `cornerPath` in space, for sides that slope; angles without sign. */
export function jointPath(options: Joint): CornerPath {
  const { turn, slope_left, slope_right } = options;
  if (slope_left === 0 && slope_right === 0) {
    const { chord, angle_left, angle_right } = cornerPath(options);
    return { chord, angle_left: Math.abs(angle_left), angle_right: Math.abs(angle_right) };
  }
  const chord = jointChord(options);
  return {
    chord: length3(chord),
    angle_left: angleBetween3(direction3(0, slope_left), chord),
    angle_right: angleBetween3(chord, direction3(0 - turn, slope_right)),
  };
}

/** A level length along a slope. */
export const alongSlope = (level: Mm, slope: Radian): Mm => (slope === 0 ? level : level / Math.cos(slope));

/** How much higher a line along the slope is on this face of an upright than in its middle. */
export const climbTo = (face: Face, { along, slope }: Pick<Vertical, "along" | "slope">): Mm =>
  slope === 0 ? 0 : ((face === "left" ? -1 : 1) * along * Math.tan(slope)) / 2;

/** Which sides meet at a joint, for `jointPath`. */
export const jointOf = (
  left: Pick<SidePlan, "slope" | "turn"> | undefined,
  right: Pick<SidePlan, "slope"> | undefined,
): Pick<Joint, "turn" | "slope_left" | "slope_right"> => ({
  turn: left?.turn ?? 0,
  slope_left: left?.slope ?? 0,
  slope_right: right?.slope ?? 0,
});

/** The cable leaves one post and enters the other at their faces nearest to the corner point; equal setbacks halve the turn. */
export function cornerPath(options: { readonly setback_left: Mm; readonly setback_right: Mm; readonly turn: Radian }): CornerPath {
  const { setback_left: a, setback_right: b, turn } = options;
  const forward = a + b * Math.cos(turn);
  const sideways = b * Math.sin(turn);
  const angle_left = Math.atan2(sideways, forward);
  return { chord: Math.hypot(forward, sideways), angle_left, angle_right: turn - angle_left };
}

/** Setback at which the inner edges of the two posts of a corner touch. */
export const touchingSetback = (turn: Radian | null, job: Job): Mm => (outsideOf(job).across / 2) * Math.tan(Math.abs(turn ?? 0) / 2);

/** The two posts of a corner, both `along` by `across`, and how far from the corner point their near faces stand. */
interface CornerPair {
  readonly setback_left: Mm;
  readonly setback_right: Mm;
  readonly turn: Radian;
  readonly along: Mm;
  readonly across: Mm;
}

/**
 * How far the two posts of a corner keep apart, square to that face of one of them which keeps them furthest apart:
 * below 0 no face has all of the other post beyond it, so they stand in each other.
 *
 * Source: derived, two rectangles are apart where an edge of one has all of the other on its far side
 */
export function cornerRoom({ setback_left, setback_right, turn, along, across }: CornerPair): Mm {
  const [cos, sin] = [Math.cos(turn), Math.abs(Math.sin(turn))];
  /** Gap between the piece of a line from `near` to `far`, widened by `half`, and another one. */
  const gap = ([near, far, half]: Stretch, from: Mm, to: Mm): Mm =>
    Math.max(Math.min(near, far) - half - to, from - Math.max(near, far) - half);
  /** Seen from one post, with its own near face `own` before the corner point, and the other `other` behind it. */
  const seen = (own: Mm, other: Mm): Mm =>
    Math.max(
      gap([other * cos, (other + along) * cos, (across / 2) * sin], -own - along, -own),
      gap([other * sin, (other + along) * sin, (across / 2) * Math.abs(cos)], -across / 2, across / 2),
    );
  return Math.max(seen(setback_left, setback_right), seen(setback_right, setback_left));
}

type Stretch = readonly [near: Mm, far: Mm, half: Mm];

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
