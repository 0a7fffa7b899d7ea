import { describe, expect, test } from "vitest";
import { hatchLines } from "../../src/drawing/hatch.ts";

const square = (from: number, to: number) => [
  { x: from, y: from },
  { x: to, y: from },
  { x: to, y: to },
  { x: from, y: to },
];
const lengthOf = (lines: ReturnType<typeof hatchLines>): number =>
  lines.reduce((sum, [a, b]) => sum + (a === undefined || b === undefined ? 0 : Math.hypot(b.x - a.x, b.y - a.y)), 0);

describe("hatchLines", () => {
  // Lines at a spacing s fill an area A with a length near A / s.
  test("a square of 30 mm at a spacing of 0.1 mm takes 9000 mm of line, one with a hole of 10 mm takes 8000 mm", () => {
    expect(lengthOf(hatchLines({ outlines: [square(0, 30)], spacing: 0.1, angle: Math.PI / 4 }))).toBeCloseTo(9000, -1.5);
    expect(lengthOf(hatchLines({ outlines: [square(0, 30), square(10, 20)], spacing: 0.1, angle: Math.PI / 4 }))).toBeCloseTo(8000, -1.5);
  });

  test("no line enters the hole", () => {
    for (const line of hatchLines({ outlines: [square(0, 30), square(10, 20)], spacing: 1.3, angle: Math.PI / 4 })) {
      for (let share = 0.02; share < 1; share += 0.02) {
        const [a = { x: 0, y: 0 }, b = a] = line;
        const [x, y] = [a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share];
        expect(x > 10.001 && x < 19.999 && y > 10.001 && y < 19.999).toBe(false);
      }
    }
  });

  test("lines at 45 deg rise to the right on paper", () => {
    const [[a, b] = []] = hatchLines({ outlines: [square(0, 30)], spacing: 5, angle: Math.PI / 4 });
    expect(a !== undefined && b !== undefined && (b.x - a.x) * (b.y - a.y) < 0).toBe(true);
  });
});
