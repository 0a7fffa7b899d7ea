// What of a drawing differs on a side that slopes: its heights, the line of its surface, the steps of a stair?
import { type View, viewOf } from "../../drawing/paper.ts";
import { type Line, type Part, strokes } from "../../drawing/shape.ts";
import type { Gap, Plan, SidePlan } from "../../plan/plan.ts";
import type { Opening, RakePlan } from "../../plan/rake-plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Stretch } from "./stretches.ts";

export const rakeOn = ({ rakes }: Plan, side: SidePlan): RakePlan | undefined => rakes.find(({ sideId }) => sideId === side.id);

/** Heights of the rails of a side above its datum. */
export const openingOn = (plan: Plan, side: SidePlan): Opening => rakeOn(plan, side)?.opening ?? plan.opening;

export const gapsOn = (plan: Plan, side: SidePlan): readonly Gap[] => rakeOn(plan, side)?.gaps ?? plan.gaps;

export const gapBelowOn = ({ job, rakes }: Plan, side: SidePlan): Mm =>
  rakes.some(({ sideId }) => sideId === side.id) ? job.frame.onRakes.gapBelow.value : job.frame.gapBelow;

/** How much the surface climbs over the whole side, without sign. */
export const climbOf = ({ datum_from, datum_to }: SidePlan): Mm => Math.abs(datum_to - datum_from);

/** Stations and heights above the datum, which climbs with the slope: posts stay plumb, rails and cables lie along it. */
export function rakedView(side: SidePlan, stretch: Stretch, ratio: number): View {
  const level = viewOf({ ratio, model: { x: stretch.from, y: 0 }, paper: { x: 0, y: 0 } });
  if (side.slope === 0) return level;
  const tan = Math.tan(side.slope);
  return { ...level, point: ({ x, y }) => level.point({ x, y: y + (x - stretch.from) * tan }) };
}

/**
 * The steps of a stair under the line of its nosings: a nosing stands at the upper end of the side, the others a tread apart. Only whole
 * steps within the stretch are drawn.
 */
export function steps(plan: Plan, side: SidePlan, stretch: Stretch, view: View): readonly Part[] {
  const triangle = rakeOn(plan, side)?.triangle ?? null;
  if (triangle === null) return [];
  const { riser, tread } = triangle;
  const isUp = side.slope > 0;
  const nosing = (nth: number): Mm => (isUp ? side.length - nth * tread : nth * tread);
  const lines: Line[] = [];
  for (let nth = 1; nth * tread <= side.length + 1; nth++) {
    const [low, high] = [nosing(nth), nosing(nth - 1)];
    if (Math.min(low, high) < stretch.from - 1 || Math.max(low, high) > stretch.to + 1) continue;
    lines.push([view.point({ x: high, y: 0 }), view.point({ x: high, y: 0 - riser }), view.point({ x: low, y: 0 })]);
  }
  return lines.length === 0 ? [] : [strokes("heavy", lines)];
}
