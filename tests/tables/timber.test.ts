import { describe, expect, test } from "vitest";
import {
  dressedSize,
  lumberNames,
  lumberSection,
  lumberStockLengths,
  postStockLengths,
  tubeStockLengths,
} from "../../src/tables/timber.ts";

describe("lumberSection", () => {
  // Dressed sizes: NDS Supplement table 1A, see tests/validation/nds-supplement.test.ts; x25.4.
  test("a 4x4 is 88.9 mm on both faces, a 2x6 is 38.1 x 139.7 mm, a 6x6 is 139.7 mm", () => {
    expect(lumberSection("4x4")).toMatchObject({ thickness: 88.9, width: 88.9, cited: { source: "nds-supplement" } });
    expect(lumberSection("2x6")).toMatchObject({ thickness: 38.1, width: 139.7 });
    expect(lumberSection("6x6")).toMatchObject({ thickness: 139.7, width: 139.7, cited: { source: "timber-note" } });
  });

  test("a 2x2 is 38.1 mm on both faces", () => {
    expect(lumberSection("2x2")).toMatchObject({ thickness: 38.1, width: 38.1 });
  });

  // 5/4 decking 1 in, boards 3/4 in: from memory, and marked so.
  test("a 5/4x6 is 25.4 x 139.7 mm and says that it is from memory", () => {
    expect(lumberSection("5/4x6")).toMatchObject({ thickness: 25.4, width: 139.7, cited: { source: "memory", value: "5/4x6" } });
  });

  test('"4 X 4" is read as "4x4"; a "7x9" and "constructor" are unknown', () => {
    expect(lumberSection("4 X 4")?.cited.value).toBe("4x4");
    expect(lumberSection("7x9")).toBeNull();
    expect(lumberSection("constructor")).toBeNull();
  });

  test("every name that is offered has a section, the smaller face first", () => {
    expect(lumberNames).toContain("4x6");
    for (const name of lumberNames) {
      const section = lumberSection(name);
      expect(section?.thickness, name).toBeLessThanOrEqual(section?.width ?? 0);
    }
  });
});

describe("dressedSize", () => {
  test("a nominal 8 in timber is 7-1/2 in (190.5 mm), half an inch under; a nominal 8 in width is 7-1/4 in (184.15 mm)", () => {
    expect(dressedSize(8, "timber").value).toBe(190.5);
    expect(dressedSize(8, "width").value).toBe(184.15);
  });

  test("a nominal 7 in width and a 4 in timber are not sold", () => {
    expect(() => dressedSize(7, "width")).toThrow(RangeError);
    expect(() => dressedSize(4, "timber")).toThrow(RangeError);
  });
});

describe("stock lengths", () => {
  test("lumber from 8 to 20 ft, posts to 16 ft, tube 20 and 24 ft, shortest first", () => {
    expect(lumberStockLengths.value[0]).toBeCloseTo(2438.4, 9);
    expect(lumberStockLengths.value.at(-1)).toBeCloseTo(6096, 9);
    expect(postStockLengths.value.at(-1)).toBeCloseTo(4876.8, 9);
    expect(tubeStockLengths.value).toEqual([6096, 7315.2]);
  });
});
