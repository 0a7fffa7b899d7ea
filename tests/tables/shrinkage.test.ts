import { describe, expect, it } from "vitest";
import { expansions, shrinkageCoefficient, woodShrinkage } from "../../src/tables/shrinkage.ts";

describe("shrinkageCoefficient", () => {
  it("ipe, 8.0 % tangential: 0.00282 per percent (worked by hand: 0.0026667 / 0.94667)", () => {
    expect(shrinkageCoefficient(8)).toBeCloseTo(0.00282, 5);
    expect(woodShrinkage.ipe.coefficient.tangential).toMatchObject({ source: "derived" });
  });

  it("from 10 % down to 0 it is the total shrinkage's share: size at 10 % x (1 - 10 C) is the oven-dry size, 1 - S", () => {
    const at10 = 1 - 0.08 * (20 / 30);
    expect(at10 * (1 - 10 * shrinkageCoefficient(8))).toBeCloseTo(1 - 0.08, 12);
  });

  it("refuses a shrinkage of 0 and of 100 %, and a saturation of 10 %", () => {
    expect(() => shrinkageCoefficient(0)).toThrow(/0 to 100/);
    expect(() => shrinkageCoefficient(100)).toThrow(/0 to 100/);
    expect(() => shrinkageCoefficient(8, 10)).toThrow(/above 10/);
  });
});

describe("woodShrinkage", () => {
  it("every wood shrinks more along its year rings than across them, and rows that were not seen say so", () => {
    for (const [wood, { shrinkage_percent, coefficient }] of Object.entries(woodShrinkage)) {
      expect.soft(shrinkage_percent.tangential.value, wood).toBeGreaterThan(shrinkage_percent.radial.value);
      expect.soft(coefficient.tangential.value, wood).toBeGreaterThan(coefficient.radial.value);
    }
    expect(woodShrinkage["western hemlock"].shrinkage_percent.radial.source).toBe("memory");
    expect(woodShrinkage["grand fir"].shrinkage_percent.radial.source).toBe("wood-handbook");
  });
});

describe("expansions", () => {
  it("stainless strand 16e-6 and steel strand 12e-6 per degC (EN 1993-1-11, 3.3(1)); fir along the grain 3.7e-6, wood across it 30e-6", () => {
    expect(expansions["stainless strand"]).toMatchObject({ value: 16e-6, source: "en-1993-1-11" });
    expect(expansions["steel strand"].value).toBe(12e-6);
    expect(expansions["wood along the grain"].value).toBe(3.7e-6);
    expect(expansions["wood across the grain"].value).toBe(30e-6);
  });

  it("aluminium grows about twice as much as structural steel", () => {
    expect(expansions.aluminium.value / expansions.steel.value).toBeCloseTo(2, 1);
  });
});
