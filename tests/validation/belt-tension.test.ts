// Source: tension and frequency calculations for belts, korins.com/m/cl/page25.htm: formula T = 4 m L^2 f^2 and two worked numbers for
// m = 0.11 kg/m and L = 0.17 m.
import { describe, it } from "vitest";
import { pitch, tensionFromPitch } from "../../src/mechanics/pitch.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const belt = { span: 170, mass_kgPerM: 0.11 };

describe("tensionFromPitch", () => {
  it("220 Hz on 0.17 m of 0.11 kg/m tells 610 N", () => {
    const because = "the page rounds to the next ten; its own formula gives 615.45";
    expectAsPrinted(tensionFromPitch({ ...belt, pitch_Hz: 220 }), "610", { within: 6.1, because });
  });
});

describe("pitch", () => {
  it("624 N on 0.17 m of 0.11 kg/m sounds at 221 Hz", () => {
    expectAsPrinted(pitch({ ...belt, tension: 624 }), "221", { within: 1, because: "the page cuts off the decimals of 221.52" });
  });
});
