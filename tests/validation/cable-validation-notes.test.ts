// Source: public validation notes of a structural-cable calculation, which quote EN 1993-1-11:2006 and print hand calculations:
// unstressed length 9.9732672 m (10 m, 50 kN, EA 20,000 kN, 15 K, 12e-6); level cable of 20 m with 0.05 kN/m and 0.8 m of sag:
// H 3.13164, S 20.08508, T 3.17164; string of 15 m at 80 kN and 3.4 kg/m: 5.11310 Hz.
import { describe, it } from "vitest";
import { pitch, tensionFromPitch } from "../../src/mechanics/pitch.ts";
import { fromSag, levelSag } from "../../src/mechanics/sag.ts";
import { unstressedLength } from "../../src/mechanics/stretch.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("unstressedLength", () => {
  it("a cable that is 10 m long at 50 kN and 15 K above its reference is 9.9732672 m long when slack", () => {
    const slack = unstressedLength({ length: 10_000, tension: 50e3, stiffness: 20e6, expansion_perC: 12e-6, warmer: 15 });
    expectAsPrinted(slack / 1000, "9.9732672");
  });
});

describe("fromSag and levelSag", () => {
  const cable = { span: 20_000, weight_NPerMm: 0.05 };

  it("20 m at 0.05 kN/m with 0.8 m of sag: H 3.13164 kN, 20.08508 m long, 3.17164 kN at the ends", () => {
    const { tension_horizontal, tension_end, length } = fromSag({ ...cable, sag: 800 });
    expectAsPrinted(tension_horizontal / 1000, "3.13164");
    expectAsPrinted(length / 1000, "20.08508");
    expectAsPrinted(tension_end / 1000, "3.17164");
  });

  it("the same cable at H = 3.13164 kN hangs 0.8 m", () => {
    expectAsPrinted(levelSag({ ...cable, tension: 3131.64 }) / 1000, "0.8");
    expectAsPrinted(levelSag({ ...cable, tension: 3131.64 }) / 1000, "0.80000");
  });
});

describe("pitch", () => {
  it("15 m at 80 kN and 3.4 kg/m sound at 5.11310 Hz, and 5.11310 Hz tells 80 kN", () => {
    expectAsPrinted(pitch({ span: 15_000, tension: 80e3, mass_kgPerM: 3.4 }), "5.11310");
    expectAsPrinted(tensionFromPitch({ span: 15_000, pitch_Hz: 5.1131, mass_kgPerM: 3.4 }) / 1000, "80.000");
  });
});
