import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { axialCheck, bendingCheck, deflectionCheck, strengthCheck } from "../../src/mechanics/strength-check.ts";

describe("strengthCheck", () => {
  it("a demand of -3 against 4 uses three quarters: the sign doesn't matter", () => {
    const part = { name: "P", value: 1, unit: "N" } as const;
    expect(strengthCheck({ demand: -3, capacity: 4 }, [part])).toEqual({ demand: 3, capacity: 4, ratio: 0.75, parts: [part] });
  });

  it("refuses a capacity of 0", () => {
    expect(() => strengthCheck({ demand: 1, capacity: 0 }, [])).toThrow(RangeError);
  });
});

describe("bendingCheck", () => {
  // Base of a free 4x4 post 36 in high under ten cables of 200 lb: 35,125 in lb on 7.146 in3 is 4915 psi, computed by hand.
  it("35,125 in lb on 7.146 in3 is a stress of 4915 psi (33.9 MPa)", () => {
    const check = bendingCheck({ moment_Nmm: 35_125 * 4.4482216 * 25.4, modulus_mm3: 7.1458333 * 25.4 ** 3, allowable: 10 });
    expect((check.demand * 25.4 ** 2) / 4.4482216).toBeCloseTo(4915.45, 1);
    expect(check.ratio).toBeCloseTo(check.demand / 10, 12);
    expect(check.parts.map(({ name }) => name)).toEqual(["M", "S"]);
  });

  it("law: twice the moment uses twice the share", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e8, noNaN: true }), fc.double({ min: 1, max: 1e6, noNaN: true }), (moment_Nmm, modulus_mm3) => {
        const one = bendingCheck({ moment_Nmm, modulus_mm3, allowable: 7 });
        const two = bendingCheck({ moment_Nmm: 2 * moment_Nmm, modulus_mm3, allowable: 7 });
        expect(two.ratio / one.ratio).toBeCloseTo(2, 12);
      }),
    );
  });

  it("refuses a section modulus of 0", () => {
    expect(() => bendingCheck({ moment_Nmm: 1, modulus_mm3: 0, allowable: 1 })).toThrow(RangeError);
  });
});

describe("axialCheck", () => {
  it("1000 N on 500 mm2 is 2 MPa, half of 4 MPa", () => {
    const check = axialCheck({ force: 1000, area_mm2: 500, allowable: 4 });
    expect(check).toMatchObject({ demand: 2, capacity: 4, ratio: 0.5 });
    expect(check.parts.map(({ name, value, unit }) => [name, value, unit])).toEqual([
      ["P", 1000, "N"],
      ["A", 500, "mm2"],
    ]);
  });

  it("refuses an area of 0", () => {
    expect(() => axialCheck({ force: 1, area_mm2: 0, allowable: 1 })).toThrow(RangeError);
  });
});

describe("deflectionCheck", () => {
  it("10 mm against a limit of 25 mm uses 0.4", () => {
    expect(deflectionCheck({ deflection: 10, limit: 25 })).toEqual({ demand: 10, capacity: 25, ratio: 0.4, parts: [] });
  });

  it("refuses a limit of 0", () => {
    expect(() => deflectionCheck({ deflection: 1, limit: 0 })).toThrow(RangeError);
  });
});
