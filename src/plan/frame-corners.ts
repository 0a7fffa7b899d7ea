// At which corners do runs turn from a side to its neighbour, and what does the turn push along the side?
import { direction3, length3, type Point3 } from "../geometry/space.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { jointChord, jointOf } from "./corner-path.ts";
import { standsOn } from "./corner-post.ts";
import type { Leg } from "./frame-legs.ts";
import { restOf } from "./pier.ts";
import type { Plan, SidePlan, Vertical } from "./plan.ts";

type Laid = Pick<Plan, "sides" | "verticals">;

/** A corner at which runs turn from this side to a neighbour. */
export interface TurnedCorner extends Turn {
  readonly legs: readonly Leg[];
  /** This side's corner post and the neighbour's. */
  readonly corner: Vertical;
  readonly guest: Vertical;
  readonly at: "left" | "right";
  /** The side round the corner. */
  readonly beyondId: string;
  /** Between the sides. */
  readonly turn: Radian;
}

interface Part {
  readonly along: number;
  readonly up: number;
}

interface Turn {
  /** Parts of a unit of the cable between the two posts and behind them along this side, from left to right, and upwards. */
  readonly between: Part;
  readonly behind: Part;
  /** Of the cable at this side's post, as seen from above. */
  readonly bend: Radian;
}

/** Sides in one line, the slope of which may change from one to the next: they share a plane. */
export interface Line {
  readonly first: SidePlan;
  readonly last: SidePlan;
  /** Posts of these sides. */
  readonly own: readonly Vertical[];
  readonly laid: Laid;
}

export function cornersOf({ first: firstSide, last: lastSide, own, laid }: Line, legs: readonly Leg[]): readonly TurnedCorner[] {
  const posts = laid.verticals.filter(({ kind }) => kind === "post");
  const corner = (at: "left" | "right"): readonly TurnedCorner[] => {
    const turning = legs.filter((leg) => (at === "left" ? leg.turnLeft : leg.turnRight) !== 0);
    const [first] = turning;
    const side = at === "left" ? firstSide : lastSide;
    const post = at === "left" ? own[0] : own.at(-1);
    const neighbour = laid.sides[side.index + (at === "left" ? -1 : 1)];
    const onNext = posts.filter(({ sideIndex }) => sideIndex === neighbour?.index);
    const guest =
      post?.corner !== undefined && neighbour !== undefined && standsOn(post, neighbour.index)
        ? post
        : at === "left"
          ? onNext.at(-1)
          : onNext[0];
    if (first === undefined || post === undefined || guest === undefined) return [];
    const turn = Math.abs((at === "left" ? neighbour?.turn : side.turn) ?? 0);
    const bend = at === "left" ? first.turnLeft : first.turnRight;
    const common = { legs: turning, corner: post, guest, at, beyondId: neighbour?.id ?? "", turn };
    if (side.slope !== 0 || neighbour?.slope !== 0) return [{ ...common, ...rakedCorner({ side, neighbour, post, guest, at }) }];
    return [{ ...common, between: { along: Math.cos(bend), up: 0 }, behind: { along: Math.cos(turn), up: 0 }, bend }];
  };
  return [...corner("left"), ...corner("right")];
}

interface RakedAt {
  readonly side: SidePlan;
  readonly neighbour: SidePlan | undefined;
  readonly post: Vertical;
  readonly guest: Vertical;
  readonly at: "left" | "right";
}

/** The same parts in space: the cable goes on along the neighbour's slope. */
function rakedCorner({ side, neighbour, post, guest, at }: RakedAt): Turn {
  if (neighbour === undefined) throw new RangeError(`no side beside ${side.id}`);
  const [left, right] = at === "left" ? [neighbour, side] : [side, neighbour];
  const [leaves, enters] = at === "left" ? [guest, post] : [post, guest];
  const joint = jointOf(left, right);
  const setback_left = left.length - leaves.station - leaves.along / 2;
  const chord = jointChord({ setback_left, setback_right: enters.station - enters.along / 2, ...joint });
  const reach = length3(chord);
  // This side's heading where the left side's is 0, and the neighbour's.
  const [own, other] = at === "left" ? [0 - joint.turn, 0] : [0, 0 - joint.turn];
  const along = ({ x, y }: Point3): number => x * Math.cos(own) + y * Math.sin(own);
  const next = direction3(other, neighbour.slope);
  return {
    between: { along: along(chord) / reach, up: chord.z / reach },
    behind: { along: along(next), up: next.z },
    bend: Math.abs(Math.atan2(chord.y * Math.cos(own) - chord.x * Math.sin(own), along(chord))),
  };
}

/** A corner of nearly a right angle: what the sides push along each other is small and is put on the rail as a load. */
export const isSquare = (turn: Radian): boolean => Math.abs(Math.cos(turn)) < Math.cos((80 * Math.PI) / 180);

/** Level, along this line; a neighbour's corner post where it stands as seen square to it. */
export function stationOn(post: Vertical, { first, last, own, laid }: Line): Mm {
  // Where it makes a corner by itself it stands on both its sides.
  const { corner } = post;
  if (corner !== undefined && corner.nextIndex === first.index) return corner.nextStation;
  const startOf = (sideIndex: number): Mm => laid.sides.slice(first.index, sideIndex).reduce((sum, { length }) => sum + length, 0);
  if (post.sideIndex >= first.index && post.sideIndex <= last.index) return startOf(post.sideIndex) + restOf(post);
  const [lowest, highest] = [own[0], own.at(-1)].map((one) => (one === undefined ? 0 : startOf(one.sideIndex) + one.station));
  if (post.sideIndex > last.index) {
    return Math.max(startOf(last.index) + last.length + post.station * Math.cos(last.turn ?? 0), (highest ?? 0) + LEAST_APART);
  }
  const before = laid.sides[post.sideIndex];
  return Math.min(-((before?.length ?? 0) - post.station) * Math.cos(before?.turn ?? 0), (lowest ?? 0) - LEAST_APART);
}

/** Two posts of a corner are never in one place. */
const LEAST_APART: Mm = 25;

/** The two posts between which the slope changes within a line, and how a cable that passes slopes from one to the other. */
export interface Kink {
  readonly left: Vertical;
  readonly right: Vertical;
  readonly slope: Radian;
}

export function kinksOf({ first, last, own, laid }: Line): readonly Kink[] {
  return laid.sides.slice(first.index, last.index).flatMap((side): readonly Kink[] => {
    const next = laid.sides[side.index + 1];
    const left = own.findLast(({ sideIndex }) => sideIndex === side.index);
    const right = own.find(({ sideIndex }) => sideIndex === side.index + 1);
    if (next === undefined || left === undefined || right === undefined) return [];
    const setback_left = side.length - left.station - left.along / 2;
    const chord = jointChord({ setback_left, setback_right: right.station - right.along / 2, ...jointOf(side, next) });
    return [{ left, right, slope: Math.atan2(chord.z, chord.x) }];
  });
}
