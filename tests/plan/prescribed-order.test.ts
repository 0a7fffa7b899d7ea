// The order of tightening is a rule of thumb as the others: a job may prescribe it, and everything follows from what it prescribes.
import { describe, expect, test } from "vitest";
import { explain } from "../../src/explain/explain.ts";
import { packetOf, sheetOf, textsOf } from "../packet/read-packet.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";

const NAME = "0001-level-deck-straight";
const planWith = (order: string) => planOf(changedText(NAME, { "tightening:\n": `tightening:\n  order: ${order}\n` }));
const up = [1, 2, 3, 4, 5, 6, 7, 8, 9];

describe("tightening: order", () => {
  test.each([
    ["from the bottom up", up],
    ["from the top down", [...up].reverse()],
    // common practice, no source: the middle of nine first, then above and below it by turns
    ["from the middle outward", [5, 6, 4, 7, 3, 8, 2, 9, 1]],
    ["from the outside in", [9, 1, 8, 2, 7, 3, 6, 4, 5]],
  ])("%s: the log goes by it, and the last cable is pulled to the target, the others before it to no less", (order, courses) => {
    const plan = planWith(order);
    const [tightening] = plan.tightening;
    expect(tightening?.orderName).toBe(order);
    const first = tightening?.steps.filter(({ pass }) => pass === 1).map(({ mark }) => Number(mark.slice(-2)));
    expect(first).toEqual(tightening?.order);
    expect([courses, courses.map((course) => 10 - course)]).toContainEqual(tightening?.order);
    expect(tightening?.recommended.order).toEqual(tightening?.order);
    // Each pull slackens those before it and nothing slackens the last.
    const readings = tightening?.steps.map(({ reading }) => reading) ?? [];
    const last = readings.at(-1) ?? 0;
    const half = plan.job.tightening.readingStep.value / 2;
    expect(Math.abs(last - (plan.runs[0]?.tension.target ?? 0))).toBeLessThanOrEqual(half + 1e-9);
    expect(Math.min(...readings)).toBe(last);
  });

  test("what is prescribed never asks for less than the least that any order needs, and the sheet says who chose it", () => {
    const asked = ["from the bottom up", "from the top down", "from the middle outward", "from the outside in"].map((order) => {
      const [tightening] = planWith(order).tightening;
      expect.soft(tightening?.recommended.highest_overTarget ?? 0).toBeGreaterThanOrEqual((tightening?.bound ?? 0) - 1e-9);
      return tightening?.recommended.highest_overTarget;
    });
    expect(new Set(asked).size).toBeGreaterThan(1);
    expect(planWith("from the middle outward").tightening[0]?.recommended).toEqual(examplePlan(NAME).tightening[0]?.customary);
    const words = sheetOf(packetOf(planWith("from the bottom up"), "crew"), "Z-803")
      .blocks.flatMap(textsOf)
      .join("\n");
    expect(words).toContain("prescribed in the job file; it asks for readings of");
    const own = sheetOf(packetOf(examplePlan(NAME), "crew"), "Z-803")
      .blocks.flatMap(textsOf)
      .join("\n");
    expect(own).not.toContain("prescribed in the job file");
  });

  test.each(exampleNames)("%s: every run goes by it, on all its sheets", (name) => {
    const plan = planOf(changedText(name, { "\ntightening:\n": "\ntightening:\n  order: from the top down\n" }));
    expect(plan.tightening.map(({ orderName }) => orderName)).toEqual(plan.tightening.map(() => "from the top down"));
    const words = sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join("\n");
    for (const { runId } of plan.tightening) expect(words).toContain(`${runId}, `);
    expect(words.match(/\*\*Order: from the top down:\*\*/g)).toHaveLength(plan.tightening.length);
  });

  test("explain computes the highest reading of the prescribed order again", () => {
    const plan = planWith("from the top down");
    const answer = explain(plan, "tightening.R1.recommended.highest_overTarget");
    if (answer.kind !== "trace") expect.fail(`no trace, but a ${answer.kind}`);
    expect(answer.trace.value).toBe(plan.tightening[0]?.recommended.highest_overTarget);
    expect(answer.trace.recomputed).toBeCloseTo(answer.trace.value, 9);
  });
});
