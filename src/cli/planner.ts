// What follows from a job file? Its problems, and its plan, made again when it was not worth keeping.
import type { Job } from "../job/job.ts";
import { locator } from "../job/locate.ts";
import { parseJob } from "../job/parse.ts";
import { beyondPaper } from "../packet/templates/beyond-paper.ts";
import { makePlan } from "../plan/make-plan.ts";
import type { Plan } from "../plan/plan.ts";
import { hasErrors, type Outcome, type Problem } from "../problem/problem.ts";
import { showProblems } from "../problem/show.ts";
import { compareRecord } from "../record/compare.ts";
import { parseRecord } from "../record/parse.ts";
import type { Comparison } from "../record/record.ts";
import type { BuildOptions } from "./arguments.ts";
import { type JobFile, oddName } from "./manifest.ts";

export interface Prepared {
  readonly file: JobFile;
  /** undefined when a problem stands in the way. */
  readonly plan: Plan | undefined;
  readonly job: Job | undefined;
  readonly problems: readonly Problem[];
  /** What was built, where there is a record of it. */
  readonly built: Comparison | undefined;
  /** Of the record; errors stand in the way of the plan's sheets too. */
  readonly recordProblems: readonly Problem[];
}

export const textOf = ({ bytes }: Pick<JobFile, "bytes">): string => Buffer.from(bytes).toString("utf8");

/** Reads and plans one job; pure but for the work. */
export const prepare = (file: JobFile, { paper }: BuildOptions): Prepared => {
  const nothing = { file, plan: undefined, job: undefined, built: undefined, recordProblems: [] };
  if (oddName(file.path)) return { ...nothing, problems: [oddNameProblem] };
  const read = parseJob(textOf(file));
  const job = read.value === undefined || paper === undefined ? read.value : { ...read.value, paper };
  if (job === undefined || hasErrors(read.problems)) {
    return { ...nothing, problems: read.problems, recordProblems: recordOf(file, undefined).problems };
  }
  const planned = makePlan(job);
  const hidden = planned.value === undefined ? [] : beyondPaper(planned.value);
  const problems = [...read.problems, ...planned.problems, ...hidden];
  const { value: built, problems: recordProblems } = recordOf(file, planned.value);
  const plan = hasErrors(problems) || hasErrors(recordProblems) ? undefined : planned.value;
  return { file, plan, job, problems, built, recordProblems };
};

const noRecord: Outcome<Comparison> = { value: undefined, problems: [] };

const recordOf = ({ record }: JobFile, plan: Plan | undefined): Outcome<Comparison> => {
  if (record === undefined) return noRecord;
  if (oddName(record.path)) return { value: undefined, problems: [oddNameProblem] };
  if (record.rivals.length > 0) return { value: undefined, problems: [rivalProblem(record.rivals)] };
  const read = parseRecord(textOf(record));
  return read.value === undefined || plan === undefined ? { ...noRecord, problems: read.problems } : compareRecord(read.value, plan);
};

const rivalProblem = (rivals: readonly string[]): Problem => ({
  severity: "error",
  path: [],
  what: `the same job has another record: ${rivals.join(", ")}`,
  fix: "keep one of them, and move the other away",
});

const oddNameProblem: Problem = {
  severity: "error",
  path: [],
  what: "the name of this file has characters that not every system takes",
  fix: "name it with letters, digits, hyphens, dots and spaces, beginning with a letter or digit",
};

export const problemText = (file: Pick<JobFile, "path" | "bytes">, problems: readonly Problem[]): string => {
  const text = textOf(file);
  return showProblems(problems, { file: file.path, text, locate: locator(text) });
};

/** What is wrong with a job and with its record, each with its place in its own file. */
export const allProblemsText = ({ file, problems, recordProblems }: Prepared): string =>
  [
    problems.length === 0 ? "" : problemText(file, problems),
    file.record === undefined || recordProblems.length === 0 ? "" : problemText(file.record, recordProblems),
  ].join("");

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
  readonly planOf: (file: JobFile) => Planned;
}

/** A plan, and what was built of it. */
export interface Planned {
  readonly plan: Plan;
  readonly built: Comparison | undefined;
}

export const makePlanner = (options: BuildOptions): Planner => {
  const kept = new Map<string, Planned>();
  let last: { readonly path: string; readonly planned: Planned } | undefined;
  return {
    keep: ({ file, plan, built }) => {
      if (plan !== undefined && kept.size < KEPT) kept.set(file.path, { plan, built });
    },
    planOf: (file) => {
      if (last?.path === file.path) return last.planned;
      const planned = kept.get(file.path) ?? plannedAgain(prepare(file, options));
      kept.delete(file.path);
      last = { path: file.path, planned };
      return planned;
    },
  };
};

const plannedAgain = ({ file, plan, built }: Prepared): Planned => {
  if (plan === undefined) throw new Error(`${file.path} had a plan before and has none now`);
  return { plan, built };
};
