// Source: W. T. Thomson, Vibration Theory and Applications, the string under tension, as a public finite-element verification manual
// (case 53) repeats it: L = 100 in, A = 0.00306796 in^2, density 0.00073 lbf s^2/in^4, T = 500 lbf.
import { describe, it } from "vitest";
import { pitch } from "../../src/mechanics/pitch.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const FORCE_N_PER_LBF = 4.4482216152605;
const MM_PER_INCH = 25.4;
const AREA_in2 = 0.00306796;
/** lbf s^2/in per inch is 4.448.../0.0254 kg per 0.0254 m. */
const mass_kgPerM = (AREA_in2 * 0.00073 * FORCE_N_PER_LBF) / 0.0254 / 0.0254;

describe("pitch", () => {
  it("the string of 100 in at 500 lbf sounds at 74.708, 149.42 and 224.12 Hz in its first three modes", () => {
    const string = { span: 100 * MM_PER_INCH, tension: 500 * FORCE_N_PER_LBF, mass_kgPerM };
    const wider = { within: 0.01, because: "the density is given with two digits; the case itself allows 0.01 %" };
    expectAsPrinted(pitch(string), "74.708", wider);
    expectAsPrinted(pitch({ ...string, mode: 2 }), "149.42", wider);
    expectAsPrinted(pitch({ ...string, mode: 3 }), "224.12", wider);
  });

  it("its stress is 162,974 psi, so the area and the tension are those of the source", () => {
    expectAsPrinted(500 / AREA_in2, "162,974", { within: 1, because: "the area is rounded to six digits" });
  });
});
