import { describe, expect, it } from "vitest";
import { strandFriction } from "../../src/tables/friction.ts";

describe("strandFriction", () => {
  it("on a plastic bushing 0.30, inside the 0.20 to 0.45 of the drive guide, table 7.21", () => {
    expect(strandFriction("plastic")).toMatchObject({ value: { low: 0.2, nominal: 0.3, high: 0.45 }, source: "drive-guide" });
  });

  it("on wood 0.45 to 0.75 (drive guide), on metal 0.12 to 0.80 over two tables; each nominal lies inside its range", () => {
    expect(strandFriction("wood")).toMatchObject({ value: { low: 0.45, high: 0.75 }, source: "drive-guide" });
    expect(strandFriction("metal")).toMatchObject({ value: { low: 0.12, high: 0.8 }, source: "friction-table" });
    for (const lining of ["plastic", "metal", "wood"] as const) {
      const { low, nominal, high } = strandFriction(lining).value;
      expect(low).toBeLessThan(nominal);
      expect(nominal).toBeLessThan(high);
    }
  });
});
