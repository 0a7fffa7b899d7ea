import { describe, expect, test } from "vitest";
import { writeElement } from "../../src/drawing/element.ts";
import { chooseScale } from "../../src/drawing/paper.ts";
import { calibrationLine, scaleBar } from "../../src/drawing/ruler.ts";

describe("calibrationLine", () => {
  test("one <line> of class calibration, exactly 100 mm long, 0.7 mm thick, wherever it stands", () => {
    for (const x of [0, 2, 7.3]) {
      const lines = [...writeElement(calibrationLine({ x, y: 4 }).element).matchAll(/<line ([^>]*)\/>/g)];
      expect(lines).toHaveLength(1);
      const of = (name: string): number => Number(new RegExp(`${name}="([^"]*)"`).exec(lines[0]?.[1] ?? "")?.[1]);
      expect(lines[0]?.[1]).toContain('class="calibration"');
      expect(of("x2") - of("x1")).toBeCloseTo(100, 9);
      expect(of("y1")).toBe(of("y2"));
      expect(of("stroke-width")).toBe(0.7);
    }
  });
});

describe("scaleBar", () => {
  test.each([
    ["inch", 32, "4'-0\"", 4 * 304.8],
    ["inch", 4, '6"', 6 * 25.4],
    ["mm", 25, "1000 mm", 1000],
    ["mm", 5, "200 mm", 200],
  ] as const)("in %s at 1 to %d the bar stands for %s and has that length on paper", (units, denominator, name, length) => {
    const scale = chooseScale(units, ({ ratio }) => Math.abs(1 / ratio - denominator) < 1e-9);
    const text = writeElement(scaleBar({ x: 0, y: 0 }, { scale, units }).element);
    expect(text).toContain(name.replace(/"/g, "&quot;").replace(/'/g, "&#39;"));
    const xs = [...text.matchAll(/[ML](-?[\d.]+) 4\.4/g)].map(([, x]) => Number(x));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(length / denominator, 3);
  });
});
