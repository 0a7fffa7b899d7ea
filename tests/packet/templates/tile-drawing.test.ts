import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linePlaces } from "../../../src/packet/templates/tile-drawing.ts";

const margin = 13.5;
/** Half of the height of the smallest letters on a sheet, 9 pt. */
const HALF_LETTER_mm = (9 / 72 / 2) * 25.4;

describe("linePlaces", () => {
  test("three lines beside the flap of a sleeve touch neither its fold nor each other", () => {
    const fold = 3.5;
    const [first = 0, second = 0, third = 0] = linePlaces(3, { margin, fold });
    expect(first - fold).toBeGreaterThan(HALF_LETTER_mm + 0.3);
    expect(second - first).toBeGreaterThan(2 * HALF_LETTER_mm);
    expect(third + HALF_LETTER_mm).toBeLessThan(margin);
  });

  test("a flap as wide as the margin holds all lines", () => {
    expect(Math.max(...linePlaces(3, { margin, fold: margin }))).toBeLessThan(margin - HALF_LETTER_mm);
  });

  test("a face that is wider than the paper has no fold: the lines begin at the cut edge", () => {
    expect(linePlaces(2, { margin, fold: -150 })).toEqual(linePlaces(2, { margin, fold: margin }));
  });

  // A sleeve of 6-1/2 in on Letter paper: its flaps are some 4 mm wide.
  test("what a narrow flap does not hold stands on the face, none on the fold", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 6, noNaN: true }), fc.integer({ min: 1, max: 2 }), (fold, count) => {
        const places = linePlaces(count, { margin, fold });
        expect(places).toHaveLength(count);
        for (const place of places) expect(Math.abs(place - fold)).toBeGreaterThan(HALF_LETTER_mm + (place > fold ? 0.3 : 0));
        for (const [index, place] of places.slice(1).entries()) expect(place - (places[index] ?? 0)).toBeGreaterThan(2 * HALF_LETTER_mm);
        expect(places.at(-1) ?? 0).toBeLessThan(margin);
      }),
    );
  });
});
