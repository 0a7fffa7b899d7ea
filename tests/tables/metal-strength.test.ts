import { describe, expect, test } from "vitest";
import { alloys } from "../../src/tables/metal.ts";
import { type FrameMetal, metalBasis } from "../../src/tables/metal-strength.ts";

const metals: readonly FrameMetal[] = ["steel", "stainless", "aluminium"];

describe("metalBasis", () => {
  test("nothing of it was read: every value says that it is remembered", () => {
    for (const metal of metals) for (const row of Object.values(metalBasis[metal])) expect(row.source, metal).toBe("memory");
  });

  // Where base^x falls to share / x: 0.658^2.2477 against 0.877 / 2.2477 for steel, 0.5^1.44 against 0.531 / 1.44 for stainless steel.
  test("the constants of each power column agree with each other: both halves meet at its limit within 0.1 %", () => {
    for (const metal of ["steel", "stainless"] as const) {
      const column = metalBasis[metal].column.value;
      if (column.kind !== "power") throw new Error(`${metal} has a power column`);
      const yieldOverEuler = (column.limit / Math.PI) ** 2;
      const ratio = column.base ** yieldOverEuler / (column.elasticShare / yieldOverEuler);
      expect(Math.abs(ratio - 1), metal).toBeLessThan(0.001);
    }
  });

  // The flange rule of AISC 360 F7 (from memory), Mp - (Mp - Fy S)(3.57 b/t sqrt(Fy/E) - 4), comes down to the yield moment at 1.40.
  test("a steel wall at the limit of 1.40 sqrt(E/Fy) still reaches the yield moment", () => {
    expect(3.57 * metalBasis.steel.flatWall_max.value - 4).toBeCloseTo(1, 2);
  });

  // The manual's limit for walls of 6061-T6 held at both edges (from memory): 20.8.
  test("the wall limit of 6061-T6 aluminium, 1.12 sqrt(E/Fy) = 18.9, lies below the manual's 20.8 (from memory)", () => {
    const { modulus, yieldStress } = alloys["6061-T6"];
    expect(metalBasis.aluminium.flatWall_max.value * Math.sqrt(modulus.value / yieldStress.value)).toBeCloseTo(18.93, 1);
  });
});
