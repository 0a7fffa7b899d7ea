// What does the command line ask for?
import { parseArgs } from "node:util";
import type { Paper } from "../job/job.ts";

export interface BuildOptions {
  readonly jobs: string;
  readonly out: string;
  /** Files that were named; empty means every job in the folder. */
  readonly files: readonly string[];
  readonly pdf: boolean;
  readonly draft: boolean;
  readonly paper: Paper | undefined;
}

export type Request =
  | { readonly command: "build"; readonly options: BuildOptions }
  | { readonly command: "check"; readonly options: BuildOptions }
  | { readonly command: "explain"; readonly options: BuildOptions; readonly job: string; readonly value: string | undefined }
  | { readonly command: "schema"; readonly kind: "job" | "record" }
  | { readonly command: "say"; readonly text: string }
  | { readonly command: "refuse"; readonly text: string };

export const readArguments = (words: readonly string[], version: string): Request => {
  const [command, ...rest] = words;
  if (command === undefined || command === "--help" || command === "-h" || command === "help") return { command: "say", text: help };
  if (command === "--version") return { command: "say", text: `${version}\n` };
  if (command === "schema") return readSchema(rest);
  if (command !== "build" && command !== "check" && command !== "explain") return refuse(`there is no command "${command}"`);
  try {
    const { values, positionals } = parseArgs({ args: [...rest], options, allowPositionals: true });
    if (values.help === true) return { command: "say", text: helps[command] };
    const { paper } = values;
    if (paper !== undefined && paper !== "letter" && paper !== "a4") return refuse(`--paper takes letter or a4, not "${paper}"`);
    const pagesOnly = ["out", "no-pdf", "draft"] as const;
    const useless = command === "build" ? undefined : pagesOnly.find((name) => values[name] !== undefined);
    if (useless !== undefined) return refuse(`${command} makes no pages: --${useless} has no meaning there`);
    const [job, ...value] = positionals;
    const isExplain = command === "explain";
    const asked: BuildOptions = {
      jobs: values.jobs ?? "jobs",
      out: values.out ?? "output",
      files: isExplain ? [] : positionals,
      pdf: values["no-pdf"] !== true,
      draft: values.draft === true,
      paper,
    };
    if (!isExplain) return { command, options: asked };
    if (job === undefined) return refuse("explain takes a job: its file or its number");
    return { command, options: asked, job, value: value.length === 0 ? undefined : value.join(" ") };
  } catch (error) {
    return refuse(error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error));
  }
};

const readSchema = ([kind = "job", ...more]: readonly string[]): Request => {
  if (kind === "--help" || kind === "-h") return { command: "say", text: helps.schema };
  if ((kind === "job" || kind === "record") && more.length === 0) return { command: "schema", kind };
  return refuse(`schema takes job or record, not "${[kind, ...more].join(" ")}"`);
};

const options = {
  jobs: { type: "string" },
  out: { type: "string" },
  paper: { type: "string" },
  "no-pdf": { type: "boolean" },
  draft: { type: "boolean" },
  help: { type: "boolean", short: "h" },
} as const;

const refuse = (why: string): Request => ({ command: "refuse", text: `${why}\n\n${help}` });

const help = `reevebook turns job files into packets for fitting cable infill into guards.

  reevebook build [jobs...]   pages and PDFs of all job files, or of those named
  reevebook check [jobs...]   problems and the verdict of every check, without pages
  reevebook explain JOB VALUE where a number comes from: its inputs, formula, source and rounding
  reevebook schema [KIND]     what a job file (or a record) may hold, as JSON Schema for editors
  reevebook COMMAND --help    what a command takes
  reevebook --version

Exit code 0: all is well. 1: something is wrong in a job file or on the command line. 2: a fault of the program.
`;

const buildHelp = `reevebook build [jobs...]

  --jobs DIR            folder of the job files (default: jobs)
  --out DIR             folder to write to (default: output); nothing is written elsewhere
  --no-pdf              web pages and data only
  --paper letter|a4     paper for all jobs, whatever their files say
  --draft               PDFs without tags and bookmarks, in half the time

A job file that can't be built stops no other. What an earlier run made from it is removed,
so that no packet lies about that no longer follows from its job file.
REEVEBOOK_BROWSER names the browser that prints; without it an installed one is looked for.
`;

const checkHelp = `reevebook check [jobs...]

  --jobs DIR            folder of the job files (default: jobs)
  --paper letter|a4     paper for all jobs, whatever their files say
`;

const explainHelp = `reevebook explain JOB [VALUE]

  JOB                   a job file, or a job's number or its beginning
  VALUE                 a path into plan.json: runs.R1.tension.target, runs[0].tension.target,
                        bores.P3-05.height, tightening.R1.steps.3.reading, courses.5.height;
                        or a mark that stands on a sheet: R1, R1-05, P3-05, P1, A2, course 05.
                        Without it: what can be asked
  --jobs DIR            folder of the job files (default: jobs)

Entries of lists go by their mark where they have one (R1, P3-05, course or step number); in brackets
they are counted from 0, as in plan.json.
`;

const schemaHelp = `reevebook schema [job|record]

Prints a JSON Schema (draft 7): keys, words, examples and plausible ranges. Kept beside the job files as job.schema.json,
an editor that speaks to a YAML language server completes and checks a job file that begins with

  # yaml-language-server: $schema=job.schema.json
`;

const helps = { build: buildHelp, check: checkHelp, explain: explainHelp, schema: schemaHelp } as const;
