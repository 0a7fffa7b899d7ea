// A stair with no landing: nothing on its sheets may send anybody to a level side, where there is none.
import { describe, expect, test } from "vitest";
import { showIn } from "../../../src/packet/show-number.ts";
import { changedText, planOf } from "../../support/example-jobs.ts";
import { issues, packetOf, textsOf } from "../read-packet.ts";

const landing = "    - length: 6 ft 4 in           # the landing, from the siding to its edge; no turn: the guard goes straight on\n";
const stair = planOf(changedText("0012-stair-from-landing", { [landing]: "" }));

describe("a guard that slopes all along", () => {
  test("has one side, and that slopes", () => {
    expect(stair.sides.map(({ slope }) => slope !== 0)).toEqual([true]);
    expect(showIn("inch").angle(Math.abs(stair.sides[0]?.slope ?? 0))).toBe("33.7 deg");
  });

  test.each(issues)("%s: no sheet names a level side or marks heights with a stick", (issue) => {
    const words = packetOf(stair, issue)
      .sheets.flatMap(({ id, blocks }) => blocks.flatMap(textsOf).map((text) => `${id}: ${text}`))
      .filter((text) => /level sides?\b|sides? none|take a straight stick|mark heights with one stick/i.test(text));
    expect(words).toEqual([]);
  });

  test("asks for no story pole", () => {
    expect(stair.tools.map(({ item }) => item).filter((item) => item.startsWith("story pole"))).toEqual([]);
  });
});
