import { describe, expect, test } from "vitest";
import { listPatterns } from "../../src/stock/patterns.ts";

const cutting = {
  parts: [
    { width: 5, demand: 2 },
    { width: 3, demand: 4 },
  ],
  bars: [{ length: 10, capacity: 10, value: 1 }],
};

describe("listPatterns", () => {
  test("5s and 3s in a bar of 10 can be cut in three full ways: 5+5, 5+3, 3+3+3", () => {
    expect(listPatterns(cutting, 10)?.map((pattern) => pattern.counts)).toEqual([
      [2, 0],
      [1, 1],
      [0, 3],
    ]);
  });

  test("with 6 and 10 each way stands once, in the shorter bar that holds it", () => {
    const bars = [
      { length: 6, capacity: 6, value: 1 },
      { length: 10, capacity: 10, value: 2 },
    ];
    const patterns = listPatterns({ ...cutting, bars }, 20) ?? [];
    expect(patterns.map(({ counts, bar }) => [bar.length, ...counts])).toEqual([
      [6, 1, 0],
      [6, 0, 2],
      [10, 2, 0],
      [10, 1, 1],
      [10, 0, 3],
    ]);
  });

  test("a way that takes all that is asked stands in the shorter bar alone, and nothing is cut that is not asked", () => {
    const bars = [6, 10].map((length) => ({ length, capacity: length, value: length }));
    const patterns = listPatterns({ parts: [{ width: 5, demand: 1 }], bars }, 20) ?? [];
    expect(patterns.map(({ counts, bar }) => [bar.length, ...counts])).toEqual([[6, 1]]);
  });

  test("three ways are more than a limit of two, and as many as one of three", () => {
    expect(listPatterns(cutting, 2)).toBeNull();
    expect(listPatterns(cutting, 3)).toHaveLength(3);
  });
});
