import { describe, expect, test } from "vitest";
import { viewOf } from "../../../src/drawing/paper.ts";
import type { Part } from "../../../src/drawing/shape.ts";
import { gapBelowOn, openingOn } from "../../../src/packet/drawings/raked.ts";
import { sideScene } from "../../../src/packet/drawings/side-scene.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { exampleNames, examplePlan } from "../../support/example-jobs.ts";

/** Boards drawn on a side at the heights given, by their ends along it. */
function boards(plan: Plan, sideIndex: number, heights: readonly [number, number]): readonly (readonly [number, number])[] {
  const side = plan.sides[sideIndex];
  if (side === undefined) throw new Error("no such side");
  const view = viewOf({ ratio: 1, model: { x: 0, y: 0 }, paper: { x: 0, y: 0 } });
  const stretch = { from: 0, to: side.length, matchLeft: null, matchRight: null };
  return sideScene({ plan, side, stretch, view }).flatMap(({ mark }: Part) => {
    if (mark.kind !== "polygon") return [];
    const [xs, ys] = [mark.points.map(({ x }) => x), mark.points.map(({ y }) => Math.abs(y))];
    const isThere = Math.abs(Math.min(...ys) - heights[0]) < 1e-6 && Math.abs(Math.max(...ys) - heights[1]) < 1e-6;
    return isThere ? [[Math.min(...xs), Math.max(...xs)] as const] : [];
  });
}

const bottomRails = (plan: Plan) =>
  plan.sides.flatMap((side, index) =>
    boards(plan, index, [gapBelowOn(plan, side), openingOn(plan, side).bottom]).map(([from, to]) => to - from),
  );

/** Level length of a rail between its cuts: of one along a slope from its length from tip to tip. */
const levelLength = (plan: Plan, use: string, length: number): number => {
  const slope = Math.abs(plan.sides.find((side) => side.slope !== 0)?.slope ?? 0);
  const depth = plan.job.frame.bottomRail?.depth ?? 0;
  return use.includes("parallel") ? (length - depth * Math.tan(slope)) * Math.cos(slope) : length;
};

describe("sideScene", () => {
  test.each(exampleNames)("%s: the bottom rails that are drawn are those that are cut, as many and as long", (name) => {
    const plan = examplePlan(name);
    // Seen square to the side a rail ends at the middle of a turned post's face; it is cut to the long point, half its width further.
    const beyond = (use: string): number =>
      (use.includes("parallel") ? [] : [...use.matchAll(/cut ([\d.]+) deg off square/g)]).reduce(
        (sum, [, turned]) => sum + ((plan.job.frame.bottomRail?.width ?? 0) / 2) * Math.tan((Number(turned) * Math.PI) / 180),
        0,
      );
    const cut = plan.cuts
      .filter(({ use }) => use.startsWith("bottom rail"))
      .flatMap(({ length, count, use }) => new Array<number>(count).fill(levelLength(plan, use, length) - beyond(use)));
    const drawn = bottomRails(plan);
    expect(drawn).toHaveLength(cut.length);
    [...drawn]
      .sort((a, b) => a - b)
      .forEach((length, index) => {
        // Lengths that the tape cannot tell apart are one part.
        expect(Math.abs(length - ([...cut].sort((a, b) => a - b)[index] ?? 0))).toBeLessThan(0.8);
      });
  });

  test("0002: no bottom rail is drawn or cut between the two posts of a corner, where a slot of 11/16 in is checked", () => {
    const plan = examplePlan("0002-deck-two-corners");
    const last = plan.verticals.find(({ id }) => id === "P4");
    const ends = boards(plan, 0, [plan.job.frame.gapBelow, plan.opening.bottom]).map(([, to]) => to);
    expect(Math.max(...ends)).toBeCloseTo((last?.station ?? 0) - (last?.along ?? 0) / 2, 6);
    const slot = plan.checks.find(({ id }) => id === "corner-slot-A");
    expect(slot?.verdict).toBe("pass");
    expect((slot?.demand?.value ?? 0) / 25.4).toBeCloseTo(0.71, 2);
  });

  test("the top rail is drawn to the corner point, where it is mitred", () => {
    const plan = examplePlan("0002-deck-two-corners");
    const side = plan.sides[0];
    expect(boards(plan, 0, [plan.opening.top, plan.opening.guardHeight])).toEqual([
      [expect.closeTo(side?.startsAt ?? 0, 6), expect.closeTo(side?.length ?? 0, 6)],
    ]);
  });
});
