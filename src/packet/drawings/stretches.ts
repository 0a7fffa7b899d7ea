// Into which stretches is a long side cut so that it can be drawn?
import type { Bay, Plan, SidePlan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { roundUp } from "../../units/round.ts";
import { leftFace, membersOf, rightFace } from "./kit.ts";

/** Part of a side that is drawn at once, in stations of the side. */
export interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
  /** Numbers of the match lines at its ends; null where the side itself ends. */
  readonly matchLeft: number | null;
  readonly matchRight: number | null;
}

/** As few stretches as stay below `length_max`, cut in the middle of bays or at line posts, as even as these allow. */
export function stretchesOf(plan: Plan, side: SidePlan, length_max: Mm, cutAt: "bays" | "posts" = "bays"): readonly Stretch[] {
  const posts = plan.verticals
    .filter(({ sideIndex, role }) => sideIndex === side.index && (role === "line" || role === "shared"))
    .map(({ station }) => station);
  const middles =
    cutAt === "posts" ? posts : plan.bays.filter((bay) => bay.sideId === side.id && bay.kind === "bay").map((bay) => middleOf(plan, bay));
  const most = middles.length + 1;
  for (let count = Math.max(1, roundUp(side.length / length_max, 1)); ; count++) {
    const cuts = Array.from({ length: Math.min(count, most) - 1 }, (_, index) => nearest(middles, (side.length * (index + 1)) / count));
    const ends = [0, ...new Set(cuts), side.length];
    const stretches = ends.slice(1).map((to, index): Stretch => {
      const from = ends[index] ?? 0;
      return { from, to, matchLeft: index === 0 ? null : index, matchRight: index === ends.length - 2 ? null : index + 1 };
    });
    if (count >= most || stretches.every(({ from, to }) => to - from <= length_max)) return stretches;
  }
}

/** Station of the middle of a bay's free length. */
export function middleOf(plan: Plan, bay: Bay): Mm {
  const { left, right } = membersOf(plan, bay);
  return (rightFace(left) + leftFace(right)) / 2;
}

const nearest = (values: readonly Mm[], wanted: Mm): Mm =>
  values.reduce((best, value) => (Math.abs(value - wanted) < Math.abs(best - wanted) ? value : best), values[0] ?? 0);
