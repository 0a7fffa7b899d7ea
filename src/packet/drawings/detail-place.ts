// Where do the parts of a detail lie, from mm about the middle of a post to paper?
import type { Point } from "../../geometry/vector.ts";
import type { Mm, Radian } from "../../units/quantity.ts";

/** From model mm about the middle of a post (x along its side to the right, y away from the deck) to paper. */
export type Place = (x: Mm, y: Mm) => Point;

/** A round hole along the side, seen as a rectangle; at an angle it ends at the upright planes at `from` and `to`. */
export interface Hole {
  readonly from: Mm;
  readonly to: Mm;
  readonly offset: Mm;
  readonly diameter: Mm;
  /** Off level, as a plumb cut shows it. */
  readonly tilt?: Radian;
  /** The one of its ends that is square to the hole itself, from the middle of the post along it. */
  readonly floor?: Mm;
}

/** The outline of a hole on paper. */
export function outlineOf({ from, to, offset, diameter, tilt = 0, floor }: Hole, place: Place): readonly Point[] {
  const [turned, radius] = [tiltedPlace(place, tilt), diameter / 2];
  const corner = (x: Mm, off: Mm): Point =>
    x === floor ? turned(x, offset + off) : place(x, offset + x * Math.tan(tilt) + off / Math.cos(tilt));
  return [corner(from, -radius), corner(to, -radius), corner(to, radius), corner(from, radius)];
}

/** The same about the middle of the post with x along a bore at an angle. */
export const tiltedPlace =
  (place: Place, tilt: Radian): Place =>
  (x, y) =>
    place(x * Math.cos(tilt) - y * Math.sin(tilt), x * Math.sin(tilt) + y * Math.cos(tilt));

interface Sides {
  readonly left: Mm;
  readonly right: Mm;
  readonly low: Mm;
  readonly high: Mm;
}

export const rectangle = (place: Place, { left, right, low, high }: Sides): readonly Point[] => [
  place(left, low),
  place(right, low),
  place(right, high),
  place(left, high),
];
