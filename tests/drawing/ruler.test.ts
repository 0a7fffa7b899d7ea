import { describe, expect, test } from "vitest";
import { writeMarks } from "../../src/drawing/ink.ts";
import { chooseScale } from "../../src/drawing/paper.ts";
import { calibrationLine, scaleBar } from "../../src/drawing/ruler.ts";

describe("calibrationLine", () => {
  test("one <line> of class calibration, exactly 100 mm long, 0.7 mm thick, wherever it stands", () => {
    for (const x of [0, 2, 7.3]) {
      const lines = [
        ...writeMarks([calibrationLine({ x, y: 4 })])
          .join("")
          .matchAll(/<line ([^>]*)\/>/g),
      ];
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
    const text = writeMarks([scaleBar({ x: 0, y: 0 }, { scale, units })]).join("");
    expect(text).toContain(`>${name}<`);
    // The upper edges of the bar and of its two black parts.
    const xs = [...text.matchAll(/M(-?[\d.]+) 3\.6H(-?[\d.]+)/g)].flatMap(([, from, to]) => [Number(from), Number(to)]);
    expect(xs).toHaveLength(6);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(length / denominator, 3);
  });
});
