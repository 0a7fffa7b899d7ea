// Which widths does the font of the sheets have? Read from its files; run as a script it writes src/drawing/font-metrics.ts.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type OpenFont, openSync } from "fontkit";

const root = join(import.meta.dirname, "../..");

export const weights = [400, 700] as const;

/** Most letters are in the first file of a weight, those of Central Europe and the Baltic in the second. */
export const openFont = (weight: 400 | 700, part: "latin" | "latin-ext" = "latin"): OpenFont =>
  openSync(join(root, `node_modules/@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${part}-${weight}-normal.woff2`));

/** Characters that stand on paper: no controls, no combining marks. */
export const drawnCharacters = (font: OpenFont): readonly string[] =>
  font.characterSet
    .filter((code) => code >= 0x20 && code < 0xffff && !(code >= 0x7f && code < 0xa0) && !(code >= 0x300 && code < 0x370))
    .map((code) => String.fromCodePoint(code));

export const advancesOf = (weight: 400 | 700): Readonly<Record<string, number>> => {
  const both = [openFont(weight, "latin-ext"), openFont(weight)].flatMap((font) =>
    drawnCharacters(font).map((letter) => [letter, font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth] as const),
  );
  return Object.fromEntries(both.sort(([one], [other]) => (one < other ? -1 : 1)));
};

const quoted = (letter: string): string => {
  const code = letter.codePointAt(0) ?? 0;
  if (/^[A-Za-z]$/.test(letter)) return letter;
  return code < 0x7f ? JSON.stringify(letter) : `"\\u${code.toString(16).padStart(4, "0")}"`;
};

function tableText(): string {
  const rows = (weight: 400 | 700): string =>
    Object.entries(advancesOf(weight))
      .map(([letter, advance]) => `    ${quoted(letter)}: ${advance},`)
      .join("\n");
  return [
    "// How wide is each letter of the sheets' font? Atkinson Hyperlegible, from its own files; written by tests/support/font-table.ts.",
    "",
    `export const UNITS_PER_EM = ${openFont(400).unitsPerEm};`,
    "",
    "/** Advance of each character, in units of the em, by weight. */",
    "export const advances: Readonly<Record<400 | 700, Readonly<Record<string, number>>>> = {",
    ...weights.map((weight) => `  ${weight}: {\n${rows(weight)}\n  },`),
    "};",
    "",
  ].join("\n");
}

if (process.argv[2] === "write") writeFileSync(join(root, "src/drawing/font-metrics.ts"), tableText());
