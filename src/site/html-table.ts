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

const isShort = (table: Table): boolean => table.rows.length <= 8;

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

const cellHtml = (cell: Cell, column: Column | undefined, heads: boolean): string => {
  if (heads && typeof cell === "string") return `<th scope="row"${alignOf(column)}>${richText(cell)}</th>`;
  if (typeof cell === "string") return `<td${alignOf(column)}>${richText(cell)}</td>`;
  if ("blank" in cell) return `<td class="blank">${cell.blank === "" ? "" : `<span class="unit">${richText(cell.blank)}</span>`}</td>`;
  if ("tick" in cell) return '<td class="center"><span class="tick"></span></td>';
  const text = cell.minor === true ? `<span class="minor">${richText(cell.text)}</span>` : richText(cell.text);
  const strong = cell.strong === true ? `<strong class="critical">${text}</strong>` : text;
  return heads ? `<th scope="row"${alignOf(column)}>${strong}</th>` : `<td${alignOf(column)}>${strong}</td>`;
};

const notesHtml = (notes: Table["notes"]): string =>
  notes === undefined || notes.length === 0 ? "" : `<ul class="notes">${notes.map((note) => `<li>${richText(note)}</li>`).join("")}</ul>`;
