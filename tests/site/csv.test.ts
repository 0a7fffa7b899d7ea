// Do schedules leave the packet as data that other programs read?
import { describe, expect, test } from "vitest";
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

  test("tables of a sheet with the same columns share a file; only schedules are taken", () => {
    expect(csvFiles(packet).map(({ name }) => name)).toEqual(["bores", "order"]);
    expect(csvFiles(packet)[0]?.text.split("\r\n")).toHaveLength(1 + 90 + 10 + 1);
  });
});
