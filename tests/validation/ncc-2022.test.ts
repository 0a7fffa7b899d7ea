// Source: NCC 2022, ABCB Housing Provisions, table 11.3.6a (least tension of horizontal stainless wire, found by tests), and H5V1, the test
// behind it: a polished cone of 125 mm, 105 mm long with a nose of 20 mm, pulled with 150 N against a pair of wires at mid-span.
// (c) Commonwealth of Australia and the States and Territories 2022, published by the Australian Building Codes Board.
//
// This is a check of the trend, not of equality: the code tells neither the stiffness of the wires, nor the friction of the cone, nor the
// length that shares the stretch, nor whether spacing means centres. Taken here: centres; the modulus of tables/strand.ts; a wire that
// slides through three spans ("continuous" is three supports or more); friction 0.2 between polished steel and wire (inside the
// 0.12 to 0.60 of the drive guide, table 7.21). Friction is the one number that was chosen to bring the middle of the ratios near 1:
// without it the model asks about 1.7 times the table, with 0.3 about 0.7 times.
//
// Found with these, model over table in the cells of 500 N and more, from the shortest span to the longest; r is the correlation of all
// cells of the row, those below 500 N included, where slack wires hold by their stretch and the model often asks none:
//   2.5 mm 7x7   60: 1.13 1.10 1.19            r 0.992     3.0 mm 7x7   60: 1.05 1.30 1.18 1.12 1.14       r 0.988
//                80: 0.90 0.99 1.05 1.09 1.13  r 0.998                  80: 1.25 1.05 1.29 1.31 1.28 1.26  r 0.990
//               100: 1.05 1.10 1.12            r 1.000                 100: 0.96 0.99 1.06 1.01            r 0.994
//   2.5 mm 1x19  60: 0.78 1.01 0.99 0.97       r 0.981     3.0 mm 1x19  60: 0.51 0.87 0.99 1.03            r 0.973
//                80: 0.58 0.77 0.87 0.98 to 1  r 0.991                  80: 0.27 0.58 0.75 0.90 to 1.00    r 0.994
//               100: 0.70 0.81                 r 1.000                 100: 0.60 0.78 0.82 0.84            r 0.998
//   4.0 mm 7x7   60: 1.51 1.47 1.38            r 0.993     4.0 mm 1x19  60: 1.32 1.14 1.18                 r 0.992
//                80: 1.07 1.17 to 1.23 1.13    r 0.989                  80: 1.09 1.03 1.19 1.25 1.28       r 0.991
//               100: 0.72 0.95 0.98 to 1.08    r 0.999                 100: 0.31 0.71 0.80 to 1.08         r 0.996
//   4.0 mm 7x19  60: 0.44 0.79 0.93 0.93 1.05  r 0.987
//                80: 0.21 0.48 0.63 to 0.92    r 0.996
//               100: 0.59 0.80 to 0.90         r 0.996
// All 152 cells: r 0.965; the 106 cells of 500 N and more: middle ratio 0.99, 81 of them between 0.75 and 1.25.
import { describe, expect, it } from "vitest";
import { tensionForPush } from "../../src/mechanics/push-through.ts";
import { nccTension } from "../../src/tables/ncc-wire.ts";
import { strandStiffness } from "../../src/tables/strand.ts";

const CONE = { kind: "cone", diameter: 125, length: 105, noseDiameter: 20 } as const;
const FORCE_N = 150;
const SPANS_mm = [600, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500];
const SPANS_SHARING = 3;
const FRICTION = 0.2;
const WIRES = [
  ["7x7", 2.5],
  ["1x19", 2.5],
  ["7x7", 3],
  ["1x19", 3],
  ["7x7", 4],
  ["1x19", 4],
  ["7x19", 4],
] as const;
const ROWS = WIRES.flatMap(([construction, diameter]) => [60, 80, 100].map((spacing) => ({ construction, diameter, spacing })));
type Row = (typeof ROWS)[number];

interface Cell {
  readonly table: number;
  readonly model: number;
}

function cellsOf({ construction, diameter, spacing }: Row, friction = FRICTION): readonly Cell[] {
  return SPANS_mm.flatMap((span) => {
    const cell = nccTension({ construction, diameter, spacing, clearSpan: span });
    if (typeof cell === "string") return [];
    const model = tensionForPush({
      solid: CONE,
      force: FORCE_N,
      spacing,
      cableDiameter: diameter,
      span,
      stiffness: strandStiffness({ construction, diameter }).value.nominal,
      runLength: SPANS_SHARING * span,
      support: "sliding",
      friction,
    });
    return [{ table: cell.value, model }];
  });
}

function correlation(cells: readonly Cell[]): number {
  const mean = (of: (cell: Cell) => number): number => cells.reduce((sum, cell) => sum + of(cell), 0) / cells.length;
  const [table, model] = [mean((cell) => cell.table), mean((cell) => cell.model)];
  const product = mean((cell) => (cell.table - table) * (cell.model - model));
  return product / Math.sqrt(mean((cell) => (cell.table - table) ** 2) * mean((cell) => (cell.model - model) ** 2));
}

const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const ratios = (cells: readonly Cell[]): readonly number[] =>
  cells.filter((cell) => cell.table >= 500).map((cell) => cell.model / cell.table);

describe("tensionForPush beside table 11.3.6a", () => {
  const all = ROWS.map((row) => cellsOf(row));

  it("all 152 cells of the 21 rows that state a tension take part", () => {
    expect(all).toHaveLength(21);
    expect(all.flat()).toHaveLength(152);
  });

  it.each(ROWS)("$construction of $diameter mm at $spacing mm: rises with the span like the table, correlation above 0.95", (row) => {
    const cells = cellsOf(row);
    expect(correlation(cells)).toBeGreaterThan(0.95);
    expect(cells.map((cell) => cell.model)).toEqual(cells.map((cell) => cell.model).toSorted((a, b) => a - b));
    for (const cell of cells.filter((one) => one.table >= 1000)) {
      expect(cell.model / cell.table).toBeGreaterThan(0.55);
      expect(cell.model / cell.table).toBeLessThan(1.45);
    }
  });

  it("over all rows the correlation is above 0.95 and, from 500 N up, three cells in four lie within a quarter of the table", () => {
    expect(correlation(all.flat())).toBeGreaterThan(0.95);
    const compared = ratios(all.flat());
    expect(compared.filter((ratio) => ratio > 0.75 && ratio < 1.25).length / compared.length).toBeGreaterThan(0.75);
    expect(middle(compared)).toBeGreaterThan(0.9);
    expect(middle(compared)).toBeLessThan(1.1);
  });

  it("closer wires need less: at each span the model asks less at 60 mm than at 80, and less there than at 100", () => {
    for (const [construction, diameter] of WIRES) {
      const [close, mid, wide] = [60, 80, 100].map((spacing) => cellsOf({ construction, diameter, spacing }));
      for (const [index, cell] of (wide ?? []).entries()) {
        expect(cell.model).toBeGreaterThan(mid?.[index]?.model ?? Number.NaN);
        expect(mid?.[index]?.model ?? Number.NaN).toBeGreaterThanOrEqual(close?.[index]?.model ?? Number.NaN);
      }
    }
  });

  it("how much the answer hangs on friction: the middle ratio is above 1.5 without and below 0.85 with 0.3", () => {
    const middleAt = (friction: number): number => middle(ratios(ROWS.flatMap((row) => cellsOf(row, friction))));
    expect(middleAt(0)).toBeGreaterThan(1.5);
    expect(middleAt(0.3)).toBeLessThan(0.85);
  });
});
