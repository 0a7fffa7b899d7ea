// Source: course notes "Friction in Belt and Rope Systems" (a public repository): one turn at a friction of 0.3 gives a ratio of 6.6.
import { describe, it } from "vitest";
import { capstanRatio } from "../../src/mechanics/corner.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("capstanRatio", () => {
  it("one turn at a friction of 0.3 holds 6.6 times the small force", () => {
    expectAsPrinted(1 / capstanRatio({ friction: 0.3, angle: -2 * Math.PI }), "6.6");
  });
});
