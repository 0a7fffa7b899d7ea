import { describe, expect, test } from "vitest";
import { loadAssets, moreFontsFor, SECOND_FILE } from "../../src/site/assets.ts";
import { asciiMarkup, cssString } from "../../src/site/escape.ts";
import { packageRoot } from "../../src/site/root.ts";
import { drawnCharacters, openFont, weights } from "../support/font-table.ts";

// Source: the font files of Atkinson Hyperlegible as they ship in node_modules.
const second = drawnCharacters(openFont(400, "latin-ext")).filter((letter) => !drawnCharacters(openFont(400)).includes(letter));
const assets = loadAssets(packageRoot());

describe("SECOND_FILE", () => {
  test.each(weights)("names every letter that only the second file of weight %d draws, and no other", (weight) => {
    const named = SECOND_FILE.split(",").flatMap((range) => {
      const [from = 0, to = from] = range
        .slice(2)
        .split("-")
        .map((code) => Number.parseInt(code, 16));
      return Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index));
    });
    const first = drawnCharacters(openFont(weight));
    expect(named).toEqual(drawnCharacters(openFont(weight, "latin-ext")).filter((letter) => !first.includes(letter)));
  });
});

describe("moreFontsFor", () => {
  test.each(second)("%s in the text or in the title block brings the second file", (letter) => {
    expect(moreFontsFor(`<p>a ${asciiMarkup(letter)}</p>`, assets)).toBe(assets.moreFonts);
    expect(moreFontsFor(`content:${cssString(`a ${letter}`)}`, assets)).toBe(assets.moreFonts);
  });

  test("accents of Western Europe, signs and lengths do not", () => {
    const text = "Québec, Malmö, ½ × 3° – “so” … 22'-10 1/2\" − 1 € • ‹a›";
    expect(moreFontsFor(`<p>${asciiMarkup(text)}</p>content:${cssString(text)}`, assets)).toBe("");
  });
});
