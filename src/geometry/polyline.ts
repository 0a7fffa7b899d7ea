// Where do the corners of a path of straight sides lie, how long is it, and does it run into itself?
import type { Mm, Radian } from "../units/quantity.ts";
import { along, cross, distance, dot, length, type Point, scale, subtract } from "./vector.ts";

/** Two computed points closer than this are one; far below anything that is measured on site. */
const SAME_mm = 1e-6;

/**
 * Corner points of a path given by its sides: p(i+1) = p(i) + l(i) (cos h(i), sin h(i)), h(i+1) = h(i) - turn(i).
 *
 * @param sides - length [mm] and turn at the far end, positive to the right as seen from above [rad]; shape (sides); the last turn is ignored
 * @param start - first corner point [mm]
 * @param heading - direction of the first side, counter-clockwise from x [rad]
 * @returns corner points [mm], shape (sides + 1), and the heading of each side [rad], shape (sides)
 * @throws never
 * Source: derived, polar coordinates
 */
export function sidesToPoints(
  sides: readonly { readonly length: Mm; readonly turn: Radian }[],
  start: Point = { x: 0, y: 0 },
  heading: Radian = 0,
): { readonly points: Point[]; readonly headings: Radian[] } {
  const points = [start];
  const headings: Radian[] = [];
  let [point, direction] = [start, heading];
  for (const side of sides) {
    point = along(point, direction, side.length);
    points.push(point);
    headings.push(direction);
    direction -= side.turn;
  }
  return { points, headings };
}

/**
 * Length of a path through its corner points: sum of |p(i+1) - p(i)|.
 *
 * @param points - corner points in order [mm], shape (points)
 * @returns length; 0 for fewer than two points [mm]
 * @throws never
 * Source: derived, Pythagoras
 */
export function pathLength(points: readonly Point[]): Mm {
  return segmentsOf(points).reduce((sum, { from, to }) => sum + distance(from, to), 0);
}

/**
 * The first place where a path crosses or touches itself, in the order in which the path is walked.
 * Two sides that are no neighbours may not even touch; two neighbours may not fold back onto each other.
 *
 * @param points - corner points in order [mm], shape (points)
 * @returns numbers of the two segments, from 0, the earlier one first [count], or null when the path is clear of itself
 * @throws never
 * Valid: distances below 1e-6 mm count as touching
 * Source: derived, orientation of point triples
 */
export function firstSelfCrossing(points: readonly Point[]): { readonly first: number; readonly second: number } | null {
  const segments = segmentsOf(points);
  for (const [second, later] of segments.entries()) {
    for (const [first, earlier] of segments.slice(0, second).entries()) {
      const meets = first === second - 1 ? foldsBack(earlier, later) : gapBetween(earlier, later) <= SAME_mm;
      if (meets) return { first, second };
    }
  }
  return null;
}

/**
 * Change of direction at each inner corner point, positive to the right: -atan2(a x b, a . b).
 *
 * @param points - corner points in order [mm], shape (points)
 * @returns turns from -pi to pi [rad], shape (points - 2); empty for fewer than three points
 * @throws never
 * Source: derived, vector algebra
 */
export function turnAngles(points: readonly Point[]): Radian[] {
  const turns: Radian[] = [];
  let before: Point | null = null;
  for (const { from, to } of segmentsOf(points)) {
    const step = subtract(to, from);
    // Taken from 0, so that straight on is 0 and not -0.
    if (before !== null) turns.push(0 - Math.atan2(cross(before, step), dot(before, step)));
    before = step;
  }
  return turns;
}

interface Segment {
  readonly from: Point;
  readonly to: Point;
}

function segmentsOf(points: readonly Point[]): readonly Segment[] {
  const segments: Segment[] = [];
  let before: Point | null = null;
  for (const point of points) {
    if (before !== null) segments.push({ from: before, to: point });
    before = point;
  }
  return segments;
}

/** A side that goes straight back over the one before it covers part of it. */
function foldsBack(earlier: Segment, later: Segment): boolean {
  const back = subtract(earlier.from, earlier.to);
  const on = subtract(later.to, later.from);
  const [backLength, onLength] = [length(back), length(on)];
  if (backLength <= SAME_mm || onLength <= SAME_mm) return false;
  const reach = Math.min(backLength, onLength);
  return dot(back, on) > 0 && (Math.abs(cross(back, on)) / (backLength * onLength)) * reach <= SAME_mm;
}

function gapBetween(a: Segment, b: Segment): Mm {
  if (properlyCross(a, b)) return 0;
  return Math.min(toSegment(a.from, b), toSegment(a.to, b), toSegment(b.from, a), toSegment(b.to, a));
}

/** Both segments have their ends clearly on either side of the other; an end on the other's line is left to the distances. */
function properlyCross(a: Segment, b: Segment): boolean {
  return liesAcross(a, b) && liesAcross(b, a);
}

function liesAcross(line: Segment, { from, to }: Segment): boolean {
  const step = subtract(line.to, line.from);
  const offLine = (point: Point): Mm => cross(step, subtract(point, line.from)) / length(step);
  const [one, other] = [offLine(from), offLine(to)];
  return Math.min(one, other) < -SAME_mm && Math.max(one, other) > SAME_mm;
}

function toSegment(point: Point, { from, to }: Segment): Mm {
  const step = subtract(to, from);
  const square = dot(step, step);
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, dot(subtract(point, from), step) / square));
  return length(subtract(subtract(point, from), scale(step, share)));
}
