import { describe, expect, test } from "vitest";
import { specificGravity, type WoodSpecies, woodClass, woodStrength } from "../../src/tables/timber-strength.ts";

const MPA_PER_PSI = 4.4482216152605 / 25.4 ** 2;

describe("woodClass", () => {
  test.each([
    ["a board of 19 mm", 19, 140, null],
    ["a 2x6 sold as 38 x 140 mm", 38, 140, "dimension lumber"],
    ["a 4x4", 88.9, 88.9, "dimension lumber"],
    ["a 5x5", 114.3, 114.3, "post or timber"],
    ["a 6x6", 139.7, 139.7, "post or timber"],
    ["a 6x8, 45 mm wider than thick", 139.7, 184.15, "post or timber"],
    ["a 6x10, which is a beam", 139.7, 235, null],
  ] as const)("%s: %f x %f mm", (_name, thickness, width, kind) => {
    expect(woodClass({ thickness, width })).toBe(kind);
  });
});

describe("woodStrength", () => {
  const post = { thickness: 139.7, width: 139.7 };
  const rail = { thickness: 38.1, width: 88.9 };

  test("rows that were not read say that they are remembered", () => {
    expect(woodStrength({ species: "Redwood", grade: "No.1", ...rail })?.source).toBe("memory");
    expect(woodStrength({ species: "Douglas Fir-Larch", grade: "No.1", ...post })?.source).toBe("memory");
    expect(woodStrength({ species: "Southern Pine", grade: "No.2", ...rail, width: 184.15 })?.source).toBe("memory");
    expect(woodStrength({ species: "Douglas Fir-Larch", grade: "No.1", ...rail })?.source).toBe("nds-design-values");
  });

  test("there is no row for boards, redwood timbers, Southern Pine wider than 12 in, or a grade that a table lacks", () => {
    expect(woodStrength({ species: "Hem-Fir", grade: "No.1", thickness: 19, width: 140 })).toBeNull();
    expect(woodStrength({ species: "Redwood", grade: "No.1", ...post })).toBeNull();
    expect(woodStrength({ species: "Southern Pine", grade: "No.1", thickness: 38.1, width: 336 })).toBeNull();
    expect(woodStrength({ species: "Hem-Fir", grade: "Select Structural", ...rail })).toBeNull();
  });

  // Of how Emin comes about (supplement, appendix D, from memory): Emin = E [1 - 1.645 COV] 1.03 / 1.66 with COV 0.25, within the rounding
  // of both columns; Fc across doesn't depend on the grade.
  test("rows agree with themselves: Emin is 0.3653 of E as rounded, No.2 is no stronger than No.1", () => {
    const species: readonly WoodSpecies[] = [
      "Douglas Fir-Larch",
      "Hem-Fir",
      "Spruce-Pine-Fir",
      "Southern Pine",
      "Redwood",
      "Western Cedars",
    ];
    const sizes = [
      rail,
      { ...rail, width: 139.7 },
      { ...rail, width: 184.15 },
      { ...rail, width: 234.95 },
      { ...rail, width: 285.75 },
      post,
    ];
    let rows = 0;
    for (const one of species) {
      for (const size of sizes) {
        const first = woodStrength({ species: one, grade: "No.1", ...size })?.value;
        const second = woodStrength({ species: one, grade: "No.2", ...size })?.value;
        if (first === undefined || second === undefined) continue;
        rows += 1;
        for (const { modulus, modulus_min } of [first, second]) {
          const share = ((1 - 1.645 * 0.25) * 1.03) / 1.66;
          expect(Math.abs(modulus_min - share * modulus) / MPA_PER_PSI, one).toBeLessThanOrEqual(5_000 + share * 50_000);
        }
        for (const key of ["bending", "tension", "compression", "modulus"] as const) {
          expect(second[key], `${one} ${key}`).toBeLessThanOrEqual(first[key]);
        }
        expect(second.bearingAcross).toBe(first.bearingAcross);
        expect(second.shear).toBe(first.shear);
      }
    }
    expect(rows).toBe(35);
  });
});

describe("specificGravity", () => {
  // National Design Specification, table 12.3.3A, as a public library quotes it.
  test("Douglas Fir-Larch 0.50, Southern Pine 0.55, Western Cedars 0.36", () => {
    expect(specificGravity["Douglas Fir-Larch"].value).toBe(0.5);
    expect(specificGravity["Southern Pine"].value).toBe(0.55);
    expect(specificGravity["Western Cedars"].value).toBe(0.36);
  });
});
