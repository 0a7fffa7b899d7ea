// How does a table of the packet become HTML? One row one fact, its head repeated on each page.
import type { Cell, Column, Table } from "../packet/packet.ts";
import { escapeText, richText } from "./escape.ts";

/** From this many columns on, the mark of a row is repeated at its right-hand end. */
const WIDE = 9;

export const tableHtml = (table: Table): string => {
  const repeat = table.rowHeads === true && table.columns.length >= WIDE;
  const columns = repeat && table.columns[0] !== undefined ? [...table.columns, table.columns[0]] : table.columns;
  const id = escapeText(table.id);
  const rows = table.rows.map((row) => rowHtml(table, row, repeat)).join("");
  const kinds = ["table", ...(table.writeIn === true ? ["write-in"] : []), ...(isShort(table) ? ["short"] : [])];
  return (
    `<div class="scroll" role="group" tabindex="0" aria-labelledby="${id}-caption">` +
    `<table id="${id}" class="${kinds.join(" ")}"${shared(columns)}>${widths(columns)}` +
    `<thead><tr><td class="caption" id="${id}-caption" colspan="${columns.length}">${richText(table.caption)}</td></tr>` +
    `<tr>${columns.map(headHtml).join("")}</tr></thead><tbody>${rows}</tbody></table></div>${notesHtml(table.notes)}`
  );
};

/** Tables of so many rows stay on one page. */
const SHORT = 12;
const isShort = (table: Table): boolean => table.rows.length <= SHORT;

/** With no width stated the content sets them; with some stated the rest is divided evenly. */
const shared = (columns: readonly Column[]): string =>
  columns.some((column) => column.width !== undefined) ? ' style="table-layout:fixed"' : "";

const widths = (columns: readonly Column[]): string => {
  const stated = columns.filter((column) => column.width !== undefined);
  if (stated.length === 0) return "";
  const taken = stated.reduce((sum, column) => sum + (column.width ?? 0), 0);
  const each = columns.length > stated.length ? Math.max(0, 1 - taken) / (columns.length - stated.length) : 0;
  const total = taken + each * (columns.length - stated.length);
  return `<colgroup>${columns.map((column) => `<col style="width:${(100 * (column.width ?? each)) / total}%">`).join("")}</colgroup>`;
};

const headHtml = (column: Column): string =>
  `<th scope="col"${alignOf(column)}>${richText(column.head)}${column.sub === undefined ? "" : `<span class="sub">${richText(column.sub)}</span>`}</th>`;

const alignOf = (column: Column | undefined): string =>
  column?.align === undefined || column.align === "left" ? "" : ` class="${column.align}"`;

const rowHtml = (table: Table, row: readonly Cell[], repeat: boolean): string => {
  const cells = row.map((cell, index) => cellHtml(cell, table.columns[index], table.rowHeads === true && index === 0));
  if (repeat) cells.push(cellHtml(row[0] ?? "", table.columns[0], false));
  return `<tr>${cells.join("")}</tr>`;
};

/** One element for a cell wherever it can be: a browser's time for printing a table grows with its elements. */
const cellHtml = (cell: Cell, column: Column | undefined, heads: boolean): string => {
  if (typeof cell === "string")
    return heads ? `<th scope="row"${alignOf(column)}>${richText(cell)}</th>` : `<td${alignOf(column)}>${richText(cell)}</td>`;
  if ("blank" in cell) return `<td class="blank">${cell.blank === "" ? "" : `<span class="unit">${richText(cell.blank)}</span>`}</td>`;
  if ("tick" in cell) return '<td class="center"><span class="tick"></span></td>';
  const align = column?.align === undefined || column.align === "left" ? "" : ` ${column.align}`;
  const kinds = `${cell.strong === true ? " critical" : ""}${cell.minor === true ? " minor" : ""}${align}`;
  const attribute = kinds === "" ? "" : ` class="${kinds.slice(1)}"`;
  return heads ? `<th scope="row"${attribute}>${richText(cell.text)}</th>` : `<td${attribute}>${richText(cell.text)}</td>`;
};

const notesHtml = (notes: Table["notes"]): string =>
  notes === undefined || notes.length === 0 ? "" : `<ul class="notes">${notes.map((note) => `<li>${richText(note)}</li>`).join("")}</ul>`;
