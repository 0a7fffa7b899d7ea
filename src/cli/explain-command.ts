// Where does a number of one job come from? Its plan alone is made, no page and no browser.
import { basename } from "node:path";
import { askable, explain } from "../explain/explain.ts";
import { markExamples } from "../explain/marks.ts";
import { parseJob } from "../job/parse.ts";
import type { BuildOptions } from "./arguments.ts";
import { jobBeside } from "./beside.ts";
import type { Effects, Files } from "./effects.ts";
import { answerText, askableText } from "./explain-text.ts";
import { findJobs, type JobFile, readJob } from "./manifest.ts";
import { prepare, problemText, textOf } from "./planner.ts";
import { printable } from "./printable.ts";

export interface ExplainRequest {
  readonly options: BuildOptions;
  /** File, name of a file in the folder, or job number; their beginning does where it names one job. */
  readonly job: string;
  /** Path or mark; undefined asks what can be asked. */
  readonly value: string | undefined;
}

/** Exit code 1 when there is no such job or value, or when the job has an error. */
export const explainJob = ({ options, job, value }: ExplainRequest, { files, output }: Effects): number => {
  const found = jobNamed(files, options, job);
  if (typeof found === "string") {
    output.warn(`${found}\n`);
    return 1;
  }
  const { plan, problems } = prepare(found, options);
  if (plan === undefined) {
    output.warn(problemText(found, problems));
    return 1;
  }
  if (value === undefined) {
    output.write(askableText(askable(plan), markExamples(plan)));
    return 0;
  }
  const answer = explain(plan, value);
  if (answer.kind !== "unknown") {
    output.write(answerText(answer));
    return 0;
  }
  const nearest = answer.nearest.map((one) => `  ${one}\n`).join("");
  output.warn(`the plan of ${found.path} has no "${printable(value)}"; nearest to it:\n${nearest}`);
  return 1;
};

/** The file of a job, or why there is none. */
function jobNamed(files: Files, options: BuildOptions, job: string): JobFile | string {
  const read = (path: string): JobFile | undefined => {
    const file = readJob(files, jobBeside(files, path), { out: options.out, salt: "" });
    return typeof file === "string" ? undefined : file;
  };
  const itself = job === "" ? undefined : read(job);
  if (itself !== undefined) return itself;
  const paths = findJobs(files, { ...options, files: [] });
  if (paths === undefined) return `there is no job file "${job}" and no folder "${options.jobs}"; --jobs names another`;
  const jobs = paths.flatMap((path) => read(path) ?? []);
  const asked = job.toLowerCase();
  const names = jobs.map((file) => ({ file, names: namesOf(file, asked) }));
  for (const fits of [(name: string) => name === asked, (name: string) => name.startsWith(asked)]) {
    const fitting = names.filter((one) => one.names.some(fits)).map(({ file }) => file);
    if (fitting[0] !== undefined && fitting.length === 1) return fitting[0];
    if (fitting.length > 1) return `"${job}" may be each of these jobs: ${fitting.map(({ path }) => path).join(", ")}`;
  }
  return `there is no job "${job}"; there are: ${paths.map((path) => basename(path)).join(", ")}`;
}

/** Its file's name with and without ending, and the job's number where the file holds the word at all. */
function namesOf(file: JobFile, asked: string): readonly string[] {
  const name = basename(file.path).toLowerCase();
  const names = [name, name.replace(/\.ya?ml$/, "")];
  if (!textOf(file).toLowerCase().includes(asked)) return names;
  const number = parseJob(textOf(file)).value?.identity.number;
  return number === undefined ? names : [...names, number.toLowerCase()];
}
