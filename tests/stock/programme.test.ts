import { describe, expect, test } from "vitest";
import { listPatterns } from "../../src/stock/patterns.ts";
import { type Cutting, totalValue } from "../../src/stock/problem.ts";
import { cheapest, relaxedTotal } from "../../src/stock/programme.ts";

// Data of the GAMS cutting stock example, see tests/validation/cutting-stock-gams.test.ts.
const gams: Cutting = {
  parts: [
    { width: 45, demand: 97 },
    { width: 36, demand: 610 },
    { width: 31, demand: 395 },
    { width: 14, demand: 211 },
  ],
  bars: [{ length: 100, capacity: 100, value: 1 }],
};
const patterns = listPatterns(gams, 100) ?? [];

describe("relaxedTotal", () => {
  // By hand: 45+45 is used 48.5 times, 36+36+14+14 105.5 times, 36+36 100.75 times, 36+31+31 197.5 times; their sum is 452.25.
  test("in fractions the GAMS example takes 452.25 bars", () => {
    expect(relaxedTotal(gams, patterns)).toBeCloseTo(48.5 + 105.5 + 100.75 + 197.5, 6);
  });
});

describe("cheapest", () => {
  test("between 453 and 500 bars there is a plan of 453, which cuts at least what is asked", () => {
    const found = cheapest(gams, patterns, { least: 453, most: 500 });
    expect(found).toMatchObject({ kind: "better", proven: true });
    if (found.kind !== "better") return;
    expect(totalValue(found.solution)).toBe(453);
    for (const [index, part] of gams.parts.entries()) {
      const cut = found.solution.reduce((sum, pattern) => sum + (pattern.counts[index] ?? 0), 0);
      expect(cut).toBeGreaterThanOrEqual(part.demand);
    }
  });

  test("below 453 bars there is none", () => {
    expect(cheapest(gams, patterns, { least: 1, most: 452 })).toEqual({ kind: "none" });
  });
});
