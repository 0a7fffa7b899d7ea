// How are points and directions in the plane added, measured and turned?
import type { Mm, Radian } from "../units/quantity.ts";

/** A point, or the step from one point to another. */
export interface Point {
  readonly x: Mm;
  readonly y: Mm;
}

/**
 * Sum of two steps: (ax + bx, ay + by).
 *
 * @param a - point or step [mm]
 * @param b - step [mm]
 * @returns point or step [mm]
 * @throws never
 * Source: derived, vector algebra
 */
export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

/**
 * Step that leads from b to a: (ax - bx, ay - by).
 *
 * @param a - where the step ends [mm]
 * @param b - where the step begins [mm]
 * @returns step [mm]
 * @throws never
 * Source: derived, vector algebra
 */
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

/**
 * A step made longer or shorter: (k ax, k ay).
 *
 * @param a - step [mm]
 * @param factor - multiplier k [ratio]
 * @returns step [mm]
 * @throws never
 * Source: derived, vector algebra
 */
export const scale = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });

/**
 * Scalar product: ax bx + ay by.
 *
 * @param a - step [mm]
 * @param b - step [mm]
 * @returns product of the lengths and the cosine between them [mm2]
 * @throws never
 * Source: derived, vector algebra
 */
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/**
 * Signed area that two steps span: ax by - ay bx, positive when b lies to the left of a.
 *
 * @param a - step [mm]
 * @param b - step [mm]
 * @returns product of the lengths and the sine from a to b [mm2]
 * @throws never
 * Source: derived, vector algebra
 */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

/**
 * Length of a step: sqrt(ax^2 + ay^2).
 *
 * @param a - step [mm]
 * @returns length [mm]
 * @throws never
 * Source: derived, Pythagoras
 */
export const length = (a: Point): Mm => Math.hypot(a.x, a.y);

/**
 * Distance between two points: |a - b|.
 *
 * @param a - point [mm]
 * @param b - point [mm]
 * @returns distance [mm]
 * @throws never
 * Source: derived, Pythagoras
 */
export const distance = (a: Point, b: Point): Mm => Math.hypot(a.x - b.x, a.y - b.y);

/**
 * The point reached by walking in a direction: (x + s cos h, y + s sin h).
 *
 * @param point - where the walk begins [mm]
 * @param direction - heading h, counter-clockwise from x [rad]
 * @param distance - length s of the walk, negative backwards [mm]
 * @returns point [mm]
 * @throws never
 * Source: derived, polar coordinates
 */
export const along = (point: Point, direction: Radian, distance: Mm): Point => ({
  x: point.x + distance * Math.cos(direction),
  y: point.y + distance * Math.sin(direction),
});

/**
 * Angle between two steps, without sign: atan2(|a x b|, a . b), which keeps its digits near 0 and pi.
 *
 * @param a - step [mm]
 * @param b - step [mm]
 * @returns angle from 0 to pi; 0 when a step has no length [rad]
 * @throws never
 * Source: derived, vector algebra
 */
export const angleBetween = (a: Point, b: Point): Radian => Math.atan2(Math.abs(cross(a, b)), dot(a, b));
