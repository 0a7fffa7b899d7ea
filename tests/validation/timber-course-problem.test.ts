// Source: Missouri University of Science and Technology, course CE 5260, problem 4.34: a 13.25 in beam dries from 19 to 10 % and shrinks by
// 0.2 % of its size per percent of moisture; printed shrinkage 0.2385 in. (Its second figure, 13.02 in, does not follow from its own
// formula, which gives 12.989, and is left out.)
import { describe, it } from "vitest";
import { evenSizeChange } from "../../src/mechanics/settling.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("evenSizeChange", () => {
  it("problem 4.34: 13.25 in from 19 to 10 % at 0.002 per percent shrink by 0.2385 in", () => {
    expectAsPrinted(-evenSizeChange({ size: 13.25, moisture_change_percent: 10 - 19, coefficient: 0.002 }), "0.2385");
  });
});
