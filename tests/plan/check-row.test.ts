// What does a row of the checks say where nothing at all is left of what must be there?
import { describe, expect, test } from "vitest";
import { limitCheck } from "../../src/plan/check-row.ts";
import { practice } from "../../src/sources/cited.ts";
import { changedText, planOf } from "../support/example-jobs.ts";

const rowOf = (demand: number) =>
  limitCheck({
    id: "x",
    name: "gap",
    where: "here",
    rule: "at least",
    demand,
    limit: practice(76.2, "3 in"),
    kind: "length",
    advice: "move it",
  });

describe("limitCheck", () => {
  test("152.4 mm where at least 76.2 are asked use half of the limit, 38.1 mm twice", () => {
    expect(rowOf(152.4)).toMatchObject({ ratio: 0.5, verdict: "pass" });
    expect(rowOf(38.1)).toMatchObject({ ratio: 2, verdict: "fail" });
  });

  test.each([0, -1e-14, -20])("%d mm fail beyond any ratio, never at 0 %% or less of the limit", (demand) => {
    const { ratio, verdict, demand: shown } = rowOf(demand);
    expect(ratio).toBeCloseTo(1e6, 3);
    expect(verdict).toBe("fail");
    expect(shown?.value).toBe(demand);
  });
});

describe("makePlan", () => {
  test("an end post that touches its wall fails its gap beyond any ratio", () => {
    const text = changedText("rule-of-thumb", { "start: { kind: post, access: drill }": "start: { kind: wall, gap: 0 in, access: hand }" });
    const row = planOf(text).checks.find(({ name, rule }) => name === "Gap between wall and end post" && rule === "at least");
    expect(row).toMatchObject({ verdict: "fail", demand: { value: 0, kind: "length" } });
    expect(row?.ratio).toBeCloseTo(1e6, 3);
  });
});
