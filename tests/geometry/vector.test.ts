import { describe, expect, it } from "vitest";
import { add, along, angleBetween, cross, distance, dot, length, scale, subtract } from "../../src/geometry/vector.ts";

// Source for all: plane vector algebra, with the Pythagorean triples 3-4-5 and 5-12-13.
const a = { x: 3, y: 4 };
const b = { x: -4, y: 3 };

describe("add, subtract and scale", () => {
  it("(3, 4) and (-4, 3) add to (-1, 7), differ by (7, 1), and doubled (3, 4) is (6, 8)", () => {
    expect(add(a, b)).toEqual({ x: -1, y: 7 });
    expect(subtract(a, b)).toEqual({ x: 7, y: 1 });
    expect(scale(a, 2)).toEqual({ x: 6, y: 8 });
  });
});

describe("dot and cross", () => {
  it("(3, 4) and (-4, 3) are square to each other: dot 0 mm2; cross 25 mm2, as the second lies to the left", () => {
    expect(dot(a, b)).toBe(0);
    expect(cross(a, b)).toBe(25);
    expect(cross(b, a)).toBe(-25);
  });
});

describe("length and distance", () => {
  it("(3, 4) is 5 mm long and (8, 16) is 13 mm from it", () => {
    expect(length(a)).toBe(5);
    expect(distance(a, { x: 8, y: 16 })).toBe(13);
  });
});

describe("along", () => {
  it("10 mm at 30 degrees from (1, 1) end at (1 + 5 sqrt 3, 6)", () => {
    const end = along({ x: 1, y: 1 }, Math.PI / 6, 10);
    expect(end.x).toBeCloseTo(1 + 5 * Math.sqrt(3), 12);
    expect(end.y).toBeCloseTo(6, 12);
  });
});

describe("angleBetween", () => {
  it("is a right angle from (3, 4) to (-4, 3) whichever comes first, pi to its opposite, and 0 to itself or to no step", () => {
    expect(angleBetween(a, b)).toBeCloseTo(Math.PI / 2, 15);
    expect(angleBetween(b, a)).toBeCloseTo(Math.PI / 2, 15);
    expect(angleBetween(a, scale(a, -1))).toBeCloseTo(Math.PI, 15);
    expect(angleBetween(a, scale(a, 7))).toBe(0);
    expect(angleBetween(a, { x: 0, y: 0 })).toBe(0);
  });

  it("keeps its digits for 1e-9 rad, where the arc cosine would give 0", () => {
    expect(angleBetween({ x: 1, y: 0 }, { x: 1, y: 1e-9 })).toBeCloseTo(1e-9, 20);
  });
});
