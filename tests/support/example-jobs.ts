// How do tests get at the example jobs, as they are or with a line changed?
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Revised } from "../../src/changes/changes.ts";
import { comparePlans } from "../../src/changes/compare-plans.ts";
import type { Job } from "../../src/job/job.ts";
import { parseJob } from "../../src/job/parse.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";

const folder = join(import.meta.dirname, "../../jobs");
/** Jobs for tests alone: older examples with round figures, some of which the frame does not bear. */
const own = join(import.meta.dirname, "jobs");

export const exampleNames: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith(".yaml") && !/\.(?:record|issued)\.yaml$/.test(file))
  .sort()
  .map((file) => file.replace(/\.yaml$/, ""));

export const exampleText = (name: string): string => {
  const file = `${name}.yaml`;
  return readFileSync(join(existsSync(join(own, file)) ? own : folder, file), "utf8");
};

/** The text of an example with lines replaced; a replacement that finds nothing is a fault of the test. */
export function changedText(name: string, changes: Readonly<Record<string, string>>): string {
  return Object.entries(changes).reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`${name} does not hold ${JSON.stringify(from)}`);
    return text.replace(from, to);
  }, exampleText(name));
}

/** The text of a job with other sides, each on lines of its own. */
export function withSides(text: string, sides: string): string {
  const own = /(?<= {2}sides:\n)(?: {4}.*\n)+/;
  if (!own.test(text)) throw new Error("a job without sides");
  return text.replace(own, sides);
}

export function jobOf(text: string): Job {
  const { value, problems } = parseJob(text);
  if (value === undefined) throw new Error(problems.map((problem) => problem.what).join("; "));
  return value;
}

export function planOf(text: string): Plan {
  const { value, problems } = makePlan(jobOf(text));
  if (value === undefined) throw new Error(problems.map((problem) => problem.what).join("; "));
  return value;
}

export const examplePlan = (name: string): Plan => planOf(exampleText(name));

/** What has changed in an example since it was issued before; undefined where nothing lies beside it. */
export function revisedExample(name: string): Revised | undefined {
  const path = join(folder, `${name}.issued.yaml`);
  return existsSync(path) ? revised(readFileSync(path, "utf8"), exampleText(name)) : undefined;
}

/** What has changed from one text of a job file to another. */
export function revised(before: string, after: string): Revised {
  const issued = planOf(before);
  return { issued, changes: comparePlans({ plan: issued, text: before }, { plan: planOf(after), text: after }) };
}
