// Is each word of a table's head as narrow as its column? A browser would break it in its middle: "Her" and "e".
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { contentBox } from "../../src/drawing/paper.ts";
import { textWidth } from "../../src/drawing/text.ts";
import type { Issue } from "../../src/job/job.ts";
import { examples, packetOf, tablesOf } from "./read-packet.ts";

/** Letters of 9 pt in the head of a table (layouts/css/sheet.css); what follows a hyphen or a slash may stand on the next line. */
const HEAD_mm = 3.175;
/** Left and right of a cell on a printed page, and one of the lines beside it. */
const padding = /th,\s*td \{\s*padding: [\d.]+mm ([\d.]+)mm/.exec(readFileSync("layouts/css/page.css", "utf8"))?.[1];
const PADDING_mm = 2 * Number(padding ?? Number.NaN) + 0.2;
const issues: readonly Issue[] = ["crew", "homeowner", "permit", "record"];

describe.each(examples)("%s", (_, plan) => {
  test("no word in the head of a table is wider than its column on the narrower paper", () => {
    expect(PADDING_mm).toBeGreaterThan(1);
    const broken = new Set<string>();
    for (const { sheets } of issues.map((issue) => packetOf(plan, issue))) {
      for (const { blocks, orientation, id } of sheets) {
        const { width } = contentBox({ paper: "a4", orientation });
        for (const { columns, id: table } of tablesOf(blocks)) {
          const given = columns.flatMap((column) => column.width ?? []);
          const rest = (1 - given.reduce((sum, share) => sum + share, 0)) / Math.max(1, columns.length - given.length);
          const shares = given.reduce((sum, share) => sum + share, 0) + rest * (columns.length - given.length);
          for (const { head, sub = "", width: share = rest } of columns) {
            const room = (width * share) / shares - PADDING_mm;
            const words = [
              ...head.split(/[\s/-]/).map((word) => [word, textWidth(word, { size: HEAD_mm, weight: 700 })] as const),
              ...sub.split(/[\s/-]/).map((word) => [word, textWidth(word, { size: HEAD_mm })] as const),
            ];
            for (const [word, needs] of words)
              if (needs > room) broken.add(`${id} ${table}: ${word} ${needs.toFixed(1)} > ${room.toFixed(1)}`);
          }
        }
      }
    }
    expect([...broken]).toEqual([]);
  });
});
