// What does a job file say, and what is wrong with it? Text -> Job and all problems at once.
import type * as z from "zod";
import type { Outcome, Problem } from "../problem/problem.ts";
import { problemPlace } from "../problem/show.ts";
import { jobOf } from "./assemble.ts";
import { type Blocks, checkBlocks } from "./checks.ts";
import { type JobData, readData, unreadable } from "./data.ts";
import { unwrap } from "./field.ts";
import { hasLike, missing, problemsOf, unknownKey } from "./issues.ts";
import type { Job } from "./job.ts";
import { locatorOf } from "./locate.ts";
import { type JobFile, jobFile } from "./schema.ts";

/** Reads a job file; the problems stand in the order of the file, each once. */
export function parseJob(text: string): Outcome<Job> {
  const data = readData(text);
  if (data.raw === undefined || data.raw === unreadable) return { value: undefined, problems: data.problems };
  if (!isBlock(data.raw)) return { value: undefined, problems: [...data.problems, notABlock(data.raw)] };
  const { blocks, problems } = readBlocks(data.raw, data.problems.length > 0);
  const all = [...data.problems, ...problems, ...checkBlocks(blocks)];
  if (all.length > 0) return { value: undefined, problems: inOrder(all, text, data) };
  return { value: jobOf(blocks as JobFile), problems: [] };
}

type RawBlock = Readonly<Record<string, unknown>>;

const isBlock = (raw: unknown): raw is RawBlock => typeof raw === "object" && raw !== null && !Array.isArray(raw);

function notABlock(raw: unknown): Problem {
  const fix = "begin with a copy of one of the example jobs";
  if (raw === "") return { severity: "error", path: [], what: "the file holds no job", fix };
  return { severity: "error", path: [], what: `the file is ${Array.isArray(raw) ? "a list" : "a single text"}, not a block of keys`, fix };
}

/** Each block by itself, so that a problem in one does not hide those that the checks find in another. `holed`: some value was unreadable. */
function readBlocks(raw: RawBlock, holed: boolean): { readonly blocks: Blocks; readonly problems: readonly Problem[] } {
  const shape: Readonly<Record<string, z.ZodType>> = jobFile.shape;
  const problems = Object.keys(raw)
    .filter((key) => !Object.hasOwn(shape, key))
    .map((key) => unknownKey(key, jobFile, []));
  const blocks: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(shape)) {
    if (!(key in raw)) {
      if (unwrap(schema) === undefined && !hasLike(key, Object.keys(shape), raw)) problems.push(missing(schema, [key]));
      continue;
    }
    const result = holed ? schema.safeParse(raw[key]) : readBlock(key, schema, raw[key]);
    if (result.success) blocks[key] = result.data;
    else for (const issue of result.error.issues) problems.push(...problemsOf(issue, schema, raw[key], [key]));
  }
  return { blocks: blocks as Blocks, problems };
}

/** Blocks that were read without a problem, by their key and all that they say: the jobs of one firm have most of their blocks alike. */
const read = new Map<string, z.ZodSafeParseSuccess<unknown>>();
const MOST_READ = 400;

/** What a block means follows from its texts alone, and nobody changes what was read. Only blocks of texts may be asked for. */
function readBlock(key: string, schema: z.ZodType, raw: unknown): z.ZodSafeParseResult<unknown> {
  const said = `${key} ${JSON.stringify(raw)}`;
  const known = read.get(said);
  if (known !== undefined) return known;
  const result = schema.safeParse(raw);
  if (!result.success) return result;
  if (read.size >= MOST_READ) read.clear();
  read.set(said, result);
  return result;
}

function inOrder(problems: readonly Problem[], text: string, data: JobData): readonly Problem[] {
  const locate = locatorOf(text, data.document());
  const placed = problems.map((problem) => ({ problem, place: problemPlace(problem, { text, locate }) }));
  placed.sort((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
  const seen = new Set<string>();
  return placed.flatMap(({ problem, place }) => {
    const key = `${place.line}:${place.column}:${problem.what}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [problem];
  });
}
