import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { escapeText, escapeValue, writeNumber, writePath } from "../../src/drawing/markup.ts";

describe("writeNumber", () => {
  test.each([
    [1 / 3, "0.333"],
    [2 / 3, "0.667"],
    [-0, "0"],
    [-0.0004, "0"],
    [1e-9, "0"],
    [100, "100"],
    [12.5, "12.5"],
    [-7.1 * 3, "-21.3"],
  ])("%d is written %s", (value, text) => expect(writeNumber(value)).toBe(text));

  // A sheet is no larger than a metre. Rounding takes a billionth of its steps for dust: at 1000 mm, a millionth of a millimetre.
  test("any place on paper has at most three decimals, no exponent, no minus zero, and is right within half a unit of the third", () => {
    fc.assert(
      fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (value) => {
        const text = writeNumber(value);
        expect(text).toMatch(/^-?\d+(\.\d{1,3})?$/);
        expect(text).not.toBe("-0");
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.0005 + 2e-6);
      }),
      { numRuns: 500 },
    );
  });

  test("what is no place on paper is refused: NaN, infinity, 1e12", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e12]) expect(() => writeNumber(value)).toThrow(RangeError);
  });
});

describe("writePath", () => {
  const points = [
    { x: 1, y: 2 },
    { x: 4, y: 2 },
    { x: 4, y: 7.5 },
    { x: 0, y: 0 },
  ];

  // SVG 2, 9.3.4: H and V are horizontal and vertical lines to an absolute coordinate.
  test("a level step is written with its x alone, an upright one with its y alone", () => {
    expect(writePath(points)).toBe("M1 2H4V7.5L0 0");
  });

  test("two steps in one direction stay two", () => {
    expect(writePath([...points.slice(0, 2), { x: 9, y: 2 }])).toBe("M1 2H4H9");
  });
});

describe("escapeText", () => {
  test("markup is escaped, characters above 0xFF become entities, those up to it stay", () => {
    expect(escapeText('a<b & "c" \u00e9 \u2014 \u{1F6E0}')).toBe('a&lt;b &amp; "c" \u00e9 &#8212; &#128736;');
    expect(escapeText(`]]> 12'-6 1/2"`)).toBe(`]]&gt; 12'-6 1/2"`);
  });

  test("what XML does not allow becomes the replacement character: NUL, escape, half a surrogate pair", () => {
    expect(escapeText("a\u0000b\u001bc\ud800")).toBe("a&#65533;b&#65533;c&#65533;");
  });

  test("any text at all is written in characters up to 0xFF, without a bare < or &", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const inner = escapeText(text);
        expect([...inner].every((letter) => letter.charCodeAt(0) <= 0xff)).toBe(true);
        expect(inner.replace(/&(#\d+|amp|lt|gt);/g, "")).not.toMatch(/[<&]/);
      }),
    );
  });
});

describe("escapeValue", () => {
  test("a double quote cannot end the value", () => {
    expect(escapeValue(`3/8" <b> & 'c'`)).toBe("3/8&quot; &lt;b&gt; &amp; 'c'");
  });
});
