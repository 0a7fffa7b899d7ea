// Source: flooringartists.com, dimensional change chart (quotes the Wood Handbook), with a worked example: mesquite, 5 in wide, coefficient
// 0.00129, from 6 to 9 % of moisture: 0.019 in. Coefficients quoted: Douglas-fir 0.00267, southern yellow pine 0.00265, longleaf 0.00263.
import { describe, expect, it } from "vitest";
import { sizeChange } from "../../src/mechanics/settling.ts";
import { shrinkageCoefficient, woodShrinkage } from "../../src/tables/shrinkage.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("sizeChange", () => {
  it("5 in of mesquite from 6 to 9 % grow by 0.019 in", () => {
    const change = sizeChange({ size: 5, moisture_from_percent: 6, moisture_to_percent: 9, shrinkage_percent: 3.2, coefficient: 0.00129 });
    expectAsPrinted(change, "0.019");
  });
});

describe("woodShrinkage", () => {
  it("Douglas-fir 0.00267 and longleaf 0.00263 as quoted, and as the total shrinkage gives them", () => {
    expect(woodShrinkage["Douglas-fir, coast"].coefficient.tangential).toMatchObject({ value: 0.00267, source: "dimension-change-chart" });
    expect(woodShrinkage["longleaf pine"].coefficient.tangential.value).toBe(0.00263);
    expectAsPrinted(shrinkageCoefficient(7.6), "0.00267");
    expectAsPrinted(shrinkageCoefficient(7.5), "0.00263");
  });
});
