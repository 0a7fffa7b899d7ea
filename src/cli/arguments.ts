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
  | { readonly command: "freeze"; readonly options: BuildOptions; readonly into: string; readonly print: boolean }
  | { readonly command: "verify"; readonly folders: readonly string[]; readonly print: boolean }
  | { readonly command: "blank"; readonly number: string }
  | { readonly command: "say"; readonly text: string }
  | { readonly command: "refuse"; readonly text: string };

export const readArguments = (words: readonly string[], version: string): Request => {
  const [command, ...rest] = words;
  if (command === undefined || command === "--help" || command === "-h" || command === "help") return { command: "say", text: help };
  if (command === "--version") return { command: "say", text: `${version}\n` };
  if (command === "schema") return readSchema(rest);
  if (command === "blank") return blankOf(rest);
  if (!isCommand(command)) return refuse(`there is no command "${command}"`);
  try {
    const { values, positionals } = parseArgs({ args: [...rest], options, allowPositionals: true });
    if (values.help === true) return { command: "say", text: helps[command] };
    const { paper } = values;
    if (paper !== undefined && paper !== "letter" && paper !== "a4") return refuse(`--paper takes letter or a4, not "${paper}"`);
    const { why, names } = meaningless[command];
    const useless = names.find((name) => values[name] !== undefined);
    if (useless !== undefined) return refuse(`${command} ${why}: --${useless} has no meaning there`);
    const empty = (["jobs", "out"] as const).find((name) => values[name] === "");
    if (empty !== undefined) return refuse(`--${empty} takes the name of a folder, not ""`);
    const asked: BuildOptions = {
      jobs: values.jobs ?? "jobs",
      out: values.out ?? "output",
      files: command === "explain" ? [] : positionals,
      pdf: values["no-pdf"] !== true,
      draft: values.draft === true,
      paper,
    };
    return requestOf(command, { asked, positionals, into: values.into, print: values.print === true });
  } catch (error) {
    return refuse(error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error));
  }
};

const readSchema = ([kind = "job", ...more]: readonly string[]): Request => {
  if (kind === "--help" || kind === "-h") return { command: "say", text: helps.schema };
  if ((kind === "job" || kind === "record") && more.length === 0) return { command: "schema", kind };
  return refuse(`schema takes job or record, not "${[kind, ...more].join(" ")}"`);
};

interface Words {
  readonly asked: BuildOptions;
  readonly positionals: readonly string[];
  readonly into: string | undefined;
  readonly print: boolean;
}

const requestOf = (command: Command, { asked, positionals, into, print }: Words): Request => {
  if (command === "build" || command === "check") return { command, options: asked };
  if (command === "verify") {
    return positionals.length === 0 ? refuse("verify takes the folders of bags") : { command, folders: positionals, print };
  }
  if (command === "freeze") {
    if (into === undefined) return refuse("freeze takes --into DIR, the folder that keeps what was issued");
    if (print && !asked.pdf) return refuse("--print has no meaning with --no-pdf");
    return { command, options: asked, into, print };
  }
  const [job, ...value] = positionals;
  if (job === undefined) return refuse("explain takes a job: its file or its number");
  return { command, options: asked, job, value: value.length === 0 ? undefined : value.join(" ") };
};

const isCommand = (word: string): word is Command => word !== "schema" && Object.hasOwn(helps, word);

const blankOf = ([number, ...more]: readonly string[]): Request => {
  if (number === "--help" || number === "-h") return { command: "say", text: blankHelp };
  return number === undefined || more.length > 0
    ? refuse("blank takes one number, for example 0042-new-deck")
    : { command: "blank", number };
};

const options = {
  jobs: { type: "string" },
  out: { type: "string" },
  paper: { type: "string" },
  "no-pdf": { type: "boolean" },
  draft: { type: "boolean" },
  into: { type: "string" },
  print: { type: "boolean" },
  help: { type: "boolean", short: "h" },
} as const;

/** Options that a command refuses, and why. */
const meaningless = {
  build: { why: "freezes nothing", names: ["into", "print"] },
  check: { why: "makes no pages", names: ["out", "no-pdf", "draft", "into", "print"] },
  explain: { why: "makes no pages", names: ["out", "no-pdf", "draft", "into", "print"] },
  freeze: { why: "freezes no drafts", names: ["draft"] },
  verify: { why: "reads bags and nothing else", names: ["jobs", "out", "paper", "no-pdf", "draft", "into"] },
} as const;

const refuse = (why: string): Request => ({ command: "refuse", text: `${why}\n\n${help}` });

const help = `reevebook turns job files into packets for fitting cable infill into guards.

  reevebook build [jobs...]   pages and PDFs of all job files, or of those named
  reevebook check [jobs...]   problems and the verdict of every check, without pages
  reevebook blank NUMBER      a job file to fill in, with every word that it takes
  reevebook explain JOB VALUE where a number comes from: its inputs, formula, source and rounding
  reevebook schema [KIND]     what a job file (or a record) may hold, as JSON Schema for editors
  reevebook freeze --into DIR what was issued, kept with its hashes: never written over
  reevebook verify DIR...     whether what was kept is still what was issued
  reevebook COMMAND --help    what a command takes
  reevebook --version

Exit code 0: all is well. 1: something is wrong in a job file or on the command line. 2: a fault of the program.
`;

const buildHelp = `reevebook build [jobs...]

  --jobs DIR            folder of the job files (default: jobs)
  --out DIR             folder to write to (default: output); nothing is written elsewhere, but that the
                        browser of the packages is unpacked once, into .cache beside the program
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

const blankHelp = `reevebook blank NUMBER

  NUMBER                of the new job: letters, digits and single hyphens; it names the output folder

Prints a job file that reads without a problem, with every word that the format knows and a comment on each.
Keep it: reevebook blank 0042-new-deck > jobs/0042-new-deck.yaml
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

const freezeHelp = `reevebook freeze [jobs...] --into DIR

  --into DIR            folder that keeps what was issued; nothing is written elsewhere
  --jobs DIR            folder of the job files (default: jobs)
  --out DIR             folder that the jobs were built into (default: output)
  --paper letter|a4     as it was given to build
  --no-pdf              as it was given to build
  --print               print the PDFs again and compare; without it their names and sizes are compared

Each job's packet goes into DIR/NUMBER-rREVISION, a bag of the open standard BagIt (RFC 8493): pages, PDFs,
data, the job file, its record (NAME.record.yaml) and what was issued before (NAME.issued.yaml) where there are
such, with SHA-256 and SHA-512 of every file.
The packet must be built first, from the job file as it is now: it is made again and compared byte for byte.
Dates are those of the job file. A revision that was frozen is never written over: what has changed since is
a new revision, with a line of its own under "job: revisions".
`;

const verifyHelp = `reevebook verify DIR...

  DIR                   a bag, or a folder of bags
  --print               print the PDFs again and compare; without it they are checked by their hashes

Complete: every file that a manifest lists is there, and no other. Valid: every hash is right (RFC 8493).
Where this very program made the bag, page, plan and data are made again from the job file in it and compared
byte for byte. Nothing is written. Exit code 0: all bags are valid. 1: one is not, or there is none.

Hashes guard against damage. They do not guard against somebody who changes a file and its manifests too:
against that, keep copies apart, or give the hashes of the tag manifests to somebody else.
`;

const helps = {
  build: buildHelp,
  check: checkHelp,
  explain: explainHelp,
  freeze: freezeHelp,
  verify: verifyHelp,
  schema: schemaHelp,
} as const;
type Command = Exclude<keyof typeof helps, "schema">;
