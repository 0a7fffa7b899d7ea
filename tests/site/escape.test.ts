// Can text leave its place in a page?
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { asciiMarkup, cssString, escapeText, plainText, richText } from "../../src/site/escape.ts";

describe("escapeText", () => {
  // The five characters and their references: WHATWG HTML, 13.1.2.3 and 13.3, from memory.
  test("the five characters of markup become references", () => {
    expect(escapeText(`<b a="1" c='2'>&</b>`)).toBe("&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;&lt;/b&gt;");
  });

  test("a box, code point 2610 hex, becomes &#9744; and an o with dots stays", () => {
    expect(escapeText("\u2610 \u00f6 \u{1f600}")).toBe("&#9744; \u00f6 &#128512;");
  });

  test("no text at all yields a bracket, a quote or a character above FF hex", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => !/[<>"'\u0100-\uffff]/.test(escapeText(text))),
      { numRuns: 300 },
    );
  });
});

const asOnePiece = (html: string): string | undefined => /<span class="n">(.*?)<\/span>/.exec(html)?.[1];

describe("richText", () => {
  test("two stars make bold, and what is inside is escaped first", () => {
    expect(richText("turn **<3>** times")).toBe("turn <strong>&lt;3&gt;</strong> times");
  });

  test.each(['5-7/8"', "22'-10 1/2\"", "(770 mm)", "(2.37 kN)", "Z-805", "R1-05", "T4-3", "1/4-28", "77 %"])(
    "%s stays in one piece on a page",
    (text) => expect(asOnePiece(richText(`at ${text}, and so on`))).toBe(text),
  );

  test.each(["half-way", "level-best", "at 5 posts"])("%s may be broken", (text) => expect(asOnePiece(richText(text))).toBeUndefined());
  // A browser breaks a line after any hyphen and at any space: "Z-" at the end of one and "803" on the next is no sheet.
  test.each(["Z-803", "T4-3", "R1-05", "PR1-10", '5-7/8"', "(756 N)", "(2.37 kN)", "(44 mm)"])("%s stays on one line", (whole) => {
    expect(richText(`to ${whole}.`)).toBe(`to <span class="n">${whole}</span>.`);
  });

  test.each(["IRC 2021, 2-4 of them", "wood-preservative-m4", "EN 1993-1-11", "a 6x6 in-line"])("%s may be broken", (text) => {
    expect(richText(text)).toBe(text);
  });

  test("the only element that any text can make is strong", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom("*", "<", ">", "&", "a", "script", '"') }), (text) =>
        (richText(text).match(/<[^>]*>/g) ?? []).every((tag) => tag === "<strong>" || tag === "</strong>"),
      ),
      { numRuns: 500 },
    );
  });
});

describe("plainText", () => {
  test("the stars of bold are taken away for a title", () => expect(plainText("**A** & b")).toBe("A &amp; b"));
});

describe("asciiMarkup", () => {
  test("markup stays markup, and a degree sign stays one byte", () => {
    expect(asciiMarkup('<text x="1">\u2264 45\u00b0</text>')).toBe('<text x="1">&#8804; 45\u00b0</text>');
  });
});

describe("cssString", () => {
  // A backslash, hex digits and one space stand for a character: CSS Syntax Module Level 3, 4.3.7, from memory.
  test("quotes, backslashes, new lines and brackets are written as numbers", () => {
    expect(cssString('a"\\\n</style>')).toBe('"a\\22 \\5c \\a \\3c \\2f style\\3e "');
  });
});
