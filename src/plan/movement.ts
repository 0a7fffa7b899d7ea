// How far do posts move when a cable is pulled, and how does a side of the frame stand under given pulls?
import type { Job } from "../job/job.ts";
import { type SideState, sideState } from "../mechanics/guard-frame.ts";
import type { MovementRow } from "../mechanics/order-search-figures.ts";
import type { Cited } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundDown } from "../units/round.ts";
import type { FrameGroup, SideFrame } from "./frames.ts";
import { levelOpening } from "./rakes.ts";

/** Largest movement of a post under the cables. */
export const movementLimit = (job: Job): Cited<Mm> => {
  const { movementShare_max } = job.limits;
  return { ...movementShare_max, value: movementShare_max.value * levelOpening(job).guardHeight };
};

/** Of every post that holds or turns cables, the movement of its top and of its anchor in the middle, per pull at each nut. */
export function movementRows(group: FrameGroup, job: Job): readonly MovementRow[] {
  const limit = movementLimit(job).value;
  const count = group.courses.length;
  const middle = roundDown(count / 2, 1);
  return group.sides.flatMap((frame) => {
    const { cables } = frame.guard.input;
    const row = (of: (state: SideState) => Mm): MovementRow => ({ perPull: perPull(group, frame, of), limit });
    const legs = cables.flatMap((_, index) => (index % count === middle ? [index] : []));
    const posts = new Set(legs.flatMap((leg) => [cables[leg]?.left ?? 0, cables[leg]?.right ?? 0]));
    return [
      ...[...posts].map((post) => row(({ top }) => top[post] ?? 0)),
      ...legs.flatMap((leg) => [row(({ anchor_left }) => anchor_left[leg] ?? 0), row(({ anchor_right }) => anchor_right[leg] ?? 0)]),
    ];
  });
}

function perPull(group: FrameGroup, { guard, terms }: SideFrame, of: (state: SideState) => Mm): readonly number[] {
  return group.cableFlexibility.map((_, cable) => {
    return (terms.get(cable) ?? []).reduce((sum, piece) => {
      const own = guard.perPull[piece.cable];
      return own === undefined ? sum : sum + piece.share * piece.part * of(own);
    }, 0);
  });
}

/** How a side stands when the nuts of its group's cables are pulled so. */
export function stateOf({ guard, terms }: SideFrame, pulls: readonly Newton[]): SideState {
  const tensions = guard.perPull.map(() => 0);
  for (const [number, pieces] of terms) {
    for (const { cable, share, part } of pieces) tensions[cable] = (tensions[cable] ?? 0) + share * part * (pulls[number] ?? 0);
  }
  return sideState(guard, { tensions });
}
