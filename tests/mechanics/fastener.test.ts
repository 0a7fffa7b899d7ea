import { describe, expect, it } from "vitest";
import { coupleForce, withdrawal } from "../../src/mechanics/fastener.ts";

const screw = { rule: { constant: 2, gravityPower: 1.5, diameterPower: 0.75 }, gravity: 0.5, diameter: 10, penetration: 50 };

describe("withdrawal", () => {
  it("constant x G^1.5 x D^0.75 for each mm, times length and factor; no factor counts as 1", () => {
    const perLength_NPerMm = 2 * 0.5 ** 1.5 * 10 ** 0.75;
    const free = withdrawal(screw);
    expect(free.perLength_NPerMm).toBeCloseTo(perLength_NPerMm, 12);
    expect(free.force).toBeCloseTo(50 * perLength_NPerMm, 10);
    expect(withdrawal({ ...screw, factor: 0.7 }).force).toBeCloseTo(0.7 * free.force, 10);
  });

  it("refuses what is not positive", () => {
    for (const wrong of [{ gravity: 0 }, { diameter: 0 }, { penetration: 0 }]) {
      expect(() => withdrawal({ ...screw, ...wrong })).toThrow(RangeError);
    }
  });
});

describe("coupleForce", () => {
  // 200 lb at 36 in above the deck: 7200 in lb; on bolts 5 in apart 1440 lb each.
  it("7200 in lb on an arm of 5 in is 1440 lb in each, whichever way it turns", () => {
    expect(coupleForce({ moment_Nmm: 7200, arm: 5 })).toBe(1440);
    expect(coupleForce({ moment_Nmm: -7200, arm: 5 })).toBe(1440);
  });

  it("refuses an arm of 0", () => {
    expect(() => coupleForce({ moment_Nmm: 1, arm: 0 })).toThrow(RangeError);
  });
});
