import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { align } from "../../src/changes/align.ts";

const paired = (before: readonly number[], after: readonly number[]): readonly (readonly [number | null, number | null])[] =>
  align(before, after, { placeOf: (place) => place, same: 0.5 }).map((pair) => [pair.before, pair.after]);

describe("align", () => {
  test("a post put in between leaves all others where they stand", () => {
    expect(paired([0, 1000, 2000], [0, 1000, 1500, 2000])).toEqual([
      [0, 0],
      [1000, 1000],
      [null, 1500],
      [2000, 2000],
    ]);
  });

  test("one that is taken out and one that is put in elsewhere are no two that moved", () => {
    expect(paired([0, 1000, 2000, 3000], [0, 2000, 2500, 3000])).toEqual([
      [0, 0],
      [1000, null],
      [2000, 2000],
      [null, 2500],
      [3000, 3000],
    ]);
  });

  test("posts that are spread anew have moved, and the fewest are new", () => {
    expect(paired([0, 1750, 3400, 5250, 7000], [0, 1400, 2800, 4200, 5600, 7000])).toEqual([
      [0, 0],
      [1750, 1400],
      [3400, 2800],
      [null, 4200],
      [5250, 5600],
      [7000, 7000],
    ]);
  });

  test("up to `same` apart two places are one; a single thing that moved has moved", () => {
    expect(paired([10], [10.5])).toEqual([[10, 10.5]]);
    expect(paired([], [])).toEqual([]);
    expect(paired([], [3])).toEqual([[null, 3]]);
  });

  const rows = fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { maxLength: 12 }).map((row) => row.toSorted((a, b) => a - b));

  test("everything stands in one pair, in its order, and what stands in both rows alone is paired with itself", () => {
    fc.assert(
      fc.property(rows, rows, (before, after) => {
        const pairs = paired(before, after);
        expect(pairs.flatMap(([old]) => old ?? [])).toEqual(before);
        expect(pairs.flatMap(([, now]) => now ?? [])).toEqual(after);
        expect(paired(before, before).every(([old, now]) => old === now)).toBe(true);
      }),
    );
  });

  test("the other way round the same number stands where it stood", () => {
    fc.assert(
      fc.property(rows, rows, (before, after) => {
        const standing = (pairs: ReturnType<typeof paired>): number => pairs.filter(([old, now]) => old === now).length;
        expect(standing(paired(after, before))).toBe(standing(paired(before, after)));
      }),
    );
  });
});
