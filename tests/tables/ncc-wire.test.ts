// Source: ABCB Housing Provisions 2022, tables 11.3.6a and b; cells typed here again from the tables, not from the program.
import { describe, expect, it } from "vitest";
import { nccSag, nccTension } from "../../src/tables/ncc-wire.ts";

const tensionOf = (construction: "1x19" | "7x7" | "7x19", diameter: number, spacing: number, clearSpan: number) => {
  const cell = nccTension({ construction, diameter, spacing, clearSpan });
  return typeof cell === "string" ? cell : cell.value;
};
const sagOf = (diameter: number, spacing: number, clearSpan: number) => {
  const cell = nccSag({ diameter, spacing, clearSpan });
  return typeof cell === "string" ? cell : cell.value;
};

describe("nccTension", () => {
  it.each([
    ["7x7", 2.5, 60, 600, 55],
    ["7x7", 2.5, 60, 2000, 1139],
    ["7x7", 2.5, 80, 1500, 1288],
    ["7x7", 2.5, 100, 900, 1368],
    ["1x19", 2.5, 60, 2000, 1325],
    ["1x19", 2.5, 80, 1800, 1750],
    ["1x19", 2.5, 100, 800, 1565],
    ["7x7", 3, 60, 2500, 1491],
    ["7x7", 3, 80, 1000, 741],
    ["7x7", 3, 100, 1000, 1639],
    ["1x19", 3, 60, 1200, 520],
    ["1x19", 3, 80, 2000, 1980],
    ["1x19", 3, 100, 1000, 1910],
    ["7x7", 4, 60, 600, 5],
    ["7x7", 4, 80, 2500, 2130],
    ["7x7", 4, 100, 2000, 3098],
    ["1x19", 4, 60, 1500, 147],
    ["1x19", 4, 80, 1800, 1303],
    ["1x19", 4, 100, 2500, 3849],
    ["7x19", 4, 60, 600, 155],
    ["7x19", 4, 80, 1200, 1143],
    ["7x19", 4, 100, 1500, 2735],
  ] as const)("table 11.3.6a: %s of %s mm, spacing %s mm, span %s mm: %s N", (construction, diameter, spacing, span, newton) => {
    expect(tensionOf(construction, diameter, spacing, span)).toBe(newton);
  });

  it("cites the clause's table with row and column", () => {
    const cell = nccTension({ construction: "1x19", diameter: 3.175, spacing: 76.2, clearSpan: 914.4 });
    expect(cell).toEqual({
      value: 785,
      source: "ncc-2022",
      where: "table 11.3.6a, 1x19, 3 mm, spacing 80 mm, span 1000 mm",
    });
  });

  it("takes the next row and column up, never between: spacing 60.1 mm reads 80, span 801 mm reads 900", () => {
    expect(tensionOf("1x19", 3, 60.1, 801)).toBe(670);
    expect(tensionOf("1x19", 3, 60, 800)).toBe(183);
    expect(tensionOf("1x19", 3, 40, 300)).toBe(25);
  });

  it("note 3: 3.2 mm, and 1/8 in, take the rows of 3.0 mm; 3.1 mm has none", () => {
    expect(tensionOf("1x19", 3.2, 80, 900)).toBe(670);
    expect(tensionOf("1x19", 3.175, 80, 900)).toBe(670);
    expect(tensionOf("1x19", 3.1, 80, 900)).toBe("not in the table");
  });

  it("a struck-out cell is not allowed: 1x19 of 3.0 mm at 80 mm over 2500 mm", () => {
    expect(tensionOf("1x19", 3, 80, 2500)).toBe("not allowed");
    expect(tensionOf("7x7", 2.5, 80, 1501)).toBe("not allowed");
  });

  it("a wider spacing, a longer span, or 7x19 of 3.0 mm is not in the table", () => {
    expect(tensionOf("1x19", 3, 101, 900)).toBe("not in the table");
    expect(tensionOf("1x19", 3, 80, 2501)).toBe("not in the table");
    expect(tensionOf("7x19", 3, 60, 600)).toBe("not in the table");
    expect(tensionOf("1x19", 4.7625, 60, 600)).toBe("not in the table");
  });

  it("no row asks less over a longer span, and no wider spacing asks less than a closer one", () => {
    const spans = [600, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500];
    const spacings = [60, 80, 100];
    const rank = (value: number | string): number => (typeof value === "number" ? value : Number.POSITIVE_INFINITY);
    for (const [construction, diameter] of [
      ["7x7", 2.5],
      ["1x19", 2.5],
      ["7x7", 3],
      ["1x19", 3],
      ["7x7", 4],
      ["1x19", 4],
      ["7x19", 4],
    ] as const) {
      const grid = spacings.map((spacing) => spans.map((span) => rank(tensionOf(construction, diameter, spacing, span))));
      for (const line of grid) expect(line).toEqual(line.toSorted((a, b) => a - b));
      for (const index of spans.keys()) {
        const column = grid.map((line) => line[index] ?? Number.NaN);
        expect(column).toEqual(column.toSorted((a, b) => a - b));
      }
    }
  });
});

describe("nccSag", () => {
  it.each([
    [2.5, 60, 600, 17],
    [2.5, 80, 1500, 5],
    [3, 60, 900, 13],
    [3, 80, 2000, 5],
    [4, 60, 1200, 8],
    [4, 80, 600, 8],
    [4, 80, 2000, 4],
  ])("table 11.3.6b: %s mm, spacing %s mm, span %s mm: %s mm", (diameter, spacing, span, sag) => {
    expect(sagOf(diameter, spacing, span)).toBe(sag);
  });

  it("2.5 mm at 80 mm over 1800 mm is struck out; 100 mm of spacing or 2500 mm of span is not in the table", () => {
    expect(sagOf(2.5, 80, 1800)).toBe("not allowed");
    expect(sagOf(3, 100, 900)).toBe("not in the table");
    expect(sagOf(3, 80, 2500)).toBe("not in the table");
  });

  it("note 2: 3.2 mm takes the rows of 3.0 mm; 800 mm of span reads 900", () => {
    expect(sagOf(3.2, 80, 800)).toBe(6);
  });
});
