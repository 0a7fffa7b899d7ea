// A stair with no landing: nothing on its sheets may send anybody to a level side, where there is none.
import { describe, expect, test } from "vitest";
import type { Issue } from "../../../src/job/job.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { issues, packetOf, textsOf } from "../read-packet.ts";

const landing = "    - length: 6 ft 4 in           # the landing, from the siding to its edge; no turn: the guard goes straight on\n";
/** What no sheet of a slope alone may say, with the sheet that says it. */
const levelWords = (plan: Plan, issue: Issue): readonly string[] =>
  packetOf(plan, issue)
    .sheets.flatMap(({ id, blocks }) => blocks.flatMap(textsOf).map((text) => `${id}: ${text}`))
    .filter((text) => /level sides?\b|sides? none|take a straight stick|mark heights with one stick/i.test(text));

const stair = planOf(changedText("0012-stair-from-landing", { [landing]: "" }));

describe("a guard that slopes all along", () => {
  test("has one side, and that slopes", () => {
    expect(stair.sides.map(({ slope }) => slope !== 0)).toEqual([true]);
    expect(showIn("inch").angle(Math.abs(stair.sides[0]?.slope ?? 0))).toBe("33.7 deg");
  });

  test.each(issues)("%s: no sheet names a level side or marks heights with a stick", (issue) => {
    expect(levelWords(stair, issue)).toEqual([]);
  });

  test.each(["crew", "homeowner"] as const)("%s: with its landing the same stair has both", (issue) => {
    const words = levelWords(examplePlan("0012-stair-from-landing"), issue).join("\n");
    expect(words).toMatch(/level side A/i);
    expect(words).toMatch(/take a straight stick|mark heights with one stick/i);
  });

  test("asks for no story pole", () => {
    expect(stair.tools.map(({ item }) => item).filter((item) => item.startsWith("story pole"))).toEqual([]);
  });
});
