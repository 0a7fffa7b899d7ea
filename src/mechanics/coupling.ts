// How do cables that run over several sides join the frames of those sides, and what does a corner post see in its two planes?
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import { pick } from "./frame-pick.ts";
import { type GuardFrame, guardFrame } from "./guard-frame.ts";
import type { GuardPost } from "./guard-frame-build.ts";

/**
 * What a cable does to the post at which it turns, in the plane of each side: along the side before it, -T1 + T2 cos(turn), along the side
 * after it, T2 - T1 cos(turn), each towards greater stations. At a right angle each side sees its own leg alone, as though the cable
 * were anchored on the post with the tension of that leg; otherwise the part with the cosine is a further load on the post. Of two posts
 * that share a corner each turns half.
 *
 * @param corner - tension in the leg before T1 [N], in the leg after T2 [N], turn in plan [rad]
 * @returns pull along the side before and along the side after [N], the further load in each of them [N]
 * @throws never
 * Valid: exact at a right angle on a post whose section has its axes along the sides; at other turns the hold of one side's rail along
 *   the other side is left out, which overstates the movement
 * Source: derived, balance at the post
 */
export function cornerPulls({ before, after, turn }: { readonly before: Newton; readonly after: Newton; readonly turn: Radian }): {
  readonly alongBefore: Newton;
  readonly alongAfter: Newton;
  readonly loadBefore: Newton;
  readonly loadAfter: Newton;
} {
  const [loadBefore, loadAfter] = [after * Math.cos(turn), 0 - before * Math.cos(turn)];
  return { alongBefore: loadBefore - before, alongAfter: after + loadAfter, loadBefore, loadAfter };
}

/** A cable by its parts on each side. */
export interface CoupledCable {
  /** Its number among the cables of that side, and the tension there as a share of the pull at the nut (friction at the bends). */
  readonly legs: readonly { readonly side: number; readonly cable: number; readonly share: number }[];
  /** Further loads that it makes, as numbers of the side's loads, per unit pull at the nut: bends that are no right angle. */
  readonly loads?: readonly { readonly side: number; readonly load: number; readonly perPull: number }[];
}

/**
 * Flexibility of cables over several sides: by how much the nut of cable i comes in when cable j is pulled with 1 N at its nut,
 * F_ij = sum over the legs of i of (F_side share_j + closing per load x load per pull).
 *
 * @param sides - the solved sides [mm/N]
 * @param cables - legs and further loads of each cable [count, ratio]
 * @returns flexibility [mm/N], row by row, shape (cables, cables)
 * @throws RangeError when a leg names no side or no cable of it, or a load none of its loads
 * Valid: each cable slides through its bends with the same share of the pull in each leg; symmetric when all cables of a side have the
 *   same share there and no bend makes further loads
 * Source: derived, superposition
 */
export function coupledFlexibility(sides: readonly GuardFrame[], cables: readonly CoupledCable[]): readonly (readonly number[])[] {
  return cables.map((drawn) =>
    cables.map((pulled) =>
      drawn.legs.reduce((sum, leg) => {
        const side = pick(sides, leg.side, "side");
        const closing = (rows: readonly (readonly number[])[], column: number): number =>
          pick(pick(rows, leg.cable, "cable"), column, "column");
        const byLegs = pulled.legs.filter(({ side: other }) => other === leg.side);
        const byLoads = (pulled.loads ?? []).filter(({ side: other }) => other === leg.side);
        return (
          sum +
          byLegs.reduce((part, { cable, share }) => part + share * closing(side.flexibility, cable), 0) +
          byLoads.reduce((part, { load, perPull }) => part + perPull * closing(side.closingPerLoad, load), 0)
        );
      }, 0),
    ),
  );
}

/**
 * What the pulls at the nuts put on one side, as sideState takes it: tension = sum of pull x share, load = sum of pull x load per pull.
 *
 * @param guard - the solved side [mm/N]
 * @param side - its number [count]
 * @param pulled - each cable with its pull at the nut [N]
 * @returns tension of each cable of the side and size of each of its further loads [N]
 * @throws never
 * Source: derived, superposition
 */
export function pullsOnSide(
  guard: GuardFrame,
  side: number,
  pulled: readonly { readonly cable: CoupledCable; readonly pull: Newton }[],
): { readonly tensions: readonly Newton[]; readonly loads: readonly Newton[] } {
  const sums = (count: number, of: (cable: CoupledCable, index: number) => number): readonly Newton[] =>
    Array.from({ length: count }, (_, index) => pulled.reduce((sum, { cable, pull }) => sum + pull * of(cable, index), 0));
  return {
    tensions: sums(guard.perPull.length, ({ legs }, index) =>
      legs.reduce((sum, leg) => (leg.side === side && leg.cable === index ? sum + leg.share : sum), 0),
    ),
    loads: sums(guard.perLoad.length, ({ loads = [] }, index) =>
      loads.reduce((sum, load) => (load.side === side && load.load === index ? sum + load.perPull : sum), 0),
    ),
  };
}

/**
 * A post by itself, as it stands square to a side: on its base spring, its top free, held, or on the spring of what leans against it. A
 * corner post needs it only where no side runs on behind it; where one does, that side's frame holds it.
 *
 * @param post - section and base, top hold [MPa, mm2, mm4, N, N mm/rad, N/mm]
 * @param height - of its top over the base [mm]
 * @param heights - of unit loads and of the places at which it is asked [mm]
 * @returns movement at place i (row) per N at place j (column) [mm/N]; per N at each place, base moment [mm], base shear [ratio] and
 *   movement of the top [mm/N]
 * @throws RangeError when a height lies off the post or it can move freely
 * Source: derived, as in guardFrame
 */
export function lonePost({ post, height, heights }: { readonly post: GuardPost; readonly height: Mm; readonly heights: readonly Mm[] }): {
  readonly flexibility: readonly (readonly number[])[];
  readonly baseMoment: readonly Mm[];
  readonly baseShear: readonly number[];
  readonly top: readonly number[];
} {
  const loads = heights.map((at) => ({ post: 0, height: at }));
  const { perLoad } = guardFrame({ posts: [post], height, topRail: null, bottomRail: null, cables: [], loads });
  return {
    flexibility: heights.map((_, row) => perLoad.map(({ loaded }) => pick(loaded, row))),
    baseMoment: perLoad.map(({ baseMoment }) => pick(baseMoment, 0)),
    baseShear: perLoad.map(({ baseShear }) => pick(baseShear, 0)),
    top: perLoad.map(({ top }) => pick(top, 0)),
  };
}
