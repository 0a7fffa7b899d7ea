// Do the margins of each page say what they must, and can no title break out of its rule?
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { textWidth } from "../../src/drawing/text.ts";
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

  // The shares of the three boxes stand in layouts/css/page.css; A4 upright leaves the least room.
  test.each(["W", "m", "i", "W ", "long words "])("300 letters of %j stay in their boxes, whatever they name", (letters) => {
    const text = letters.repeat(300).slice(0, 300).trim();
    const css = readFileSync("layouts/css/page.css", "utf8");
    const packet = samplePacket({ title: text });
    const titleBlock = { ...packet.titleBlock, place: text, firm: text, preparedBy: text, checkedBy: text };
    const rules = pageRules({ ...packet, titleBlock });
    for (const box of ["top-left", "bottom-left", "bottom-center"]) {
      const [, share = ""] = new RegExp(`@${box} \\{[^}]*width: ([\\d.]+)%`).exec(css) ?? [];
      const content = new RegExp(`@${box}\\{content:([^}]*)\\}`).exec(rules)?.[1] ?? "";
      const lines = content.split(' "\\a " ').map((line) => line.slice(1, -1));
      expect(lines.length).toBeGreaterThan(1);
      expect(lines.length).toBeLessThanOrEqual(6);
      const widest = Math.max(...lines.map((line) => textWidth(line, { size: 3.175 })));
      const padding = box === "bottom-center" ? 2 : 0;
      expect(widest).toBeLessThan((184 * Number(share)) / 100 - padding);
      // and the room is used
      expect(widest).toBeGreaterThan((184 * Number(share)) / 100 - padding - 14);
    }
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
  // o is 0.552 em wide, so ten of them at 9 pt (3.175 mm) are 17.53 mm; a full stop is 0.205 em (the font's own file)
  test("breaks between words, keeps all, cuts only what two lines can't hold", () => {
    const two = { room_mm: 17.6, lines: 2 };
    expect(wrapped("oooo oooo oooo", two)).toEqual(["oooo oooo", "oooo"]);
    expect(wrapped("**oooo**", two)).toEqual(["oooo"]);
    expect(wrapped("oooo oooo oooo oooo oooo", two)).toEqual(["oooo oooo", "oooo oooo..."]);
    expect(wrapped("o".repeat(15), two)).toEqual(["o".repeat(10), "o".repeat(5)]);
    expect(wrapped("o".repeat(25), two)).toEqual(["o".repeat(10), `${"o".repeat(8)}...`]);
  });
});
