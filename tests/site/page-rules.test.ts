// Do the margins of each page say what they must, and can no title break out of its rule?
import { describe, expect, test } from "vitest";
import { pageName, pageRules } from "../../src/site/page-rules.ts";
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

  test("a title of 300 letters is cut to the width of its box", () => {
    expect(pageRules(samplePacket({ title: "m".repeat(300) }))).not.toContain("m".repeat(51));
  });
});
