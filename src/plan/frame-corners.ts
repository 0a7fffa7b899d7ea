// At which corners do runs turn from a side to its neighbour, and what does the turn push along the side?
import type { Mm, Radian } from "../units/quantity.ts";
import type { Leg } from "./frame-legs.ts";
import type { Plan, SidePlan, Vertical } from "./plan.ts";

type Laid = Pick<Plan, "sides" | "verticals">;

/** A corner at which runs turn from this side to a neighbour. */
export interface TurnedCorner {
  readonly legs: readonly Leg[];
  /** This side's corner post and the neighbour's. */
  readonly corner: Vertical;
  readonly guest: Vertical;
  /** Parts of the cable's tension that the corner post, the neighbour's post and its rail bring along this side. */
  readonly cosines: readonly [corner: number, guest: number, rail: number];
  /** Between the sides, and of the cable at this side's post. */
  readonly turn: Radian;
  readonly bend: Radian;
}

export function cornersOf(
  side: SidePlan,
  legs: readonly Leg[],
  { own, laid }: { readonly own: readonly Vertical[]; readonly laid: Laid },
): readonly TurnedCorner[] {
  const posts = laid.verticals.filter(({ kind }) => kind === "post");
  const corner = (at: "left" | "right"): readonly TurnedCorner[] => {
    const turning = legs.filter((leg) => (at === "left" ? leg.turnLeft : leg.turnRight) !== 0);
    const [first] = turning;
    const post = at === "left" ? own[0] : own.at(-1);
    const neighbour = laid.sides[side.index + (at === "left" ? -1 : 1)];
    const onNext = posts.filter(({ sideIndex }) => sideIndex === neighbour?.index);
    const guest = at === "left" ? onNext.at(-1) : onNext[0];
    if (first === undefined || post === undefined || guest === undefined) return [];
    const turn = Math.abs((at === "left" ? neighbour?.turn : side.turn) ?? 0);
    const bend = at === "left" ? first.turnLeft : first.turnRight;
    const sign = at === "left" ? -1 : 1;
    // Where the top is held this goes straight into what holds it, and moves with it.
    const back = -sign * Math.cos(turn);
    const cosines = [sign * Math.cos(bend), sign * (Math.cos(turn) - Math.cos(bend)), back] as const;
    return [{ legs: turning, corner: post, guest, cosines, turn, bend }];
  };
  return [...corner("left"), ...corner("right")];
}

/** A corner of nearly a right angle: what the sides push along each other is small and is put on the rail as a load. */
export const isSquare = (turn: Radian): boolean => Math.abs(Math.cos(turn)) < Math.cos((80 * Math.PI) / 180);

/** Along this side; a neighbour's corner post where it stands as seen square to the side. */
export function stationOn(
  post: Vertical,
  { side, own, laid }: { readonly side: SidePlan; readonly own: readonly Vertical[]; readonly laid: Laid },
): Mm {
  if (post.sideIndex === side.index) return post.station;
  const [first, last] = [own[0]?.station ?? 0, own.at(-1)?.station ?? 0];
  if (post.sideIndex > side.index) return Math.max(side.length + post.station * Math.cos(side.turn ?? 0), last + LEAST_APART);
  const before = laid.sides[post.sideIndex];
  return Math.min(-((before?.length ?? 0) - post.station) * Math.cos(before?.turn ?? 0), first - LEAST_APART);
}

/** Two posts of a corner are never in one place. */
const LEAST_APART: Mm = 25;
