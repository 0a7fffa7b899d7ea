// Which style sheets, fonts and scripts do pages carry? Read once; fonts travel inside, so layout depends on no machine.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

export interface Assets {
  readonly fonts: string;
  /** The font's second file, which only names of Central Europe and the Baltic ask for. */
  readonly moreFonts: string;
  readonly sheetCss: string;
  readonly pageCss: string;
  readonly screenCss: string;
  readonly searchScript: string;
}

/** Everything that pages carry, from the package's own folder. */
export const loadAssets = (root: string): Assets => {
  const css = (name: string): string => squeeze(readFileSync(join(root, "layouts", "css", name), "utf8"));
  const script = join(root, ".build", "search.js");
  return {
    fonts: fontRules("latin"),
    moreFonts: fontRules("latin-ext"),
    sheetCss: css("sheet.css"),
    pageCss: css("page.css"),
    screenCss: css("screen.css"),
    searchScript: existsSync(script) ? readFileSync(script, "utf8") : "",
  };
};

/** The style sheet that all web pages share. */
export const webCss = (assets: Assets): string =>
  `${assets.fonts}${assets.moreFonts}\n${assets.sheetCss}\n@media screen{.paper{display:none}${assets.screenCss}}\n@media print{${assets.pageCss}}\n`;

const squeeze = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/ ?([{};,]) ?/g, "$1");

/** What the second file draws, as a style sheet names it. */
export const SECOND_FILE =
  "U+100-107,U+10A-113,U+116-11B,U+11E-123,U+126-127,U+12A-12B,U+12E-12F,U+136-137,U+13B-13E,U+141-148,U+150-151,U+154-155,U+158-15B,U+15E-165,U+16A-16B,U+16E-173,U+178-17E,U+192,U+218-21B,U+2C7,U+2DD,U+2020,U+2113";

/** Markup or a page rule with a letter of the second file; those of the first beyond U+FF are found too, which costs a page its size only. */
const needsSecondFile = /&#(?:[2-7]\d\d|8224|8467);|\\(?:[12][0-9a-f]{2}|2020|2113) /;

/** The fonts that a document needs beyond the usual ones. */
export const moreFontsFor = (html: string, { moreFonts }: Assets): string => (needsSecondFile.test(html) ? moreFonts : "");

// Static weights only: a variable font is drawn glyph by glyph into a PDF and loses its name.
const fontRules = (part: "latin" | "latin-ext"): string =>
  [400, 700]
    .map((weight) => {
      const file = createRequire(import.meta.url).resolve(
        `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-${part}-${weight}-normal.woff2`,
      );
      const data = readFileSync(file).toString("base64");
      const range = part === "latin" ? "" : `;unicode-range:${SECOND_FILE}`;
      return `@font-face{font-family:"Hyper";font-weight:${weight};src:url(data:font/woff2;base64,${data}) format("woff2")${range}}`;
    })
    .join("");
