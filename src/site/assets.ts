// Which style sheets, fonts and scripts do pages carry? Read once; fonts travel inside, so layout depends on no machine.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

export interface Assets {
  readonly fonts: string;
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
    fonts: fontRules(),
    sheetCss: css("sheet.css"),
    pageCss: css("page.css"),
    screenCss: css("screen.css"),
    searchScript: existsSync(script) ? readFileSync(script, "utf8") : "",
  };
};

/** The style sheet that all web pages share. */
export const webCss = (assets: Assets): string =>
  `${assets.fonts}\n${assets.sheetCss}\n@media screen{.paper{display:none}${assets.screenCss}}\n@media print{${assets.pageCss}}\n`;

const squeeze = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/ ?([{};,]) ?/g, "$1");

// Static weights only: a variable font is drawn glyph by glyph into a PDF and loses its name.
const fontRules = (): string =>
  [400, 700]
    .map((weight) => {
      const file = createRequire(import.meta.url).resolve(
        `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff2`,
      );
      const data = readFileSync(file).toString("base64");
      return `@font-face{font-family:"Hyper";font-weight:${weight};src:url(data:font/woff2;base64,${data}) format("woff2")}`;
    })
    .join("");
