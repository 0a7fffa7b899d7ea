import { describe, expect, it } from "vitest";
import { breakingForce, mass, metallicShare, strandModulus, strandStiffness } from "../../src/tables/strand.ts";

const FORCE_N_PER_LBF = 4.4482216152605;

describe("metallicShare", () => {
  it("is 0.76 for 1x19, inside the 0.73 to 0.77 of EN 1993-1-11 table 2.2, and derived", () => {
    expect(metallicShare("1x19")).toMatchObject({ value: 0.76, source: "derived" });
    expect(metallicShare("7x7").value).toBeCloseTo(49 / 81, 15);
    expect(metallicShare("7x19").value).toBeCloseTo(133 / 225, 15);
  });
});

describe("strandModulus", () => {
  it("is 130 +- 10 GPa for 1x19 (EN 1993-1-11 table 3.1) and 90 +- 10 GPa, remembered, for the stranded ropes", () => {
    expect(strandModulus("1x19")).toMatchObject({ value: { low: 120e3, nominal: 130e3, high: 140e3 }, source: "en-1993-1-11" });
    expect(strandModulus("7x7")).toMatchObject({ value: { nominal: 90e3 }, source: "memory" });
    expect(strandModulus("7x19").value).toEqual(strandModulus("7x7").value);
  });
});

describe("strandStiffness", () => {
  it("1x19 of 1/8 in: 782 kN nominal; the 840 kN between three published rules lies within the band of 7 % about 840", () => {
    const { value, source } = strandStiffness({ construction: "1x19", diameter: 3.175 });
    expect(source).toBe("en-1993-1-11");
    expect(value.nominal).toBeCloseTo(782229.67, 1);
    expect(value.high).toBeGreaterThan(840e3);
    expect(value.nominal).toBeGreaterThan(840e3 * 0.93);
  });

  it("refuses a diameter of 0", () => {
    expect(() => strandStiffness({ construction: "1x19", diameter: 0 })).toThrow(RangeError);
  });
});

describe("breakingForce", () => {
  it("1x19 of grade 316, 1/8 in: 1780 lbf, from memory", () => {
    const force = breakingForce({ construction: "1x19", diameter: 3.175, grade: "316" });
    expect(force?.source).toBe("memory");
    expect((force?.value ?? 0) / FORCE_N_PER_LBF).toBeCloseTo(1780, 9);
  });

  it("1x19 of grade 316, 1/4 in: 6900 lbf, read (sailing forum); the metric rule gives 3.2 mm, 8.05 kN", () => {
    expect(breakingForce({ construction: "1x19", diameter: 6.35, grade: "316" })?.source).toBe("sailing-forum");
    const metric = breakingForce({ construction: "1x19", diameter: 3.2, grade: "316" });
    expect(metric?.source).toBe("catamaran-forum");
    expect(metric?.value).toBeCloseTo(8048.6, 1);
  });

  it("knows no strand between its rows, outside the rule, or of 316 in 7x7: null, not a guess", () => {
    expect(breakingForce({ construction: "1x19", diameter: 3.2, grade: "304" })).toBeNull();
    expect(breakingForce({ construction: "1x19", diameter: 2.5, grade: "316" })).toBeNull();
    expect(breakingForce({ construction: "1x19", diameter: 7, grade: "316" })).toBeNull();
    expect(breakingForce({ construction: "7x7", diameter: 3.175, grade: "316" })).toBeNull();
  });

  it("a thicker strand of one make and grade is never weaker in the list", () => {
    for (const [construction, grade] of [
      ["1x19", "304"],
      ["1x19", "316"],
      ["7x7", "304"],
      ["7x19", "304"],
    ] as const) {
      const forces = [4, 6, 8, 10, 12, 14, 16, 20].flatMap(
        (n) => breakingForce({ construction, grade, diameter: (n * 25.4) / 64 })?.value ?? [],
      );
      expect(forces.length).toBeGreaterThan(3);
      expect(forces).toEqual(forces.toSorted((a, b) => a - b));
    }
  });
});

describe("mass", () => {
  it("1x19 of 1/8 in: 35 lb per 1000 ft, from memory, which is the 0.052086 kg/m of the reference cases", () => {
    const row = mass({ construction: "1x19", diameter: 3.175 });
    expect(row.source).toBe("memory");
    expect(row.value).toBeCloseTo(0.05208573802, 10);
  });

  it("7x19 of 1/8 in: 29 lb per 1000 ft, read", () => {
    expect(mass({ construction: "7x19", diameter: 3.175 }).source).toBe("rigging-code-notes");
    expect(mass({ construction: "7x19", diameter: 4.7625 }).source).toBe("memory");
  });

  it("3.2 mm has no row: 83 kN/m3 on the metal (EN 1993-1-11); the same rule gives 34.2 lb per 1000 ft for 1/8 in", () => {
    const row = mass({ construction: "1x19", diameter: 3.2 });
    expect(row.source).toBe("en-1993-1-11");
    const eighth_lbPer1000Ft = ((row.value * (3.175 / 3.2) ** 2) / 0.45359237) * 304.8;
    expect(eighth_lbPer1000Ft).toBeCloseTo(34.2, 1);
  });

  it("refuses a diameter of 0", () => {
    expect(() => mass({ construction: "1x19", diameter: 0 })).toThrow(RangeError);
  });
});
