// What the sheets say of sides that slope: what is level, plumb, square or along the slope, and what the authority is asked.
import { describe, expect, test } from "vitest";
import { showIn } from "../../../src/packet/show-number.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { cellText, packetOf, readPrinted, rowsOf, sheetOf, stepsOf, wordsOn } from "../read-packet.ts";
import { longSentences } from "../reading.ts";

const stair = examplePlan("0012-stair-from-landing");
/** The same stair, its top rail held as the handrail too. */
const withHandrail = planOf(changedText("0012-stair-from-landing", { "handrail: false": "handrail: true" }));
const ramp = examplePlan("0013-ramp-to-porch");
const both = [
  ["stair", stair],
  ["ramp", ramp],
] as const;

describe("Z-003", () => {
  test("asks riser, tread, their numbers, total rise, overhang and open risers of a stair, each with a stop", () => {
    const rows = rowsOf(stair, "survey-measure");
    // The job's own figures: 7 in by 10-1/2 in, 7 of them in 6 ft 1-1/2 in: 7 x 7 in = 49 in.
    const planned = (start: RegExp): readonly (string | undefined)[] => (rows.find(([what = ""]) => start.test(what)) ?? []).slice(1, 3);
    expect(planned(/^Riser of side B/)[0]).toBe('7" (178 mm)');
    expect(planned(/^Tread of side B/)[0]).toBe('10-1/2" (267 mm)');
    expect(planned(/^Risers within the length of side B/)).toEqual(["7", "any other number"]);
    expect(planned(/^Treads within the length of side B/)).toEqual(["7", "any other number"]);
    expect(planned(/^Overhang of the nosings of side B/)[0]).toBe('3/4" (19 mm)');
    expect(planned(/^Risers of side B: closed/)).toEqual(["closed", 'open by 4" or more: ask']);
    expect(planned(/^Total rise of side B/)[0]).toBe('49" (1245 mm)');
    expect(planned(/^Slope of side B/)[1]).toContain("0.5 deg");
  });

  test.each(both)("%s: the stops of the total rise lie within half a degree of the slope, not beyond", (_, plan) => {
    const [, , stop = ""] = rowsOf(plan, "survey-measure").find(([what = ""]) => what.startsWith("Total rise of side B")) ?? [];
    const [low = "", high = ""] = /^below (.+), above (.+) \[practice\]$/.exec(stop)?.slice(1) ?? [];
    const { length = 0, slope = 0 } = plan.sides.find(({ id }) => id === "B") ?? {};
    const half = Math.PI / 360;
    expect(readPrinted(low)).toBeGreaterThanOrEqual(length * Math.tan(Math.abs(slope) - half));
    expect(readPrinted(high)).toBeLessThanOrEqual(length * Math.tan(Math.abs(slope) + half));
  });

  // Length of the side is level, its cables lie along the slope: 10 in more of the one are 12 in more of the other.
  test("a stair that is as long as its stop allows still leaves 6 in of each ready cable to hold", () => {
    const [, , stop = ""] = rowsOf(stair, "survey-measure").find(([what = ""]) => what.startsWith("Side B along the bores")) ?? [];
    const { length = 0, slope = 0 } = stair.sides.find(({ id }) => id === "B") ?? {};
    const { outsideLength = 0, orderLength = 0 } = stair.runs[0] ?? {};
    const more = (readPrinted(stop.replace(/^above /, "")) - length) / Math.cos(slope);
    expect(more).toBeGreaterThan(0);
    expect(outsideLength + more).toBeLessThanOrEqual(orderLength - 152.4);
    expect(outsideLength + more).toBeGreaterThan(orderLength - 152.4 - 3);
  });

  test("a top that is the handrail stops below 34 in and above 38 in, IRC 2021 R312.1.2, exception 2", () => {
    const rows = rowsOf(withHandrail, "survey-measure");
    expect(rows.find(([what = ""]) => /^Side B: height of the guard/.test(what))?.[2]).toMatch(/^below 34", above 38"/);
  });

  test("asks the rise of a ramp over its whole length, and nothing of steps", () => {
    const rows = rowsOf(ramp, "survey-measure").map(([what = "", planned = ""]) => [what, planned]);
    expect(rows.find(([what = ""]) => what.startsWith("Total rise of side B"))?.[1]).toMatch(/^400 mm/);
    expect(rows.some(([what = ""]) => /[Rr]iser|[Tt]read|[Nn]osing/.test(what))).toBe(false);
  });

  test.each(both)("%s: says on Z-003, Z-101 and in the guide that lengths of a slope are level", (_, plan) => {
    for (const id of ["Z-003", "Z-101"]) expect.soft(wordsOn(plan, id)).toMatch(/level: hold the tape level/i);
    expect(wordsOn(plan, "Z-801", "homeowner")).toContain("Measure its length level and its rise straight up");
  });
});

describe("Z-202", () => {
  test.each(both)("%s: a side that slopes points to Z-401 for what is bored, not to the first elevation", (_, plan) => {
    expect(wordsOn(plan, "Z-202")).toContain("Heights to bore at stand on Z-401");
  });
});

describe("Z-401", () => {
  test("speaks of the flight on a stair, of the ramp on a ramp", () => {
    expect(wordsOn(stair, "Z-401")).toContain("over the whole flight, not over one step");
    expect(wordsOn(ramp, "Z-401")).toContain("over the whole ramp");
    expect(wordsOn(ramp, "Z-401")).not.toMatch(/flight|step|nosing/);
  });
});

describe("Z-603", () => {
  test("a bore that is off by less than the tape shows is at its height", () => {
    // 10 mm of flat bar at 1 in 12: 10 / 2 / 12 = 0.4 mm, on a tape of 1 mm nothing; 50 mm of tube: 2.1 mm.
    const rows = rowsOf(ramp, "bores-grid");
    const offOf = (post: string): readonly (string | undefined)[] => (rows.find(([first]) => first === post) ?? []).slice(4, 6);
    expect(offOf("S1")).toEqual(["at it", "at it"]);
    expect(offOf("P5")).toEqual(["2 mm lower", "2 mm higher"]);
  });
});

describe("Z-602", () => {
  test("the two plumb cuts of a raked rail: tip to tip, off square, parallel, and how much shorter an edge is", () => {
    const use = stair.cuts.find(({ use: words, cutAngle }) => words.startsWith("top rail") && cutAngle !== 0)?.use ?? "";
    // 3-1/2 in deep, 7 in 10-1/2: 3.5 x 7 / 10.5 = 2-1/3 in.
    expect(use).toBe('top rail, both ends cut 33.7 deg off square, parallel; each edge 2-5/16" shorter: plumb where it lies');
    expect(wordsOn(stair, "Z-602")).toContain("from tip to tip along the part");
  });
});

describe("Z-801", () => {
  test.each(both)("%s: cards keep to nine items and name level sides and slopes apart", (_, plan) => {
    const cards = stepsOf(sheetOf(packetOf(plan, "crew"), "Z-801").blocks);
    for (const card of cards) expect.soft(card.items.length, card.id).toBeLessThanOrEqual(9);
    const words = wordsOn(plan, "Z-801");
    expect(words).toMatch(/Level sides? A/);
    expect(words).toMatch(/Slope, side B: no level stick/);
    expect(words).toMatch(/guide block at/);
  });

  test.each(both)("%s: the guide keeps its sentences short and levels no rail of a slope", (_, plan) => {
    const steps = stepsOf(sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks);
    const texts = steps.flatMap(({ items }) => items.flatMap(({ text, more }) => [text, more ?? ""]));
    expect(texts.flatMap(longSentences)).toEqual([]);
    expect(texts.join("\n")).not.toContain("check that they are level");
    expect(texts.join("\n")).toMatch(/along the slope on B/);
  });
});

describe("Z-002", () => {
  // R312.1.2 and R312.1.3 with their exceptions, R311.7.8: as printed in IRC 2021.
  test("a stair: height, both spheres, handrail, grip and ends, with the clauses of the edition", () => {
    const words = wordsOn(withHandrail, "Z-002", "permit");
    for (const clause of ["R312.1.2, exception 1", "R312.1.2, exception 2", "R312.1.3, exception 1", "R312.1.3, exception 2"]) {
      expect.soft(words).toContain(clause);
    }
    expect(words).toContain("R311.7.8.5");
    expect(words).toContain("R311.7.8.4");
    // A 4x6 laid flat has an outline of 18 in: no hand closes round it.
    expect(words).toContain("NO by its size alone");
  });

  test("a rail that a hand closes round is said to be one", () => {
    const text = changedText("0012-stair-from-landing", {
      "handrail: false": "handrail: true",
      "top rail: { size: 4x6, lay: flat": "top rail: { size: 1.5 in x 1.5 in, lay: flat",
    });
    expect(wordsOn(planOf(text), "Z-002", "permit")).toMatch(/1-1\/2" x 1-1\/2": yes/);
  });

  test("a ramp under the NCC: its own clauses, no clause of the IRC", () => {
    const words = wordsOn(ramp, "Z-002", "permit");
    expect(words).toContain("11.3.5");
    // The clause of a ramp asks for 865 mm, that of the floor beside it for 1 m.
    expect(words).toContain("On a ramp: least height, plumb above it");
    expect(words).toMatch(/865 mm[^.]*11\.3\.4\(2\)\(a\)/);
    expect(words).toContain("1000 mm");
    expect(words).not.toMatch(/R31\d|irc-/);
  });
});

describe("Z-804 and Z-901", () => {
  test("the proof of a stair has its slope, height, both spheres and the handrail to fill in", () => {
    const rows = rowsOf(withHandrail, "proof-slopes").map((row) => row.join(" | "));
    expect(rows.length).toBe(5);
    expect(rows.join("\n")).toMatch(
      /33\.7 deg[\s\S]*34" to 38"[\s\S]*4-3\/8" sphere must not pass[\s\S]*6" sphere must not go in[\s\S]*Handrail/,
    );
    expect(wordsOn(stair, "Z-804")).toContain('on side B square to the cables, and a 6" sphere at every riser and tread');
  });

  test.each(both)("%s: the record has both heights of every bore of a slope, and blanks for both", (_, plan) => {
    const show = showIn(plan.job.units);
    const tables = sheetOf(packetOf(plan, "record"), "Z-901").blocks.filter((block) => block.kind === "table");
    const raked = plan.verticals.filter(({ slope }) => slope !== 0);
    expect(raked.length).toBeGreaterThan(0);
    for (const { id } of raked) {
      const own = tables.find(({ columns }) => columns.some(({ key }) => key === `${id}-left`));
      expect
        .soft(
          own?.columns.some(({ key }) => key === `${id}-right`),
          id,
        )
        .toBe(true);
      for (const bore of plan.bores.filter(({ verticalId }) => verticalId === id)) {
        const row = own?.rows[bore.course - 1]?.map(cellText) ?? [];
        const [left, right] = bore.entryFace === "left" ? [bore.entryHeight, bore.exitHeight] : [bore.exitHeight, bore.entryHeight];
        expect.soft(row.slice(1, 3), bore.mark).toEqual([show.tape(left), show.tape(right)]);
      }
    }
  });
});
