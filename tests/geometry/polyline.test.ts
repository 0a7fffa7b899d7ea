import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstSelfCrossing, pathLength, sidesToPoints, turnAngles } from "../../src/geometry/polyline.ts";
import type { Point } from "../../src/geometry/vector.ts";

const RIGHT = Math.PI / 2;
const points = (...pairs: readonly (readonly [number, number])[]): Point[] => pairs.map(([x, y]) => ({ x, y }));

const sideList = fc.array(
  fc.record({ length: fc.double({ min: 1, max: 10_000, noNaN: true }), turn: fc.double({ min: -2, max: 2, noNaN: true }) }),
  { minLength: 2, maxLength: 8 },
);

describe("sidesToPoints", () => {
  it("3000 mm, a right turn, 2000 mm: the second side runs towards -y, clockwise as seen from above", () => {
    const { points: corners, headings } = sidesToPoints([
      { length: 3000, turn: RIGHT },
      { length: 2000, turn: 99 },
    ]);
    expect(corners).toHaveLength(3);
    expect(corners[2]?.x).toBeCloseTo(3000, 9);
    expect(corners[2]?.y).toBeCloseTo(-2000, 9);
    expect(headings).toEqual([0, -RIGHT]);
  });

  it("starts where it is told: from (10, 20) heading 90 degrees, 5 mm end at (10, 25)", () => {
    const { points: corners } = sidesToPoints([{ length: 5, turn: 0 }], { x: 10, y: 20 }, RIGHT);
    expect(corners[1]?.x).toBeCloseTo(10, 12);
    expect(corners[1]?.y).toBeCloseTo(25, 12);
  });

  it("gives a single point for no sides", () => {
    expect(sidesToPoints([])).toEqual({ points: [{ x: 0, y: 0 }], headings: [] });
  });

  it("law: turns and lengths come back from the points, whatever the start and heading", () => {
    fc.assert(
      fc.property(sideList, fc.double({ min: -3, max: 3, noNaN: true }), (sides, heading) => {
        const { points: corners } = sidesToPoints(sides, { x: 500, y: -700 }, heading);
        const total = sides.reduce((sum, side) => sum + side.length, 0);
        expect(pathLength(corners)).toBeCloseTo(total, 6);
        for (const [index, turn] of turnAngles(corners).entries()) expect(turn).toBeCloseTo(sides[index]?.turn ?? Number.NaN, 6);
      }),
    );
  });
});

describe("pathLength", () => {
  it("three sides of 3, 4 and 12 mm make 19 mm; one point makes 0", () => {
    expect(pathLength(points([0, 0], [3, 0], [3, 4], [15, 4]))).toBe(19);
    expect(pathLength(points([7, 7]))).toBe(0);
    expect(pathLength([])).toBe(0);
  });
});

describe("turnAngles", () => {
  it("a right turn is +90 degrees, a left turn -90, straight on is 0 and never -0", () => {
    const turns = turnAngles(points([0, 0], [1, 0], [1, -1], [2, -1], [3, -1]));
    expect(turns[0]).toBeCloseTo(RIGHT, 15);
    expect(turns[1]).toBeCloseTo(-RIGHT, 15);
    expect(Object.is(turns[2], 0)).toBe(true);
    expect(turnAngles(points([0, 0], [1, 0]))).toEqual([]);
  });
});

describe("firstSelfCrossing", () => {
  it("a U of 3000, 2000 and 3000 mm is clear of itself", () => {
    const { points: corners } = sidesToPoints([
      { length: 3000, turn: RIGHT },
      { length: 2000, turn: RIGHT },
      { length: 3000, turn: 0 },
    ]);
    expect(firstSelfCrossing(corners)).toBeNull();
  });

  it("the fourth side of 3000, 2000, 1000 with right turns crosses the first", () => {
    expect(firstSelfCrossing(points([0, 0], [3000, 0], [3000, -2000], [1000, -2000], [1000, 500]))).toEqual({ first: 0, second: 3 });
  });

  it("names the earliest side that is hit, by the earliest side that hits", () => {
    const zigzag = points([0, 0], [10, 0], [10, 5], [5, 5], [5, -5], [2, -5], [2, 5]);
    expect(firstSelfCrossing(zigzag)).toEqual({ first: 0, second: 3 });
  });

  it("a side that ends on an earlier one touches it, and so does a closed ring at its start", () => {
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 5], [5, 5], [5, 0]))).toEqual({ first: 0, second: 3 });
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 10], [0, 0]))).toEqual({ first: 0, second: 2 });
  });

  it("a side that goes straight back over the one before it overlaps; a sharp corner of 1 degree does not", () => {
    expect(firstSelfCrossing(points([0, 0], [1000, 0], [400, 0]))).toEqual({ first: 0, second: 1 });
    const sharp = sidesToPoints([
      { length: 1000, turn: Math.PI - Math.PI / 180 },
      { length: 900, turn: 0 },
    ]);
    expect(firstSelfCrossing(sharp.points)).toBeNull();
  });

  it("a side of no length folds back onto nothing, and straight on is no crossing", () => {
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 0]))).toBeNull();
    expect(firstSelfCrossing(points([0, 0], [10, 0], [20, 0]))).toBeNull();
    expect(firstSelfCrossing(points([0, 0], [0, 0], [10, 0], [10, 10]))).toBeNull();
  });

  it("four sides in one line at 171.6 degrees are clear of each other, whatever the last bits of their corners", () => {
    const sides = [2081.5292833115495, 6.379819896138863, 4.019451894083963, 1].map((side) => ({ length: side, turn: 0 }));
    expect(firstSelfCrossing(sidesToPoints(sides, { x: 300, y: -40 }, -2.995114803314205).points)).toBeNull();
  });

  it("four long sides in one line stay clear too: the last bits of far corners are no crossing", () => {
    const sides = [6046, 8874, 2073, 3337].map((side) => ({ length: side, turn: 0 }));
    expect(firstSelfCrossing(sidesToPoints(sides, { x: 300, y: -40 }, -1.82).points)).toBeNull();
  });

  it("a later side that passes through a point given twice touches it", () => {
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 0], [10, 10], [5, 10]))).toEqual({ first: 0, second: 2 });
  });

  it("two points closer than 1e-6 mm are one: a last bit that goes back is no fold, at either end of a side", () => {
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10 - 1e-9, 0]))).toBeNull();
    expect(firstSelfCrossing(points([0, 0], [1e-9, 0], [-10, 0]))).toBeNull();
  });

  it("a side folds back when the end of the shorter of the two lies within 1e-6 mm of the longer: 900 mm at 1e-10 rad, 50 at 1e-8", () => {
    const back = (length: number, off: number) => firstSelfCrossing(points([0, 0], [1000, 0], [1000 - length, length * off]));
    expect(back(900, 1e-10)).toEqual({ first: 0, second: 1 });
    expect(back(50, 1e-8)).toEqual({ first: 0, second: 1 });
    expect(back(900, 1e-8)).toBeNull();
  });

  it("a side that crosses the line of an earlier one beyond its end does not cross it", () => {
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 5], [20, 5], [20, -5]))).toBeNull();
    expect(firstSelfCrossing(points([0, 0], [10, 0], [10, 5], [-20, 5], [-20, -5]))).toBeNull();
  });

  it("a later side through a first point given twice touches it there", () => {
    expect(firstSelfCrossing(points([0, 0], [0, 0], [10, 0], [10, 10], [-10, -10]))).toEqual({ first: 0, second: 3 });
  });

  it("law: sides in one line are clear of each other, whichever way it runs", () => {
    fc.assert(
      fc.property(sideList, fc.double({ min: -3, max: 3, noNaN: true }), (sides, heading) => {
        const straight = sides.map((side) => ({ ...side, turn: 0 }));
        expect(firstSelfCrossing(sidesToPoints(straight, { x: 300, y: -40 }, heading).points)).toBeNull();
      }),
    );
  });

  it("law: the answer does not change when the outline is moved, turned or mirrored", () => {
    fc.assert(
      fc.property(sideList, fc.double({ min: -3, max: 3, noNaN: true }), (sides, heading) => {
        const plain = firstSelfCrossing(sidesToPoints(sides).points);
        const moved = firstSelfCrossing(sidesToPoints(sides, { x: 300, y: -40 }, heading).points);
        const mirrored = firstSelfCrossing(sidesToPoints(sides.map((side) => ({ ...side, turn: -side.turn }))).points);
        expect(moved).toEqual(plain);
        expect(mirrored).toEqual(plain);
      }),
    );
  });
});
