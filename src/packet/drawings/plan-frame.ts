// How does each side lie on paper, seen from above, and which of its two faces takes the labels?
import type { View } from "../../drawing/paper.ts";
import { go } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";

/** A side on paper: unit steps along it and away from the deck. */
export interface SideFrame {
  readonly side: SidePlan;
  readonly from: Point;
  readonly to: Point;
  readonly along: Point;
  readonly outward: Point;
  readonly length: Mm;
}

/** 1: away from the deck. -1: towards it. */
export type FaceSign = 1 | -1;

export const framesOf = (plan: Plan, view: View): readonly SideFrame[] =>
  plan.sides.map((side) => ({
    side,
    from: view.point(side.from),
    to: view.point(side.to),
    along: view.step(side.direction),
    outward: view.step(side.direction + Math.PI / 2),
    length: side.length * view.ratio,
  }));

/** A place `u` along a side and `v` off it, away from the deck, in paper mm. */
export const spot = (frame: SideFrame, u: Mm, v: Mm): Point => go(go(frame.from, frame.along, u), frame.outward, v);

/** Labels stand where the sides spread apart: outside a deck with outside corners, on it where inside corners prevail. */
export const labelFace = (plan: Plan): FaceSign => (plan.job.sides.reduce((sum, side) => sum + (side.turn ?? 0), 0) >= 0 ? 1 : -1);

/** Paper lost at each end of a band of depth `depth` on one face, where the next side folds towards it. */
export function lostAtEnds(plan: Plan, side: SidePlan, face: FaceSign, depth: Mm): { readonly start: Mm; readonly end: Mm } {
  const lost = (turn: number | null | undefined): Mm => {
    const closing = -face * (turn ?? 0);
    return closing > 0 ? depth * Math.tan(Math.min(closing, 2.4) / 2) : 0;
  };
  return { start: lost(plan.job.sides[side.index - 1]?.turn), end: lost(plan.job.sides[side.index]?.turn) };
}

/** The corners of a post or spacer. */
export function footprint(vertical: Vertical, view: View): readonly Point[] {
  const centre = view.point(vertical.centre);
  const along = view.step(vertical.direction);
  const outward = view.step(vertical.direction + Math.PI / 2);
  const [a, b] = [(vertical.along / 2) * view.ratio, (vertical.across / 2) * view.ratio];
  return (
    [
      [-a, -b],
      [a, -b],
      [a, b],
      [-a, b],
    ] as const
  ).map(([u, v]) => go(go(centre, along, u), outward, v));
}

/** The line that keeps a distance `v` off the sides from one to another, corners mitred. */
export function offsetCorners(frames: readonly SideFrame[], v: Mm): readonly Point[] {
  return frames.slice(1).map((frame, index) => {
    const before = frames[index] ?? frame;
    const turn = before.side.turn ?? 0;
    return go(go(frame.from, frame.outward, v), frame.along, -v * Math.tan(turn / 2));
  });
}

/** Sides that are joined by corners, from left to right. */
export function stretchesBetweenEnds(frames: readonly SideFrame[]): readonly (readonly [SideFrame, ...SideFrame[]])[] {
  const stretches: [SideFrame, ...SideFrame[]][] = [];
  for (const frame of frames) {
    const last = stretches.at(-1);
    if (last === undefined || frame.side.begins !== null) stretches.push([frame]);
    else last.push(frame);
  }
  return stretches;
}
