import { describe, expect, test } from "vitest";
import { inCheapestBar, quickPlan } from "../../src/stock/first-fit.ts";
import type { Bar, Cutting } from "../../src/stock/problem.ts";

const bar = (length: number, value: number): Bar => ({ length, capacity: length, value });
const cuttingOf = (lengths: readonly number[], bars: readonly Bar[]): Cutting => ({
  parts: [...new Set(lengths)].sort((a, b) => b - a).map((width) => ({ width, demand: lengths.filter((one) => one === width).length })),
  bars,
});
const barsOf = (lengths: readonly number[], capacity: number) => quickPlan(cuttingOf(lengths, [bar(capacity, 1)]));

describe("quickPlan", () => {
  test("takes the better of two ways: 7+5+4+4 twice, where first fit decreasing needs three bars of 20", () => {
    expect(barsOf([7, 7, 5, 5, 4, 4, 4, 4], 20)).toHaveLength(2);
  });

  test("and first fit decreasing where that is better: 9+4, 8+4+2, 8+3+3, 7+7 in bars of 14, and not 9+3+2 first, which leaves five", () => {
    expect(barsOf([9, 8, 8, 7, 7, 4, 4, 3, 3, 2], 14)).toHaveLength(4);
  });

  test("of bars of 6 for 6 and of 20 for 7 it takes one of 20 for four pieces of 5, and one of 6 for a single piece", () => {
    const bars = [bar(6, 6), bar(20, 7)];
    expect(quickPlan(cuttingOf([5, 5, 5, 5], bars)).map((pattern) => pattern.bar.length)).toEqual([20]);
    expect(quickPlan(cuttingOf([5], bars)).map((pattern) => pattern.bar.length)).toEqual([6]);
  });
});

describe("inCheapestBar", () => {
  test("refuses pieces that no bar holds", () => {
    expect(() => inCheapestBar([3], cuttingOf([5], [bar(6, 6), bar(14, 7)]))).toThrow("no bar holds 15 mm");
  });
});
