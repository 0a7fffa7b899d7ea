// Source: Multihulls World, "Reviewing your rigging": a 1x19 cable of 7 mm has 29.23 mm^2 of metal in a circle of 38.48 mm^2.
import { describe, it } from "vitest";
import { metallicArea } from "../../src/mechanics/strand.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("metallicArea", () => {
  it("1x19 of 7 mm has 29.23 mm^2 of metal", () => {
    const because = "19 wires of exactly a fifth fill 0.7600; the article's cable fills 0.7596 (0.2 % allowed)";
    expectAsPrinted(metallicArea({ construction: "1x19", diameter: 7 }), "29.23", { within: 0.06, because });
  });
});
