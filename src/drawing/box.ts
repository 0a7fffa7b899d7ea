// How much paper does something take, and do two things lie on each other?
import type { Point } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";

/** A rectangle on paper, y downwards. */
export interface Box {
  readonly left: Mm;
  readonly top: Mm;
  readonly right: Mm;
  readonly bottom: Mm;
}

/** Four corners of a rectangle that may be turned. */
export type Quad = readonly [Point, Point, Point, Point];

/** Shapes that only touch do not overlap; paper millimetres. */
const TOUCH_mm = 0.01;

export function boxOf(points: readonly Point[]): Box {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

export const unite = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map((box) => box.left)),
  top: Math.min(...boxes.map((box) => box.top)),
  right: Math.max(...boxes.map((box) => box.right)),
  bottom: Math.max(...boxes.map((box) => box.bottom)),
});

export const grow = (box: Box, by: Mm): Box => ({ left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by });

export const quadOf = ({ left, top, right, bottom }: Box): Quad => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];

/** A thin rectangle along a line, as an obstacle for text. */
export function quadAlong(from: Point, to: Point, halfWidth: Mm): Quad {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const across = { x: (-(to.y - from.y) / length) * halfWidth, y: ((to.x - from.x) / length) * halfWidth };
  return [
    { x: from.x + across.x, y: from.y + across.y },
    { x: to.x + across.x, y: to.y + across.y },
    { x: to.x - across.x, y: to.y - across.y },
    { x: from.x - across.x, y: from.y - across.y },
  ];
}

export const inside = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left - TOUCH_mm &&
  inner.top >= outer.top - TOUCH_mm &&
  inner.right <= outer.right + TOUCH_mm &&
  inner.bottom <= outer.bottom + TOUCH_mm;

/** Two convex shapes overlap unless some edge of one has all of the other beyond it. */
export const overlap = (a: Quad, b: Quad): boolean => !separated(a, b) && !separated(b, a);

function separated(a: Quad, b: Quad): boolean {
  return a.some((from, index) => {
    const to = a[(index + 1) % a.length] ?? from;
    const [normalX, normalY] = [to.y - from.y, from.x - to.x];
    const size = Math.hypot(normalX, normalY);
    if (size === 0) return false;
    const reach = (quad: Quad): readonly number[] =>
      quad.map((point) => ((point.x - from.x) * normalX + (point.y - from.y) * normalY) / size);
    const [own, other] = [reach(a), reach(b)];
    return Math.min(...other) >= Math.max(...own) - TOUCH_mm || Math.max(...other) <= Math.min(...own) + TOUCH_mm;
  });
}
