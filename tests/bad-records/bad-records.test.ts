// Wrong records of what was built, read beside the plan that their first line names; tests/support/pinned.ts says how they are pinned.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { compareRecord } from "../../src/record/compare.ts";
import { parseRecord } from "../../src/record/parse.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { expectPinned, filesIn } from "../support/pinned.ts";

describe("parseRecord and compareRecord", () => {
  const files = filesIn(import.meta.dirname);

  test("there are at least 10 wrong records", () => expect(files.length).toBeGreaterThanOrEqual(10));

  test.each(files)("%s reports each pinned problem at its line and column, in order, and no other", (file) => {
    const text = readFileSync(join(import.meta.dirname, file), "utf8");
    const beside = /^# beside (\S+)/.exec(text)?.[1] ?? "";
    const read = parseRecord(text);
    const problems = read.value === undefined ? read.problems : compareRecord(read.value, examplePlan(beside)).problems;
    expectPinned(text, problems);
  });
});
