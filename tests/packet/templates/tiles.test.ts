import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutTiles } from "../../../src/packet/templates/tiles.ts";

const paper = { longest: 190, step: 6.35 };

describe("cutTiles", () => {
  test("one tile where the strip fits", () => {
    expect(cutTiles({ foot: 0, top: 190, kept: [], marks: [] }, paper)).toEqual([{ number: 1, count: 1, from: 0, to: 190 }]);
  });

  test("two tiles of much the same length, cut at a whole quarter inch", () => {
    const tiles = cutTiles({ foot: 0, top: 200, kept: [], marks: [] }, paper);
    // Half of 200 is 100: the next quarter of an inch is 4 in.
    expect(tiles).toEqual([
      { number: 1, count: 2, from: 0, to: 101.6 },
      { number: 2, count: 2, from: 101.6, to: 200 },
    ]);
  });

  test("a line goes below a hole that it would cross", () => {
    const [first] = cutTiles({ foot: 0, top: 200, kept: [{ low: 90, high: 110 }], marks: [] }, paper);
    expect(first?.to).toBeCloseTo(88.9, 9);
  });

  test("where words leave no room a line crosses them, but no hole and no place where a bore comes out", () => {
    const kept = [{ low: -10, high: 210 }];
    const [first] = cutTiles({ foot: 0, top: 200, kept, marks: [{ low: 86, high: 110 }] }, paper);
    // Nearest to 4 in outside of it are 4-1/2 in and 3-1/4 in.
    expect(first?.to).toBeCloseTo(114.3, 9);
  });

  test("where holes leave no room at all the line stays where it was wanted", () => {
    const [first] = cutTiles({ foot: 0, top: 200, kept: [{ low: -10, high: 210 }], marks: [{ low: -10, high: 210 }] }, paper);
    expect(first?.to).toBeCloseTo(101.6, 9);
  });

  test("tiles follow one another without a gap, none longer than the paper, and end at the top", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 20, max: 2000, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 2000, noNaN: true }), { maxLength: 20 }),
        (foot, length, holes) => {
          const kept = holes.map((height) => ({ low: height - 12, high: height + 12 }));
          const tiles = cutTiles({ foot, top: foot + length, kept, marks: [] }, paper);
          expect(tiles[0]?.from).toBe(foot);
          expect(tiles.at(-1)?.to).toBe(foot + length);
          for (const [index, tile] of tiles.entries()) {
            expect(tile.to - tile.from).toBeLessThanOrEqual(paper.longest + 1e-9);
            expect(tile.to).toBeGreaterThan(tile.from);
            if (index > 0) expect(tile.from).toBe(tiles[index - 1]?.to);
            expect(tile).toMatchObject({ number: index + 1, count: tiles.length });
          }
        },
      ),
    );
  });
});
