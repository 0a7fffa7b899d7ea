import { describe, expect, test } from "vitest";
import { advances, UNITS_PER_EM } from "../../src/drawing/font-metrics.ts";
import { advancesOf, openFont, weights } from "../support/font-table.ts";

// Source: the font files of Atkinson Hyperlegible as they ship in node_modules.
describe("advances", () => {
  test.each(weights)("the table of weight %d equals the font, letter by letter", (weight) => {
    expect(UNITS_PER_EM).toBe(openFont(weight).unitsPerEm);
    expect(advances[weight]).toEqual(advancesOf(weight));
    expect(Object.keys(advances[weight]).length).toBeGreaterThan(190);
  });
});
