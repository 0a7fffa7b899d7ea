// Source: reference solutions of temperature and shrinkage, made with numpy and scipy (unstressed length at the first tension, new length
// at the new temperature, linear frame, T >= 0) and checked with CalculiX 2.20 (tests/support/reference-cases.json). Each case states its
// own tolerance. Temperature moves deck, rails and cable, not the height of the posts; shrinkage moves each anchor by its share inward.
import { describe, expect, it } from "vitest";
import { solveClimateCase } from "../../src/mechanics/cases/climate-case.ts";
import { guardOfCase } from "../../src/mechanics/cases/frame-case.ts";
import { guardFrame } from "../../src/mechanics/guard-frame.ts";
import { closingByTemperature } from "../../src/mechanics/temperature.ts";
import { frameClimateCases, loneClimateCases, shareOf } from "../support/reference-cases.ts";

/** The closing of the anchors is plain arithmetic: it agrees to the digits that the file prints. */
const PRINTED_mm = 1e-8;

describe("solveClimateCase against reference solutions", () => {
  it("has all 10 cases: 3 of one cable, 7 of a frame", () => {
    expect([loneClimateCases.length, frameClimateCases.length]).toEqual([3, 7]);
  });

  it.each([...loneClimateCases, ...frameClimateCases])("$id: $in.dT.K K and $in.post_shrinkage_each.mm mm of shrinkage", (one) => {
    const found = solveClimateCase(one.in);
    const first = "L" in one.in ? [one.in.T0.N] : one.in.T0.N;
    const near = (computed: readonly number[], reference: readonly number[], within: (cable: number) => number): void => {
      expect.soft(computed).toHaveLength(reference.length);
      for (const [cable, value] of reference.entries()) {
        expect.soft(Math.abs((computed[cable] ?? Number.NaN) - value), `${one.id} cable ${cable + 1}`).toBeLessThanOrEqual(within(cable));
      }
    };
    const share = shareOf(one, "change");
    const ofFirst = (cable: number): number => share * (first[cable] ?? 0);
    expect.soft(found.slack_cables).toEqual(one.out.slack_cables);
    near(found.anchor_closing_before_cables_react.mm, one.out.anchor_closing_before_cables_react.mm, () => PRINTED_mm);
    near(found.change.N, one.out.change.N, ofFirst);
    near(found.tension.N, one.out.tension.N, ofFirst);
    near(found.rigid_frame_change.N, one.out.rigid_frame_change.N, ofFirst);
    near([found.linear_minus_exact_over_T0], [one.out.linear_minus_exact_over_T0], () => 1e-6);
  });

  it("a cable that a warm day leaves without tension is named: F5-01 made 60 K warmer with a tenth of the tension", () => {
    const [one] = loneClimateCases;
    if (one === undefined) throw new Error("no case");
    const found = solveClimateCase({ ...one.in, T0: { N: one.in.T0.N / 10 }, dT: { K: 60 } });
    expect(found).toMatchObject({ tension: { N: [0] }, slack_cables: [1] });
  });
});

describe("closingByTemperature", () => {
  it.each(frameClimateCases)(
    "$id: a rail that grows alone opens each cable by its compression under that cable's unit pull times its length (virtual forces)",
    (one) => {
      const guard = guardFrame(guardOfCase(one.in.frame_inputs));
      const posts = guard.input.posts;
      const closing = closingByTemperature({
        warmer: 1,
        expansion_deck_perC: 0,
        expansion_rail_perC: 1e-5,
        perDeckStrain: guard.perDeckStrain.closing,
        perRailStrain: guard.perRailStrain.closing,
      });
      for (const [cable, value] of closing.entries()) {
        const thrusts = [guard.perPull[cable]?.topRailThrust ?? [], guard.perPull[cable]?.bottomRailThrust ?? []];
        const work = thrusts.flatMap((bays) =>
          bays.map((thrust, bay) => thrust * ((posts[bay + 1]?.station ?? 0) - (posts[bay]?.station ?? 0))),
        );
        expect.soft(Math.abs(value + 1e-5 * work.reduce((sum, part) => sum + part, 0))).toBeLessThan(1e-9);
      }
    },
  );
});
