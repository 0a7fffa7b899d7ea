import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  angleBetween3,
  circleInStep,
  direction3,
  dot3,
  length3,
  pathLength3,
  pressFromPlumb,
  subtract3,
} from "../../src/geometry/space.ts";

const angle = fc.double({ min: -1.5, max: 1.5, noNaN: true });
const coordinate = fc.integer({ min: -5000, max: 5000 });
const point = fc.record({ x: coordinate, y: coordinate, z: coordinate });

describe("direction3", () => {
  test("a climb of 3 in 4 due y is (0, 0.8, 0.6)", () => {
    const { x, y, z } = direction3(Math.PI / 2, Math.atan2(3, 4));
    expect([x, y, z]).toEqual([expect.closeTo(0, 12), expect.closeTo(0.8, 12), expect.closeTo(0.6, 12)]);
  });

  test("has length 1 in every direction", () => {
    fc.assert(
      fc.property(angle, angle, (heading, slope) => {
        expect(length3(direction3(heading, slope))).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe("angleBetween3", () => {
  // cos g = cos a cos b for a turn a in plan at the foot of a slope b: the right spherical triangle.
  test("a turn of 60 deg onto a slope of 30 deg bends by acos(cos 60 cos 30) = 64.34 deg", () => {
    const bend = angleBetween3(direction3(0, 0), direction3(-Math.PI / 3, Math.PI / 6));
    expect(bend).toBeCloseTo(Math.acos(Math.cos(Math.PI / 3) * Math.cos(Math.PI / 6)), 12);
    expect((bend * 180) / Math.PI).toBeCloseTo(64.34, 2);
  });

  test("two steps the same way make no angle, a step and its reverse make pi", () => {
    expect(angleBetween3({ x: 1, y: 2, z: 3 }, { x: 2, y: 4, z: 6 })).toBeCloseTo(0, 12);
    expect(angleBetween3({ x: 1, y: 2, z: 3 }, { x: -1, y: -2, z: -3 })).toBeCloseTo(Math.PI, 12);
  });

  test("has the cosine of the scalar product", () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        fc.pre(length3(a) > 1 && length3(b) > 1);
        expect(Math.cos(angleBetween3(a, b))).toBeCloseTo(dot3(a, b) / length3(a) / length3(b), 9);
      }),
    );
  });
});

describe("pathLength3", () => {
  test("3 along, 4 across and 12 up is 13 in one step and 19 in three", () => {
    expect(
      pathLength3([
        { x: 0, y: 0, z: 0 },
        { x: 3, y: 4, z: 12 },
      ]),
    ).toBe(13);
    const steps = [
      { x: 0, y: 0, z: 0 },
      { x: 3, y: 0, z: 0 },
      { x: 3, y: 4, z: 0 },
      { x: 3, y: 4, z: 12 },
    ];
    expect(pathLength3(steps)).toBe(19);
  });

  test("of one point is 0; moved as a whole a path keeps its length", () => {
    expect(pathLength3([{ x: 1, y: 1, z: 1 }])).toBe(0);
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 6 }), point, (path, by) => {
        expect(pathLength3(path.map((one) => subtract3(one, by)))).toBeCloseTo(pathLength3(path), 6);
      }),
    );
  });
});

describe("pressFromPlumb", () => {
  const level = (turn: number) => direction3(turn, 0);

  test("a level turn presses level, whichever way and however far", () => {
    for (const turn of [0.01, 1, -2]) expect(pressFromPlumb(level(0), level(turn))).toBe(Math.PI / 2);
  });

  test("straight on, from a slope of 20 deg to one of 40 deg, a line presses 30 deg from plumb; from level to a fall of 30 deg, 15", () => {
    const deg = Math.PI / 180;
    expect(pressFromPlumb(direction3(0, 20 * deg), direction3(0, 40 * deg))).toBeCloseTo(30 * deg, 12);
    expect(pressFromPlumb(level(0), direction3(0, -30 * deg))).toBeCloseTo(15 * deg, 12);
  });

  test("the lengths of the steps do not matter; a step of no length, and no turn, give 0", () => {
    const [a, b] = [
      { x: 3, y: 1, z: 0 },
      { x: 1, y: 2, z: 2 },
    ];
    expect(pressFromPlumb({ x: 30, y: 10, z: 0 }, b)).toBeCloseTo(pressFromPlumb(a, b), 12);
    expect(pressFromPlumb(a, { x: 7, y: 14, z: 14 })).toBeCloseTo(pressFromPlumb(a, b), 12);
    expect(pressFromPlumb({ x: 7, y: 14, z: 14 }, a)).toBeCloseTo(pressFromPlumb(a, b), 12);
    expect(pressFromPlumb({ x: 0, y: 0, z: 0 }, b)).toBe(0);
    expect(pressFromPlumb(b, { x: 0, y: 0, z: 0 })).toBe(0);
    expect(pressFromPlumb(a, a)).toBe(0);
  });
});

describe("circleInStep", () => {
  // The 3-4-5 triangle has an incircle of diameter 3 + 4 - 5 = 2.
  test("in a step of 3 by 4 under the line of its edges lies a circle of 2", () => expect(circleInStep({ rise: 3, going: 4 }, 0)).toBe(2));

  test("riser 7 in, tread 10-1/2 in, rail 1 in above the nosings: 8 + 12 - sqrt(64 + 144) = 5.578 in, under 6 in; at 2 in it is more", () => {
    expect(circleInStep({ rise: 7, going: 10.5 }, 1)).toBeCloseTo(20 - Math.sqrt(208), 12);
    expect(circleInStep({ rise: 7, going: 10.5 }, 2)).toBeGreaterThan(6);
  });

  test("touches riser, tread and line: a radius from both legs, and a radius from the line", () => {
    const [rise, going, gap] = [180, 260, 35];
    const radius = circleInStep({ rise, going }, gap) / 2;
    // Corner of riser and tread at 0,0; the line runs from (0, rise + gap) down to the tread's side.
    const reach = ((rise + gap) * going) / rise;
    const fromLine = Math.abs(radius / reach + radius / (rise + gap) - 1) / Math.hypot(1 / reach, 1 / (rise + gap));
    expect(fromLine).toBeCloseTo(radius, 9);
  });

  test("no step is refused", () => {
    expect(() => circleInStep({ rise: 0, going: 10 }, 0)).toThrow(RangeError);
    expect(() => circleInStep({ rise: 7, going: 0 }, 0)).toThrow(RangeError);
    expect(() => circleInStep({ rise: 7, going: 10 }, -1)).toThrow(RangeError);
  });
});
