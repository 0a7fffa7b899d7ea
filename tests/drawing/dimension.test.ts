import { describe, expect, test } from "vitest";
import { boxOf, inside, overlap } from "../../src/drawing/box.ts";
import { dimension, dimensionWays, fitsBetween, ordinateDepth, runningDimensions } from "../../src/drawing/dimension.ts";
import { writeMarks } from "../../src/drawing/ink.ts";

describe("dimension", () => {
  test("a text of 15 mm stands between ends 40 mm apart and beyond them when they are 10 mm apart", () => {
    const long = dimension({ from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, offset: 5, text: "22'-10 1/2\"" });
    const short = dimension({ from: { x: 0, y: 0 }, to: { x: 10, y: 0 }, offset: 5, text: "22'-10 1/2\"" });
    expect(fitsBetween("22'-10 1/2\"", 40)).toBe(true);
    expect(fitsBetween("22'-10 1/2\"", 10)).toBe(false);
    expect(inside(boxOf(long.texts[0] ?? []), { left: 0, top: 0, right: 40, bottom: 10 })).toBe(true);
    expect(boxOf(short.texts[0] ?? []).left).toBeGreaterThan(10);
  });

  test("a positive offset lies to the right of the way from the first point to the second: below a line to the right", () => {
    const below = dimension({ from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, offset: 5, text: "a" });
    const above = dimension({ from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, offset: -5, text: "a" });
    expect(boxOf(below.texts[0] ?? []).top).toBeGreaterThan(3);
    expect(boxOf(above.texts[0] ?? []).bottom).toBeLessThan(-3);
  });

  test("its dimension line ends exactly at the two points: M0 5H40", () => {
    expect(writeMarks([dimension({ from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, offset: 5, text: "a" })]).join("")).toContain("M0 5H40");
  });
});

describe("dimensionWays", () => {
  const wide = { from: { x: 0, y: 0 }, to: { x: 40, y: 0 }, offset: 5, text: '3"' };
  const placesOf = (ways: readonly { texts: readonly (readonly { x: number; y: number }[])[] }[]): readonly string[] =>
    ways.map(({ texts }) => {
      const { left, right } = boxOf(texts[0] ?? []);
      return right < 0 ? "before" : left > 40 ? "beyond" : "between";
    });

  test("the end that is wished comes first, then the other, then the middle", () => {
    expect(placesOf(dimensionWays({ ...wide, beyond: "from" }))).toEqual(["before", "beyond", "between"]);
    expect(placesOf(dimensionWays({ ...wide, beyond: "to" }))).toEqual(["beyond", "before", "between"]);
  });

  test("a text that has no room between its ends is never put there", () => {
    expect(dimensionWays({ ...wide, to: { x: 3, y: 0 }, beyond: "to" })).toHaveLength(2);
  });
});

describe("runningDimensions", () => {
  const ordinates = Array.from({ length: 9 }, (_, index) => ({ at: index * 2.3, mark: String(index + 1), value: `${index}-1/2"` }));
  const options = {
    origin: { x: 0, y: 0 },
    along: { x: 0, y: -1 },
    outward: { x: -1, y: 0 },
    ordinates,
    start: 1,
    lay: "outward",
  } as const;

  test("nine labels wanted 2.3 mm apart do not overlap, and keep within the depth that was announced", () => {
    const part = runningDimensions(options);
    const clashes = part.texts.filter((quad, index) => part.texts.slice(index + 1).some((other) => overlap(quad, other)));
    expect(clashes).toEqual([]);
    expect(part.texts).toHaveLength(18);
    expect(part.box.left).toBeGreaterThanOrEqual(-ordinateDepth(options) - 1e-9);
  });

  test("each line starts exactly at its own place, however far its label was moved", () => {
    const path = writeMarks([runningDimensions(options)]).join("");
    for (const { at } of ordinates) expect(path).toContain(`M-1 ${at === 0 ? 0 : -Math.round(at * 1000) / 1000}H`);
  });
});
