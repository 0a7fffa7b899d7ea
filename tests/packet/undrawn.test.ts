import { describe, expect, test } from "vitest";
import { undrawnProblems } from "../../src/packet/undrawn.ts";
import { exampleText, jobOf } from "../support/example-jobs.ts";

describe("undrawnProblems", () => {
  test("a side that slopes is refused at its own line, since its sheets are not proven", () => {
    const found = undrawnProblems(jobOf(exampleText("stair-from-landing")));
    expect(found.map(({ severity, path }) => [severity, path])).toEqual([["error", ["guard", "sides", 1, "rake"]]]);
    expect(undrawnProblems(jobOf(exampleText("ramp-to-porch"))).length).toBeGreaterThan(0);
  });

  test("level sides are built", () => {
    expect(undrawnProblems(jobOf(exampleText("two-corners-4x4")))).toEqual([]);
  });
});
