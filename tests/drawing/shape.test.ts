import { describe, expect, test } from "vitest";
import { arrowhead, circle, group, strokes } from "../../src/drawing/shape.ts";

describe("strokes", () => {
  test("a line of the heavy pen, 0.7 mm thick, takes 0.35 mm more on each side", () => {
    expect(
      strokes("heavy", [
        [
          { x: 0, y: 0 },
          { x: 10, y: 0 },
        ],
      ]).box,
    ).toEqual({ left: -0.35, top: -0.35, right: 10.35, bottom: 0.35 });
  });
});

describe("arrowhead", () => {
  test("its tip is where it was asked for, its length lies behind it", () => {
    const { box } = arrowhead({ x: 10, y: 0 }, { x: 1, y: 0 }, 3);
    expect([box.left, box.right]).toEqual([7, 10]);
  });
});

describe("group", () => {
  test("takes the paper of all its parts", () => {
    const { box } = group([
      circle({ x: 0, y: 0 }, 1, { pen: "edge", fill: "white" }),
      circle({ x: 10, y: 5 }, 1, { pen: "edge", fill: "black" }),
    ]);
    expect(box).toEqual({ left: -1.15, top: -1.15, right: 11.15, bottom: 6.15 });
  });
});
