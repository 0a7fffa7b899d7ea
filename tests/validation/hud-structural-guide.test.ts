// Source: United States Department of Housing and Urban Development, Residential Structural Design Guide, example 5.6: a 4x4 post of
// Spruce-Pine-Fir No.2, 7.3 ft, 4800 lb. As the test test_axial_compression of xcfem/xc (commit fe707f4a) quotes it; the page was not seen.
import { describe, test } from "vitest";
import { woodColumn } from "../../src/mechanics/column.ts";
import { solidRectangle } from "../../src/mechanics/section.ts";
import { axialCheck } from "../../src/mechanics/strength-check.ts";
import { adjusted } from "../../src/mechanics/wood-adjust.ts";
import { type WoodPiece, woodStrength } from "../../src/tables/timber-strength.ts";
import { woodFactors } from "../../src/tables/wood-factors.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const FORCE_N_PER_LBF = 4.4482216152605;
const MPA_PER_PSI = FORCE_N_PER_LBF / 25.4 ** 2;

describe("woodColumn", () => {
  test("example 5.6: le/d 25.03, FcE 669.2, Fc* 1322.5 psi, CP 0.43783, Fc' 579.0 psi, ratio 0.6767", () => {
    const piece: WoodPiece = { species: "Spruce-Pine-Fir", grade: "No.2", thickness: 88.9, width: 88.9 };
    const conditions = { load: "ten years", wet: false, warmest: 30, incised: false, flat: false, repetitive: false } as const;
    const row = woodStrength(piece)?.value;
    if (row === undefined) throw new Error("no row");
    const compression = adjusted(row.compression, woodFactors({ property: "compression", piece, conditions })).value;
    const modulus_min = adjusted(row.modulus_min, woodFactors({ property: "modulus_min", piece, conditions })).value;
    const column = woodColumn({ length: 7.3 * 304.8, size: 88.9, modulus_min, compression });
    const { area_mm2 } = solidRectangle({ x: 88.9, y: 88.9 });
    const check = axialCheck({ force: 4800 * FORCE_N_PER_LBF, area_mm2, allowable: compression * column.factor });
    expectAsPrinted(column.slenderness, "25.03");
    expectAsPrinted(column.bucklingStress / MPA_PER_PSI, "669.2");
    expectAsPrinted(compression / MPA_PER_PSI, "1322.5");
    expectAsPrinted(column.factor, "0.43783");
    expectAsPrinted(check.capacity / MPA_PER_PSI, "579.0");
    expectAsPrinted(check.ratio, "0.6767");
  });
});
