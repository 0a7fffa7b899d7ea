// "Cutting stock problem", Wikipedia (copy read at wikisum.wiki/wiki/Cutting_stock_problem): a paper machine 5600 mm wide.
// The width was read; the list of orders is from memory, and agrees with the published waste of about 0.4 % and 73 rolls.
import { describe, expect, test } from "vitest";
import { cutStock } from "../../src/stock/cut.ts";

const orders = {
  1380: 22,
  1520: 25,
  1560: 12,
  1710: 14,
  1820: 18,
  1880: 18,
  1930: 20,
  2000: 10,
  2050: 12,
  2100: 14,
  2140: 16,
  2150: 18,
  2200: 20,
};

describe("cutStock", () => {
  test("13 orders from rolls of 5600 mm: 73 rolls, proven, 0.4 % waste", () => {
    const pieces = Object.entries(orders).map(([width, count]) => ({ mark: width, length: Number(width), count }));
    const plan = cutStock({ pieces, stock: [{ length: 5600, cost: 1 }], kerf: 0, endTrim: 0, objective: "count" });
    expect(plan).toMatchObject({ total: 73, bound: 73, proven: true });
    if ("tooLong" in plan) return;
    expect((1 - plan.used / plan.bought) * 100).toBeCloseTo(0.4, 1);
  });
});
