// Source: American Wood Council, National Design Specification Supplement 2018, table 4A (dimension lumber) in psi and table 4B (Southern
// Pine) in MPa, as transcribed in xcfem/xc (commit fe707f4a, python_modules/materials/awc_nds). Typed a second time here, as read there:
// the inch table of this program is written in psi. Shear, bearing and moduli of Southern Pine are the same in all widths and were read
// once. Redwood, Western Cedars and all of table 4D were not read: no test stands for them.
import { describe, test } from "vitest";
import { type WoodGrade, type WoodSpecies, woodStrength } from "../../src/tables/timber-strength.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const MPA_PER_PSI = 4.4482216152605 / 25.4 ** 2;

const rowOf = (species: WoodSpecies, grade: WoodGrade, width: number) => {
  const row = woodStrength({ species, grade, thickness: 38.1, width });
  if (row === null) throw new Error(`no row for ${species} ${grade}`);
  return row.value;
};

describe("woodStrength", () => {
  test.each([
    ["Douglas Fir-Larch", "Select Structural", "1500/1000/180/625/1700/1.9/690"],
    ["Douglas Fir-Larch", "No.1", "1000/675/180/625/1500/1.7/620"],
    ["Douglas Fir-Larch", "No.2", "900/575/180/625/1350/1.6/580"],
    ["Hem-Fir", "No.1", "975/625/150/405/1350/1.5/550"],
    ["Hem-Fir", "No.2", "850/525/150/405/1300/1.3/470"],
    ["Spruce-Pine-Fir", "No.1", "875/450/135/425/1150/1.4/510"],
    ["Spruce-Pine-Fir", "No.2", "875/450/135/425/1150/1.4/510"],
    ["Spruce-Pine-Fir", "Select Structural", "1150/700/135/425/1400/1.5/550"],
  ] as const)("table 4A: %s %s has Fb/Ft/Fv/Fc across/Fc %s (psi, million psi, thousand psi)", (species, grade, printed) => {
    const [bending = "", tension = "", shear = "", across = "", along = "", modulus = "", least = ""] = printed.split("/");
    const row = rowOf(species, grade, 88.9);
    expectAsPrinted(row.bending / MPA_PER_PSI, bending);
    expectAsPrinted(row.tension / MPA_PER_PSI, tension);
    expectAsPrinted(row.shear / MPA_PER_PSI, shear);
    expectAsPrinted(row.bearingAcross / MPA_PER_PSI, across);
    expectAsPrinted(row.compression / MPA_PER_PSI, along);
    expectAsPrinted(row.modulus / MPA_PER_PSI / 1e6, modulus);
    expectAsPrinted(row.modulus_min / MPA_PER_PSI / 1e3, least);
  });

  test.each([
    ["No.1", 88.9, "10.3/6.9/1.2/3.9/11.4/11.0/4.0"],
    ["No.1", 139.7, "9.3/6.0/1.2/3.9/10.7/11.0/4.0"],
    ["No.2", 88.9, "7.6/4.7/1.2/3.9/10.0/9.7/3.5"],
    ["No.2", 139.7, "6.9/4.1/1.2/3.9/9.7/9.7/3.5"],
  ] as const)("table 4B: Southern Pine %s, %f mm wide, has %s (MPa, GPa)", (grade, width, printed) => {
    const [bending = "", tension = "", shear = "", across = "", along = "", modulus = "", least = ""] = printed.split("/");
    const row = rowOf("Southern Pine", grade, width);
    expectAsPrinted(row.bending, bending);
    expectAsPrinted(row.tension, tension);
    expectAsPrinted(row.shear, shear);
    expectAsPrinted(row.bearingAcross, across);
    expectAsPrinted(row.compression, along);
    expectAsPrinted(row.modulus / 1000, modulus);
    expectAsPrinted(row.modulus_min / 1000, least);
  });

  test.each([
    [139.7, "1000"],
    [7.25 * 25.4, "925"],
    [9.25 * 25.4, "800"],
    [11.25 * 25.4, "750"],
  ] as const)("table 4B: Southern Pine No.2, %f mm wide, bends at %s psi, with E of 1.4 million", (width, printed) => {
    const row = rowOf("Southern Pine", "No.2", width);
    expectAsPrinted(row.bending / MPA_PER_PSI, printed);
    expectAsPrinted(row.shear / MPA_PER_PSI, "175");
    expectAsPrinted(row.bearingAcross / MPA_PER_PSI, "565");
    expectAsPrinted(row.modulus / MPA_PER_PSI / 1e6, "1.4");
  });
});
