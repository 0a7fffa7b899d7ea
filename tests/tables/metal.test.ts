import { describe, expect, test } from "vitest";
import { alloys, tubes } from "../../src/tables/metal.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("tubes", () => {
  // AISC values of the same shape in inch units, as quoted by a second public copy of the table: A 0.840 in2, I = S = 0.486.
  test("HSS2x2x1/8 has 0.840 in2, 0.486 in4 and 0.486 in3", () => {
    const row = tubes.value.find((tube) => tube.name === "HSS2x2x1/8");
    const because = "the metric row is itself rounded to three digits";
    expectAsPrinted((row?.area_mm2 ?? 0) / 25.4 ** 2, "0.840", { within: 0.0013, because });
    expectAsPrinted((row?.inertia_mm4 ?? 0) / 25.4 ** 4, "0.486", { within: 0.0017, because });
    expectAsPrinted((row?.elasticModulus_mm3 ?? 0) / 25.4 ** 3, "0.486", { within: 0.0008, because });
  });

  // Closed forms: S = 2 I / outside; a sharp-cornered square tube bounds the area and the second moment from above.
  test("every row agrees with itself: S = 2 I / outside, mass = 7850 kg/m3 times area, and no more than a sharp-cornered tube", () => {
    for (const { name, shape, outside, wall, ...row } of tubes.value) {
      const inside = outside - 2 * wall;
      const round = Math.PI / 4;
      const area = (outside ** 2 - inside ** 2) * (shape === "round" ? round : 1);
      const inertia = shape === "round" ? (Math.PI / 64) * (outside ** 4 - inside ** 4) : (outside ** 4 - inside ** 4) / 12;
      expect.soft((row.elasticModulus_mm3 * outside) / 2 / row.inertia_mm4, name).toBeCloseTo(1, 1.9);
      expect.soft(row.area_mm2 / area, name).toBeGreaterThan(0.93);
      expect.soft(row.area_mm2 / area, name).toBeLessThan(1.005);
      expect.soft(row.inertia_mm4 / inertia, name).toBeGreaterThan(0.88);
      expect.soft(row.inertia_mm4 / inertia, name).toBeLessThan(1.005);
      // The listed mass is that of the nominal wall, which is 1/0.93 of the design wall.
      expect.soft(row.mass_kgPerM / (row.area_mm2 * 7.85e-3), name).toBeGreaterThan(1);
      expect.soft(row.mass_kgPerM / (row.area_mm2 * 7.85e-3), name).toBeLessThan(1 / 0.92);
      expect.soft(row.plasticModulus_mm3, name).toBeGreaterThan(row.elasticModulus_mm3);
    }
  });
});

describe("alloys", () => {
  // An extruder's table: 6061-T6 35 / 38 ksi, 6063-T5 16 / 22 ksi, 6063-T6 25 / 30 ksi; 1 ksi = 6.894757 MPa.
  test("6061-T6 yields at 35 ksi (241.3 MPa), 6063-T5 at 16 ksi (110.3 MPa), 6063-T6 at 25 ksi (172.4 MPa)", () => {
    expectAsPrinted(alloys["6061-T6"].yieldStress.value, "241.3");
    expectAsPrinted(alloys["6063-T5"].yieldStress.value, "110.3");
    expectAsPrinted(alloys["6063-T6"].yieldStress.value, "172.4");
  });

  test("beside a weld 6061-T6 keeps 20 of its 35 ksi", () => {
    expect(alloys["6061-T6 at a weld"].yieldStress.value / alloys["6061-T6"].yieldStress.value).toBeCloseTo(20 / 35, 12);
  });

  test("no alloy yields above its ultimate stress, and steel is the stiffest", () => {
    for (const [name, alloy] of Object.entries(alloys)) {
      expect(alloy.yieldStress.value, name).toBeLessThan(alloy.ultimateStress.value);
      expect(alloy.modulus.value, name).toBeLessThanOrEqual(alloys["A500 grade B"].modulus.value);
    }
  });
});
