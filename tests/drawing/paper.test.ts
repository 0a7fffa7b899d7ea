import { describe, expect, test } from "vitest";
import { chooseScale, contentBox, margins_mm, papers, viewOf } from "../../src/drawing/paper.ts";

describe("contentBox", () => {
  // Letter 8-1/2 x 11 in: ANSI/ASME Y14.1 size A; A4 210 x 297 mm: ISO 216. Both from memory.
  test("Letter is 8-1/2 by 11 in, A4 is 210 by 297 mm", () => {
    expect(papers.letter.width / 25.4).toBeCloseTo(8.5, 12);
    expect(papers.letter.height / 25.4).toBeCloseTo(11, 12);
    expect(papers.a4).toEqual({ width: 210, height: 297 });
  });

  test("15 mm at the left for binding, 11 at the right, 16 above, 26 below leave 189.9 x 237.4 on Letter and 271 x 168 on A4 lying", () => {
    expect(margins_mm).toEqual({ left: 15, right: 11, top: 16, bottom: 26 });
    expect(contentBox({ paper: "letter", orientation: "portrait" })).toEqual({ width: 189.9, height: 237.4 });
    expect(contentBox({ paper: "letter", orientation: "landscape" })).toEqual({ width: 253.4, height: 173.9 });
    expect(contentBox({ paper: "a4", orientation: "portrait" })).toEqual({ width: 184, height: 255 });
    expect(contentBox({ paper: "a4", orientation: "landscape" })).toEqual({ width: 271, height: 168 });
  });
});

describe("chooseScale", () => {
  const fitting = (units: "inch" | "mm", model: number, room: number): string =>
    chooseScale(units, ({ ratio }) => model * ratio <= room).name;

  // An architect's scale of 1/4 in to the foot is 1 to 48: 12 in / (1/4 in). Common practice, no source.
  test("23 ft take 3/8 in to the foot in 220 mm, and 1/4 in to the foot in 219 mm", () => {
    expect(fitting("inch", 23 * 304.8, 220)).toBe(`3/8" = 1'-0"`);
    expect(fitting("inch", 23 * 304.8, 219)).toBe(`1/4" = 1'-0"`);
  });

  test("4720 mm in 240 mm take 1:20, in 235 mm 1:25", () => {
    expect(fitting("mm", 4720, 240)).toBe("1:20");
    expect(fitting("mm", 4720, 235)).toBe("1:25");
  });

  test("each inch scale is what it says: so many inches of paper to a foot", () => {
    for (const name of ["6", "3", "1-1/2", "1", "3/4", "1/2", "3/8", "1/4", "1/8", "1/16", "1/32"]) {
      const { ratio } = chooseScale("inch", (scale) => scale.name === `${name}" = 1'-0"`);
      const [whole = 0, over = 0, under = 1] = name.includes("-")
        ? name.split(/[-/]/).map(Number)
        : name.includes("/")
          ? [0, ...name.split("/").map(Number)]
          : [Number(name)];
      expect(ratio * 12).toBeCloseTo(whole + over / under, 12);
    }
  });

  test("what fits nowhere gets the smallest scale there is", () => {
    expect(chooseScale("mm", () => false).name).toBe("1:500");
  });
});

describe("viewOf", () => {
  const view = viewOf({ ratio: 1 / 10, model: { x: 100, y: 0 }, paper: { x: 20, y: 50 } });

  test("a point 300 mm up in the model at 1:10 lies 30 mm higher on paper, where y runs downwards", () => {
    expect(view.point({ x: 100, y: 300 })).toEqual({ x: 20, y: 20 });
    expect(view.point({ x: 200, y: 0 })).toEqual({ x: 30, y: 50 });
  });

  test("a direction of 90 deg in the model points upwards on paper", () => {
    const up = view.step(Math.PI / 2);
    expect(up.x).toBeCloseTo(0, 12);
    expect(up.y).toBe(-1);
  });
});
