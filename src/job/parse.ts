// What does a job file say, and what is wrong with it? Text -> Job and all problems at once.
import type { Outcome } from "../problem/problem.ts";
import { jobOf } from "./assemble.ts";
import { checkBlocks } from "./checks.ts";
import type { Job } from "./job.ts";
import { readFileText } from "./read-file.ts";
import { jobFile } from "./schema.ts";

/** Reads a job file; the problems stand in the order of the file, each once. */
export function parseJob(text: string): Outcome<Job> {
  const { value, problems } = readFileText(text, { schema: jobFile, holds: "job", copy: "one of the example jobs", check: checkBlocks });
  return value === undefined ? { value: undefined, problems } : { value: jobOf(value), problems };
}
