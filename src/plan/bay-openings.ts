// How far apart do the cables stand in a bay, and which sphere must not pass there?
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import type { Bay, Gap, Plan } from "./plan.ts";
import { levelGaps } from "./set-off.ts";

export interface BayOpening {
  /** Of the two neighbouring cables that stand farthest apart, square to them. */
  readonly spacing: Mm;
  readonly sphere: Mm;
}

/** Gaps with a cable on both sides, which both give way to a sphere; beside a rail only one does. A single cable has none: its two gaps count. */
export const betweenCables = (gaps: readonly Gap[]): readonly Gap[] => (gaps.length > 2 ? gaps.slice(1, -1) : gaps);

/** Spacing of the two neighbouring cables that stand farthest apart: the sphere goes through there. */
const widestSpacing = (gaps: readonly Gap[]): Mm => Math.max(...betweenCables(gaps).map((gap) => gap.spacing));

/** By the bay's side; between two sides the wider spacing and the smaller sphere count. */
export function openingsOf(plan: Pick<Plan, "sides" | "gaps" | "rakes" | "setOff">, job: Job): (bay: Bay) => BayOpening {
  const { sides, rakes } = plan;
  const bySide = sides.map((side): BayOpening => {
    const rake = rakes.find(({ sideId }) => sideId === side.id);
    if (rake === undefined) return { spacing: widestSpacing(levelGaps(plan, side)), sphere: job.code.openingSphere.value };
    // One sphere is pushed on the whole guard: where stairs may be wider open, the smaller one tells more.
    return { spacing: widestSpacing(rake.gaps), sphere: Math.min(job.code.openingSphere.value, rake.openingSphere.value) };
  });
  return ({ kind, sideId }) => {
    const index = sides.findIndex(({ id }) => id === sideId);
    const own = bySide[index];
    const next = kind === "corner" ? bySide[index + 1] : own;
    if (own === undefined || next === undefined) throw new RangeError(`a bay on side ${sideId}, which the guard does not have`);
    return { spacing: Math.max(own.spacing, next.spacing), sphere: Math.min(own.sphere, next.sphere) };
  };
}
