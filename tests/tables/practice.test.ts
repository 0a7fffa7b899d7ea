import { describe, expect, test } from "vitest";
import * as rules from "../../src/tables/practice.ts";

const FOOT = 304.8;
const INCH = 25.4;

// Common practice, no source: the expected values are the trade's rules of thumb as they are usually told.
describe("rules of thumb", () => {
  test("posts 6 ft, free length 3 ft, cables 3 in, walls 3 to 4 in, two corners, runs of 40 and 70 ft", () => {
    expect.soft(rules.postSpacing_max.value).toBeCloseTo(6 * FOOT, 9);
    expect.soft(rules.freeLength_max.value).toBeCloseTo(3 * FOOT, 9);
    expect.soft(rules.cableSpacing_max.value).toBeCloseTo(3 * INCH, 9);
    expect.soft(rules.wallGap_min.value).toBeCloseTo(3 * INCH, 9);
    expect.soft(rules.wallGap_max.value).toBeCloseTo(4 * INCH, 9);
    expect.soft(rules.bends_max.value).toBe(2);
    expect.soft(rules.runWithBends_max.value).toBeCloseTo(40 * FOOT, 9);
    expect.soft(rules.runStraight_max.value).toBeCloseTo(70 * FOOT, 9);
  });

  test("ready lengths are 5, 10 ... 70 ft: fourteen of them, and 25 ft is the next above 23 ft", () => {
    expect(rules.readyLengths.value).toHaveLength(14);
    expect(rules.readyLengths.value.at(-1)).toBeCloseTo(70 * FOOT, 9);
    expect(rules.readyLengths.value.find((length) => length >= 23 * FOOT)).toBeCloseTo(25 * FOOT, 9);
  });

  test("bores for 1/8 in cable: pass 1/4, stud 5/16, grip 1/4 with a 3/8 counterbore, 3/8 through where the back is out of reach", () => {
    expect.soft(rules.passBore.value).toBe(6.35);
    expect.soft(rules.studBore.value).toBe(7.9375);
    expect.soft(rules.gripBore.value).toBe(6.35);
    expect.soft(rules.gripCounterbore.value).toBe(9.525);
    expect.soft(rules.gripBoreNoBack.value).toBe(9.525);
  });

  test("a bushing angle of 3 degrees is 0.05236 rad", () => {
    expect(rules.bushingAngle.value).toBeCloseTo(0.05236, 5);
  });

  test("the coldest day is colder than the reference, the warmest warmer, and wood dries from 19 % to 12 %", () => {
    expect(rules.coldest.value).toBeLessThan(rules.reference.value);
    expect(rules.warmest.value).toBeGreaterThan(rules.reference.value);
    expect([rules.moistureAtFitting_percent.value, rules.moistureInService_percent.value]).toEqual([19, 12]);
  });

  test("a plate on steel turns less than a bolt in wood: 100 against 25 kN m per radian", () => {
    expect(rules.postBase_metal.value / rules.postBase_wood.value).toBe(4);
  });

  test("every rule says what it is, and all but the bedding of the strand are marked as practice", () => {
    const all = Object.entries(rules);
    expect(all.length).toBeGreaterThan(30);
    for (const [name, rule] of all) {
      expect(rule.where.length, name).toBeGreaterThan(5);
      expect(rule.source, name).toBe(name === "beddingShare" ? "yacht-rigging" : "practice");
    }
  });
});
