// Do schedules leave the packet as data that other programs read?
import { describe, expect, test } from "vitest";
import type { Table } from "../../src/packet/packet.ts";
import { csvFiles } from "../../src/site/csv.ts";
import { samplePacket } from "../support/sample-packet.ts";

describe("csvFiles", () => {
  const packet = samplePacket();
  const withRows = (rows: readonly (readonly string[])[]) =>
    csvFiles({
      ...packet,
      sheets: [
        {
          id: "Z-601",
          name: "Cables",
          slug: "cables",
          orientation: "portrait",
          blocks: [{ kind: "table", id: "t", caption: "C", columns: [{ key: "a", head: "Mark" }], rows }],
        },
      ],
    });

  // Quotes double, fields with commas or quotes are quoted, lines end in CR LF: RFC 4180, section 2, from memory.
  test("a quote is doubled, a comma quoted, lines end in carriage return and line feed", () => {
    expect(withRows([['1/8" cable, 9 of'], ["**bold**"]])[0]?.text).toBe('table,Mark\r\nC,"1/8"" cable, 9 of"\r\nC,bold\r\n');
  });

  test("all tables of a sheet share a file, and only schedules are taken", () => {
    expect(csvFiles(packet).map(({ name }) => name)).toEqual(["bores", "order"]);
    expect(csvFiles(packet)[0]?.text.split("\r\n")).toHaveLength(1 + 90 + 10 + 1);
    expect(csvFiles(packet)[0]?.label).toBe("Z-603 bores");
  });

  test("tables with different columns keep theirs: what a table lacks is empty", () => {
    const table = (id: string, heads: readonly string[], row: readonly string[]): Table => ({
      kind: "table",
      id,
      caption: id,
      columns: heads.map((head) => ({ key: head, head })),
      rows: [row],
    });
    const sheet = packet.sheets[0];
    if (sheet === undefined) throw new Error("the sample has no sheet");
    const blocks = [table("T1", ["Mark", "Depth"], ["P1", "2"]), table("T2", ["Mark", "Side", "Side"], ["P2", "left", "right"])];
    const [file] = csvFiles({ ...packet, sheets: [{ ...sheet, id: "Z-601", blocks }] });
    expect(file?.text).toBe("table,Mark,Depth,Side,Side 2\r\nT1,P1,2,,\r\nT2,P2,,left,right\r\n");
  });
});
