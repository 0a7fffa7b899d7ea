import { describe, expect, test } from "vitest";
import type { Revised } from "../../../src/changes/changes.ts";
import type { Issue } from "../../../src/job/job.ts";
import { makePacket } from "../../../src/packet/make-packet.ts";
import type { Packet } from "../../../src/packet/packet.ts";
import { changedText, exampleNames, exampleText, planOf, revised, revisedExample } from "../../support/example-jobs.ts";
import { cellText, issues, sheetOf, stamp, tableOf, textsOf } from "../read-packet.ts";
import { longSentences } from "../reading.ts";

const issuedStamp = { ...stamp, issuedHash: "ba9876543210" };
const packetFrom = (text: string, since: Revised, issue: Issue = "crew"): Packet =>
  makePacket({ plan: planOf(text), revised: since, issue, stamp: issuedStamp });

/** Job 0001 with a second revision, and these lines as they were issued before. */
function since(lines: Readonly<Record<string, string>>): readonly [text: string, Revised] {
  const second = {
    "change: first issue }": 'change: first issue }\n    - { mark: A, date: 2026-05-02, by: RT, change: "measured again" }',
  };
  const text = changedText("0001-level-deck-straight", second);
  return [text, revised(changedText("0001-level-deck-straight", lines), text)];
}

const rowsOf = (packet: Packet): readonly (readonly string[])[] => tableOf(packet, "changes-list").rows.map((row) => row.map(cellText));
const wordsOf = (packet: Packet): string => sheetOf(packet, "Z-004").blocks.flatMap(textsOf).join("\n");

const example = exampleText("0002-deck-two-corners");
const own = revisedExample("0002-deck-two-corners");
if (own === undefined) throw new Error("no example has been issued before");

describe("Z-004", () => {
  test.each(issues)("the %s issue holds it where it is known what was issued, with a row for each change", (issue) => {
    const packet = packetFrom(example, own, issue);
    expect(rowsOf(packet).map(([number]) => Number(number))).toEqual(own.changes.changes.map(({ number }) => number));
    const without = makePacket({ plan: planOf(example), issue, stamp });
    expect(without.sheets.map(({ id }) => id)).not.toContain("Z-004");
  });

  test("it names both revisions with their dates and job files, and whom to take old sets from", () => {
    const words = wordsOf(packetFrom(example, own));
    expect(words).toContain("revision **0**, issued 2026-05-12, preliminary; job file ba9876543210");
    expect(words).toContain(`revision **A**, issued 2026-05-16, preliminary; job file ${stamp.jobHash}`);
    expect(words).toContain("**Destroy every sheet of revision 0 before you go on.**");
    expect(words).toContain("Collected and destroyed, how many");
  });

  test("the cover says how many changes to look for", () => {
    const cover = sheetOf(packetFrom(example, own), "Z-001").blocks.flatMap(textsOf).join("\n");
    expect(cover).toContain(`**${own.changes.changes.length} changes since revision 0: Z-004.**`);
  });

  test("the new number stands before the old one, and a hole that gets wider is said to be opened", () => {
    const rows = rowsOf(packetFrom(example, own)).map((row) => row.join(" | "));
    expect(rows).toContainEqual(
      expect.stringMatching(
        /bore \| P4, P5, P9, P10: courses 01 to 10 \| Bore changed: diameter 5\/8", was 1\/4" \| If it is bored: clamp/,
      ),
    );
    expect(rows).toContainEqual(expect.stringMatching(/cut, fit \| run R1 \| Cable changed: length to order 34'-3", was 34'-2"/));
  });

  test("sheets that say something else are named, and those alone", () => {
    const words = wordsOf(packetFrom(example, own));
    const named = [...(/(\*\*Z-001\*\*.*)\. Replace all others too/.exec(words)?.[1] ?? "").matchAll(/Z-\d+/g)].map(([id]) => id);
    // Side C alone was measured again: the elevations of A and B, and the story pole, show what they showed.
    expect(named).toEqual(expect.arrayContaining(["Z-001", "Z-101", "Z-203", "Z-601", "Z-602", "Z-603", "Z-701"]));
    for (const id of ["Z-004", "Z-201", "Z-202", "Z-702", "Z-902"]) expect.soft(named).not.toContain(id);
  });

  test("an old hole that is too near stops the work, with what is left and where the limit comes from", () => {
    const packet = packetFrom(...since({ "clear opening: 29 in": "clear opening: 30 in" }));
    const rows = rowsOf(packet);
    const [first] = rows;
    expect(first?.[1]).toBe("STOP, ask");
    expect(first?.[2]).toBe("P1 to P5, S1 to S4: course 01");
    expect(rows.some((row) => /stop, ask the office. Old and new hole cut each other/.test(row[4] ?? ""))).toBe(true);
    expect(
      rows.some((row) => row[1] === "bore" && /tell the office, then bore\. .* is left between old and new hole/.test(row[4] ?? "")),
    ).toBe(true);
    expect(tableOf(packet, "changes-list").notes?.join()).toMatch(/less than 1\/2" \[practice\] is left/);
    expect(sheetOf(packet, "Z-902").blocks.flatMap(textsOf).join()).toContain("[practice]");
  });

  test("a cable that is longer than it was is too short, one that is shorter is long enough", () => {
    const redo = (was: string): string =>
      rowsOf(packetFrom(...since({ "length: 23 ft ": `length: ${was} ` })))
        .filter(([, , what]) => what === "run R1")
        .map((row) => row[4] ?? "")
        .join();
    expect(redo("22 ft")).toContain("too short, take a new cable");
    expect(redo("24 ft")).toContain("long enough");
  });

  test("who does it once reads sentences of 20 words at most, and has no office to ask", () => {
    for (const lines of [
      { "clear opening: 29 in": "clear opening: 30 in" },
      { "largest spacing: 6 ft": "largest spacing: 8 ft" },
      { "hold end: grip": "hold end: stud" },
    ]) {
      const packet = packetFrom(...since(lines), "homeowner");
      const rows = rowsOf(packet).map((row) => row[4] ?? "");
      expect.soft(rows.flatMap(longSentences)).toEqual([]);
      expect.soft(wordsOf(packet)).not.toMatch(/\bthe office\b/);
    }
  });

  test("revisions between the two are named: their sheets are out of date as well", () => {
    const text = changedText("0001-level-deck-straight", {
      "change: first issue }":
        "change: first issue }\n    - { mark: A, date: 2026-05-02, by: RT, change: more }\n    - { mark: B, date: 2026-05-03, by: RT, change: more }",
    });
    const packet = packetFrom(text, revised(exampleText("0001-level-deck-straight"), text));
    expect(wordsOf(packet)).toContain("Destroy every sheet of revisions 0 and A before");
    expect(wordsOf(packet)).toContain("none but revision and dates");
    expect(sheetOf(packet, "Z-004").blocks.some((block) => block.kind === "table" && block.id === "changes-list")).toBe(false);
  });

  test("where a check fails now nothing is bored from it", () => {
    const fails = changedText("0007-too-much-for-the-frame", {
      "change: first issue }": "change: first issue }\n    - { mark: A, date: 2026-05-20, by: RT, change: more }",
    });
    const { blocks } = sheetOf(packetFrom(fails, revised(exampleText("0007-too-much-for-the-frame"), fails)), "Z-004");
    expect(blocks[0]).toMatchObject({ kind: "caution", level: "danger" });
    expect(sheetOf(packetFrom(example, own), "Z-004").blocks[0]).toMatchObject({ kind: "caution", level: "warning" });
  });

  test("a side that is gone, and its sheets, are named", () => {
    const without = example.replace(/ {6}turn: right 90 deg\n {4}- length: 9 ft 7-1\/2 in\n/, "");
    const packet = packetFrom(without, revised(example, without));
    expect(wordsOf(packet)).toMatch(/Sheets that are gone\n\*\*Z-203\*\*/);
    const back = packetFrom(example, revised(without, example));
    expect(wordsOf(back)).toMatch(/Sheets that are new\n\*\*Z-203\*\*/);
    for (const each of [packet, back])
      expect(rowsOf(each).every((row) => row.every((cell) => !/undefined|NaN|null/.test(cell)))).toBe(true);
  });
});

describe("the words of changes", () => {
  const pairs = exampleNames.map((name, index) => [exampleNames.at(index - 1) ?? name, name] as const);

  // Jobs that have nothing to do with each other differ in everything that can differ: slopes, piers, sleeves, units, corners of one post.
  test.each(pairs)("from %s to %s every change is told in words and numbers", (before, after) => {
    const far = revised(exampleText(before), exampleText(after));
    const packet = packetFrom(exampleText(after), far);
    const rows = rowsOf(packet);
    expect(rows.map(([number]) => Number(number))).toEqual(rows.map((_, index) => index + 1));
    for (const [, todo = "", what = "", words = "", redo = ""] of rows) {
      expect.soft(todo).not.toBe("");
      expect.soft(what, words).not.toBe("");
      expect.soft(redo, words).toMatch(/[.]$/);
      for (const text of [what, words, redo]) expect.soft(text).not.toMatch(/undefined|null|NaN|Infinity|\[object/);
    }
  });
});

describe("triangles beside changed values", () => {
  const deltasIn = (packet: Packet, id: string): readonly (readonly [string, string])[] =>
    tableOf(packet, id).rows.flatMap((row) =>
      row.flatMap((cell) =>
        typeof cell !== "string" && "delta" in cell && cell.delta !== undefined ? [[cellText(cell), cell.delta] as const] : [],
      ),
    );
  const numbersOf = ({ changes }: Revised, subject: string): string =>
    changes.changes
      .filter((change) => change.subject === subject)
      .map(({ number }) => number)
      .join(", ");

  test("posts whose bores are made otherwise, and runs that are longer, bear the number of their change", () => {
    const packet = packetFrom(example, own);
    const bore = numbersOf(own, "bore");
    expect(deltasIn(packet, "bores-grid")).toEqual(["P4", "P5", "P9", "P10"].map((id) => [id, bore]));
    expect(deltasIn(packet, "bores-heights")).toEqual([]);
    expect(deltasIn(packet, "cables-lengths")).toEqual([["R1", numbersOf(own, "cable")]]);
    for (const id of ["Z-601", "Z-603"]) {
      expect.soft(sheetOf(packet, id).blocks.flatMap(textsOf).join()).toContain("changed since revision 0; the number is that of Z-004.");
    }
  });

  test("courses whose height has changed bear each of its changes, and posts do not bear them again", () => {
    const [text, lower] = since({ "clear opening: 29 in": "clear opening: 30 in" });
    const packet = packetFrom(text, lower);
    const deltas = deltasIn(packet, "bores-heights");
    expect(deltas.map(([course]) => course)).toEqual(["01", "04", "07", "02", "05", "08", "03", "06", "09"]);
    expect(
      deltas
        .flatMap(([, numbers]) => numbers.split(", "))
        .toSorted((a, b) => Number(a) - Number(b))
        .join(", "),
    ).toBe(numbersOf(lower, "bore"));
    expect(deltasIn(packet, "bores-grid")).toEqual([]);
    expect(deltasIn(packet, "cables-friction")).toEqual([["R1", numbersOf(lower, "tension")]]);
  });

  test("nothing is marked where nothing changed, or where nothing is known of what was issued", () => {
    const second = changedText("0001-level-deck-straight", { "status: for construction": "status: as built" });
    for (const packet of [
      packetFrom(second, revised(exampleText("0001-level-deck-straight"), second)),
      makePacket({ plan: planOf(second), issue: "crew", stamp }),
    ]) {
      for (const id of ["bores-grid", "bores-heights", "cables-lengths", "cables-ends", "cables-friction"])
        expect.soft(deltasIn(packet, id)).toEqual([]);
      expect.soft(packet.sheets.flatMap(({ blocks }) => blocks.flatMap(textsOf)).join()).not.toContain("black triangle");
    }
  });

  test("a run with another end, and a post with bores of its own, bear theirs", () => {
    const [text, grip] = since({ "hold end: grip": "hold end: stud" });
    const packet = packetFrom(text, grip);
    expect(deltasIn(packet, "cables-ends")).toEqual([["R1", numbersOf(grip, "end")]]);
    expect(deltasIn(packet, "bores-grid")).toEqual([["P5", numbersOf(grip, "bore")]]);
  });
});
