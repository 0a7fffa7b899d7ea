import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drills, nextDrillUp } from "../../src/tables/drills.ts";

const INCH = 25.4;

// Drill sizes: GNU units 2.22, definitions.units.
describe("nextDrillUp", () => {
  test("a 1/4 in bore takes a 1/4 in drill, and 0.251 in takes an F (0.257 in)", () => {
    expect(nextDrillUp(INCH / 4)?.name).toBe("1/4");
    expect(nextDrillUp(0.251 * INCH)?.name).toBe("F");
  });

  test("of fractions only, 0.251 in takes 17/64", () => {
    expect(nextDrillUp(0.251 * INCH, ["fraction"])?.name).toBe("17/64");
  });

  test("0.199 in takes a number 8, and 0.2 in a number 7", () => {
    expect(nextDrillUp(0.199 * INCH)?.name).toBe("#8");
    expect(nextDrillUp(0.2 * INCH)?.name).toBe("#7");
  });

  test("above 1 in there is none; a bore of 0 is refused", () => {
    expect(nextDrillUp(INCH)?.name).toBe("1");
    expect(nextDrillUp(25.5)).toBeNull();
    expect(() => nextDrillUp(0)).toThrow(RangeError);
  });

  test("it is never thinner than the bore, and no other drill lies between", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: INCH, noNaN: true }), (diameter) => {
        const found = nextDrillUp(diameter);
        expect(found?.diameter).toBeGreaterThanOrEqual(diameter - 1e-6);
        expect(drills.value.filter((one) => one.diameter > diameter && one.diameter < (found?.diameter ?? 0) - 1e-6)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});

describe("drills", () => {
  test("61 fractions from 1/16 to 1 in, 26 letters from 0.234 to 0.413 in, thinnest first", () => {
    const of = (kind: string) => drills.value.filter((one) => one.kind === kind);
    expect(of("fraction")).toHaveLength(61);
    expect(
      of("letter")
        .map((one) => one.name)
        .join(""),
    ).toBe("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    expect(of("letter").at(-1)?.diameter).toBeCloseTo(0.413 * INCH, 9);
    expect(drills.value.map((one) => one.diameter)).toEqual(drills.value.map((one) => one.diameter).sort((a, b) => a - b));
  });
});
