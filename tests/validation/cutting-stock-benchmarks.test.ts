// Bin packing problems whose optima are published as equal pairs of bounds in Bounds.txt of BPPLib.jl (rafaelmartinelli/BPPLib.jl,
// commit 2b30a398, MIT): PM_u020_02 (same repository); t60_00 and u120_00 of E. Falkenauer, "A hybrid grouping genetic
// algorithm for bin packing", J. Heuristics 2 (1996), from the OR-Library (binpack5, binpack1).
// t60_00 and u120_00 have more patterns than are listed: for them the plan stays within one bar of the optimum and says that it
// is not proven. The weights of u120_00 are from memory; their sum and first fit decreasing agree with the published 48 and 49.
import { describe, expect, test } from "vitest";
import { cutStock, type StockPlan } from "../../src/stock/cut.ts";

function pack(capacity: number, weights: readonly number[]): StockPlan {
  const plan = cutStock({
    pieces: weights.map((length, index) => ({ mark: `${index}`, length })),
    stock: [{ length: capacity, cost: 1 }],
    kerf: 0,
    endTrim: 0,
    objective: "count",
  });
  if ("tooLong" in plan) throw new Error(plan.tooLong);
  return plan;
}

const PM_u020_02 = [66, 68, 87, 25, 97, 67, 82, 78, 57, 64, 93, 45, 38, 78, 30, 38, 49, 89, 100, 94];

const t60_00 = [
  495, 474, 473, 472, 466, 450, 445, 444, 439, 430, 419, 414, 410, 395, 372, 370, 366, 366, 366, 363, 361, 357, 355, 351, 350, 350, 347,
  320, 315, 307, 303, 299, 298, 298, 292, 288, 287, 283, 275, 275, 274, 273, 273, 272, 272, 271, 269, 269, 268, 263, 262, 261, 259, 258,
  255, 254, 252, 252, 252, 251,
];

const u120_00 = [
  42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73, 49, 70, 59, 23, 57, 72, 74, 69, 33, 42,
  28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98,
  91, 96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78, 73, 62, 36, 44, 94, 69,
  32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
];

describe("cutStock", () => {
  test("PM_u020_02, 20 weights in bins of 150: 10, proven, where the weight alone asks for 9", () => {
    expect(pack(150, PM_u020_02)).toMatchObject({ total: 10, bound: 10, proven: true });
  });

  test.each([
    ["t60_00", 1000, t60_00, { count: 60, optimum: 20 }],
    ["u120_00", 150, u120_00, { count: 120, optimum: 48 }],
  ] as const)("%s in bins of %i: bound <= optimum <= plan <= optimum + 1", (_name, capacity, weights, { count, optimum }) => {
    expect(weights).toHaveLength(count);
    const plan = pack(capacity, weights);
    expect(plan.bound).toBeLessThanOrEqual(optimum);
    expect(plan.total).toBeGreaterThanOrEqual(optimum);
    expect(plan.total).toBeLessThanOrEqual(optimum + 1);
    expect(plan.proven).toBe(plan.total === plan.bound);
  });
});
