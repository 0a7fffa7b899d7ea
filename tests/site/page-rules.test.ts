// Do the margins of each page say what they must, and can no title break out of its rule?
import { describe, expect, test } from "vitest";
import { pageName, pageRules, wrapped } from "../../src/site/page-rules.ts";
import { samplePacket } from "../support/sample-packet.ts";

describe("pageRules", () => {
  test("each sheet has a page of its own with its size", () => {
    const packet = samplePacket();
    const rules = pageRules(packet);
    for (const sheet of packet.sheets) {
      expect.soft(rules).toContain(`@page ${pageName(sheet)}{size:letter ${sheet.orientation};`);
      expect.soft(rules).toContain(`.${pageName(sheet)}{page:${pageName(sheet)}}`);
    }
    expect(new Set(packet.sheets.map(pageName)).size).toBe(packet.sheets.length);
  });

  // A4 is 210 x 297 mm (ISO 216); the margins are 15, 11, 16 and 26 mm.
  test("a sheet of A4 is 184 mm wide upright and 271 mm lying", () => {
    const rules = pageRules({ ...samplePacket(), paper: "a4" });
    expect(rules).toContain(".portrait{width:184mm}");
    expect(rules).toContain(".landscape{width:271mm}");
    expect(rules).toContain("size:A4 portrait;margin:16mm 11mm 26mm 15mm");
  });

  test("a title with a quote, a brace and the end of a style element stays inside its string", () => {
    const rules = pageRules(samplePacket({ title: '"}</style><script>' }));
    expect(rules).not.toMatch(/<\/style|<script/);
    expect((rules.match(/"/g)?.length ?? 1) % 2).toBe(0);
  });

  test("a title of 300 letters is cut to two lines of its box", () => {
    expect(pageRules(samplePacket({ title: "m".repeat(300) }))).not.toContain("m".repeat(45));
  });

  test("a stamp is boxed in the middle with its reason on the left and the mark of an example on the right", () => {
    const packet = samplePacket();
    const rules = pageRules({ ...packet, titleBlock: { ...packet.titleBlock, stamp: "NOT FOR CONSTRUCTION - a check fails, see Z-001" } });
    expect(rules).toMatch(/@top-center\{content:"NOT FOR CONSTRUCTION";border:/);
    expect(rules).toMatch(/@top-left\{content:[^}]*"a check fails, see Z-001"\}/);
    expect(rules).toMatch(/@top-right\{content:"EXAMPLE - invented job"/);
    expect(pageRules(packet)).toContain('@top-center{content:"EXAMPLE - invented job"}');
  });

  test("who prepared and who checked stand in full, broken between words", () => {
    const packet = samplePacket();
    const checkedBy = "a neighbour who measured it again with another tape";
    const rules = pageRules({ ...packet, titleBlock: { ...packet.titleBlock, checkedBy } });
    expect(rules).toContain('"Checked by a neighbour who measured it again" "\\a " "with another tape"');
  });
});

describe("wrapped", () => {
  test("10 letters a line: breaks between words, keeps all, cuts only what two lines can't hold", () => {
    expect(wrapped("one two three", { room: 10, lines: 2 })).toEqual(["one two", "three"]);
    expect(wrapped("one", { room: 10, lines: 2 })).toEqual(["one"]);
    expect(wrapped("one two three four five", { room: 10, lines: 2 })).toEqual(["one two", "three f..."]);
    expect(wrapped("abcdefghijklmno", { room: 10, lines: 2 })).toEqual(["abcdefghij", "klmno"]);
  });
});
