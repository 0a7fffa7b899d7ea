// One rule for the free length on every sheet: no cover and no card allows more than the survey.
import { describe, expect, test } from "vitest";
import { sheetHeads } from "../../../src/packet/issues.ts";
import { freeStop } from "../../../src/packet/sheets/free-stop.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import { longestFree } from "../../../src/plan/free-stop.ts";
import { examples, issues, packetOf, stamp, textsOf } from "../read-packet.ts";

describe.each(examples)("%s", (_, plan) => {
  const show = showIn(plan.job.units);
  const bays = plan.bays.filter(({ kind }) => kind === "bay");
  // With sleeves on a tape finds less than the free length of the cable, at each sleeve by what lies before the wood.
  const inSleeves = (ids: readonly string[]): number =>
    plan.verticals.reduce((sum, { id, core }) => sum + (ids.includes(id) ? (core?.recess ?? 0) : 0), 0);
  const stops = bays.map(({ id, leftId, rightId }) => longestFree(plan, id) - inSleeves([leftId, rightId]));
  const least = show.tapeDown(Math.min(...stops));
  const context = {
    plan,
    show,
    issue: "crew",
    stamp,
    home: false,
    whole: true,
    rules: true,
    marked: [],
    index: sheetHeads({ plan, issue: "crew", all: false }),
  } as const;

  test("the limit names the least stop, and Z-003 where the bays differ", () => {
    const { limit } = freeStop(context);
    expect(limit).toContain(least);
    const differ = new Set(stops.map(show.tapeDown)).size > 1;
    expect(limit.includes("Z-003, bay by bay")).toBe(differ);
  });

  test.each(issues)("the %s issue stops at it", (issue) => {
    const words = packetOf(plan, issue).sheets.flatMap(({ blocks }) => blocks.flatMap(textsOf));
    const said = words.filter((each) =>
      /No (free length of a cable|clear length between sleeves and spacers) above|a (free length of a cable|clear length between sleeves and spacers) is above|Stop if one is above/.test(
        each,
      ),
    );
    expect(said.length).toBeGreaterThan(0);
    for (const text of said) expect.soft(text).toContain(least);
  });
});
