// A corner post that two runs go through, worked out by hand from the job file of 0019 alone: an opening from 6 in to 36-1/2 in, cables at
// most 3 in apart, heights on marks of 1/16 in, bores of 5/16 in and 3/8 in with at least 1/2 in of wood between them.
import { describe, expect, test } from "vitest";
import { examplePlan } from "../../support/example-jobs.ts";
import { checkOf, INCH } from "../../support/in-plan.ts";

const plan = examplePlan("0019-corner-bores-set-off");
const inches = (mm: number): number => mm / INCH;
const SIXTEENTH = 1 / 16;

describe("the heights of its courses", () => {
  // 3/8 + 1/2 = 7/8 in at least. 30-1/2 + 7/8 = 31-3/8 in take 11 spacings of at most 3 in: 10 cables.
  // Half-way: 30-1/2 / 21 = 1.452 in, on a mark 1-7/16 in; 11 x 3 - 30-1/2 = 2-1/2 in would be left for it.
  test("ten cables, those of side A 1-7/16 in lower than those of sides B and C", () => {
    expect(plan.courses).toHaveLength(10);
    expect(inches(plan.setOff?.least ?? 0)).toBeCloseTo(7 / 8, 9);
    expect(inches(plan.setOff?.by ?? 0)).toBeCloseTo(23 / 16, 9);
    expect(plan.sides.filter(({ isRaised }) => isRaised).map(({ id }) => id)).toEqual(["B", "C"]);
  });

  // (30-1/2 + 1-7/16) / 11 = 2.90341 in, the n-th cable of side A at 6 - 1-7/16 + 2.90341 n.
  test("side A: 7-7/16, 10-3/8, 13-1/4 ... 33-5/8 in, each the nearest mark to an even division that begins 1-7/16 in below the rail", () => {
    const byHand = [7 + 7 / 16, 10 + 3 / 8, 13 + 1 / 4, 16 + 3 / 16, 19 + 1 / 16, 22, 24 + 7 / 8, 27 + 13 / 16, 30 + 11 / 16, 33 + 5 / 8];
    const exact = byHand.map((_, index) => 6 - 23 / 16 + ((30.5 + 23 / 16) * (index + 1)) / 11);
    exact.forEach((height, index) => {
      expect(Math.abs(height - (byHand[index] ?? 0))).toBeLessThanOrEqual(SIXTEENTH / 2);
    });
    const bored = (postId: string): readonly number[] =>
      plan.bores.filter(({ verticalId }) => verticalId === postId).map(({ height }) => inches(height));
    expect(bored("P1")).toEqual(byHand.map((height) => expect.closeTo(height, 9)));
    expect(bored("P11")).toEqual(byHand.map((height) => expect.closeTo(height + 23 / 16, 9)));
    expect(bored("P4")).toEqual([...byHand, ...byHand.map((height) => height + 23 / 16)].map((height) => expect.closeTo(height, 9)));
  });

  test("no gap is above 3 in: side A has 1-7/16 in under its lowest cable, 2-7/8 in over its highest; B and C the other way round", () => {
    const all = [plan.gaps, plan.setOff?.gaps ?? []];
    expect(all.map((gaps) => [gaps[0], gaps.at(-1)].map((gap) => inches(gap?.spacing ?? 0)))).toEqual([
      [expect.closeTo(23 / 16, 9), expect.closeTo(2.875, 9)],
      [expect.closeTo(2.875, 9), expect.closeTo(23 / 16, 9)],
    ]);
    for (const gaps of all) {
      expect(gaps).toHaveLength(11);
      for (const { spacing } of gaps) expect(inches(spacing)).toBeLessThanOrEqual(3);
      expect(inches(gaps.reduce((sum, { spacing }) => sum + spacing, 0))).toBeCloseTo(30.5, 9);
    }
  });
});

test("wood between two bores: 1-7/16 in less half of 5/16 and of 3/8 in, 1-3/32 in, whichever way", () => {
  const { demand, limit, verdict } = checkOf(plan, "crossing-P4");
  expect(inches(demand?.value ?? 0)).toBeCloseTo(35 / 32, 9);
  // To the next one below: 2-7/8 - 1-7/16 in, as much.
  expect(2 + 7 / 8 - 23 / 16 - (5 / 16 + 3 / 8) / 2).toBe(35 / 32);
  expect(inches(limit?.value ?? 0)).toBeCloseTo(0.5, 9);
  expect(verdict).toBe("pass");
});

// R1 from the outer face of P1, 3-1/2 in from the siding, to the far face of P4, half a post beyond the corner point at 140 in.
// R2 from half a post before that point along B, over the corner of two posts, whose faces stand 3-1/4 in off their point, to the end of C.
test("the runs are as long as by hand", () => {
  const [first, second] = plan.runs.map(({ pathLength }) => inches(pathLength));
  expect(first).toBeCloseTo(140 + 2.75 - 3.5, 6);
  expect(second).toBeCloseTo(2.75 + 180 - 3.25 + 3.25 * Math.SQRT2 + 93 - 3.25, 4);
});
