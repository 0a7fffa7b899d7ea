// What of a drawing differs on a side that slopes: its heights, the line of its surface, the steps of a stair?
import { type View, viewOf } from "../../drawing/paper.ts";
import { circle, type Line, type Part, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Gap, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import type { Opening, RakePlan } from "../../plan/rake-plan.ts";
import { levelGaps } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Stretch } from "./stretches.ts";

export const rakeOn = ({ rakes }: Plan, side: SidePlan): RakePlan | undefined => rakes.find(({ sideId }) => sideId === side.id);

/** Heights of the rails of a side above its datum. */
export const openingOn = (plan: Plan, side: SidePlan): Opening => rakeOn(plan, side)?.opening ?? plan.opening;

export const gapsOn = (plan: Plan, side: SidePlan): readonly Gap[] => rakeOn(plan, side)?.gaps ?? levelGaps(plan, side);

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

/** What is drawn of one stretch of a side. */
interface Drawn {
  readonly plan: Plan;
  readonly side: SidePlan;
  readonly stretch: Stretch;
  readonly view: View;
}

/** Stations of the nosings of whole steps within a stretch: one stands at the upper end of the side, the others a tread apart. */
function stepsIn({ plan, side, stretch }: Omit<Drawn, "view">): readonly Mm[] {
  const tread = rakeOn(plan, side)?.triangle?.tread;
  if (tread === undefined) return [];
  const isUp = side.slope > 0;
  const nosing = (nth: number): Mm => (isUp ? side.length - nth * tread : nth * tread);
  const found: Mm[] = [];
  for (let nth = 1; nth * tread <= side.length + 1; nth++) {
    const [low, high] = [nosing(nth), nosing(nth - 1)];
    if (Math.min(low, high) >= stretch.from - 1 && Math.max(low, high) <= stretch.to + 1) found.push(high);
  }
  return found;
}

/** On paper, from the nosing of a step: how far up the slope, and how high above it. */
const fromNosing =
  ({ slope }: SidePlan, view: View, nosing: Mm) =>
  (up: Mm, above: Mm): Point => {
    const ahead = slope > 0 ? up : -up;
    return view.point({ x: nosing + ahead, y: above - ahead * Math.tan(slope) });
  };

/** The steps of a stair under the line of its nosings; a riser stands back under its nosing, whose edge is drawn as thick as it stands out. */
export function steps(plan: Plan, side: SidePlan, stretch: Stretch, view: View): readonly Part[] {
  const triangle = rakeOn(plan, side)?.triangle ?? null;
  if (triangle === null) return [];
  const { riser, tread, nosing } = triangle;
  const lines = stepsIn({ plan, side, stretch }).map((step): Line => {
    const at = fromNosing(side, view, step);
    return [at(0, 0), at(0, 0 - nosing.value), at(nosing.value, 0 - nosing.value), at(nosing.value, 0 - riser), at(0 - tread, 0 - riser)];
  });
  return lines.length === 0 ? [] : [strokes("heavy", lines)];
}

/** The largest sphere that goes in at riser, tread and what lies over them: near the middle of the stretch, where no post hides it. */
export function stepSphere({ plan, side, stretch, view }: Drawn, drawn: readonly Vertical[]): readonly Part[] {
  const triangle = rakeOn(plan, side)?.triangle ?? null;
  if (triangle === null) return [];
  const { riser, sphere, nosing } = triangle;
  const back = nosing.value - sphere / 2;
  const middle = (stretch.from + stretch.to) / 2;
  const place = (high: Mm): Mm => high + Math.sign(side.slope) * back;
  const isSeen = (step: Mm): boolean =>
    drawn.every(({ kind, station, along }) => kind === "spacer" || Math.abs(station - place(step)) > (along + sphere) / 2);
  const [step] = stepsIn({ plan, side, stretch })
    .filter(isSeen)
    .toSorted((a, b) => Math.abs(place(a) - middle) - Math.abs(place(b) - middle));
  if (step === undefined) return [];
  const centre = fromNosing(side, view, step)(back, sphere / 2 - riser);
  return [circle(centre, (sphere / 2) * view.ratio, { pen: "thin", fill: "white" })];
}

const DOT_mm = 0.5;

/** Dots where cables that pass a change of slope leave their level, or their slope: on the faces that look at each other there. */
export function slopeBends({ plan, view }: Drawn, drawn: readonly Vertical[]): readonly Part[] {
  return plan.transitions
    .filter(({ passes }) => passes)
    .flatMap(({ id }) => plan.bays.filter((bay) => bay.id === id))
    .flatMap(({ leftId, rightId }) =>
      drawn.flatMap(({ id, station, along }) => {
        if (id !== leftId && id !== rightId) return [];
        const x = station + ((id === leftId ? 1 : -1) * along) / 2;
        return plan.courses.map(({ height }) => circle(view.point({ x, y: height }), DOT_mm, { pen: "edge", fill: "black" }));
      }),
    );
}
