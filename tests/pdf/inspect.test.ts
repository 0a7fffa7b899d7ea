// Is the length of the calibration bar read right, and is each fault told?
import { describe, expect, test } from "vitest";
import { barLength, faultsOf } from "../../src/pdf/inspect.ts";

describe("barLength", () => {
  const stroke = ".0039 .0078 .0118 RG";

  // Worked by hand: 100 units times 72/25.4 are 283.4646 pt, and a point is 25.4/72 mm.
  test("100 units under a matrix of 2.834646 pt a unit are 100 mm", () => {
    expect(barLength(`q 2.834646 0 0 2.834646 10 20 cm ${stroke} 2 3 m 102 3 l S Q`)).toBeCloseTo(100, 3);
  });

  test("matrices multiply, and q and Q keep them apart: 0.5 times 2 times 100 pt are 35.28 mm", () => {
    expect(barLength(`.5 0 0 .5 0 0 cm q 9 0 0 9 0 0 cm Q 2 0 0 2 0 0 cm ${stroke} 0 0 m 100 0 l S`)).toBeCloseTo((100 * 25.4) / 72, 6);
  });

  test("a bar turned by a right angle keeps its length", () => {
    expect(barLength(`0 1 -1 0 0 0 cm ${stroke} 0 0 m 72 0 l S`)).toBeCloseTo(25.4, 6);
  });

  test("black lines, filled paths and numbers in text are no bar", () => {
    expect(barLength(`0 0 0 RG 0 0 m 72 0 l S ${stroke} 0 0 m 72 0 l f (0 0 m 72 0 l S) Tj`)).toBeNull();
  });
});

describe("faultsOf", () => {
  const good = { pages: 3, fonts: ["AtkinsonHyperlegible-Regular"], bar_mm: 99.996 };
  test("three pages with their font and a bar of 99.996 mm have no fault", () => expect(faultsOf(good)).toEqual([]));
  // 74.4 mm is what a browser makes of 100 mm when one element of 250 mm shrinks its pages.
  test.each([
    [{ ...good, bar_mm: 74.4 }, /prints 74\.4 mm long: the page was scaled/],
    [{ ...good, bar_mm: 100.11 }, /the page was scaled/],
    [{ ...good, bar_mm: null }, /no calibration bar/],
    [{ ...good, fonts: [] }, /no letters/],
    [{ ...good, fonts: ["AtkinsonHyperlegible-Bold", "DejaVuSans"] }, /uses DejaVuSans/],
    [{ ...good, pages: 0 }, /no page/],
  ])("%j is told", (inspection, fault) => expect(faultsOf(inspection).join()).toMatch(fault));
});
