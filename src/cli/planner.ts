// What follows from a job file? Its problems, and its plan, made again when it was not worth keeping.
import type { Job } from "../job/job.ts";
import { locator } from "../job/locate.ts";
import { parseJob } from "../job/parse.ts";
import { beyondPaper } from "../packet/templates/beyond-paper.ts";
import { makePlan } from "../plan/make-plan.ts";
import type { Plan } from "../plan/plan.ts";
import { hasErrors, type Problem } from "../problem/problem.ts";
import { showProblems } from "../problem/show.ts";
import type { BuildOptions } from "./arguments.ts";
import { type JobFile, oddName } from "./manifest.ts";

export interface Prepared {
  readonly file: JobFile;
  /** undefined when a problem stands in the way. */
  readonly plan: Plan | undefined;
  readonly job: Job | undefined;
  readonly problems: readonly Problem[];
}

export const textOf = (file: JobFile): string => Buffer.from(file.bytes).toString("utf8");

/** Reads and plans one job; pure but for the work. */
export const prepare = (file: JobFile, { paper }: BuildOptions): Prepared => {
  if (oddName(file.path)) return { file, plan: undefined, job: undefined, problems: [oddNameProblem] };
  const read = parseJob(textOf(file));
  const job = read.value === undefined || paper === undefined ? read.value : { ...read.value, paper };
  if (job === undefined || hasErrors(read.problems)) return { file, plan: undefined, job: undefined, problems: read.problems };
  const planned = makePlan(job);
  const hidden = planned.value === undefined ? [] : beyondPaper(planned.value);
  const problems = [...read.problems, ...planned.problems, ...hidden];
  return { file, plan: hasErrors(problems) ? undefined : planned.value, job, problems };
};

const oddNameProblem: Problem = {
  severity: "error",
  path: [],
  what: "the name of this file has characters that not every system takes",
  fix: "name it with letters, digits, hyphens, dots and spaces, beginning with a letter or digit",
};

export const problemText = (file: JobFile, problems: readonly Problem[]): string => {
  const text = textOf(file);
  return showProblems(problems, { file: file.path, text, locate: locator(text) });
};

/** The same job number in two files: an error in both, since one would overwrite the other. */
export const duplicateProblem = (number: string, others: readonly string[]): Problem => ({
  severity: "error",
  path: ["job", "number"],
  what: `the job number ${number} is used by another file as well: ${others.join(", ")}`,
  fix: "give each job a number of its own; it names the folder of its packet",
});

/** Plans are kept for so many jobs, about 110 KB each, until they are asked for; beyond, making one again is cheaper than the memory. */
const KEPT = 1500;

export interface Planner {
  readonly keep: (prepared: Prepared) => void;
  readonly planOf: (file: JobFile) => Plan;
}

export const makePlanner = (options: BuildOptions): Planner => {
  const kept = new Map<string, Plan>();
  let last: { readonly path: string; readonly plan: Plan } | undefined;
  return {
    keep: ({ file, plan }) => {
      if (plan !== undefined && kept.size < KEPT) kept.set(file.path, plan);
    },
    planOf: (file) => {
      if (last?.path === file.path) return last.plan;
      const plan = kept.get(file.path) ?? prepare(file, options).plan;
      kept.delete(file.path);
      if (plan === undefined) throw new Error(`${file.path} had a plan before and has none now`);
      last = { path: file.path, plan };
      return plan;
    },
  };
};
