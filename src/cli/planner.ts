// What follows from a job file? Its problems, and its plan, made again when it was not worth keeping.
import type { Revised } from "../changes/changes.ts";
import { checkIssued } from "../changes/check-issued.ts";
import { comparePlans } from "../changes/compare-plans.ts";
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
import type { BesideFile } from "./beside.ts";
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
  /** What was issued before and what has changed since, where that is known. */
  readonly revised: Revised | undefined;
  /** Of the file that was issued; errors stand in the way, too. */
  readonly issuedProblems: readonly Problem[];
}

export const textOf = ({ bytes }: Pick<JobFile, "bytes">): string => Buffer.from(bytes).toString("utf8");

/** Reads and plans one job; pure but for the work. */
export const prepare = (file: JobFile, { paper }: BuildOptions): Prepared => {
  const nothing = { file, plan: undefined, job: undefined, built: undefined, recordProblems: [], revised: undefined, issuedProblems: [] };
  if (oddName(file.path)) return { ...nothing, problems: [oddNameProblem] };
  const { job, plan: planned, problems: own } = planText(textOf(file), paper);
  const problems = [...own, ...(planned === undefined ? [] : beyondPaper(planned))];
  const { value: built, problems: recordProblems } = recordOf(file, planned);
  const { value: revised, problems: issuedProblems } = issuedOf(file, { plan: planned, paper });
  const plan = [problems, recordProblems, issuedProblems].some(hasErrors) ? undefined : planned;
  return { file, plan, job, problems, built, recordProblems, revised, issuedProblems };
};

/** The plan of a job file; none where the text has errors. */
const planText = (
  text: string,
  paper: BuildOptions["paper"],
): { readonly job: Job | undefined; readonly plan: Plan | undefined; readonly problems: readonly Problem[] } => {
  const read = parseJob(text);
  if (read.value === undefined || hasErrors(read.problems)) return { job: undefined, plan: undefined, problems: read.problems };
  const job = paper === undefined ? read.value : { ...read.value, paper };
  const planned = makePlan(job);
  return { job, plan: planned.value, problems: [...read.problems, ...planned.problems] };
};

const noRecord: Outcome<Comparison> = { value: undefined, problems: [] };

const recordOf = ({ record }: JobFile, plan: Plan | undefined): Outcome<Comparison> => {
  if (record === undefined) return noRecord;
  const odd = oddBeside(record, "record");
  if (odd !== undefined) return { value: undefined, problems: [odd] };
  const read = parseRecord(textOf(record));
  return read.value === undefined || plan === undefined ? { ...noRecord, problems: read.problems } : compareRecord(read.value, plan);
};

const noIssued: Outcome<Revised> = { value: undefined, problems: [] };

/** What the sheets that were issued said, and what has changed since. Warnings of a plan that nobody builds from any more are not told. */
const issuedOf = (
  { issued, bytes }: JobFile,
  { plan, paper }: { readonly plan: Plan | undefined; readonly paper: BuildOptions["paper"] },
): Outcome<Revised> => {
  if (issued === undefined) return noIssued;
  const odd = oddBeside(issued, "issued file");
  if (odd !== undefined) return { value: undefined, problems: [odd] };
  const text = textOf(issued);
  const before = planText(text, paper);
  if (before.plan === undefined || hasErrors(before.problems))
    return { value: undefined, problems: [...before.problems.filter(({ severity }) => severity === "error"), noPlanOfIssued] };
  if (plan === undefined) return noIssued;
  const problems = checkIssued(before.plan, plan);
  if (problems.length > 0) return { value: undefined, problems };
  return {
    value: { issued: before.plan, changes: comparePlans({ plan: before.plan, text }, { plan, text: textOf({ bytes }) }) },
    problems,
  };
};

/** What was issued is not to be corrected afterwards: another version of the program may have planned it. */
const noPlanOfIssued: Problem = {
  severity: "error",
  path: [],
  what: "this program makes no plan of what was issued, so it can't say what has changed",
  fix: "see that it is the file that was issued, whole; if it is, move it away and compare by hand: what was issued is never changed",
};

const oddBeside = ({ path, rivals }: BesideFile, kind: string): Problem | undefined => {
  if (oddName(path)) return oddNameProblem;
  return rivals.length > 0 ? rivalProblem(rivals, kind) : undefined;
};

const rivalProblem = (rivals: readonly string[], kind: string): Problem => ({
  severity: "error",
  path: [],
  what: `the same job has another ${kind}: ${rivals.join(", ")}`,
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

/** What is wrong with a job and with the files beside it, each with its place in its own file. */
export const allProblemsText = ({ file, problems, recordProblems, issuedProblems }: Prepared): string =>
  (
    [
      [file, problems],
      [file.record, recordProblems],
      [file.issued, issuedProblems],
    ] as const
  )
    .map(([one, found]) => (one === undefined || found.length === 0 ? "" : problemText(one, found)))
    .join("");

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

/** A plan, what was built of it, and what has changed since it was issued before. */
export interface Planned {
  readonly plan: Plan;
  readonly built: Comparison | undefined;
  readonly revised: Revised | undefined;
}

export const makePlanner = (options: BuildOptions): Planner => {
  const kept = new Map<string, Planned>();
  let last: { readonly path: string; readonly planned: Planned } | undefined;
  return {
    keep: ({ file, plan, built, revised }) => {
      if (plan !== undefined && kept.size < KEPT) kept.set(file.path, { plan, built, revised });
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

const plannedAgain = ({ file, plan, built, revised }: Prepared): Planned => {
  if (plan === undefined) throw new Error(`${file.path} had a plan before and has none now`);
  return { plan, built, revised };
};
