// How does a table leave the packet as data? As comma-separated values with the same marks and the same text.
import type { Cell, Packet, Table } from "../packet/packet.ts";

export interface CsvFile {
  /** From the sheet: "bores", and "bores-2" for a second kind of table on it. */
  readonly name: string;
  readonly text: string;
}

/** The schedules: sheets Z-601 and on. Tables of one sheet that have the same columns become one file. */
export const csvFiles = ({ sheets }: Packet): readonly CsvFile[] =>
  sheets
    .filter((sheet) => sheet.id.startsWith("Z-6"))
    .flatMap((sheet) => {
      const groups = new Map<string, Table[]>();
      for (const block of sheet.blocks) {
        if (block.kind !== "table" || block.rows.length === 0) continue;
        const head = headOf(block);
        groups.set(head, [...(groups.get(head) ?? []), block]);
      }
      return [...groups].map(([head, tables], index) => ({
        name: index === 0 ? sheet.slug : `${sheet.slug}-${index + 1}`,
        text: head + tables.map(rowsOf).join(""),
      }));
    });

const headOf = ({ columns }: Table): string =>
  line(["table", ...columns.map(({ head, sub }) => (sub === undefined ? head : `${head} (${sub})`))]);

const rowsOf = ({ caption, rows }: Table): string => rows.map((row) => line([caption, ...row.map(textOf)])).join("");

/** Lines end as RFC 4180 wants them. */
const line = (fields: readonly string[]): string => `${fields.map(quoted).join(",")}\r\n`;

const textOf = (cell: Cell): string => {
  if (typeof cell === "string") return cell;
  return "text" in cell ? cell.text : "";
};

const quoted = (text: string): string => {
  const words = text.replaceAll("**", "");
  return /[",\r\n]/.test(words) ? `"${words.replaceAll('"', '""')}"` : words;
};
