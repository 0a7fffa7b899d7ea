// How does a hole look that goes in at an angle? Drawn from numbers alone: it is round no longer, and shows where it comes out.
import { describe, expect, test } from "vitest";
import { viewOf } from "../../../src/drawing/paper.ts";
import type { Mark, Part } from "../../../src/drawing/shape.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import type { TemplateHole } from "../../../src/packet/templates/faces.ts";
import { holeParts } from "../../../src/packet/templates/hole-drawing.ts";

const view = viewOf({ ratio: 1, model: { x: 0, y: 0 }, paper: { x: 50, y: 200 } });
const level: TemplateHole = {
  mark: "P1-03",
  course: 3,
  here: { right: 0, height: 100 },
  there: { right: 0, height: 100 },
  angle: 0,
  skew: 0,
  isExit: false,
  diameter: 6.35,
  drilledLength: 88.9,
  through: true,
  oneWall: false,
  sleeveHole: null,
  counterbore: null,
};
const draw = (hole: TemplateHole): readonly Mark[] =>
  holeParts(hole, { view, show: showIn("mm"), half: 60, face: "left" }).map(({ mark }: Part) => mark);
const textsOf = (marks: readonly Mark[]): readonly string[] => marks.flatMap((mark) => (mark.kind === "words" ? [mark.words.text] : []));
const ellipses = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === "ellipse" ? [mark] : []));

describe("holeParts", () => {
  test("a level bore is a circle about its middle with its course, height and size", () => {
    const marks = draw(level);
    expect(ellipses(marks)).toMatchObject([{ centre: { x: 50, y: 100 }, across: 3.175, up: 3.175 }]);
    expect(textsOf(marks)).toEqual(["03", "100 mm", "bore 6.4 mm"]);
  });

  test("a bore at 30 degrees is an ellipse, higher by 1 / cos 30, and its words say where it comes out", () => {
    // 88.9 mm of post times tan 30 is 51.3 mm.
    const marks = draw({ ...level, angle: Math.PI / 6, there: { right: 0, height: 100 + 51.3 } });
    const [bore] = ellipses(marks);
    expect(bore?.up).toBeCloseTo(3.175 * 1.1547, 3);
    expect(bore?.across).toBe(3.175);
    expect(textsOf(marks)).toEqual(["03", "100 mm", "bore 6.4 mm, 30 deg up", "out 51 mm higher"]);
    expect(textsOf(draw({ ...level, angle: -Math.PI / 6, there: { right: 0, height: 100 - 51.3 } })).at(-1)).toBe("out 51 mm lower");
  });

  test("a counterbore has the bore that comes out in its middle, and its depth", () => {
    const marks = draw({ ...level, counterbore: { diameter: 9.5, depth: 32 } });
    expect(ellipses(marks).map(({ across }) => across)).toEqual([4.75, 3.175]);
    expect(textsOf(marks).join(" ")).toContain("counterbore 9.5 mm x 32 mm");
  });

  test("beside the middle all words stand on the outer side", () => {
    for (const right of [-20, 20]) {
      const words = draw({ ...level, here: { right, height: 100 } }).flatMap((mark) => (mark.kind === "words" ? [mark.words] : []));
      expect(words[0]?.text).toBe("03 100 mm");
      // Whoever looks at the left face of a post has the deck on the right hand.
      expect(words.map(({ text }) => text).join(" ")).toContain(right > 0 ? "20 mm to the deck's side" : "20 mm away from the deck");
      for (const { at, anchor } of words) {
        expect(Math.sign(at.x - 50 - right)).toBe(Math.sign(right));
        expect(anchor).toBe(right < 0 ? "end" : "start");
      }
    }
  });
});
