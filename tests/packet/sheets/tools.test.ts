import { describe, expect, test } from "vitest";
import { examples, rowsOf } from "../read-packet.ts";

describe("toolsSheet", () => {
  // Somebody who stands before a row of Z-003 without its tool guesses it.
  test.each(examples)("%s: what Z-003 asks to be measured other than by tape and level has its tool, before the boring", (_, plan) => {
    const asked = rowsOf(plan, "survey-measure").map(([what = ""]) => what);
    const tools = rowsOf(plan, "tools-list");
    const steps = tools.map(([step]) => step);
    const before = tools.slice(0, steps.indexOf("bore"));
    const has = (item: string, size = ""): boolean =>
      before.some(([, tool = "", sized = ""]) => tool.includes(item) && sized.includes(size));
    const pull = asked.map((what) => / pulled along the side with (.+?) at /.exec(what)?.[1]).find((found) => found !== undefined);
    expect.soft(has("scale", `reads ${pull}`)).toBe(true);
    expect.soft(has("moisture meter")).toBe(asked.some((what) => what.includes("by a meter")));
    expect.soft(has("angle finder")).toBe(asked.some((what) => what.startsWith("Turn at")));
    expect.soft(has("angle gauge")).toBe(asked.some((what) => what.startsWith("Slope of")));
    expect.soft(has("caliper")).toBe(asked.some((what) => what.includes("over the crowns")));
  });

  test.each(examples)("%s: each tool stands once in its step, and is said to be had, rented or bought", (_, plan) => {
    const tools = rowsOf(plan, "tools-list");
    expect(new Set(tools.map(([step, tool, size]) => `${step} ${tool} ${size}`)).size).toBe(tools.length);
    for (const [, , , source = ""] of tools) expect.soft(["have", "rent or buy", "buy"]).toContain(source);
  });
});
