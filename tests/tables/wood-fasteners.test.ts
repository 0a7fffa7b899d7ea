import { describe, expect, test } from "vitest";
import { lagScrewRule, nailRule } from "../../src/tables/wood-fasteners.ts";

describe("withdrawal rules", () => {
  // W = 1800 G^1.5 D^0.75 and 1380 G^2.5 D in lb/in and in; at G = 1 and D = 1 in the constant alone remains.
  test.each([
    [lagScrewRule, 1800],
    [nailRule, 1380],
  ])("with G = 1 and D = 1 in a fastener holds its constant (%#)", ({ value: rule }, printed) => {
    const perLength_NPerMm = rule.constant * 25.4 ** rule.diameterPower;
    expect((perLength_NPerMm * 25.4) / 4.4482216152605).toBeCloseTo(printed, 9);
  });

  test("powers 1.5 and 0.75 for a lag screw, 2.5 and 1 for a nail", () => {
    expect(lagScrewRule.value).toMatchObject({ gravityPower: 1.5, diameterPower: 0.75 });
    expect(nailRule.value).toMatchObject({ gravityPower: 2.5, diameterPower: 1 });
  });
});
