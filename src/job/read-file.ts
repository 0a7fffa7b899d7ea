// What does a file of blocks say, and what is wrong with it? Each block is read by itself, so that all problems are told at once.
import type * as z from "zod";
import type { Outcome, Problem } from "../problem/problem.ts";
import { problemPlace } from "../problem/show.ts";
import { type JobData, type Room, readData, unreadable } from "./data.ts";
import { unwrap, wordOf } from "./field.ts";
import { hasLike, missing, problemsOf, unknownKey } from "./issues.ts";
import { locatorOf } from "./locate.ts";

/** The blocks of a file that read well. */
export type BlocksOf<T> = { readonly [K in keyof T]?: T[K] | undefined };

export interface FileKind<S extends z.ZodObject> {
  readonly schema: S;
  /** What an empty file lacks: "job". */
  readonly holds: string;
  /** What to begin with: "one of the example jobs". */
  readonly copy: string;
  /** Default: a job file's. */
  readonly room?: Room | undefined;
  /** What can be wrong although each value reads well. */
  readonly check: (blocks: BlocksOf<z.output<S>>) => readonly Problem[];
}

/** Reads a file; the problems stand in the order of the file, each once. Any problem stands in the way of a value. */
export function readFileText<S extends z.ZodObject>(text: string, { schema, holds, copy, room, check }: FileKind<S>): Outcome<z.output<S>> {
  const data = readData(text, room);
  if (data.raw === undefined || data.raw === unreadable) return { value: undefined, problems: data.problems };
  if (!isBlock(data.raw)) return { value: undefined, problems: [...data.problems, notABlock(data.raw, { holds, copy })] };
  const { blocks, problems } = readBlocks(data.raw, { schema, holed: data.problems.length > 0 });
  const all = [...data.problems, ...problems, ...check(blocks as BlocksOf<z.output<S>>)];
  if (all.length > 0) return { value: undefined, problems: inOrder(all, text, data) };
  return { value: blocks as z.output<S>, problems: [] };
}

type RawBlock = Readonly<Record<string, unknown>>;

const isBlock = (raw: unknown): raw is RawBlock => typeof raw === "object" && raw !== null && !Array.isArray(raw);

function notABlock(raw: unknown, { holds, copy }: { readonly holds: string; readonly copy: string }): Problem {
  const fix = `begin with a copy of ${copy}`;
  if (raw === "") return { severity: "error", path: [], what: `the file holds no ${holds}`, fix };
  return { severity: "error", path: [], what: `the file is ${Array.isArray(raw) ? "a list" : "a single text"}, not a block of keys`, fix };
}

/** A problem in one block does not hide those that the checks find in another. `holed`: some value was unreadable. */
function readBlocks(
  raw: RawBlock,
  { schema: whole, holed }: { readonly schema: z.ZodObject; readonly holed: boolean },
): { readonly blocks: Readonly<Record<string, unknown>>; readonly problems: readonly Problem[] } {
  const shape = whole.shape as Readonly<Record<string, z.ZodType>>;
  const file = wordOf(whole)?.name ?? "the file";
  const problems = Object.keys(raw)
    .filter((key) => !Object.hasOwn(shape, key))
    .map((key) => unknownKey(key, whole, []));
  const blocks: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(shape)) {
    if (!(key in raw)) {
      if (unwrap(schema) === undefined && !hasLike(key, Object.keys(shape), raw)) problems.push(missing(schema, [key], { file }));
      continue;
    }
    const result = holed ? schema.safeParse(raw[key]) : readBlock(`${file} ${key}`, schema, raw[key]);
    if (result.success) blocks[key] = result.data;
    else for (const issue of result.error.issues) problems.push(...problemsOf(issue, schema, raw[key], [key]));
  }
  return { blocks, problems };
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
