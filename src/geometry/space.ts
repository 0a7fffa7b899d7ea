// How are points and directions in space measured, and what does a slope do to lengths?
import type { Mm, Radian } from "../units/quantity.ts";

/** A point in space, or the step from one to another; z is up. */
export interface Point3 {
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/**
 * Unit step in a direction that climbs: (cos h cos s, sin h cos s, sin s).
 *
 * @param heading - direction h seen from above, counter-clockwise from x [rad]
 * @param slope - angle s above level [rad]
 * @returns step of length 1 [ratio]
 * @throws never
 * Source: derived, polar coordinates
 */
export const direction3 = (heading: Radian, slope: Radian): Point3 => ({
  x: Math.cos(heading) * Math.cos(slope),
  y: Math.sin(heading) * Math.cos(slope),
  z: Math.sin(slope),
});

/**
 * Step that leads from b to a: (ax - bx, ay - by, az - bz).
 *
 * @param a - where the step ends [mm]
 * @param b - where the step begins [mm]
 * @returns step [mm]
 * @throws never
 * Source: derived, vector algebra
 */
export const subtract3 = (a: Point3, b: Point3): Point3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });

/**
 * Scalar product: ax bx + ay by + az bz.
 *
 * @param a - step [mm]
 * @param b - step [mm]
 * @returns product of the lengths and the cosine between them [mm2]
 * @throws never
 * Source: derived, vector algebra
 */
export const dot3 = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

/**
 * Length of a step: sqrt(ax^2 + ay^2 + az^2).
 *
 * @param a - step [mm]
 * @returns length [mm]
 * @throws never
 * Source: derived, Pythagoras
 */
export const length3 = (a: Point3): Mm => Math.hypot(a.x, a.y, a.z);

/**
 * Angle between two steps, without sign: atan2(|a x b|, a . b), which keeps its digits near 0 and pi.
 *
 * @param a - step [mm]
 * @param b - step [mm]
 * @returns angle from 0 to pi; 0 when a step has no length [rad]
 * @throws never
 * Source: derived, vector algebra
 */
export function angleBetween3(a: Point3, b: Point3): Radian {
  const cross = Math.hypot(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
  return Math.atan2(cross, dot3(a, b));
}

/**
 * Angle between plumb and the way in which a taut line presses where it turns: of the bisector of its two stretches, u(a) - u(b).
 *
 * @param a - step along the line before its turn [mm]
 * @param b - step along the line behind it [mm]
 * @returns angle from 0 to pi / 2; 0 where the line does not turn, or a step has no length [rad]
 * @throws never
 * Source: derived, vector algebra
 */
export function pressFromPlumb(a: Point3, b: Point3): Radian {
  const [long_a, long_b] = [length3(a), length3(b)];
  const x = a.x / long_a - b.x / long_b;
  const y = a.y / long_a - b.y / long_b;
  const z = a.z / long_a - b.z / long_b;
  return long_a > 0 && long_b > 0 ? Math.atan2(Math.hypot(x, y), Math.abs(z)) : 0;
}

/**
 * Length of a path in space through its points: sum of |p(i+1) - p(i)|.
 *
 * @param points - corner points in order [mm], shape (points)
 * @returns length; 0 for fewer than two points [mm]
 * @throws never
 * Source: derived, Pythagoras
 */
export function pathLength3(points: readonly Point3[]): Mm {
  let [sum, before]: [Mm, Point3 | null] = [0, null];
  for (const point of points) {
    if (before !== null) sum += length3(subtract3(point, before));
    before = point;
  }
  return sum;
}

/**
 * Diameter of the largest circle in the corner of a step under a line that lies plumb above the edges of the steps: the incircle of a right
 * triangle with the legs a = r + g and b = a t / r, so a + b - sqrt(a^2 + b^2).
 *
 * @param rise - upright leg r of one step [mm]
 * @param going - level leg t of one step [mm]
 * @param gap - from the line through the edges of the steps up to the line, plumb, g [mm]
 * @returns diameter [mm]
 * @throws RangeError when a leg is not above 0 or the line lies below the edges
 * Source: derived, incircle of a right triangle
 */
export function circleInStep({ rise, going }: { readonly rise: Mm; readonly going: Mm }, gap: Mm): Mm {
  if (!(rise > 0 && going > 0 && gap >= 0)) throw new RangeError(`a step of ${rise} by ${going} mm under a line ${gap} mm above it`);
  const upright = rise + gap;
  const level = (upright * going) / rise;
  return upright + level - Math.hypot(upright, level);
}
