// How does a table of the packet become HTML? One row one fact, its head repeated on each page.
import type { Cell, Column, Table } from "../packet/packet.ts";
import { escapeText, richLine, richText } from "./escape.ts";

/** From this many columns on, the mark of a row is repeated at its right-hand end. */
const WIDE = 9;

export const tableHtml = (table: Table): string => {
  const repeat = table.rowHeads === true && table.columns.length >= WIDE;
  const columns = repeat && table.columns[0] !== undefined ? [...table.columns, table.columns[0]] : table.columns;
  const id = escapeText(table.id);
  const kinds = `table${table.writeIn === true ? " write-in" : ""}${isShort(table) ? " short" : ""}${columns.length >= WIDE ? " wide" : ""}`;
  const isShared = columns.some((column) => column.width !== undefined);
  let html =
    `<div class="scroll" role="group" tabindex="0" aria-labelledby="${id}-caption">` +
    // With no width stated the content sets them; with some stated the rest is divided evenly.
    `<table id="${id}" class="${kinds}"${isShared ? `${FIXED}>${widths(columns)}` : ">"}` +
    `<thead><tr><td class="caption" id="${id}-caption" colspan="${columns.length}"><span>${richText(table.caption)}</span></td></tr><tr>`;
  for (const column of columns) html += headHtml(column);
  html += "</tr></thead><tbody>";
  const aligns = table.columns.map(alignOf);
  for (const row of table.rows) html += rowHtml(row, aligns, { heads: table.rowHeads === true, repeat });
  return `${html}</tbody></table></div>${notesHtml(table.notes)}`;
};

const FIXED = ' style="table-layout:fixed"';

/** Tables of so many rows stay on one page. */
const SHORT = 12;
const isShort = (table: Table): boolean => table.rows.length <= SHORT;

const widths = (columns: readonly Column[]): string => {
  let taken = 0;
  let open = 0;
  for (const { width } of columns) {
    if (width === undefined) open += 1;
    else taken += width;
  }
  const each = open > 0 ? Math.max(0, 1 - taken) / open : 0;
  const total = taken + each * open;
  let html = "<colgroup>";
  for (const { width = each } of columns) html += `<col style="width:${(100 * width) / total}%">`;
  return `${html}</colgroup>`;
};

const headHtml = (column: Column): string => {
  const sub = column.sub === undefined ? "" : `<span class="sub">${richText(column.sub)}</span>`;
  return `<th scope="col"${classHtml(alignOf(column))}>${richText(column.head)}${sub}</th>`;
};

/** The class that aligns a column's cells; left needs none. */
const alignOf = ({ align }: Column): string => (align === undefined || align === "left" ? "" : align);

const classHtml = (names: string): string => (names === "" ? "" : ` class="${names}"`);

const rowHtml = (
  row: readonly Cell[],
  aligns: readonly string[],
  { heads, repeat }: { readonly heads: boolean; readonly repeat: boolean },
): string => {
  let html = "<tr>";
  for (let index = 0; index < row.length; index++) html += cellHtml(row[index] ?? "", aligns[index] ?? "", heads && index === 0);
  if (repeat) html += cellHtml(row[0] ?? "", aligns[0] ?? "", false);
  return `${html}</tr>`;
};

/** One element for a cell wherever it can be: a browser's time for printing a table grows with its elements. */
const cellHtml = (cell: Cell, align: string, isHead: boolean): string => {
  if (typeof cell === "string") return textCell(cell, { names: align, isHead });
  if ("blank" in cell)
    return cell.blank === "" ? '<td class="blank"></td>' : `<td class="blank"><span class="unit">${richText(cell.blank)}</span></td>`;
  if ("tick" in cell) return '<td class="center"><span class="tick"></span></td>';
  const kinds = `${cell.strong === true ? "critical " : ""}${cell.minor === true ? "minor " : ""}${align}`;
  return textCell(cell.text, { names: kinds.trimEnd(), isHead, delta: cell.delta });
};

/** A short cell stays on its line as a whole: one class on the cell costs less than an element for each of its lengths. */
const LINE_letters = 12;

interface CellKind {
  readonly names: string;
  readonly isHead: boolean;
  readonly delta?: string | undefined;
}

const textCell = (text: string, { names, isHead, delta }: CellKind): string => {
  const isLine = text.length <= LINE_letters && text.includes("/") && /\d/.test(text);
  const kinds = isLine ? `${names} n`.trimStart() : names;
  const html = `${isLine ? richLine(text) : richText(text)}${delta === undefined ? "" : ` <span class="delta">${escapeText(delta)}</span>`}`;
  return isHead ? `<th scope="row"${classHtml(kinds)}>${html}</th>` : `<td${classHtml(kinds)}>${html}</td>`;
};

const notesHtml = (notes: Table["notes"]): string =>
  notes === undefined || notes.length === 0 ? "" : `<ul class="notes">${notes.map((note) => `<li>${richText(note)}</li>`).join("")}</ul>`;
