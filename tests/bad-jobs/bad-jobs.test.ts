// Wrong job files that say in comments what must be reported, and where (tests/support/pinned.ts).
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parseJob } from "../../src/job/parse.ts";
import { beyondPaper } from "../../src/packet/templates/beyond-paper.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { jobOf } from "../support/example-jobs.ts";
import { expectPinned, filesIn } from "../support/pinned.ts";

const folder = import.meta.dirname;

describe("parseJob", () => {
  const files = filesIn(folder);

  test("there are at least 28 wrong job files", () => expect(files.length).toBeGreaterThanOrEqual(28));

  test.each(files)("%s reports each pinned problem at its line and column, in order, and no other", (file) => {
    const text = readFileSync(join(folder, file), "utf8");
    const { value, problems } = parseJob(text);
    expectPinned(text, problems);
    expect(value).toBeUndefined();
  });
});

describe("makePlan", () => {
  const files = filesIn(join(folder, "plan"));

  test("there are at least 4 job files that only the plan can refuse", () => expect(files.length).toBeGreaterThanOrEqual(4));

  test.each(files)("plan/%s reads well, and its plan reports each pinned problem and no other", (file) => {
    const text = readFileSync(join(folder, "plan", file), "utf8");
    const { value, problems } = parseJob(text);
    expect(problems).toEqual([]);
    if (value === undefined) expect.fail("the job file does not read");
    expectPinned(
      text,
      makePlan(value).problems.filter((problem) => problem.severity === "error"),
    );
  });
});

describe("warningsOf", () => {
  const files = filesIn(join(folder, "warnings"));

  test("there is a job file that is only warned of", () => expect(files.length).toBeGreaterThanOrEqual(1));

  test.each(files)("warnings/%s is built all the same, and its plan warns of each pinned problem and of no other", (file) => {
    const text = readFileSync(join(folder, "warnings", file), "utf8");
    const { value: plan } = makePlan(jobOf(text));
    if (plan === undefined) expect.fail("the job has no plan");
    expectPinned(text, plan.warnings);
  });
});

describe("beyondPaper", () => {
  const files = filesIn(join(folder, "sheets"));

  test("there is a job file that only its sheets can refuse", () => expect(files.length).toBeGreaterThanOrEqual(1));

  test.each(files)("sheets/%s reads and plans well, and its templates report each pinned problem and no other", (file) => {
    const text = readFileSync(join(folder, "sheets", file), "utf8");
    const { value: plan, problems } = makePlan(jobOf(text));
    expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
    if (plan === undefined) expect.fail("the job has no plan");
    expectPinned(text, beyondPaper(plan));
  });
});
