// Source: review log of a public wood beam program (public repository), which works through the factors of the 2018 specification on a 2x10
// of Douglas Fir-Larch No.2, repetitive 1.15: wet, incised, and a bearing of 3-1/2 in. Stresses in psi.
import { describe, test } from "vitest";
import { adjusted } from "../../src/mechanics/wood-adjust.ts";
import { bearingAreaFactor } from "../../src/mechanics/wood-checks.ts";
import { type WoodPiece, woodStrength } from "../../src/tables/timber-strength.ts";
import { bearingAreaRule, type WoodConditions, type WoodProperty, woodFactors } from "../../src/tables/wood-factors.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const MPA_PER_PSI = 4.4482216152605 / 25.4 ** 2;
const piece: WoodPiece = { species: "Douglas Fir-Larch", grade: "No.2", thickness: 38.1, width: 9.25 * 25.4 };
const dry: WoodConditions = { load: "ten years", wet: false, warmest: 20, incised: false, flat: false, repetitive: true };

function inPsi(property: WoodProperty, conditions: WoodConditions): number {
  const reference = woodStrength(piece)?.value[property] ?? Number.NaN;
  return adjusted(reference, woodFactors({ property, piece, conditions })).value / MPA_PER_PSI;
}

describe("woodFactors and adjusted", () => {
  test("wet: Fb' 1138.5 (0.85 is not applied), Fv' 174.6, Fc' across 418.75, E' 1.44 million psi", () => {
    const wet = { ...dry, wet: true };
    expectAsPrinted(inPsi("bending", wet), "1138.5");
    expectAsPrinted(inPsi("shear", wet), "174.6");
    expectAsPrinted(inPsi("bearingAcross", wet), "418.75");
    expectAsPrinted(inPsi("modulus", wet) / 1e6, "1.44");
  });

  test("incised: Fb' 910.8 psi, E' 1.52 million psi", () => {
    const incised = { ...dry, incised: true };
    expectAsPrinted(inPsi("bending", incised), "910.8");
    expectAsPrinted(inPsi("modulus", incised) / 1e6, "1.52");
  });
});

describe("bearingAreaFactor", () => {
  test("a bearing of 3-1/2 in away from the end: Cb 1.107", () => {
    expectAsPrinted(bearingAreaFactor({ length: 88.9, fromEnd: 1000, rule: bearingAreaRule.value }), "1.107");
  });
});
