import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { calloutColumn, calloutLines, spread } from "../../src/drawing/leader.ts";

describe("spread", () => {
  test("labels that have room stay where they want to be", () => {
    expect(
      spread([
        { at: 0, size: 4 },
        { at: 10, size: 4 },
      ]),
    ).toEqual([0, 10]);
  });

  test("two labels of 4 mm at 10 and 11 mm go to 8.5 and 12.5: both give way by the same 1.5 mm", () => {
    expect(
      spread([
        { at: 10, size: 4 },
        { at: 11, size: 4 },
      ]),
    ).toEqual([8.5, 12.5]);
  });

  test("the order of the wishes is kept, not that of the list", () => {
    expect(
      spread([
        { at: 11, size: 4 },
        { at: 10, size: 4 },
      ]),
    ).toEqual([12.5, 8.5]);
  });

  test("labels never leave the limits when there is room, never overlap, and keep their order", () => {
    const wish = fc.record({ at: fc.double({ min: -20, max: 120, noNaN: true }), size: fc.double({ min: 0.5, max: 6, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 16 }), (wishes) => {
        const places = spread(wishes, { from: 0, to: 100 });
        const order = wishes.map((_, index) => index).sort((a, b) => (wishes[a]?.at ?? 0) - (wishes[b]?.at ?? 0) || a - b);
        let end = 0;
        for (const index of order) {
          const size = wishes[index]?.size ?? 0;
          const start = (places[index] ?? Number.NaN) - size / 2;
          expect(start).toBeGreaterThanOrEqual(end - 1e-6);
          end = start + size;
        }
        expect(end).toBeLessThanOrEqual(100 + 1e-6);
      }),
      { numRuns: 500 },
    );
  });
});

describe("calloutColumn", () => {
  test("five labels for one point stand below each other without overlap", () => {
    const part = calloutColumn(
      Array.from({ length: 5 }, (_, index) => ({ target: { x: 0, y: 0 }, lines: [`label ${index}`, "second line"] })),
      { x: 20, side: "right" },
    );
    const boxes = part.texts.map(([a, , c]) => ({ top: a.y, bottom: c.y })).sort((a, b) => a.top - b.top);
    expect(boxes).toHaveLength(10);
    boxes.slice(1).forEach((box, index) => {
      expect(box.top).toBeGreaterThanOrEqual(boxes[index]?.bottom ?? 0);
    });
  });
});

describe("calloutLines", () => {
  test("each line begins at its target and ends beside the column, at the height of its label; two labels do not end at one height", () => {
    const targets = [
      { x: 0, y: 10 },
      { x: 5, y: 11 },
    ];
    for (const side of ["left", "right"] as const) {
      const lines = calloutLines(
        targets.map((target) => ({ target, lines: ["a"] })),
        { x: side === "left" ? -40 : 40, side },
      );
      expect(lines.map(([first]) => first)).toEqual(targets);
      const ends = lines.map((line) => line.at(-1));
      expect(ends.map((end) => Math.abs(end?.x ?? 0))).toEqual([39.2, 39.2]);
      expect(ends[1]?.y ?? 0).toBeGreaterThan(ends[0]?.y ?? 0);
    }
  });
});
