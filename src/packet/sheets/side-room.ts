// How much longer than planned may a side and a run be before something of the packet no longer fits?
import { supportsOn } from "../../plan/corner-post.ts";
import { longestFree } from "../../plan/free-stop.ts";
import { restOf } from "../../plan/pier.ts";
import type { Bay, Plan, Run } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { least } from "./kit.ts";

/** How much some bays may grow together before one of them is too long. */
const bayRoom = (plan: Plan, bays: readonly Bay[]): Mm =>
  bays.reduce((sum, { id, kind, free }) => sum + (kind === "bay" ? Math.max(0, longestFree(plan, id) - free) : 0), 0);

/** How much a run may be longer than planned: by what its bays and its cable leave, whichever is less. */
export const runRoom = (plan: Plan, run: Run): Mm =>
  Math.min(
    longestOutside(plan, run) - run.outsideLength,
    bayRoom(
      plan,
      plan.bays.filter(({ id }) => run.bayIds.includes(id)),
    ),
  );

/** How much farther apart the posts of a side may stand before a rail is too long between two of them; they are spread evenly. */
function postRoom({ verticals, job }: Plan, index: number): Mm {
  const rests = supportsOn(index, verticals).map(restOf);
  return rests.slice(1).reduce((sum, rest, before) => sum + Math.max(0, job.posts.spacing_max.value - (rest - (rests[before] ?? 0))), 0);
}

/** By what its bays, its posts and its runs leave. Length and posts of a side that slopes are level; its bays and runs lie along the slope. */
export function sideRoom(plan: Plan, sideId: string): Mm {
  const side = plan.sides.find(({ id }) => id === sideId);
  if (side === undefined) return 0;
  const bays = plan.bays.filter((bay) => bay.sideId === sideId);
  const runs = plan.runs.filter(({ sideIds }) => sideIds.includes(sideId)).map((run) => runRoom(plan, run));
  return Math.min(postRoom(plan, side.index), Math.min(bayRoom(plan, bays), least(runs)) * Math.cos(side.slope));
}

/** A tail that can be held while its grip is set: 6 in or 150 mm, common practice, no source. */
const TAIL_inch_mm: Mm = 152.4;
const TAIL_mm: Mm = 150;

/** A ready cable must leave a tail to hold; from the spool the allowance stays what it is. Never less than planned. */
function longestOutside({ job }: Plan, { orderLength, outsideLength }: Run): Mm {
  const tail = job.units === "inch" ? TAIL_inch_mm : TAIL_mm;
  const held = job.supply.kind === "spool" ? job.supply.allowance.value : tail;
  return Math.max(outsideLength, orderLength - held);
}
