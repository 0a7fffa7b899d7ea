// Source: guitar string of 0.90 m and 3.6 g at 520 N (statement as in Physics Forums, thread 30261); the vibrating length of 0.60 m and the
// answer of 300, 600 and 900 Hz are those of D. C. Giancoli's textbook, from memory.
import { describe, it } from "vitest";
import { pitch } from "../../src/mechanics/pitch.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("pitch", () => {
  it("0.60 m of a string of 4 g/m at 520 N sound at 300, 600 and 900 Hz", () => {
    const string = { span: 600, tension: 520, mass_kgPerM: 0.0036 / 0.9 };
    const because = "the book gives two digits";
    expectAsPrinted(pitch(string), "300", { within: 5, because });
    expectAsPrinted(pitch({ ...string, mode: 2 }), "600", { within: 5, because });
    expectAsPrinted(pitch({ ...string, mode: 3 }), "900", { within: 5, because });
  });
});
