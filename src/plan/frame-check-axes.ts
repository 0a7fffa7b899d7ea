// Along which axes does a post bend: those of its side, or its own where one post makes a corner and stands turned?
import type { Section } from "../mechanics/section.ts";
import { angleDegrees } from "../units/print.ts";
import type { Newton, Radian } from "../units/quantity.ts";
import { SAME_rad } from "../units/tolerance.ts";
import { pushNames, type TopLoad } from "./frame-check-guard.ts";
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
  /** As its row says it. */
  readonly words: string;
  /** What comes to the post of a force of 1, along each of its axes, without sign. */
  readonly parts: Pair;
  /** Posts that take the load so. */
  readonly sharing: number;
}

export interface Pushed {
  readonly post: Vertical;
  readonly whole: Pick<Section, Axis>;
  /** Posts of its side, which share a push along the rail; at a corner of one post also those of the other side. */
  readonly sharing: number;
  readonly sharingNext: number;
}

/** A side as a post sees it: directions of length 1 in the post's own axes. */
interface Seen {
  /** null where it is the only one. */
  readonly sideId: string | null;
  readonly square: Pair;
  readonly along: Pair;
  readonly sharing: number;
}

function sidesOf({ post, sharing, sharingNext }: Pushed): readonly Seen[] {
  const { corner } = post;
  const [along, square] = [
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ].map((one) => inOwnAxes(one, post)) as [Pair, Pair];
  if (corner === undefined) return [{ sideId: null, square, along, sharing }];
  // The next side as the first one sees it: turned towards the inside.
  const [cos, sin] = [Math.cos(corner.turn), Math.sin(Math.abs(corner.turn))];
  const next = { square: inOwnAxes({ x: -sin, y: cos }, post), along: inOwnAxes({ x: cos, y: sin }, post) };
  return [
    { sideId: corner.homeId, square, along, sharing },
    { sideId: corner.nextId, ...next, sharing: sharingNext },
  ];
}

/**
 * The ways in which a load of the code acts on a post: square to its side, along it, and where it may act in any direction also in between, where
 * it stresses the post most. One post at a corner has two sides, and each of them has its own ways; between the two, the rails of both sides hold
 * its top, so that less comes to this post than of a load square to either.
 */
export function directionsOf(pushed: Pushed, { pushes, isLine }: Pick<TopLoad, "pushes" | "isLine">): readonly Direction[] {
  return sidesOf(pushed).flatMap((seen): readonly Direction[] => {
    const { sideId, square, along } = seen;
    // A load all along the top stands on every post: none helps another.
    const sharing = isLine ? 1 : seen.sharing;
    const words = (push: string, of: string): string => (sideId === null ? push : `${of} side ${sideId}`);
    const isSquare = pushes.includes("square");
    const isAlong = pushes.includes("along the rail");
    return [
      ...(isSquare ? [{ words: words(pushNames.square, "square to"), parts: partsOf(square), sharing: 1 }] : []),
      ...(isAlong ? [{ words: words(pushNames["along the rail"], "along the rail of"), parts: partsOf(along), sharing }] : []),
      ...(isSquare && isAlong ? [slanting({ ...seen, sharing }, pushed.whole)] : []),
    ];
  });
}

/** What is only the rounding of the arithmetic is nothing. */
const partsOf = (pair: Pair): Pair => {
  const { x, y } = withoutSign(pair);
  return { x: x < SAME_rad ? 0 : x, y: y < SAME_rad ? 0 : y };
};

const SIGNS = [1, -1] as const;

/**
 * Stress at an arris is M_x / S_x + M_y / S_y, by either sign. Of a force of 1 that slants off square, cos f acts square to the side and sin f
 * along it, where n posts share it: the stress is a cos f + b sin f, greatest where tan f = b / a.
 */
function slanting({ sideId, square, along, sharing }: Seen, { x, y }: Pushed["whole"]): Direction {
  const arrises = SIGNS.map((sign) => {
    const of = (one: Pair): number => one.x / x.modulus_mm3 + (sign * one.y) / y.modulus_mm3;
    return { a: of(square), b: of(along) / sharing };
  });
  const { a, b } = arrises.reduce((most, one) => (Math.hypot(one.a, one.b) > Math.hypot(most.a, most.b) ? one : most));
  const [cos, sin] = [a / Math.hypot(a, b), b / Math.hypot(a, b)];
  const at = (axis: Axis): number => cos * square[axis] + (sin * along[axis]) / sharing;
  const off = angleDegrees(Math.atan2(Math.abs(b), Math.abs(a)), { decimals: 0 });
  return {
    words: `slanting, ${off} off square to ${sideId === null ? "the guard" : `side ${sideId}`}`,
    parts: partsOf({ x: at("x"), y: at("y") }),
    sharing: 1,
  };
}

/** What a load puts on a post along each axis. */
export const along = (force: Newton, { parts }: Pick<Direction, "parts">): Readonly<Record<Axis, Newton>> => ({
  x: force * parts.x,
  y: force * parts.y,
});
