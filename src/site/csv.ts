// How does a schedule leave the packet as data? As comma-separated values with the same marks and the same text.
import { catalogue } from "../packet/issues.ts";
import type { Cell, Packet, Table } from "../packet/packet.ts";

export interface CsvFile {
  /** From the sheet: "bores". */
  readonly name: string;
  /** What it holds, for a link: "Z-603 Bores: bores by post, bushings". */
  readonly label: string;
  readonly text: string;
}

/** The schedules, sheets Z-601 and on, and what changed: one file for each, so that a thousand jobs do not become ten thousand files more. */
export const csvFiles = ({ sheets }: Packet): readonly CsvFile[] =>
  sheets
    .filter(({ id, slug }) => id.startsWith("Z-6") || slug === catalogue.changes.slug)
    .flatMap(({ id, name, slug, blocks }) => {
      const tables = blocks.filter((block) => block.kind === "table").filter((table) => table.rows.length > 0);
      return tables.length === 0 ? [] : [{ name: slug, label: `${id} ${name}`, text: csvText(tables) }];
    });

/** Every table of the sheet: its caption stands in the first column, and each head that any of them has is one column. */
const csvText = (tables: readonly Table[]): string => {
  const own = tables.map(headsOf);
  const heads = [...new Set(own.flat())];
  // Joined at the end: a text that is added piece by piece keeps all its pieces.
  const pieces = [line(["table", ...heads])];
  for (const [index, table] of tables.entries()) {
    const caption = quoted(table.caption);
    const places = heads.map((head) => own[index]?.indexOf(head) ?? -1);
    for (const row of table.rows) {
      const fields = [caption];
      for (let index = 0; index < places.length; index++) {
        const place = places[index] as number;
        fields.push(place < 0 ? "" : quoted(textOf(row[place] ?? "")));
      }
      pieces.push(fields.join(","), LINE_END);
    }
  }
  return pieces.join("");
};

/** Heads of a table; one that it has twice gets a number. */
const headsOf = ({ columns }: Table): readonly string[] => {
  const seen = new Map<string, number>();
  return columns.map(({ head, sub }) => {
    const name = sub === undefined ? head : `${head} (${sub})`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  });
};

/** As RFC 4180 wants it. */
const LINE_END = "\r\n";
const line = (fields: readonly string[]): string => `${fields.map(quoted).join(",")}${LINE_END}`;

const textOf = (cell: Cell): string => {
  if (typeof cell === "string") return cell;
  return "text" in cell ? cell.text : "";
};

const quoted = (text: string): string => {
  // A number or a word stands as it is: most fields do.
  if (!/[*",\r\n]/.test(text)) return text;
  const words = text.includes("**") ? text.replaceAll("**", "") : text;
  return /[",\r\n]/.test(words) ? `"${words.replaceAll('"', '""')}"` : words;
};
