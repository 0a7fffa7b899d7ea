import { describe, expect, it } from "vitest";
import { adjusted } from "../../src/mechanics/wood-adjust.ts";

describe("adjusted", () => {
  it("10 MPa x 0.9 x 0.85 is 7.65 MPa, and the chain stands in its order with those that are 1", () => {
    const factors = [
      { name: "C_D", value: 0.9 },
      { name: "C_M", value: 0.85 },
      { name: "C_t", value: 1 },
    ];
    const chain = adjusted(10, factors);
    expect(chain.value).toBeCloseTo(7.65, 12);
    expect(chain).toMatchObject({ reference: 10, factors });
  });

  it("refuses a reference of 0 and a factor of 0", () => {
    expect(() => adjusted(0, [])).toThrow(RangeError);
    expect(() => adjusted(1, [{ name: "C_P", value: 0 }])).toThrow(/C_P/);
  });
});
