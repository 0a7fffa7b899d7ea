import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countSteps, roundDown, roundNearest, roundTo, roundUp, withoutDust } from "../../src/units/round.ts";

// Expected values by hand arithmetic.

describe("roundUp", () => {
  test("25.41 mm goes up to 17/16 in, and 25.4 mm stays at 16/16 in", () => {
    expect(roundUp(25.41, 25.4 / 16)).toBe((17 * 25.4) / 16);
    expect(roundUp(25.4, 25.4 / 16)).toBe(25.4);
  });

  test("0.1 + 0.2 is 3 tenths but for dust and is not bought as 4", () => expect(roundUp(0.1 + 0.2, 0.1)).toBe(0.3));

  test("-1.5 goes up to -1", () => expect(roundUp(-1.5, 1)).toBe(-1));
});

describe("roundDown", () => {
  test("12 ft in mm by floating point (3657.6000000000004) and one ulp below 3657.6 both hold 12 whole feet", () => {
    expect(roundDown(12 * 304.8, 304.8)).toBeCloseTo(3657.6, 9);
    expect(countSteps(3657.6 - 4.6e-13, { step: 304.8, rounding: "down" })).toBe(12);
  });

  test("2.999 stays below 3", () => expect(roundDown(2.999, 1)).toBe(2));
});

describe("roundNearest", () => {
  test("half a step goes away from zero on both sides: 2.5 to 3 and -2.5 to -3", () => {
    expect(roundNearest(2.5, 1)).toBe(3);
    expect(roundNearest(-2.5, 1)).toBe(-3);
  });

  test("1.005 is half-way between 1.00 and 1.01 but for dust and goes to 1.01", () => expect(roundTo(1.005, 2)).toBe(1.01));

  test("-0.2 becomes 0 and not minus 0", () => expect(Object.is(roundNearest(-0.2, 1), 0)).toBe(true));

  test("a step of 0, below 0 or without end is refused, and so is a value without end", () => {
    for (const step of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(() => roundNearest(1, step)).toThrow(RangeError);
    expect(() => roundNearest(Number.NaN, 1)).toThrow(RangeError);
  });
});

describe("steps and dust of any size", () => {
  test("steps that are no part of 1 stay what they are: 1 is nearest to 0.9 in steps of 0.3, and to 1.2 upwards in steps of 0.4", () => {
    expect(roundNearest(1, 0.3)).toBeCloseTo(0.9, 12);
    expect(roundUp(1, 0.4)).toBeCloseTo(1.2, 12);
    expect(roundNearest(60, 25)).toBe(50);
  });

  test("dust is a share of the value: 1e8 and 3e-8 is 1e8 and not bought as one more, and as little below a half goes up", () => {
    expect(roundUp(1e8 + 3e-8, 1)).toBe(1e8);
    expect(roundNearest(1e8 + 0.5 - 3e-8, 1)).toBe(1e8 + 1);
  });

  test("less than a thousand-millionth of a step is none: 3e-10 is 0", () => expect(roundUp(3e-10, 1)).toBe(0));

  test("lengths without dust compare equal: 0.1 + 0.2 is 0.3, a third is 0.333333", () => {
    expect(withoutDust(0.1 + 0.2)).toBe(0.3);
    expect(withoutDust(1 / 3)).toBe(0.333333);
  });
});

describe("laws of rounding", () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const step = fc.constantFrom(25.4 / 64, 25.4 / 16, 1, 0.1, 0.01, 5, 22.241108);

  test("down is at most the value, up at least, nearest within half a step, all within the dust", () => {
    fc.assert(
      fc.property(value, step, (x, s) => {
        const slack = 2e-9 * Math.max(Math.abs(x), s);
        expect(roundDown(x, s)).toBeLessThanOrEqual(x + slack);
        expect(roundUp(x, s)).toBeGreaterThanOrEqual(x - slack);
        expect(Math.abs(roundNearest(x, s) - x)).toBeLessThanOrEqual(s / 2 + slack);
      }),
    );
  });

  test("what has been rounded once stays", () => {
    fc.assert(
      fc.property(value, step, (x, s) => {
        for (const round of [roundUp, roundDown, roundNearest]) expect(round(round(x, s), s)).toBe(round(x, s));
      }),
    );
  });

  test("mirrored values round to mirrored values", () => {
    fc.assert(
      fc.property(value, step, (x, s) => {
        expect(roundNearest(-x, s)).toBe(0 - roundNearest(x, s));
        expect(roundUp(-x, s)).toBe(0 - roundDown(x, s));
      }),
    );
  });
});
