// Source: encyclopedia article on the capstan equation, which prints a table of T2/T1 for friction and number of turns; the row used
// here is friction 0.6 with 5 turns: 153,552,935.
import { describe, it } from "vitest";
import { capstanRatio } from "../../src/mechanics/corner.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("capstanRatio", () => {
  it("five turns at a friction of 0.6 hold 153,552,935 times the small force", () => {
    expectAsPrinted(1 / capstanRatio({ friction: 0.6, angle: 10 * Math.PI }), "153,552,935");
  });
});
