import { describe, expect, test } from "vitest";
import { contentBox } from "../../src/drawing/paper.ts";
import { elevations } from "../../src/packet/drawings/elevation.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import { makeTemplates } from "../../src/packet/make-templates.ts";
import { drawingFaults } from "../../src/pdf/drawing-faults.ts";
import { exampleText, planOf } from "../support/example-jobs.ts";
import { stamp } from "./read-packet.ts";

const page = contentBox({ paper: "letter", orientation: "landscape" });
const box = { width: page.width, height: page.height * 0.9 };

describe.each(["0012-stair-from-landing", "0013-ramp-to-porch"])("the sheets of %s", (name) => {
  const plan = planOf(exampleText(name));

  test.each(["crew", "homeowner", "permit", "record"] as const)(
    "%s: every drawing fits, and both heights of a slanted bore are told",
    (issue) => {
      const packet = makePacket({ plan, issue, stamp });
      expect(drawingFaults(packet)).toEqual([]);
      expect(packet.sheets.some(({ id }) => id === "Z-401")).toBe(issue !== "record");
    },
  );

  test.each(["letter", "a4"] as const)("templates on %s fit their pages", (paper) => {
    expect(drawingFaults(makeTemplates({ plan, paper, stamp }))).toEqual([]);
  });
});

describe("elevations where the slope changes", () => {
  const plan = planOf(exampleText("0012-stair-from-landing"));
  const [level, raked] = [elevations(plan, 0, box), elevations(plan, 1, box)].map((drawings) => drawings.map(({ svg }) => svg).join(""));
  const circles = (svg: string | undefined): readonly (readonly [radius: number, fill: string])[] =>
    [...(svg ?? "").matchAll(/<circle [^>]*r="([\d.]+)" fill="([^"]+)"/g)].map(([, radius, fill]) => [Number(radius), fill ?? ""] as const);

  test("each cable has a dot at either post of the change", () => {
    for (const svg of [level, raked]) expect(circles(svg).filter(([, fill]) => fill === "#000")).toHaveLength(plan.courses.length);
  });

  // A riser 3/4 in behind its nosing is as if the rail, 1 in above the nosings, lay 1/2 in higher: a triangle of 8-1/2 in holds a circle
  // of 8.5 (5 - sqrt(13)) / 2 = 5.926 in, drawn at 1/2 in to the foot.
  test("the largest sphere stands on a step, at the scale of the drawing", () => {
    const radius = ((8.5 * (5 - Math.sqrt(13)) * 25.4) / 4 / 24).toFixed(2);
    expect(circles(raked).map(([own]) => own.toFixed(2))).toContain(radius);
    expect(circles(level).map(([own]) => own.toFixed(2))).not.toContain(radius);
  });

  test("the sheet of a side that slopes points to Z-401 for what is drilled, and the table of heights is for level sides", () => {
    const text = (id: string): string =>
      JSON.stringify(makePacket({ plan, issue: "crew", stamp }).sheets.find((one) => one.id === id)?.blocks);
    expect(text("Z-202")).toContain("Heights to bore at stand on Z-401");
    expect(text("Z-202")).not.toContain("table on Z-201");
    expect(text("Z-201")).toContain("on side B they hold in the middle of a post only: bore there by Z-401");
  });

  test("where the first side slopes, the table of heights stands with the first level side", () => {
    const ramp = planOf(exampleText("0013-ramp-to-porch").replace(/ {4}- length: 1\.5 m[^\n]*\n/, ""));
    const sheets = makePacket({ plan: ramp, issue: "crew", stamp }).sheets;
    const tableOn = sheets.filter(({ blocks }) => JSON.stringify(blocks).includes("hold in the middle of a post only"));
    expect(tableOn.map(({ id }) => id)).toEqual(["Z-202"]);
    expect(drawingFaults(makePacket({ plan: ramp, issue: "crew", stamp }))).toEqual([]);
  });
});
