import { describe, expect, test } from "vitest";
import { leastBars, leastTotal, quickBound } from "../../src/stock/bound.ts";
import type { Bar, Cutting } from "../../src/stock/problem.ts";

const bar = (length: number, value: number): Bar => ({ length, capacity: length, value });
const part = (width: number, demand: number) => ({ width, demand });

describe("leastTotal", () => {
  test("30 ft of pieces from 8 and 14 ft bars cost at least 30: 8 + 8 + 14 is the only total of 30 that holds them", () => {
    expect(leastTotal({ parts: [part(6, 5)], bars: [bar(8, 8), bar(14, 14)] })).toBe(30);
  });

  test("31 ft of pieces cost at least 32: 31 is no sum of 8 and 14", () => {
    expect(leastTotal({ parts: [part(31 / 5, 5)], bars: [bar(8, 8), bar(14, 14)] })).toBe(32);
  });

  test("of two ways to the same total the one with more length counts: 20 ft for 4 and not 8 + 8 ft for 2 + 2", () => {
    expect(leastTotal({ parts: [part(10, 2)], bars: [bar(8, 2), bar(20, 4)] })).toBe(4);
  });

  test("another bound of 25 is rounded up to the next total of whole bars, 28", () => {
    expect(leastTotal({ parts: [part(1, 1)], bars: [bar(14, 14)] }, 25)).toBe(28);
  });

  test("nothing to cut costs nothing", () => {
    expect(leastTotal({ parts: [], bars: [bar(8, 8)] })).toBe(0);
  });

  test("values too many for the table leave the bound unrounded", () => {
    expect(leastTotal({ parts: [part(5, 2)], bars: [bar(10, 1_000_003)] })).toBe(1_000_003);
  });
});

describe("leastBars", () => {
  test("three pieces of 6 in bars of 10 need three bars, though their length fits two", () => {
    expect(leastBars([part(6, 3)], 10)).toBe(3);
  });

  test("two 7s and two 4s in bars of 10 need three: the 4s find no room beside the 7s", () => {
    expect(leastBars([part(7, 2), part(4, 2)], 10)).toBe(3);
  });

  test("two 6s and two 4s in bars of 10 need only two", () => {
    expect(leastBars([part(6, 2), part(4, 2)], 10)).toBe(2);
  });
});

// Martello and Toth, "Lower bounds and reduction procedures for the bin packing problem", 1990 (from memory): their example, bound L2.
const MARTELLO_TOTH = [70, 60, 50, 33, 33, 33, 11, 7, 3];

describe("the example of Martello and Toth", () => {
  const parts = [...new Set(MARTELLO_TOTH)].map((width) => part(width, MARTELLO_TOTH.filter((one) => one === width).length));

  test("needs 4 bars of 100, though the length of all is that of 3", () => {
    expect(MARTELLO_TOTH.reduce((sum, width) => sum + width, 0)).toBe(300);
    expect(leastBars(parts, 100)).toBe(4);
  });

  test("costs at least four times the one bar that is sold", () => {
    expect(quickBound({ parts, bars: [bar(100, 1)] })).toBe(4);
    expect(quickBound({ parts, bars: [bar(100, 5)] })).toBe(20);
  });
});

describe("quickBound", () => {
  test("three pieces of 8-1/2 ft cost three bars of 12 ft, though 28 would hold their length", () => {
    expect(quickBound({ parts: [part(8.5, 3)], bars: [bar(8, 8), bar(12, 12)] })).toBe(36);
  });

  test("three 11 ft pieces each need a 12 ft bar of their own, though 8 ft bars are sold: 36", () => {
    const cutting: Cutting = { parts: [part(11, 3)], bars: [bar(8, 8), bar(12, 12)] };
    expect(quickBound(cutting)).toBe(36);
  });
});
