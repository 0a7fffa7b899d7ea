// What stands in the margins of each printed page? The title block, as page rules of the job.
import { contentBox, margins_mm } from "../drawing/paper.ts";
import { SMALLEST_mm, textWidth, wrap } from "../drawing/text.ts";
import type { Packet, Sheet, TitleBlock } from "../packet/packet.ts";
import { cssString } from "./escape.ts";

const paperNames = { letter: "letter", a4: "A4" } as const;

/** Page rules of a packet: a page name for each sheet, so that each carries its own id and name. */
export const pageRules = ({ titleBlock, sheets, paper }: Packet): string =>
  [
    `@page{size:${paperNames[paper]} portrait;margin:${margins(titleBlock)};${commonBoxes(titleBlock)}}`,
    ...orientations.map((orientation) => `.${orientation}{width:${contentBox({ paper, orientation }).width}mm}`),
    ...sheets.map((sheet) =>
      sheetRule(sheet, { paper: paperNames[paper], example: titleBlock.stamp === "" ? [] : exampleLines(titleBlock) }),
    ),
  ].join("\n");

const orientations = ["portrait", "landscape"] as const;

/** A stamp brings a third line above the sheet: the margin grows by what keeps that line off the edge that printers leave white. */
const STAMP_mm = 2;

/** What the title block takes above a sheet beyond the margin of every sheet. */
export const extraHead_mm = ({ stamp }: Pick<TitleBlock, "stamp">): number => (stamp === "" ? 0 : STAMP_mm);

const margins = (block: TitleBlock): string =>
  [margins_mm.top + extraHead_mm(block), margins_mm.right, margins_mm.bottom, margins_mm.left].map((side) => `${side}mm`).join(" ");

/** The class and page name of a sheet; its slug alone would not do where two elevations share one. */
export const pageName = (sheet: Sheet): string =>
  `p-${sheet.id.toLowerCase().replace(/[^a-z0-9]+/g, "-")}-${sheet.slug.replace(/[^a-z0-9]+/g, "-")}`;

/** The narrowest sheet, A4 upright, whose boxes have the shares of its width that page.css gives them; all letters in them are of 9 pt. */
const NARROWEST_mm = contentBox({ paper: "a4", orientation: "portrait" }).width;
/** Between a line and the box beside its own. */
const CLEAR_mm = 1;
const room_mm = {
  top: 0.335 * NARROWEST_mm - CLEAR_mm,
  bottomLeft: 0.3 * NARROWEST_mm - CLEAR_mm,
  bottomCenter: 0.4 * NARROWEST_mm - 2 - CLEAR_mm,
} as const;
/** Lines of 9 pt between a sheet and the strip along the edge that printers leave white. */
const MOST_LINES = 6;
/** The same above the sheet. */
const HEAD_LINES = 3;

interface SheetFrame {
  readonly paper: string;
  readonly example: readonly string[];
}

/** By all that a rule is made from: the sheets of one job have the names of the next one's. */
const known = new Map<string, string>();
const MOST_KNOWN = 1000;

const sheetRule = (sheet: Sheet, frame: SheetFrame): string => {
  const asked = JSON.stringify([sheet.id, sheet.name, sheet.slug, sheet.orientation, frame]);
  const before = known.get(asked);
  if (before !== undefined) return before;
  const rule = makeSheetRule(sheet, frame);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(asked, rule);
  return rule;
};

const makeSheetRule = (sheet: Sheet, { paper, example }: SheetFrame): string => {
  const name = pageName(sheet);
  const head = [...example, ...wrapped(`${sheet.id} ${sheet.name}`, { room_mm: room_mm.top, lines: HEAD_LINES - 1 - example.length })];
  return (
    `@page ${name}{size:${paper} ${sheet.orientation};` +
    `@top-right{content:${lines(head)} "\\a page " counter(page) " of " counter(pages)}` +
    `@bottom-right{content:${cssString(sheet.id.toUpperCase())}}}.${name}{page:${name}}`
  );
};

/** A stamp stands boxed in the middle, its reason on its left, the mark of an example on its right. */
const commonBoxes = (block: TitleBlock): string => {
  const [stamp = "", ...reasons] = block.stamp.split(" - ");
  const reason = reasons.length === 0 ? [] : wrapped(reasons.join(" - "), { room_mm: room_mm.top, lines: HEAD_LINES - 1 });
  const firm = wrapped(block.firm, { room_mm: room_mm.top, lines: HEAD_LINES - reason.length });
  const middle = stamp === "" ? `content:${lines(exampleLines(block))}` : `content:${lines([stamp])};${boxed}`;
  const left = [
    { text: `Job ${block.jobNumber}`, most: 2 },
    { text: `Revision ${block.revision}, ${block.date}, ${block.status}`, most: 2 },
    { text: `Prepared by ${block.preparedBy}`, most: 2 },
    { text: `Program ${block.programVersion}, job ${block.jobHash}`, most: 1 },
  ];
  const center = [
    { text: block.title, most: 2 },
    { text: block.place, most: 2 },
    { text: `Checked by ${block.checkedBy}`.replace("Checked by not checked", "Not checked"), most: 2 },
    { text: `Lengths: ${block.units}`, most: 1 },
    { text: `Datum: ${block.datum}`, most: 2 },
  ];
  return (
    `@top-left{content:${lines([...firm, ...reason])}}` +
    `@top-center{${middle}}` +
    `@bottom-left{content:${lines(column(left, room_mm.bottomLeft))}}` +
    `@bottom-center{content:${lines(column(center, room_mm.bottomCenter))}}`
  );
};

const boxed = "border:0.8mm solid #000;font-size:13pt;height:8.5mm;margin-top:auto;margin-bottom:2mm;padding:0;vertical-align:middle";

const exampleLines = ({ example }: TitleBlock): readonly string[] => (example === "" ? [] : [example]);

const lines = (texts: readonly string[]): string => (texts.length === 0 ? '""' : texts.map(cssString).join(' "\\a " '));

interface Entry {
  readonly text: string;
  /** Lines that it may take. */
  readonly most: number;
}

/** Each entry on lines of its own; when all together are too many, the last that took two must do with one. */
const column = (entries: readonly Entry[], width_mm: number): readonly string[] => {
  const made = entries.map(({ text, most }) => wrapped(text, { room_mm: width_mm, lines: most }));
  if (made.flat().length <= MOST_LINES) return made.flat();
  const longest = made.findLastIndex((text) => text.length > 1);
  return column(
    entries.map((entry, index) => (index === longest ? { ...entry, most: 1 } : entry)),
    width_mm,
  );
};

/** Without markup, in lines no wider than their room, broken between words; only what does not fit its last line is cut, and says so. */
export const wrapped = (
  text: string,
  { room_mm, lines: most }: { readonly room_mm: number; readonly lines: number },
): readonly string[] => {
  const made = wrap(text.replaceAll("**", "").replace(/\s+/g, " ").trim(), room_mm, { size: SMALLEST_mm });
  return made.length <= most ? made : [...made.slice(0, most - 1), cut(made[most - 1] ?? "", room_mm)];
};

const cut = (line: string, room_mm: number): string => {
  let kept = line;
  while (kept !== "" && textWidth(`${kept}...`, { size: SMALLEST_mm }) > room_mm) kept = kept.slice(0, -1).trimEnd();
  return `${kept}...`;
};
