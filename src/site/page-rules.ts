// What stands in the margins of each printed page? The title block, as page rules of the job.
import { contentBox, margins_mm } from "../drawing/paper.ts";
import type { Packet, Sheet, TitleBlock } from "../packet/packet.ts";
import { cssString } from "./escape.ts";

const paperNames = { letter: "letter", a4: "A4" } as const;

/** Page rules of a packet: a page name for each sheet, so that each carries its own id and name. */
export const pageRules = ({ titleBlock, sheets, paper }: Packet): string =>
  [
    `@page{size:${paperNames[paper]} portrait;margin:${margins};${commonBoxes(titleBlock)}}`,
    ...orientations.map((orientation) => `.${orientation}{width:${contentBox({ paper, orientation }).width}mm}`),
    ...sheets.map((sheet) => sheetRule(sheet, paperNames[paper])),
  ].join("\n");

const orientations = ["portrait", "landscape"] as const;
const margins = [margins_mm.top, margins_mm.right, margins_mm.bottom, margins_mm.left].map((side) => `${side}mm`).join(" ");

/** The class and page name of a sheet; its slug alone would not do where two elevations share one. */
export const pageName = (sheet: Sheet): string =>
  `p-${sheet.id.toLowerCase().replace(/[^a-z0-9]+/g, "-")}-${sheet.slug.replace(/[^a-z0-9]+/g, "-")}`;

const sheetRule = (sheet: Sheet, paper: string): string => {
  const name = pageName(sheet);
  return (
    `@page ${name}{size:${paper} ${sheet.orientation};` +
    `@top-right{content:${cssString(`${sheet.id} ${plainWords(sheet.name, 34)}`)} "\\a page " counter(page) " of " counter(pages)}` +
    `@bottom-right{content:${cssString(sheet.id.toUpperCase())}}}.${name}{page:${name}}`
  );
};

const commonBoxes = (block: TitleBlock): string => {
  const left = [
    `Job ${plainWords(block.jobNumber, 34)}`,
    `Revision ${plainWords(block.revision, 4)}, ${block.date}, ${block.status}`,
    plainWords(`Prepared ${block.preparedBy}${block.checkedBy === "" ? "" : `, checked ${block.checkedBy}`}`, 38),
    `Program ${block.programVersion}, job ${block.jobHash}`,
  ];
  const middle = [
    plainWords(block.title, 50),
    plainWords(block.place, 50),
    `Lengths: ${plainWords(block.units, 42)}`,
    `Datum: ${plainWords(block.datum, 44)}`,
  ];
  const marks = [block.example, block.stamp].filter((mark) => mark !== "").map((mark) => plainWords(mark, 60));
  return (
    `@top-left{content:${cssString(plainWords(block.firm, 36))}}` +
    `@top-center{content:${lines(marks)}}` +
    `@bottom-left{content:${lines(left)}}` +
    `@bottom-center{content:${lines(middle)}}`
  );
};

const lines = (texts: readonly string[]): string => (texts.length === 0 ? '""' : texts.map(cssString).join(' "\\a " '));

/** Without markup, and short enough for its box. */
const plainWords = (text: string, most: number): string => {
  const words = text.replaceAll("**", "");
  return words.length <= most ? words : `${words.slice(0, most - 3).trimEnd()}...`;
};
