import { describe, expect, it } from "vitest";
import { axialStiffness, bendingStiffness, fillFactor, metallicArea } from "../../src/mechanics/strand.ts";
import { metallicShare } from "../../src/tables/strand.ts";

describe("fillFactor", () => {
  it("19, 49 and 133 equal wires of a 5th, 9th and 15th fill 0.760, 0.605 and 0.591 of the circle (wire counts)", () => {
    expect(fillFactor("1x19")).toBe(0.76);
    expect(fillFactor("7x7")).toBeCloseTo(0.605, 3);
    expect(fillFactor("7x19")).toBeCloseTo(0.591, 3);
  });

  it("agrees with the table of strands, which may not ask this room", () => {
    for (const construction of ["1x19", "7x7", "7x19"] as const) expect(metallicShare(construction).value).toBe(fillFactor(construction));
  });
});

describe("metallicArea", () => {
  it("1x19 of 1/8 in has the metal of 19 wires of 0.025 in (closed form)", () => {
    const wire = (Math.PI / 4) * 0.635 ** 2;
    expect(metallicArea({ construction: "1x19", diameter: 3.175 })).toBeCloseTo(19 * wire, 12);
  });

  it("refuses a strand of 0 mm", () => {
    expect(() => metallicArea({ construction: "7x7", diameter: 0 })).toThrow(RangeError);
  });
});

describe("axialStiffness", () => {
  it("1x19 of 1/8 in at 130 GPa has 782.23 kN, the EA of the reference cases", () => {
    const area = metallicArea({ construction: "1x19", diameter: 3.175 });
    expect(axialStiffness({ modulus: 130e3, area })).toBeCloseTo(782229.6709, 3);
  });

  it("refuses a modulus or an area of 0", () => {
    expect(() => axialStiffness({ modulus: 0, area: 6 })).toThrow(RangeError);
    expect(() => axialStiffness({ modulus: 130e3, area: 0 })).toThrow(RangeError);
  });
});

describe("bendingStiffness", () => {
  it("loose wires of 1x19 are 19 round bars of D/5, a solid bar of the same EA is 25 times as stiff (closed form)", () => {
    const { loose_Nmm2, solid_Nmm2 } = bendingStiffness({ construction: "1x19", diameter: 3.175, modulus: 130e3 });
    expect(loose_Nmm2).toBeCloseTo((19 * 130e3 * Math.PI * 0.635 ** 4) / 64, 6);
    expect(solid_Nmm2 / loose_Nmm2).toBeCloseTo(25, 12);
  });
});
