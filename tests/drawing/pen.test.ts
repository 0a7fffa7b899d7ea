import { describe, expect, test } from "vitest";
import { type PenName, strokeOf } from "../../src/drawing/pen.ts";

const names: readonly PenName[] = ["heavy", "outline", "cable", "edge", "thin", "hidden", "centre", "match"];

const of = (pen: PenName, attribute: string): string | undefined => new RegExp(` ${attribute}="([^"]*)"`).exec(strokeOf(pen))?.[1];

describe("strokeOf", () => {
  test("all pens are black, and no two have the same width and dash", () => {
    expect(new Set(names.map(strokeOf)).size).toBe(names.length);
    for (const name of names) expect(of(name, "stroke")).toBe("#000");
  });

  // 0.5 pt is the thinnest line of printed forms (field documents, 2.3; common practice): 0.176 mm.
  test("no pen is thinner than half a point", () => {
    for (const name of names) expect(Number(of(name, "stroke-width"))).toBeGreaterThanOrEqual((0.5 * 25.4) / 72);
  });
});
