// Wrong job files that say in comments what must be reported, and where:
//   # problem LINE:COLUMN what was found | fix: what to do
// A fix that ends with ... is pinned as far as it goes. Each file must report what is pinned in it and nothing else.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { locator } from "../../src/job/locate.ts";
import { parseJob } from "../../src/job/parse.ts";
import { beyondPaper } from "../../src/packet/templates/beyond-paper.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Problem } from "../../src/problem/problem.ts";
import { problemPlace } from "../../src/problem/show.ts";
import { jobOf } from "../support/example-jobs.ts";

const folder = import.meta.dirname;
const filesIn = (path: string): readonly string[] => readdirSync(path).filter((file) => file.endsWith(".yaml"));

interface Told {
  readonly place: string;
  readonly what: string;
  readonly fix: string;
}

function pinnedIn(text: string): readonly Told[] {
  return [...text.matchAll(/^\s*# problem (\d+:\d+) (.*) \| fix: (.*)$/gm)].map(([, place = "", what = "", fix = ""]) => ({
    place,
    what,
    fix,
  }));
}

function toldOf(problems: readonly Problem[], text: string): readonly Told[] {
  const locate = locator(text);
  return problems.map((problem) => {
    const { line, column } = problemPlace(problem, { text, locate });
    return { place: `${line}:${column}`, what: problem.what, fix: problem.fix };
  });
}

/** Cuts what was told to what is pinned, where the pin is cut. */
function cutToPins(told: readonly Told[], pins: readonly Told[]): readonly Told[] {
  return told.map((one) => {
    const pin = pins.find(({ place, what, fix }) => place === one.place && what === one.what && fix.endsWith("..."));
    return pin !== undefined && one.fix.startsWith(pin.fix.slice(0, -3)) ? { ...one, fix: pin.fix } : one;
  });
}

function expectPinned(text: string, problems: readonly Problem[]): void {
  const pins = pinnedIn(text);
  expect(pins.length).toBeGreaterThan(0);
  expect(cutToPins(toldOf(problems, text), pins)).toEqual(pins);
}

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
