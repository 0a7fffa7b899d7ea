import { describe, expect, test } from "vitest";
import { commonUnit } from "../../src/stock/problem.ts";

describe("commonUnit", () => {
  test("bars of 8, 10 and 16 ft are counted in units of 2 ft, 609.6 mm, and prices of 12.50 and 20.00 in units of 2.50", () => {
    expect(commonUnit([2438.4, 3048, 4876.8])).toBeCloseTo(609.6, 9);
    expect(commonUnit([1250, 2000])).toBeCloseTo(250, 9);
  });

  test("one value is its own unit, and no value at all is counted in ones", () => {
    expect(commonUnit([7])).toBeCloseTo(7, 9);
    expect(commonUnit([])).toBe(1);
  });
});
