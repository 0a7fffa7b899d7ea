// How are upright things in space seen from above, and which of their faces?
import { coveredStrokes, type Part, polygon } from "../../drawing/shape.ts";
import type { Point3 } from "../../geometry/space.ts";
import { along, cross, dot, type Point, subtract } from "../../geometry/vector.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm, Radian } from "../../units/quantity.ts";

/** So far the eye looks down. */
const TILT_rad: Radian = (24 * Math.PI) / 180;
/** Directions that are tried, so that no side is seen from its end. */
const TRIES = 24;
/** Where things are seen from: unit steps into the picture and to its right. */
export interface Eye {
  readonly into: Point;
  readonly right: Point;
}

/** A unit step. */
export const stepTo = (direction: Radian): Point => along({ x: 0, y: 0 }, direction, 1);

/** From the walking surface towards the guard, turned until the side that is seen most from its end is seen as little so as it can be. */
export function eyeOf({ sides }: Plan): Eye {
  const outward = sides.map(({ direction, length }) => ({ step: stepTo(direction + Math.PI / 2), length }));
  const sum = outward.reduce((all, { step, length }) => ({ x: all.x + step.x * length, y: all.y + step.y * length }), { x: 0, y: 0 });
  const middle = Math.atan2(sum.y, sum.x);
  const tries = Array.from({ length: TRIES }, (_, index) => middle + ((index - TRIES / 2 + 0.5) / TRIES) * Math.PI);
  const seenLeast = (direction: Radian): number => {
    const right = stepTo(direction - Math.PI / 2);
    return Math.min(...sides.map((side) => Math.abs(dot(right, stepTo(side.direction)))));
  };
  // A straight guard is turned a little, so that it is seen to have depth.
  const wished = (direction: Radian): number => Math.min(seenLeast(direction), FULL_share);
  const best = tries.reduce((chosen, one) => (wished(one) > wished(chosen) + EVEN ? one : chosen));
  return { into: stepTo(best), right: stepTo(best - Math.PI / 2) };
}

/** Of its length, as much as a side needs to show. */
const FULL_share = 0.94;
const EVEN = 1e-9;

/** Where a point is seen, y up: without perspective, so that what is parallel stays so. */
export const seen = (eye: Eye, point: Point3): Point => ({
  x: dot(eye.right, point),
  y: point.z * Math.cos(TILT_rad) + dot(eye.into, point) * Math.sin(TILT_rad),
});

export interface Prism {
  /** Its foot, counter-clockwise. */
  readonly ring: readonly Point3[];
  readonly low: Mm;
  readonly high: Mm;
  /** For each edge of the ring, whether the prism ends there; all of them when not said. */
  readonly drawnEdges?: readonly boolean[];
}

/** The faces of an upright prism that are seen from above: the sides that look towards the eye, and its top. */
export function prism(
  { ring, low, high, drawnEdges }: Prism,
  eye: Eye,
  at: (point: Point3) => Point,
  pen: "outline" | "edge" | "thin",
): readonly Part[] {
  const raised = (point: Point3, by: Mm): Point => at({ ...point, z: point.z + by });
  const isDrawn = (index: number): boolean => drawnEdges?.[index] ?? true;
  const count = ring.length;
  const sides = ring.flatMap((from, index): readonly Part[] => {
    const to = ring[(index + 1) % count] ?? from;
    // The ring runs counter-clockwise, so its faces look to the right of the way along it.
    const isSeen = cross(subtract(to, from), eye.into) > 0;
    if (!isSeen || !isDrawn(index)) return [];
    const face = [raised(from, low), raised(to, low), raised(to, high), raised(from, high)];
    const [a, b, c, d] = face as [Point, Point, Point, Point];
    const before = isDrawn((index + count - 1) % count) ? [[d, a]] : [];
    const after = isDrawn((index + 1) % count) ? [[b, c]] : [];
    return [polygon(face, { pen: null, fill: "white" }), coveredStrokes(pen, [[a, b], [c, d], ...before, ...after])];
  });
  const top = ring.map((point) => raised(point, high));
  const edges = top.flatMap((from, index) => (isDrawn(index) ? [[from, top[(index + 1) % count] ?? from]] : []));
  return [...sides, polygon(top, { pen: null, fill: "white" }), coveredStrokes(pen, edges)];
}
