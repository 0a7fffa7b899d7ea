// Files that can't be what was issued of the job that their first line names; tests/support/pinned.ts says how they are pinned.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { checkIssued } from "../../src/changes/check-issued.ts";
import { examplePlan, planOf } from "../support/example-jobs.ts";
import { expectPinned, filesIn } from "../support/pinned.ts";

describe("checkIssued", () => {
  const files = filesIn(import.meta.dirname);

  test("there are at least 5 such files", () => expect(files.length).toBeGreaterThanOrEqual(5));

  test.each(files)("%s reports each pinned problem at its line and column, in order, and no other", (file) => {
    const text = readFileSync(join(import.meta.dirname, file), "utf8");
    const beside = /^# beside (\S+)/.exec(text)?.[1] ?? "";
    expectPinned(text, checkIssued(planOf(text), examplePlan(beside)));
  });

  test("only where both give the same plan is it no more than a warning", () => {
    const severities = files.map((file) => {
      const text = readFileSync(join(import.meta.dirname, file), "utf8");
      const beside = /^# beside (\S+)/.exec(text)?.[1] ?? "";
      return [file, ...checkIssued(planOf(text), examplePlan(beside)).map(({ severity }) => severity)];
    });
    expect(severities.filter(([, severity]) => severity === "warning")).toEqual([["same-plan.yaml", "warning"]]);
  });
});
