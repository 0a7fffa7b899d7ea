// Are those who fix spacers told what each end must hold, and those who check a turned corner post along which faces it was computed?
import { describe, expect, test } from "vitest";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { readForce } from "../read-force.ts";
import { packetOf, sheetOf, textsOf } from "../read-packet.ts";

const textOf = (plan: Parameters<typeof packetOf>[0], issue: Parameters<typeof packetOf>[1], id: string): string =>
  sheetOf(packetOf(plan, issue), id).blocks.flatMap(textsOf).join("\n").replaceAll("**", "");

describe("what the ends of spacers must hold", () => {
  const plan = examplePlan("0001-level-deck-straight");
  const row = plan.frame.checks.find(({ id }) => id.startsWith("spacer-fixing-"));

  test.each([
    ["crew", "Z-805"],
    ["homeowner", "Z-805"],
    ["homeowner", "Z-801"],
  ] as const)("%s, %s: the demand of the check, never too small", (issue, sheet) => {
    const [, force = ""] = /Each end of a spacer must hold at least ([^,]+), pushed square/.exec(textOf(plan, issue, sheet)) ?? [];
    expect(readForce(force)).toBeGreaterThanOrEqual(row?.demand ?? Number.NaN);
    expect(readForce(force)).toBeLessThan(1.03 * (row?.demand ?? Number.NaN));
  });

  test("the survey asks for their stamp, by the wood that was taken", () => {
    expect(textOf(plan, "crew", "Z-003")).toMatch(/Grade stamp on [^\n]*spacers/);
  });

  test("where the load on the infill is not known, nothing is said", () => {
    const other = planOf(
      changedText("0001-level-deck-straight", { "edition: IRC 2021": "edition: other\n  guard height: 36 in\n  opening: 4 in" }),
    );
    expect(textOf(other, "crew", "Z-805")).not.toContain("Each end of a spacer");
  });
});

test("Z-805 says of a turned corner post what along and square mean there, and of no other", () => {
  expect(textOf(examplePlan("0014-corners-of-one-post"), "permit", "Z-805")).toContain(
    "P6 stands turned at a corner: there along means square to the face that looks to the side before it",
  );
  expect(textOf(examplePlan("0018-corner-post-between-runs"), "permit", "Z-805")).not.toContain("turned at a corner");
});
