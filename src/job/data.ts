// Which data does the text of a job file or a record hold, before anybody asks what they mean?
import { type Document, isAlias, isMap, isScalar, isSeq, type Node, parseDocument, visit, type YAMLError } from "yaml";
import type { Problem } from "../problem/problem.ts";
import { quoted } from "../units/notation.ts";
import { readPlainLines } from "./plain-lines.ts";

export type JobDocument = Document.Parsed;

export interface JobData {
  /** Where everything stands, for problems; read when it is asked for. */
  readonly document: () => JobDocument | null;
  /** Blocks, lists and texts; undefined where the text is no YAML. */
  readonly raw: unknown;
  readonly problems: readonly Problem[];
}

/** Stands where a value was that has been complained about already. */
export const unreadable: unique symbol = Symbol("unreadable");

/** How much a kind of file may hold: more is not looked into. */
export interface Room {
  /** "job file" */
  readonly name: string;
  readonly letters: number;
  /** Keys of a block, entries of a list. */
  readonly entries: number;
}

/** Twenty-five times a usual one. The parser takes a second for twice as much. */
const jobRoom: Room = { name: "job file", letters: 100_000, entries: 500 };
const MOST_DEPTH = 20;

/** Every value stays the text that was written: 0001 is a number with its zeros, 2026-04-02 no point in time. */
export function readData(text: string, room: Room = jobRoom): JobData {
  if (text.length > room.letters) {
    const what = `the file has ${text.length} letters; no ${room.name} needs more than ${room.letters}`;
    return failed(null, [{ severity: "error", path: [], what, fix: `check that this is a ${room.name}` }]);
  }
  if (text.includes("\0")) {
    const what = "the file is not plain text in UTF-8";
    return failed(null, [{ severity: "error", path: [], what, fix: "save it as plain text in UTF-8, or name another file" }]);
  }
  const plain = readPlainLines(text);
  if (plain !== undefined) return { document: () => parseYaml(text), raw: plain, problems: [] };
  const document = parseYaml(text);
  if (document === null) return failed(null, [tooDeep()]);
  if (document.errors.length > 0)
    return failed(
      document,
      document.errors.slice(0, MOST_SYNTAX).map((error) => syntaxProblem(error, document, text)),
    );
  const problems: Problem[] = [];
  const raw = plainOf(document.contents, { problems, room, depth: 0 });
  return { document: () => document, raw, problems };
}

const failed = (document: JobDocument | null, problems: readonly Problem[]): JobData => ({
  document: () => document,
  raw: undefined,
  problems,
});

/** One slip of the pen confuses the rest of the text: what follows the first few is noise. */
const MOST_SYNTAX = 1;

export function parseYaml(text: string): JobDocument | null {
  try {
    return parseDocument(text, { schema: "failsafe", prettyErrors: false, uniqueKeys: false, logLevel: "error" });
  } catch (error) {
    // Where even the parser's own guard finds the stack full.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const tooDeep = (range?: readonly [number, number]): Problem => ({
  severity: "error",
  path: [],
  ...(range === undefined ? {} : { range }),
  what: "blocks are nested more deeply than any job file needs",
  fix: `keep within ${MOST_DEPTH} levels; look for a bracket that is not closed`,
});

interface Walk {
  readonly problems: Problem[];
  readonly room: Room;
  readonly depth: number;
}

function plainOf(node: Node | null, walk: Walk): unknown {
  if (node === null) return "";
  const { room } = walk;
  const range = rangeOf(node);
  const complain = (what: string, fix: string): void => {
    walk.problems.push({ severity: "error", path: [], range, what, fix });
  };
  if (isAlias(node)) {
    complain(
      `*${node.source} points to another place of the file`,
      `write the value out where it is needed; a ${room.name} is read on site`,
    );
    return unreadable;
  }
  const anchor = isScalar(node) || isMap(node) || isSeq(node) ? node.anchor : undefined;
  if (anchor !== undefined)
    complain(`&${anchor} names a place of the file`, `leave the mark out; a ${room.name} writes each value where it is needed`);
  if (node.tag !== undefined && !PLAIN_TAGS.has(node.tag))
    complain(`${quoted(node.tag)} gives a value a type of its own`, "leave it out and write the value alone");
  if (walk.depth > MOST_DEPTH) {
    walk.problems.push(tooDeep(range));
    return unreadable;
  }
  if ((isSeq(node) || isMap(node)) && node.items.length > room.entries) {
    complain(
      `there are ${node.items.length} entries here`,
      `no block or list of a ${room.name} needs more than ${room.entries}; check that this is a ${room.name}`,
    );
    return unreadable;
  }
  const deeper = { ...walk, depth: walk.depth + 1 };
  if (isSeq(node)) return node.items.map((item) => plainOf(item as Node | null, deeper));
  if (isMap(node)) return blockOf(node.items as readonly YamlPair[], deeper);
  return isScalar(node) && node.value !== null ? String(node.value) : "";
}

const PLAIN_TAGS = new Set(["tag:yaml.org,2002:str", "tag:yaml.org,2002:map", "tag:yaml.org,2002:seq"]);

interface YamlPair {
  readonly key: Node | null;
  readonly value: Node | null;
}

function blockOf(pairs: readonly YamlPair[], walk: Walk): unknown {
  // Without a prototype, so that a key named __proto__ is a key like any other.
  const block: Record<string, unknown> = Object.create(null);
  for (const { key, value } of pairs) {
    const range = rangeOf(key ?? value);
    const name = isScalar(key) && key.value !== null ? String(key.value) : null;
    if (name === null || name === "") {
      walk.problems.push({
        severity: "error",
        path: [],
        range,
        what: "a key is not a word",
        fix: "write each key as plain words before a colon",
      });
    } else if (name in block) {
      const fix = "keep one of the two; the later one would hide the earlier one";
      walk.problems.push({ severity: "error", path: [], range, what: `${quoted(name)} stands twice in this block`, fix });
    } else block[name] = plainOf(value, walk);
  }
  return block;
}

function rangeOf(node: Node | null): readonly [number, number] {
  const [from, to] = node?.range ?? [0, 0];
  return [from, to];
}

/** What the parser's complaints mean, by their code. */
const meanings: Readonly<Record<string, readonly [what: string, fix: string]>> = {
  TAB_AS_INDENT: ["a tab stands at the beginning of the line", "use spaces; two for each level"],
  MULTIPLE_DOCS: ["a second document begins here", "keep one job in each file and leave out the line ---"],
  BAD_INDENT: [
    "the line does not begin where its neighbours do",
    "give the keys of one block the same spaces in front, and close every bracket",
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    "a second colon stands where a value was expected",
    "put the value between quotation marks, or the keys on lines of their own with more spaces in front",
  ],
  MULTILINE_IMPLICIT_KEY: ["the key on this line has no colon", "write a colon and a space behind each key"],
  MISSING_CHAR: [
    "something is missing here: a colon, a comma, a bracket or a quotation mark",
    "look for what was opened and not closed, or for a key without its colon",
  ],
  UNEXPECTED_TOKEN: ["more text follows a value that had ended", "put the whole value between quotation marks of the other sort"],
  BAD_SCALAR_START: ["a value begins with a sign that has a meaning of its own", "put the value between quotation marks"],
  BLOCK_IN_FLOW: ["a comma is missing between two keys in braces", "write { key: value, key: value }"],
  BAD_DQ_ESCAPE: [
    "a backslash between double quotation marks begins no sign that is known",
    "use single quotation marks, or leave the backslash out",
  ],
  BAD_DIRECTIVE: ["a line begins with a per cent sign", "put the value between quotation marks"],
};

const OPEN_BRACKET = [
  "a bracket or a brace that was opened above is not closed before this line",
  "close it where it ends, with ] or }",
] as const;
const OPEN_QUOTE = ["a quotation mark is opened here and not closed", "close it at the end of the value, on the same line"] as const;

function syntaxProblem(error: YAMLError, document: JobDocument, text: string): Problem {
  const [from, to] = error.pos;
  // The parser calls itself for each level and says so when the stack is full.
  if (error.code === "RESOURCE_EXHAUSTION") return tooDeep([from, to]);
  const opening = error.code === "MISSING_CHAR" ? openQuote(document, from) : null;
  if (opening !== null) return { severity: "error", path: [], range: [opening, opening + 1], what: OPEN_QUOTE[0], fix: OPEN_QUOTE[1] };
  // At the very end there is no letter to point at.
  const end = Math.max(from, Math.min(to, text.length));
  const range = [Math.min(from, text.length), end] as const;
  const isFlow = error.code === "BAD_INDENT" && error.message.startsWith("Flow");
  const meaning = isFlow ? OPEN_BRACKET : meanings[error.code];
  if (meaning !== undefined) return { severity: "error", path: [], range, what: meaning[0], fix: meaning[1] };
  const what = "the text cannot be read from here on";
  return { severity: "error", path: [], range, what, why: firstLine(error.message), fix: "compare the line with an example job" };
}

/** Where a quoted text begins that runs on to `end` for want of its second mark. */
function openQuote(document: JobDocument, end: number): number | null {
  let found: number | null = null;
  visit(document, {
    Scalar: (_, scalar) => {
      const [from, to] = scalar.range ?? [0, 0];
      const isQuoted = scalar.type === "QUOTE_DOUBLE" || scalar.type === "QUOTE_SINGLE";
      if (!isQuoted || to < end) return undefined;
      found = from;
      return visit.BREAK;
    },
  });
  return found;
}

const firstLine = (message: string): string => (message.split("\n")[0] ?? "").toLowerCase();
