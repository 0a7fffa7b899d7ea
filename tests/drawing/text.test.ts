import { describe, expect, test } from "vitest";
import { FONT_FAMILY, firstClear, label, lineHeight, readable, SMALLEST_mm, textWidth, wrap } from "../../src/drawing/text.ts";
import { drawnCharacters, openFont } from "../support/font-table.ts";

describe("textWidth", () => {
  test("9 pt is 3.175 mm", () => expect(SMALLEST_mm).toBe((9 * 25.4) / 72));

  test("digits of the font: its 1 is 402 and its 8 is 615 thousandths of an em wide", () => {
    const font = openFont(400);
    expect(textWidth("18", { size: 10 })).toBeCloseTo(
      (font.glyphForCodePoint(0x31).advanceWidth + font.glyphForCodePoint(0x38).advanceWidth) / 100,
      9,
    );
  });

  test("a letter that the font lacks counts a full em", () => expect(textWidth("\u4e2d", { size: 4 })).toBe(4));

  test("a letter beyond 0xFFFF is one letter: it counts one em, and a lone half of a pair counts one too", () => {
    expect(textWidth("\u{1F6E0}", { size: 4 })).toBe(4);
    expect(textWidth("\ud83d", { size: 4 })).toBe(4);
    expect(textWidth("\u{1F6E0}\u{1F6E0}", { size: 4 })).toBe(8);
  });
});

describe("label", () => {
  test("every printable ASCII letter of both weights stays inside the box of its text", () => {
    for (const weight of [400, 700] as const) {
      const font = openFont(weight);
      for (const letter of drawnCharacters(font).filter((one) => one <= "~")) {
        const { box } = label(letter, { x: 0, y: 0 }, { size: 10, weight });
        const baseline = (0.668 / 2) * 10;
        const { minY, maxY } = font.glyphForCodePoint(letter.codePointAt(0) ?? 0).bbox;
        expect.soft(baseline - maxY / 100, letter).toBeGreaterThanOrEqual(box.top);
        expect.soft(baseline - minY / 100, letter).toBeLessThanOrEqual(box.bottom);
      }
    }
  });

  test("the capitals of a label are centred on its place: the font's capitals are 0.668 em high", () => {
    expect(openFont(400).glyphForCodePoint(0x48).bbox.maxY).toBe(668);
    const { box } = label("H", { x: 0, y: 0 }, { size: 10 });
    expect(box.top + 0.76 * 10).toBeCloseTo(3.34, 9);
  });

  test("turned by 90 deg, a text that starts at 0,0 runs upwards", () => {
    const { box } = label("1234567890", { x: 0, y: 0 }, { angle: Math.PI / 2 });
    expect(box.bottom).toBeCloseTo(0, 9);
    expect(box.top).toBeCloseTo(-textWidth("1234567890"), 9);
  });

  test("the page's own font comes first in the family", () => expect(FONT_FAMILY.startsWith("Hyper,")).toBe(true));
});

describe("wrap", () => {
  test("no line is wider than asked, no word is lost", () => {
    const text = "Heights are to the middle of the bore from the datum";
    const lines = wrap(text, 30);
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(30);
    expect(lines.join(" ")).toBe(text);
  });
});

describe("readable", () => {
  test.each([
    [{ x: 1, y: 0 }, 0, false],
    [{ x: -1, y: 0 }, 0, true],
    [{ x: 0, y: -1 }, 90, false],
    [{ x: 0, y: 1 }, 90, true],
    [{ x: Math.SQRT1_2, y: Math.SQRT1_2 }, -45, false],
  ])("a step of %o is read at %d deg", (step, degrees, against) => {
    const found = readable(step);
    expect((found.angle * 180) / Math.PI).toBeCloseTo(degrees, 9);
    expect(found.against).toBe(against);
  });
});

describe("firstClear", () => {
  test("takes the second place when a text is in the first, and the last when nothing is clear", () => {
    const taken = label("here", { x: 0, y: 0 });
    const [a, b] = [label("mark", { x: 1, y: 0 }), label("mark", { x: 1, y: lineHeight() })];
    expect(firstClear([a, b], taken.texts)).toBe(b);
    expect(firstClear([a], taken.texts)).toBe(a);
  });
});

describe("wrap in a column narrower than a letter", () => {
  test("each letter stands on a line of its own", () => {
    expect(wrap("W W", 0.1)).toEqual(["W", "W"]);
    expect(wrap("WW", 0.1)).toEqual(["W", "W"]);
  });

  test("a long word is broken where it is full, and what follows goes on behind it", () => {
    const lines = wrap(`to ${"m".repeat(40)} end`, 40);
    expect(lines.join("").replaceAll(" ", "")).toBe(`to${"m".repeat(40)}end`);
    expect(lines.every((line) => textWidth(line) <= 40)).toBe(true);
  });
});
