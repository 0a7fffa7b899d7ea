import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tensionProfile } from "../../src/mechanics/corner.ts";
import { shareOf } from "../../src/plan/take-up.ts";
import { examplePlan } from "../support/example-jobs.ts";

const LENGTH = 12_000;
const [planned] = examplePlan("rule-of-thumb").runs;
if (planned === undefined) throw new Error("no run");
const { left, right } = planned;
const run = { left, pathLength: LENGTH };
const pulls = { length: LENGTH, bends: [], friction: 0.3, wobble_perMm: 0, pull_left: 1000, pull_right: 1000 };
const both = (profile: ReturnType<typeof tensionProfile>) => [left, right].map((end) => shareOf(end, [left, right], run, profile));

describe("what lies on the side of a pulling end", () => {
  test("where one end pulls it is the whole run", () => {
    const profile = tensionProfile({ ...pulls, pull_right: null, wobble_perMm: 1e-5 });
    expect(shareOf(left, [left], run, profile)).toEqual({ integral_NMm: profile.integral_NMm, length: LENGTH });
  });

  test("between two corners alike it is half of the run each: 3 m at 1000 N and 3 m behind a right angle (capstan)", () => {
    const bends = [3000, 9000].map((at) => ({ at, angle: Math.PI / 2 }));
    for (const { integral_NMm, length } of both(tensionProfile({ ...pulls, bends }))) {
      expect(length).toBeCloseTo(6000, 6);
      expect(integral_NMm).toBeCloseTo(3e6 + 3e6 * Math.exp(-0.15 * Math.PI), 3);
    }
  });

  test("corners at 2 and 4 m of 12 leave the least between them: the left end moves 3 m, the right one 9 m", () => {
    const bends = [2000, 4000].map((at) => ({ at, angle: Math.PI / 2 }));
    const [one, other] = both(tensionProfile({ ...pulls, bends }));
    const behind = 1000 * Math.exp(-0.15 * Math.PI);
    expect([one?.length, other?.length]).toEqual([expect.closeTo(3000, 6), expect.closeTo(9000, 6)]);
    expect(one?.integral_NMm).toBeCloseTo(2000 * 1000 + 1000 * behind, 3);
    expect(other?.integral_NMm).toBeCloseTo(1000 * behind + 8000 * 1000, 3);
  });

  test("with wobble alone the profiles meet in the middle: T (1 - exp(-kappa L / 2)) / kappa on each side", () => {
    for (const { integral_NMm, length } of both(tensionProfile({ ...pulls, wobble_perMm: 1e-5 }))) {
      expect(length).toBeCloseTo(6000, 6);
      expect(integral_NMm).toBeCloseTo((1000 * (1 - Math.exp(-0.06))) / 1e-5, 3);
    }
  });

  // With kappa 1e-5 and a right angle at 2 m the left pull leaves 980 N before it, the right one 905 N behind it: 0.92 of the one, more than
  // the 0.62 at which it would slip there. So nothing moves at the bend.
  test("a bend at 2 m of 12 at which nothing slips parts the run: the left end moves 2 m, the right one 10 m", () => {
    const bends = [{ at: 2000, angle: Math.PI / 2 }];
    const [one, other] = both(tensionProfile({ ...pulls, bends, wobble_perMm: 1e-5 }));
    expect([one?.length, other?.length]).toEqual([expect.closeTo(2000, 6), expect.closeTo(10_000, 6)]);
    expect(one?.integral_NMm).toBeCloseTo((1000 * (1 - Math.exp(-0.02))) / 1e-5, 3);
    expect(other?.integral_NMm).toBeCloseTo((1000 * (1 - Math.exp(-0.1))) / 1e-5, 3);
  });

  test("law: both sides together are the run, however it bends", () => {
    const bend = fc.record({ at: fc.integer({ min: 1, max: 11_999 }), angle: fc.double({ min: -2, max: 2, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(bend, { maxLength: 5 }), fc.constantFrom(0, 1e-6, 1e-5), (bends, wobble_perMm) => {
        const profile = tensionProfile({ ...pulls, bends, wobble_perMm });
        const sides = both(profile);
        expect(sides.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(LENGTH, 6);
        expect(sides.reduce((sum, { integral_NMm }) => sum + integral_NMm, 0) / profile.integral_NMm).toBeCloseTo(1, 9);
      }),
    );
  });
});
