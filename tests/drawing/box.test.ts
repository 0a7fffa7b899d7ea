import { describe, expect, test } from "vitest";
import { boxOf, grow, inside, overlap, quadAlong, quadOf, unite } from "../../src/drawing/box.ts";

const square = (left: number, top: number, side: number) => quadOf({ left, top, right: left + side, bottom: top + side });

describe("overlap", () => {
  test("squares of 10 mm at 9 mm overlap, at 10 mm they only touch", () => {
    expect(overlap(square(0, 0, 10), square(9, 0, 10))).toBe(true);
    expect(overlap(square(0, 0, 10), square(10, 0, 10))).toBe(false);
    expect(overlap(square(0, 0, 10), square(0, 10.5, 10))).toBe(false);
  });

  test("a small square inside a large one overlaps it", () => {
    expect(overlap(square(0, 0, 10), square(4, 4, 1))).toBe(true);
  });

  test("two bars at 45 deg whose boxes overlap, side by side at a distance of 2.1 mm, do not overlap", () => {
    const a = quadAlong({ x: 0, y: 0 }, { x: 20, y: 20 }, 1);
    const b = quadAlong({ x: 3, y: 0 }, { x: 23, y: 20 }, 1);
    expect(3 / Math.SQRT2).toBeGreaterThan(2.1);
    expect(overlap(a, b)).toBe(false);
    expect(overlap(a, quadAlong({ x: 2, y: 0 }, { x: 22, y: 20 }, 1))).toBe(true);
  });
});

describe("quadAlong", () => {
  test("a bar of 10 mm along x with half width 1 mm covers y from -1 to 1", () => {
    expect(boxOf(quadAlong({ x: 0, y: 0 }, { x: 10, y: 0 }, 1))).toEqual({ left: 0, top: -1, right: 10, bottom: 1 });
  });
});

describe("inside", () => {
  test("a box is inside itself, and no longer when it grows by 0.1 mm", () => {
    const box = { left: 0, top: 0, right: 5, bottom: 5 };
    expect(inside(box, box)).toBe(true);
    expect(inside(grow(box, 0.1), box)).toBe(false);
  });
});

describe("unite", () => {
  test("two boxes give the box that holds both", () => {
    expect(unite([{ box: { left: 0, top: 3, right: 1, bottom: 4 } }, { box: { left: -2, top: 3.5, right: 0, bottom: 9 } }])).toEqual({
      left: -2,
      top: 3,
      right: 1,
      bottom: 9,
    });
  });
});
