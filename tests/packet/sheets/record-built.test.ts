import { describe, expect, test } from "vitest";
import { makePacket } from "../../../src/packet/make-packet.ts";
import type { Packet } from "../../../src/packet/packet.ts";
import { heightOn } from "../../../src/plan/bores.ts";
import { compareRecord } from "../../../src/record/compare.ts";
import { parseRecord } from "../../../src/record/parse.ts";
import { roundNearest } from "../../../src/units/round.ts";
import { changedText, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";
import { cellText, packetOf, sheetOf, tableOf, tablesOf, textsOf } from "../read-packet.ts";

const plan = examplePlan("0001-level-deck-straight");
const stamp = { jobHash: "0123456789ab", recordHash: "ba9876543210", programVersion: "0.0.0-test" };

function filled(change: (text: string) => string = (text) => text, own = plan): Packet {
  const { value: asBuilt } = parseRecord(change(exampleText("0001-level-deck-straight.record")));
  if (asBuilt === undefined) throw new Error("the record does not read");
  const { value: built } = compareRecord(asBuilt, own);
  return makePacket({ plan: own, built, issue: "record", stamp });
}

const wordsOn = (packet: Packet): string => sheetOf(packet, "Z-901").blocks.flatMap(textsOf).join("\n");
const rowOf = (packet: Packet, table: string, head: string): readonly string[] =>
  (tableOf(packet, table).rows.find(([first = ""]) => cellText(first) === head) ?? []).map(cellText);

describe("recordSheet with what was built", () => {
  const packet = filled();

  test("a bore that was written down stands in its cell with how far it is off; the others stay to be written", () => {
    const tables = tablesOf(sheetOf(packet, "Z-901").blocks).filter(({ id }) => id.startsWith("record-bores"));
    const [first] = tables;
    const column = first?.columns.findIndex(({ head }) => head === "P3") ?? -1;
    const cells = first?.rows.map((row) => cellText(row[column] ?? "")) ?? [];
    expect(cells).toEqual(["", "", "", "", '20-1/4" (+1/4")', '22-7/8"', "", "", "", '+1/4"', ""]);
    expect(first?.rows[0]?.[column]).toEqual({ blank: "in" });
  });

  test("a cable's row holds length, lot, stop and reading, last reading, turns, thread, proof, initials", () => {
    expect(rowOf(packet, "record-cables-R1", "R1-04")).toEqual([
      "R1-04",
      "25'-0\"",
      "S-17",
      "395",
      "395",
      "386",
      "9.5",
      '5/8"',
      "390",
      "RT",
    ]);
  });

  test("what differs is listed with the number of the deviation that accepts it, and nothing asks for more", () => {
    const rows = tableOf(packet, "record-differences").rows.map((row) => row.map(cellText));
    expect(rows.map(([mark, , , built, accepted]) => [mark, built, accepted])).toEqual([
      ["P3-05", '20-1/4" (+1/4")', "no. 1"],
      ["P3", '3"', "no. 1"],
    ]);
    expect(wordsOn(packet)).not.toMatch(/no deviation behind|sphere of the rules through/);
    expect(wordsOn(packet)).toContain("job file 0123456789ab, record file ba9876543210");
    expect(wordsOn(packet)).toContain("3 of 81 bores (the others are taken as planned); 9 of 9 last readings; 9 of 9 proof readings");
  });

  test("without its deviation the sheet says how many differences nobody accepted", () => {
    const open = filled((text) => text.replace("mark: P3-05, planned", "mark: P2-05, planned"));
    expect(wordsOn(open)).toContain("2 differences have no deviation behind them");
    expect(rowOf(open, "record-differences", "P3").at(-1)).toBe("nobody accepted it");
  });

  test("a gap that lets the sphere through is a danger, accepted or not", () => {
    const open = filled((text) => text.replace("height: 20-1/4 in", "height: 21-3/8 in"));
    expect(sheetOf(open, "Z-901").blocks).toContainEqual(expect.objectContaining({ kind: "caution", level: "danger" }));
    expect(rowOf(open, "record-differences", "P3")[3]).toBe('4-1/8": the sphere goes through');
  });

  test("a reading outside of its band stands beside the band, and a record as planned says that nothing differs", () => {
    const low = filled((text) => text.replace("last: 386 lbf", "last: 300 lbf").replace("proof: 386 lbf", "proof: 436 lbf"));
    expect(rowOf(low, "record-differences", "R1-04")).toEqual([
      "R1-04",
      "Last reading at P1",
      // At 64 deg F the day adds 4.6 lbf to the 350 and 429 lbf of 68 deg F (Z-803: 405 lbf at 55, 390 at 68).
      "at least 355 lbf, at most 433 lbf",
      "300 lbf",
      "nobody accepted it",
    ]);
    expect(rowOf(low, "record-differences", "R1-08")[1]).toBe("Proof reading in bay A1");
    const same = filled((text) => text.replace("height: 20-1/4 in", "height: 20 in"));
    expect(wordsOn(same)).toContain("Nothing that is written down differs from the plan");
  });

  test("posts, deviations, lots and the closing are printed; what is not known stays a place to write", () => {
    expect(rowOf(packet, "record-plumb", "P5")).toEqual(["P5", "the other posts", '1/16"', '1/8"', '1/16"', ""]);
    expect(rowOf(packet, "record-deviations", "1")).toEqual([
      "1",
      "P3-05",
      "20 in",
      "20-1/4 in",
      "a knot at 20 in",
      "H. Marram",
      "2026-05-12",
    ]);
    const lots = tableOf(packet, "record-lots").rows.map((row) => row.map(cellText));
    expect(lots.filter(([item = ""]) => item.startsWith("ready cable")).map(([, lot]) => lot)).toEqual(["S-17", "S-18"]);
    expect(wordsOn(packet)).toContain("2036-05-20");
    const kept = filled((text) => text.replace(/ {2}keep until: .*\n/, ""));
    expect(wordsOn(kept)).toContain("2038-05-20 (12 years, a default of this program");
    const open = filled((text) => text.replace(/ {2}open items: none\n/, ""));
    expect(sheetOf(open, "Z-901").blocks).toContainEqual(
      expect.objectContaining({
        kind: "blanks",
        id: "record-closing",
        rows: [expect.objectContaining({ label: "Open items and their dates" })],
      }),
    );
  });

  test("built from an earlier revision, the sheet says whose plan it compares with, and nothing is wrong", () => {
    const later = planOf(
      changedText("0001-level-deck-straight", {
        "change: first issue }": "change: first issue }\n    - { mark: A, date: 2026-05-21, by: RT, change: as built }",
      }),
    );
    expect(wordsOn(filled((text) => text, later))).toContain("0; what is called planned here is that of revision A");
    expect(wordsOn(packet)).not.toContain("is that of revision");
  });

  test("what was measured is not rounded to a mark of the tape, and a reading keeps its decimal", () => {
    const odd = filled((text) => text.replace("height: 20-1/4 in", "height: 20-3/32 in").replace("last: 386 lbf", "last: 349.6 lbf"));
    expect(rowOf(odd, "record-differences", "P3-05").slice(2, 4)).toEqual(['20" (508 mm)', '20-3/32" (+3/32")']);
    expect(rowOf(odd, "record-differences", "R1-04")[3]).toBe("349.6 lbf");
    const cells = tableOf(odd, "record-cables-R1").rows.map((row) => row[5]);
    expect(cells.slice(2, 5)).toEqual(["390", "**349.6**", "390"]);
  });

  test("on a slope a bore at the mark that the sheet prints is off by nothing, and what prints as nothing is not printed", () => {
    const stair = examplePlan("0012-stair-from-landing");
    const slope = new Set(stair.verticals.flatMap(({ id, slope }) => (slope === 0 ? [] : [id])));
    const [first, second] = stair.bores.filter(({ verticalId }) => slope.has(verticalId));
    if (first === undefined || second === undefined) expect.fail("no bores on the slope");
    const measured = (bore: typeof first, step: number) => {
      const at = (face: "left" | "right"): number => roundNearest(heightOn(bore, face), step);
      return { mark: bore.mark, height: null, left: at("left"), right: at("right") };
    };
    const { value: asBuilt } = parseRecord(`record: { job: ${stair.job.identity.number}, revision: "0", written by: R. Teasel }`);
    if (asBuilt === undefined) expect.fail("the record does not read");
    const { value: built } = compareRecord({ ...asBuilt, bores: [measured(first, 25.4 / 16), measured(second, 25.4 / 640)] }, stair);
    const sheet = sheetOf(makePacket({ plan: stair, built, issue: "record", stamp }), "Z-901");
    const sloped = tablesOf(sheet.blocks).filter(({ caption }) => caption.startsWith("Slope: heights of the bores"));
    const words = sloped
      .flatMap(({ rows }) => rows.flat())
      .map(cellText)
      .join("\n");
    expect(words).toContain("Greatest difference");
    expect(words).not.toMatch(/\(|[+-]0/);
  });

  test("a post that leant against its pull has moved by both amounts; one that the sheet does not ask for is printed too", () => {
    const posts = "{ post: P1, before: 1/16 in other way, after: 1/16 in }\n  - { post: P3, before: 1/8 in, after: 1/16 in }";
    const leant = filled((text) => text.replace("{ post: P1, before: 0 in, after: 1/16 in }", posts));
    expect(rowOf(leant, "record-plumb", "P1")).toEqual(["P1", "the other posts", '1/16" other way', '1/16"', '1/8"', ""]);
    expect(rowOf(leant, "record-plumb", "P3")).toEqual(["P3", "not asked for", '1/8"', '1/16"', '1/16" other way', ""]);
  });

  test("a lot of something that was not ordered has a row of its own, and one that may be of two items too", () => {
    const other = filled((text) => text.replace("item: ready cable, lot: S-17", "item: wax, lot: W-1"));
    expect(rowOf(other, "record-lots", "wax")[1]).toBe("W-1");
    const washer = filled((text) => text.replace("item: ready cable, lot: S-17", "item: washer, lot: W-1"));
    expect(rowOf(washer, "record-lots", "washer")[1]).toBe("W-1");
  });

  test("without a record the sheet is as it was: blanks, and no word of what was built", () => {
    expect(wordsOn(packetOf(plan, "record"))).not.toContain("What was built");
  });
});
