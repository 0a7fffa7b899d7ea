// American Wood Council, National Design Specification Supplement, table 1A: nominal and minimum dressed sizes of sawn lumber
// (the same as PS 20, American Softwood Lumber Standard), dry. Read as quoted in xcfem/xc, test_nds_table_4A.py.
import { describe, test } from "vitest";
import { dressedSize } from "../../src/tables/timber.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const MM_PER_INCH = 25.4;
/** The table's sizes are exact, not rounded. */
const exact = { within: 1e-12, because: "dressed sizes are exact binary fractions of an inch" };

describe("dressedSize", () => {
  test("table 1A: widths nominal 2, 3, 4, 6, 8, 10, 12 in are dressed to 1.5, 2.5, 3.5, 5.5, 7.25, 9.25, 11.25 in", () => {
    const printed = { 2: "1.5", 3: "2.5", 4: "3.5", 5: "4.5", 6: "5.5", 8: "7.25", 10: "9.25", 12: "11.25" };
    for (const [nominal, dressed] of Object.entries(printed)) {
      expectAsPrinted(dressedSize(Number(nominal), "width").value / MM_PER_INCH, dressed, exact);
    }
  });

  test("table 1A: thicknesses nominal 2, 2-1/2, 3, 4 in are dressed to 1.5, 2, 2.5, 3.5 in", () => {
    const printed = { 2: "1.5", 2.5: "2", 3: "2.5", 4: "3.5" };
    for (const [nominal, dressed] of Object.entries(printed)) {
      expectAsPrinted(dressedSize(Number(nominal), "thickness").value / MM_PER_INCH, dressed, exact);
    }
  });
});
