// Along which axes does a post bend: those of its side, or its own where one post makes a corner and stands turned?
import type { Newton, Radian } from "../units/quantity.ts";
import { SAME_rad } from "../units/tolerance.ts";
import { type Push, pushNames } from "./frame-check-guard.ts";
import type { Axis } from "./frame-check-strength.ts";
import type { Vertical } from "./plan.ts";

type Pair = Readonly<Record<Axis, number>>;
type Standing = Pick<Vertical, "corner">;

/** Of its own axes from those of the side that ends at it, towards the inside of the turn; 0 where it stands square to its side. */
const twistOf = ({ corner }: Standing): Radian => corner?.twist ?? 0;

/** Whether its faces stand square to neither of its sides. */
export const isTurned = (post: Standing): boolean => Math.abs(twistOf(post)) > SAME_rad;

/**
 * A moment or a force on a post, along the side that ends at it and square to it towards the inside of the turn, in the post's own axes: x square
 * to the face that looks to that side, y along that face. The parts keep their signs, as the two sides pull at once.
 */
export function inOwnAxes({ x, y }: Pair, post: Standing): Pair {
  const [cos, sin] = [Math.cos(twistOf(post)), Math.sin(twistOf(post))];
  return { x: x * cos + y * sin, y: y * cos - x * sin };
}

export const withoutSign = ({ x, y }: Pair): Pair => ({ x: Math.abs(x), y: Math.abs(y) });

/** One way in which the code's load pushes the top of a post. */
export interface Direction {
  readonly push: Push;
  /** As its row says it. */
  readonly words: string;
  /** Of a force of 1, along each axis of the post, without sign. */
  readonly parts: Pair;
  /** Posts that take a single load so. */
  readonly sharing: number;
}

export interface Pushed {
  readonly post: Vertical;
  /** Posts of its side, which share a push along the rail; at a corner of one post also those of the other side. */
  readonly sharing: number;
  readonly sharingNext: number;
}

const WORDS: Readonly<Record<Exclude<Push, "upright">, string>> = { square: "square to", "along the rail": "along the rail of" };

/**
 * The ways in which a load of the code that pushes so acts on a post. One post at a corner has two sides, and each of them has its own way. In
 * between, the rails of both sides hold its top, so that less comes to this post than of a load square to either.
 */
export function directionsOf({ post, sharing, sharingNext }: Pushed, push: Push): readonly Direction[] {
  if (push === "upright") return [];
  const shared = (count: number): number => (push === "square" ? 1 : count);
  const { corner } = post;
  const own = push === "square" ? { x: 0, y: 1 } : { x: 1, y: 0 };
  if (corner === undefined) {
    return [{ push, words: pushNames[push], parts: own, sharing: shared(sharing) }];
  }
  // The next side as the first one sees it: turned towards the inside.
  const [cos, sin] = [Math.cos(corner.turn), Math.sin(Math.abs(corner.turn))];
  const next = push === "square" ? { x: -sin, y: cos } : { x: cos, y: sin };
  const one = (parts: Pair, sideId: string, count: number): Direction => {
    const { x, y } = inOwnAxes(parts, post);
    return { push, words: `${WORDS[push]} side ${sideId}`, parts: { x: part(x), y: part(y) }, sharing: shared(count) };
  };
  return [one(own, corner.homeId, sharing), one(next, corner.nextId, sharingNext)];
}

/** What is only the rounding of the arithmetic is nothing. */
const part = (of: number): number => (Math.abs(of) < SAME_rad ? 0 : Math.abs(of));

/** What a load puts on a post along each axis. */
export const along = (force: Newton, { parts }: Pick<Direction, "parts">): Readonly<Record<Axis, Newton>> => ({
  x: force * parts.x,
  y: force * parts.y,
});
