// Is a printed PDF what it should be? Pages, letters and scale are read back from the file itself.
import { type PdfFile, type PdfPage, pagesOf, readPdf, referenceIn, streamOf } from "./read-pdf.ts";

export interface Inspection {
  readonly pages: number;
  /** Names of the embedded fonts, without the tag of the subset. */
  readonly fonts: readonly string[];
  /** Length of the calibration bar on paper; null where no bar was found. */
  readonly bar_mm: number | null;
}

const MM_PER_POINT = 25.4 / 72;
/** The stroke that only the calibration bar has: #010203, black to the eye. */
const barColour = [1 / 255, 2 / 255, 3 / 255] as const;
const isBarColour = (colour: readonly number[]): boolean => barColour.every((part, index) => Math.abs((colour[index] ?? 1) - part) < 1e-4);

export const inspectPdf = (bytes: Buffer): Inspection => inspectFile(readPdf(bytes));

export const inspectFile = (file: PdfFile): Inspection => {
  const pages = pagesOf(file);
  return {
    pages: pages.length,
    fonts: embeddedFonts(file),
    bar_mm: barIn(file, pages),
  };
};

/** The bar stands on the cover, which may be longer than one page. */
const barIn = (file: PdfFile, pages: readonly PdfPage[]): number | null => {
  for (const { dictionary } of pages) {
    const contents = referenceIn(dictionary, "Contents");
    const bar = contents === undefined ? null : barLength(streamOf(file, contents).toString("latin1"));
    if (bar !== null) return bar;
  }
  return null;
};

/** What is wrong with it, in words; nothing when all is well. */
export const faultsOf = ({ pages, fonts, bar_mm }: Inspection): readonly string[] => [
  ...(pages === 0 ? ["it has no page"] : []),
  ...(fonts.length === 0 ? ["it has no letters: no font is embedded, so its pages are blank"] : []),
  ...fonts
    .filter((font) => !font.startsWith("AtkinsonHyperlegible"))
    .map((font) => `it uses ${font}: a character on its sheets is missing from the font that ships with the program`),
  ...(bar_mm === null ? ["it has no calibration bar"] : []),
  ...(isScaled({ bar_mm }) ? [`its calibration bar of 100 mm prints ${bar_mm} mm long: the page was scaled`] : []),
];

/**
 * True when anything in the document was wider than its own page: a browser shrinks all pages then, so the bar tells of all.
 * 0.1 % is 0.2 mm of a page's width; the browser's own rounding stays far below.
 */
export const isScaled = ({ bar_mm }: Pick<Inspection, "bar_mm">): boolean => bar_mm !== null && Math.abs(bar_mm - 100) > 0.1;

const embeddedFonts = (file: PdfFile): readonly string[] => {
  const names = new Set<string>();
  for (const found of file.text.matchAll(/\/Type \/FontDescriptor[^>]*>>/g)) {
    const name = /\/FontName \/([^\s/]+)/.exec(found[0])?.[1];
    if (name !== undefined && /\/FontFile[23]? /.test(found[0])) names.add(name.replace(/^[A-Z]{6}\+/, ""));
  }
  for (const found of file.text.matchAll(/\/Subtype \/Type3/g)) names.add(`a font drawn stroke by stroke (offset ${found.index})`);
  return [...names].sort();
};

type Matrix = readonly [number, number, number, number, number, number];
const identity: Matrix = [1, 0, 0, 1, 0, 0];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

/** A stroke colour that may be the bar's: 1/255, 2/255 and 3/255, to as many decimals as are written. */
const maybeBar = /(?<![\d.])0?\.0039\d* 0?\.0078\d* 0?\.011[78]\d* RG/;

/**
 * Text objects hold no lines and no transformations that outlast them, and they are most of a page.
 * Where a stream has strings in parentheses, which might hold anything, nothing is left out.
 */
const withoutText = (content: string): string =>
  content.includes("(") ? content : content.replace(/(?<=\s|^)BT\s[\s\S]*?\sET(?=\s|$)/g, " ");

/** Follows the transformations of a content stream to the one line that has the bar's colour. */
export const barLength = (content: string): number | null => (maybeBar.test(content) ? followTo(withoutText(content)) : null);

const followTo = (content: string): number | null => {
  let matrix = identity;
  let colour: readonly number[] = [];
  const stack: { readonly matrix: Matrix; readonly colour: readonly number[] }[] = [];
  let operands: number[] = [];
  let points: (readonly [number, number])[] = [];
  // Strings and names can't hold what is looked for; skipping them keeps numbers in text from being taken as operands.
  for (const [token] of content.matchAll(/\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f\s]*>|\/[^\s/<>[\]()]+|[^\s/<>[\]()]+/g)) {
    const number = Number(token);
    if (!Number.isNaN(number)) {
      operands.push(number);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = operands;
    if (token === "q") stack.push({ matrix, colour });
    else if (token === "Q") ({ matrix, colour } = stack.pop() ?? { matrix: identity, colour: [] });
    else if (token === "cm") matrix = times([a, b, c, d, e, f], matrix);
    else if (token === "RG") colour = [a, b, c];
    else if (token === "m") points = [[a, b]];
    else if (token === "l") points.push([a, b]);
    else if (/^[SsfFBbn]\*?$/.test(token)) {
      const [from, to] = points;
      if (token === "S" && from !== undefined && to !== undefined && isBarColour(colour)) return distance(from, to, matrix) * MM_PER_POINT;
      points = [];
    }
    operands = [];
  }
  return null;
};

const distance = (from: readonly [number, number], to: readonly [number, number], [a, b, c, d]: Matrix): number => {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  return Math.hypot(x * a + y * c, x * b + y * d);
};
