import { describe, expect, test } from "vitest";
import type { WoodPiece } from "../../src/tables/timber-strength.ts";
import {
  bearingAreaRule,
  bendingLength,
  bucklingLengthShare,
  cableLoadDuration,
  durationFactor,
  guardLoadDuration,
  type WoodConditions,
  type WoodProperty,
  woodFactors,
} from "../../src/tables/wood-factors.ts";

const MM_PER_INCH = 25.4;
const dry: WoodConditions = { load: "ten years", wet: false, warmest: 20, incised: false, flat: false, repetitive: false };
const fir = (thickness_in: number, width_in: number, species: WoodPiece["species"] = "Douglas Fir-Larch"): WoodPiece => ({
  species,
  grade: "No.2",
  thickness: thickness_in * MM_PER_INCH,
  width: width_in * MM_PER_INCH,
});

function factor(property: WoodProperty, name: string, piece: WoodPiece, conditions: Partial<WoodConditions> = {}) {
  const found = woodFactors({ property, piece, conditions: { ...dry, ...conditions } }).find((one) => one.name === name);
  if (found === undefined) throw new Error(`${name} does not apply to ${property}`);
  return found;
}

describe("durations", () => {
  // National Design Specification, table 2.3.2.
  test("table 2.3.2: 0.9, 1.0, 1.15, 1.25, 1.6, 2.0", () => {
    expect(Object.values(durationFactor).map(({ value }) => value)).toEqual([0.9, 1, 1.15, 1.25, 1.6, 2]);
  });

  test("cables pull for good (0.9), a push on the guard lasts ten minutes (1.6), which is practice and not the table's word", () => {
    expect(durationFactor[cableLoadDuration.value].value).toBe(0.9);
    expect(durationFactor[guardLoadDuration.value].value).toBe(1.6);
    expect(guardLoadDuration.source).toBe("practice");
  });
});

describe("woodFactors", () => {
  test("a wet, incised 4x4 of Douglas Fir-Larch No.2 under its cables: every factor of bending in order", () => {
    const chain = woodFactors({
      property: "bending",
      piece: fir(3.5, 3.5),
      conditions: { ...dry, load: "permanent", wet: true, incised: true },
    });
    // 900 psi x 1.5 is more than 1150 psi: wet wood is reduced.
    expect(chain.map(({ name, value }) => [name, value])).toEqual([
      ["C_D", 0.9],
      ["C_M", 0.85],
      ["C_t", 1],
      ["C_F", 1.5],
      ["C_fu", 1],
      ["C_i", 0.8],
      ["C_r", 1],
    ]);
  });

  test("load duration applies to no modulus and to no bearing across the grain", () => {
    for (const property of ["modulus", "modulus_min", "bearingAcross"] as const) {
      const names = woodFactors({ property, piece: fir(3.5, 3.5), conditions: dry }).map(({ name }) => name);
      expect(names, property).toEqual(["C_M", "C_t", "C_i"]);
    }
  });

  // Supplement, table 4A, size factors as two public transcriptions quote them; 5 in and 14 in wide from memory.
  test.each([
    [1.5, 3.5, 1.5, 1.15],
    [1.5, 4.5, 1.4, 1.1],
    [1.5, 5.5, 1.3, 1.1],
    [1.5, 7.25, 1.2, 1.05],
    [1.5, 9.25, 1.1, 1],
    [1.5, 11.25, 1, 1],
    [1.5, 13.25, 0.9, 0.9],
    [3.5, 5.5, 1.3, 1.1],
    [3.5, 7.25, 1.3, 1.05],
    [3.5, 9.25, 1.2, 1],
    [3.5, 11.25, 1.1, 1],
    [3.5, 13.25, 1, 0.9],
  ])("%f x %f in: C_F %f in bending and %f in compression", (thickness, width, bending, compression) => {
    expect(factor("bending", "C_F", fir(thickness, width)).value).toBe(bending);
    expect(factor("compression", "C_F", fir(thickness, width)).value).toBe(compression);
  });

  test("tension takes the column of thin lumber, as remembered; rows not read are marked", () => {
    expect(factor("tension", "C_F", fir(3.5, 7.25))).toMatchObject({ value: 1.2, source: "memory" });
    expect(factor("bending", "C_F", fir(1.5, 4.5)).source).toBe("memory");
    expect(factor("compression", "C_F", fir(1.5, 4.5)).source).toBe("memory");
    expect(factor("bending", "C_F", fir(1.5, 5.5)).source).toBe("nds-design-values");
  });

  test("Southern Pine has its size in the row; a timber only loses above 12 in: (12/13.5)^(1/9) = 0.987", () => {
    expect(factor("bending", "C_F", fir(1.5, 3.5, "Southern Pine")).value).toBe(1);
    expect(factor("bending", "C_F", fir(5.5, 5.5)).value).toBe(1);
    expect(factor("bending", "C_F", fir(13.5, 13.5)).value).toBeCloseTo(0.987, 3);
    expect(factor("compression", "C_F", fir(13.5, 13.5)).value).toBe(1);
  });

  test("wet: compression of a low value (Western Cedars No.2 650 psi) is spared, Douglas Fir-Larch 1350 psi is not", () => {
    expect(factor("compression", "C_M", fir(1.5, 3.5, "Western Cedars"), { wet: true }).value).toBe(1);
    expect(factor("compression", "C_M", fir(1.5, 3.5), { wet: true }).value).toBe(0.8);
    expect(factor("bearingAcross", "C_M", fir(1.5, 3.5), { wet: true }).value).toBe(0.67);
  });

  test("wet timbers: 0.91 in compression, 0.67 across, 1 in bending; Southern Pine timbers are tabulated for both", () => {
    expect(factor("compression", "C_M", fir(5.5, 5.5), { wet: true }).value).toBe(0.91);
    expect(factor("bearingAcross", "C_M", fir(5.5, 5.5), { wet: true }).value).toBe(0.67);
    expect(factor("bending", "C_M", fir(5.5, 5.5), { wet: true }).value).toBe(1);
    expect(factor("bearingAcross", "C_M", fir(5.5, 5.5, "Southern Pine"), { wet: true })).toMatchObject({ value: 1, source: "memory" });
  });

  // Table 2.3.3: 100 to 125 degF and 125 to 150 degF.
  test.each([
    [37.7, false, 1, 1],
    [50, false, 0.8, 0.9],
    [50, true, 0.7, 0.9],
    [60, false, 0.7, 0.9],
    [60, true, 0.5, 0.9],
  ])("kept at %f degC, wet %s: C_t %f in bending and %f in stiffness", (warmest, wet, bending, modulus) => {
    expect(factor("bending", "C_t", fir(3.5, 3.5), { warmest, wet }).value).toBe(bending);
    expect(factor("modulus", "C_t", fir(3.5, 3.5), { warmest, wet }).value).toBe(modulus);
    expect(factor("tension", "C_t", fir(3.5, 3.5), { warmest, wet }).value).toBe(modulus);
  });

  test("laid flat: 2x4 1.10, 2x6 1.15 as read; 4x6 1.05 as remembered; a timber and a piece on edge 1", () => {
    const flat = { flat: true };
    expect(factor("bending", "C_fu", fir(1.5, 3.5), flat)).toMatchObject({ value: 1.1, source: "nds-design-values" });
    expect(factor("bending", "C_fu", fir(1.5, 5.5), flat).value).toBe(1.15);
    expect(factor("bending", "C_fu", fir(1.5, 9.25), flat)).toMatchObject({ value: 1.2, source: "memory" });
    expect(factor("bending", "C_fu", fir(1.5, 2.5), flat)).toMatchObject({ value: 1, source: "memory" });
    expect(factor("bending", "C_fu", fir(3.5, 5.5), flat)).toMatchObject({ value: 1.05, source: "memory" });
    expect(factor("bending", "C_fu", fir(5.5, 5.5), flat).value).toBe(1);
    expect(factor("bending", "C_fu", fir(1.5, 5.5)).value).toBe(1);
  });

  test("incised: 0.8, stiffness 0.95, nothing across the grain; timbers keep all", () => {
    const incised = { incised: true };
    expect(factor("shear", "C_i", fir(3.5, 3.5), incised)).toMatchObject({ value: 0.8, source: "nds-2018" });
    expect(factor("compression", "C_i", fir(3.5, 3.5), incised)).toMatchObject({ value: 0.8, source: "memory" });
    expect(factor("tension", "C_i", fir(3.5, 3.5), incised).source).toBe("memory");
    expect(factor("modulus_min", "C_i", fir(3.5, 3.5), incised)).toMatchObject({ value: 0.95, source: "memory" });
    expect(factor("bearingAcross", "C_i", fir(3.5, 3.5), incised).value).toBe(1);
    expect(factor("bending", "C_i", fir(5.5, 5.5), incised).value).toBe(1);
  });

  test("repetitive 1.15 for dimension lumber only", () => {
    expect(factor("bending", "C_r", fir(1.5, 5.5), { repetitive: true }).value).toBe(1.15);
    expect(factor("bending", "C_r", fir(5.5, 5.5), { repetitive: true }).value).toBe(1);
  });

  test("refuses a piece without values, and wood kept above 150 degF", () => {
    expect(() => factor("bending", "C_D", fir(0.75, 5.5))).toThrow(/no design values/);
    expect(() => factor("bending", "C_D", fir(5.5, 5.5, "Redwood"))).toThrow(/no design values/);
    expect(() => factor("bending", "C_t", fir(3.5, 3.5), { warmest: 66 })).toThrow(/150/);
  });
});

describe("member lengths", () => {
  test("a bearing is helped by 3/8 in, below 6 in, 3 in from the end", () => {
    expect(bearingAreaRule.value).toEqual({ beside: 9.525, shortBelow: 152.4, fromEnd_min: 76.2 });
  });

  test("a post held at one end counts 2.1 of its height, a rail between posts its length (from memory)", () => {
    expect(bucklingLengthShare["fixed at one end, free at the other"].value).toBe(2.1);
    expect(bucklingLengthShare["held in place at both ends"].value).toBe(1);
  });

  test("where the two rows of a case meet, at 7 depths, they agree within 1 %; the other case is never less than a simple span", () => {
    const at = ({ lengths, depths }: { lengths: number; depths: number }, length: number) => lengths * length + depths;
    for (const name of ["held at both ends, load in the middle", "cantilever, load at the tip"] as const) {
      const [short, long] = bendingLength[name].value;
      expect(Math.abs(at(short, 7) / at(long, 7) - 1), name).toBeLessThan(0.01);
    }
    const [short, long] = bendingLength["any other"].value;
    for (const length of [7, 10, 14.3, 30]) {
      expect(at(long, length)).toBeGreaterThanOrEqual(Math.max(1.63 * length + 3, 1.84 * length) - 0.01);
    }
    expect(short).toEqual(long);
  });
});

describe("what is kept of earlier questions", () => {
  test("after more questions than are kept the answers are what they were", () => {
    const before = factor("bending", "C_F", fir(3.5, 3.5));
    for (let nth = 0; nth < 1100; nth += 1) factor("bending", "C_t", fir(3.5, 3.5), { warmest: nth / 100 });
    expect(factor("bending", "C_F", fir(3.5, 3.5))).toEqual(before);
  });
});
