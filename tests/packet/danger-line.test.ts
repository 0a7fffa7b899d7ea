import { expect, test } from "vitest";
import { dangerWords } from "../../src/packet/danger-line.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { packetOf, sheetOf, textsOf } from "./read-packet.ts";

const WORKING = ["Z-602", "Z-603", "Z-604", "Z-605", "Z-801", "Z-803", "Z-806"];

test("0007: each sheet to work from opens with the danger, and each card of the crew repeats it", () => {
  const plan = examplePlan("0007-too-much-for-the-frame");
  for (const issue of ["crew", "homeowner"] as const) {
    for (const id of WORKING) {
      const [first, second] = sheetOf(packetOf(plan, issue), id).blocks;
      const opening = [first, second].flatMap((block) => (block === undefined ? [] : textsOf(block))).join(" ");
      expect.soft(opening, `${issue} ${id}`).toContain("buy, cut, bore and tighten nothing from this sheet");
    }
  }
  const cards = sheetOf(packetOf(plan, "crew"), "Z-801").blocks;
  const headings = cards.filter(({ kind }) => kind === "heading").length;
  expect(cards.filter((block) => textsOf(block).includes(dangerWords(plan)))).toHaveLength(headings);
});

test("0001: nothing fails, so that no sheet opens with a danger of that kind", () => {
  expect(dangerWords(examplePlan("0001-level-deck-straight"))).toBe("");
});
