// Source: AISC shapes, hollow structural sections with the design wall of 0.93 of the nominal one: metric table as transcribed in xcfem/xc
// (aisc_metric_hss_profiles.csv), and the inch row of HSS2x2x1/8 as a second public copy of the table has it. The rows are computed here
// from outside size and wall, with outer corners of two design walls.
import { describe, test } from "vitest";
import { rectangularTube, roundTube } from "../../src/mechanics/section.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

/** The table rounds the wall to 0.01 mm, and its inch originals to three digits before they were turned into mm. */
const rounded = (printed: string): { within: number; because: string } => ({
  within: Number(printed) * 0.004,
  because: "three digits in inch units, turned into mm and rounded again",
});

describe("rectangularTube", () => {
  test("HSS2x2x1/8, wall 0.116 in: 0.840 in2, 0.486 in4, 0.486 in3", () => {
    const tube = rectangularTube({ x: 2, y: 2, wall: 0.116 });
    expectAsPrinted(tube.area_mm2, "0.840");
    expectAsPrinted(tube.x.inertia_mm4, "0.486");
    expectAsPrinted(tube.x.modulus_mm3, "0.486");
  });

  test.each([
    ["HSS2x2x1/8", 50.8, 2.95, "542", "0.202", "7.96"],
    ["HSS2x2x3/16", 50.8, 4.42, "768", "0.267", "10.5"],
    ["HSS2-1/2x2-1/2x1/8", 63.5, 2.95, "690", "0.415", "13.1"],
    ["HSS3x3x1/8", 76.2, 2.95, "839", "0.741", "19.5"],
  ] as const)("%s, %f mm with a wall of %f mm: %s mm2, %s million mm4, %s thousand mm3", (_name, size, wall, area, inertia, modulus) => {
    const tube = rectangularTube({ x: size, y: size, wall });
    expectAsPrinted(tube.area_mm2, area, rounded(area));
    expectAsPrinted(tube.x.inertia_mm4 / 1e6, inertia, rounded(inertia));
    expectAsPrinted(tube.y.modulus_mm3 / 1e3, modulus, rounded(modulus));
  });
});

describe("roundTube", () => {
  test.each([
    ["HSS1.900x0.145", 48.26, 3.43, "483", "0.122", "5.06"],
    ["HSS2.375x0.154", 60.325, 3.63, "645", "0.261", "8.65"],
  ] as const)("%s, %f mm with a wall of %f mm: %s mm2, %s million mm4, %s thousand mm3", (_name, outside, wall, area, inertia, modulus) => {
    const tube = roundTube({ outside, wall });
    expectAsPrinted(tube.area_mm2, area, rounded(area));
    expectAsPrinted(tube.x.inertia_mm4 / 1e6, inertia, rounded(inertia));
    expectAsPrinted(tube.y.modulus_mm3 / 1e3, modulus, rounded(modulus));
  });
});
