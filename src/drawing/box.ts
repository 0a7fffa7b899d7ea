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

export const boxOf = (points: readonly Point[]): Box => boxOfLines([points]);

/** Loops, not lists: boxes are taken of every line and every text. */
export function boxOfLines(lines: readonly (readonly Point[])[]): Box {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const points of lines) {
    for (const { x, y } of points) {
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return { left, top, right, bottom };
}

export function unite(items: readonly { readonly box: Box }[]): Box {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const { box } of items) {
    if (box.left < left) left = box.left;
    if (box.right > right) right = box.right;
    if (box.top < top) top = box.top;
    if (box.bottom > bottom) bottom = box.bottom;
  }
  return { left, top, right, bottom };
}

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
export const overlap = (a: Quad, b: Quad): boolean => meet(boxOf(a), boxOf(b)) && !separated(a, b) && !separated(b, a);

/** Whether two rectangles meet: settles nearly all pairs of the shapes inside them. */
export const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether an edge of `a` has all of `b` on its far side, whichever way round `a` is listed. */
function separated(a: Quad, b: Quad): boolean {
  for (let index = 0; index < a.length; index++) {
    const from = a[index] ?? a[0];
    const to = a[(index + 1) % a.length] ?? a[0];
    const normalX = to.y - from.y;
    const normalY = from.x - to.x;
    const size = Math.hypot(normalX, normalY);
    if (size === 0) continue;
    const own = reach(a, from, normalX / size, normalY / size);
    const other = reach(b, from, normalX / size, normalY / size);
    if (other.least >= own.most - TOUCH_mm || other.most <= own.least + TOUCH_mm) return true;
  }
  return false;
}

/** How far the corners of a shape lie from a point, along a unit step. */
function reach(shape: Quad, from: Point, stepX: number, stepY: number): { readonly least: Mm; readonly most: Mm } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { x, y } of shape) {
    const along = (x - from.x) * stepX + (y - from.y) * stepY;
    if (along < least) least = along;
    if (along > most) most = along;
  }
  return { least, most };
}
