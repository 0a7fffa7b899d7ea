// GAMS Development Corporation, "Cutting stock - a column generation approach", data of the example:
// miro.gams.com/gallery/app_direct/cutstock. The optimum 453 was proved with an arc-flow programme and another solver (HiGHS).
import { describe, expect, test } from "vitest";
import { cutStock } from "../../src/stock/cut.ts";

describe("cutStock", () => {
  test("bars of 100 for 97 of 45, 610 of 36, 395 of 31 and 211 of 14: 453 bars, proven; the length alone asks for 416", () => {
    const pieces = [
      { mark: "45", length: 45, count: 97 },
      { mark: "36", length: 36, count: 610 },
      { mark: "31", length: 31, count: 395 },
      { mark: "14", length: 14, count: 211 },
    ];
    const plan = cutStock({ pieces, stock: [{ length: 100, cost: 1 }], kerf: 0, endTrim: 0, objective: "count" });
    expect(plan).toMatchObject({ total: 453, bound: 453, proven: true });
  });

  test("a kerf of 1 on bars of 101 and pieces one shorter is the same problem", () => {
    const pieces = [
      { mark: "45", length: 44, count: 97 },
      { mark: "36", length: 35, count: 610 },
      { mark: "31", length: 30, count: 395 },
      { mark: "14", length: 13, count: 211 },
    ];
    const plan = cutStock({ pieces, stock: [{ length: 101, cost: 1 }], kerf: 1, endTrim: 1, objective: "count" });
    expect(plan).toMatchObject({ total: 453, proven: true });
  });
});
