import { describe, expect, it } from "vitest";
import { risingRoot, topOf } from "../../src/mechanics/solve.ts";

describe("risingRoot", () => {
  it("x^2 - 2 rises through zero at sqrt 2, to the last bit", () => {
    expect(risingRoot({ of: (x) => x * x - 2, low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 15);
  });

  it("gives the high end when the function is zero there only", () => {
    expect(risingRoot({ of: (x) => x - 5, low: 0, high: 5 })).toBe(5);
  });

  it("stops early at the precision asked for: within 1 % of 3", () => {
    const root = risingRoot({ of: (x) => x - 3, low: 0, high: 1000, precision: 0.01 });
    expect(Math.abs(root - 3)).toBeLessThanOrEqual(0.03);
    expect(root).not.toBe(3);
  });
});

describe("topOf", () => {
  it("sin x from 0 to 3 is greatest at pi/2, to the root of the machine's precision", () => {
    expect(topOf({ of: Math.sin, low: 0, high: 3, precision: 2e-9 })).toBeCloseTo(Math.PI / 2, 7);
  });

  it("a function that only rises is greatest at its high end exactly, one that only falls at its low end", () => {
    expect(topOf({ of: (x) => x, low: -2, high: 7 })).toBe(7);
    expect(topOf({ of: (x) => -x, low: -2, high: 7 })).toBe(-2);
  });
});
