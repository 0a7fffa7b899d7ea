import { describe, expect, test } from "vitest";
import { examplePlan } from "../../support/example-jobs.ts";
import { examples, rowsOf, wordsOn } from "../read-packet.ts";

const sizeOf = (rows: readonly (readonly string[])[], item: string): string | undefined =>
  rows.find(([what = ""]) => what.startsWith(item))?.[1];

describe("orderSheet", () => {
  // A washer is bought by three sizes; the body of a gripping fitting is wider than the thread of a stud, so the two do not pass for each other.
  test.each(examples)("%s: each washer says how wide it is and what goes through its hole", (_, plan) => {
    const rows = rowsOf(plan, "order-list");
    const { stud } = plan.job.fittings;
    const kinds = plan.runs.flatMap(({ left, right }) => [left.kind, right.kind]);
    const ofStud = sizeOf(rows, "washer, stainless, stud end");
    const ofGrip = sizeOf(rows, "washer, stainless, gripping end");
    if (kinds.includes("stud")) expect.soft(ofStud).toMatch(new RegExp(`^[^,]+ across, hole for ${stud.thread}$`));
    expect.soft(ofGrip === undefined).toBe(!kinds.includes("grip"));
    if (ofGrip !== undefined) {
      const body = /^body (.+?\)) x /.exec(sizeOf(rows, "gripping end") ?? "")?.[1];
      expect.soft(ofGrip.endsWith(` across, hole for a body of ${body}`)).toBe(true);
    }
  });

  test("0001: 1-1/2 in washers, one with a hole for a thread of 1/4-28, one for a body of 3/8 in; both thick, as the wood is checked under all of them", () => {
    const rows = rowsOf(examplePlan("0001-level-deck-straight"), "order-list");
    expect(sizeOf(rows, "washer, stainless, stud end")).toBe('1-1/2" (38.1 mm) across, hole for 1/4-28');
    expect(sizeOf(rows, "washer, stainless, gripping end")).toBe('1-1/2" (38.1 mm) across, hole for a body of 3/8" (9.5 mm)');
    expect(rows.filter(([what = ""]) => what.startsWith("washer")).every(([what = ""]) => what.includes("thick"))).toBe(true);
    expect(rowsOf(examplePlan("0005-steel-balcony"), "order-list").some(([what = ""]) => what.includes("thick"))).toBe(false);
  });

  // What the steps tell to be done has to be in the house on that day.
  test.each(examples)("%s: what the steps brush on bores or seal them with is bought, and nothing else of that kind", (_, plan) => {
    const bought = rowsOf(plan, "order-list").map(([what = ""]) => what);
    const [crew, home] = [wordsOn(plan, "Z-801"), wordsOn(plan, "Z-801", "homeowner")];
    for (const [item, said] of [
      ["zinc paint", /zinc paint/],
      ["wood preservative", /Every bore.* treated before|Brush wood preservative/],
      ["sealant", /bores sealed against water|Seal each bore/],
    ] as const) {
      const has = bought.some((what) => what.startsWith(item));
      expect.soft(said.test(crew), item).toBe(has);
      expect.soft(said.test(home), item).toBe(has);
    }
    const deburrs = rowsOf(plan, "tools-list").some(([, tool = ""]) => tool.startsWith("deburring tool, brush for swarf"));
    expect.soft(/deburred/.test(crew)).toBe(deburrs);
  });

  test("a spool of 100 m is asked for in metres, one of 500 ft in feet", () => {
    const spool = (name: string): string | undefined =>
      rowsOf(examplePlan(name), "order-list").find(([what = ""]) => what.startsWith("spool"))?.[0];
    expect(spool("0005-steel-balcony")).toMatch(/^spool of cable, 100 m: /);
    expect(spool("0002-deck-two-corners")).toMatch(/^spool of cable, 500'-0": /);
  });
});
