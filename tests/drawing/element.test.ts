import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { element, writeElement, writeNumber } from "../../src/drawing/element.ts";

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

describe("writeElement", () => {
  test("attributes come in one order, however they were given", () => {
    expect(writeElement(element("line", { "stroke-width": 0.7, x2: 2, y1: 0, x1: 1, y2: 0, id: "a" }))).toBe(
      '<line id="a" x1="1" y1="0" x2="2" y2="0" stroke-width="0.7"/>',
    );
  });

  test("markup in text and attributes is escaped, characters above 0xFF become entities, those up to it stay", () => {
    expect(writeElement(element("text", { id: "\"<'&" }, 'a<b & "c" \u00e9 \u2014 \u{1F6E0}'))).toBe(
      '<text id="&quot;&lt;&#39;&amp;">a&lt;b &amp; &quot;c&quot; \u00e9 &#8212; &#128736;</text>',
    );
  });

  test("what XML does not allow becomes the replacement character: NUL, escape, half a surrogate pair", () => {
    expect(writeElement(element("text", {}, "a\u0000b\u001bc\ud800"))).toBe("<text>a&#65533;b&#65533;c&#65533;</text>");
  });

  test("any text at all is written in characters up to 0xFF, without a bare < or &", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const inner = writeElement(element("t", {}, text)).slice(3, -4);
        expect([...inner].every((letter) => letter.charCodeAt(0) <= 0xff)).toBe(true);
        expect(inner.replace(/&(#\d+|amp|lt|gt|quot);/g, "")).not.toMatch(/[<&]/);
      }),
    );
  });
});
