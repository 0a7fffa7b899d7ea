// What does a complaint of the schema mean to whoever wrote the file?
import * as z from "zod";
import type { JobPath, Problem } from "../problem/problem.ts";
import { quoted } from "../units/notation.ts";
import { unreadable } from "./data.ts";
import { nearest, unwrap, wordOf } from "./field.ts";

/** One issue of zod may hold several problems: each unknown key is one. */
export function problemsOf(issue: z.core.$ZodIssue, root: z.ZodType, raw: unknown, base: JobPath): readonly Problem[] {
  const inside = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
  const path = [...base, ...inside];
  const schema = schemaAt(root, inside, raw);
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(key, schema, path));
  const value = valueAt(raw, inside);
  if (value === unreadable) return [];
  const parent = schemaAt(root, inside.slice(0, -1), raw);
  if (value === undefined) return isMisspelled(inside, root, raw) ? [] : [missing(schema, path, { kinds: kindsOf(parent) })];
  if (issue.code === "custom") return [{ severity: "error", path, what: issue.message, fix: fixOf(issue.params) }];
  if (issue.code === "invalid_union" || issue.code === "invalid_value") return [unknownKind(parent, value, path)];
  return [wrongForm(schema, value, path)];
}

function fixOf(params: { readonly fix?: unknown } | undefined): string {
  const fix = params?.fix;
  if (typeof fix !== "string") throw new Error("a problem of a job file without a fix");
  return fix;
}

/** A key that its block does not take. */
export function unknownKey(key: string, schema: z.ZodType | undefined, path: JobPath): Problem {
  const keys = keysOf(schema);
  const name = (schema && wordOf(schema)?.name) ?? "this block";
  const near = nearest(key, keys);
  const takes = `${capital(name)} takes ${keys.join(", ")}.`;
  return {
    severity: "error",
    path: [...path, key],
    at: "key",
    what: `${name} has no word ${quoted(key)}`,
    fix: near === null ? `leave it out, or use another word. ${takes}` : `did you mean "${near}"? ${takes}`,
  };
}

/** Whether another key of the block is so like the missing one that it is meant: then it is told once, as unknown. */
function isMisspelled(path: JobPath, root: z.ZodType, raw: unknown): boolean {
  const parent = path.slice(0, -1);
  return hasLike(String(path.at(-1) ?? ""), keysOf(schemaAt(root, parent, raw)), valueAt(raw, parent));
}

export function hasLike(key: string, keys: readonly string[], block: unknown): boolean {
  if (typeof block !== "object" || block === null || Array.isArray(block)) return false;
  return Object.keys(block).some((other) => !keys.includes(other) && nearest(other, keys) === key);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a problem of a missing key has to say more. */
interface Missing {
  /** What lacks a block of its own. */
  readonly file?: string;
  /** Of a block that has several. */
  readonly kinds?: readonly string[];
}

/** A key that its block needs. */
export function missing(schema: z.ZodType | undefined, path: JobPath, { file = "the file", kinds = [] }: Missing = {}): Problem {
  const key = String(path.at(-1) ?? "");
  const word = schema && wordOf(schema);
  const parent = path.slice(0, -1);
  const example = word === undefined || word.example === "" ? key : `${key}: ${word.example}`;
  return {
    severity: "error",
    path: parent,
    at: "key",
    what: `${parent.length === 0 ? file : describe(parent)} lacks "${key}"`,
    fix: `add it, for example ${example}${key === KIND && kinds.length > 1 ? `; it is one of: ${kinds.join(" | ")}` : ""}`,
  };
}

/** "guard", "side 2 of guard", as a reader would say it. */
function describe(path: JobPath): string {
  const named = path.map((step, index) => (typeof step === "number" ? `number ${step + 1} of ${path[index - 1] ?? "the list"}` : step));
  return String(named.at(-1) ?? "the file");
}

function unknownKind(union: z.ZodType | undefined, value: unknown, path: JobPath): Problem {
  const options = kindsOf(union);
  const text = typeof value === "string" ? value : "";
  const near = nearest(text, options);
  const choices = options.join(" | ");
  return {
    severity: "error",
    path,
    what:
      typeof value === "string"
        ? `${quoted(text)} is no kind of ${wordOf(union ?? z.unknown())?.name ?? "block"}`
        : "the kind is not a single word",
    fix: near === null ? `write one of: ${choices}` : `did you mean ${near}? It is one of: ${choices}`,
  };
}

/** A list where a block is wanted, and the like. */
function wrongForm(schema: z.ZodType | undefined, value: unknown, path: JobPath): Problem {
  const word = schema && wordOf(schema);
  const key = path.at(-1);
  const found = formOf(value);
  const wanted = schema === undefined ? "something else" : wantedForm(schema);
  // A kind alone, "start: wall", is shown as the block of that kind.
  const meant = schema === undefined ? undefined : optionsOf(bare(schema)).find((option) => kindOf(option) === value);
  const example = (meant && wordOf(meant)?.example) ?? word?.example ?? "";
  const shown = typeof key === "string" ? `${key}: ${example}` : `- ${example}`;
  return { severity: "error", path, what: `${word?.name ?? "this"} is ${found} here and must be ${wanted}`, fix: `write ${shown}` };
}

function formOf(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  if (value === null || value === "") return "empty";
  return typeof value === "object" ? "a block of keys" : "a single value";
}

function wantedForm(schema: z.ZodType): string {
  const inner = bare(schema);
  if (inner instanceof z.ZodArray) return "a list";
  return inner instanceof z.ZodObject || inner instanceof z.ZodDiscriminatedUnion ? "a block of keys" : "a single value";
}

function bare(schema: z.ZodType): z.ZodType {
  let inner = schema;
  for (let next = unwrap(inner); next !== undefined; next = unwrap(inner)) inner = next;
  return inner;
}

/** The keys that a block takes, in the order of the schema. */
export function keysOf(schema: z.ZodType | undefined): readonly string[] {
  const inner = schema && bare(schema);
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : [];
}

/** The schema of the value at `path`, by the kind that the file states where there are several. */
function schemaAt(root: z.ZodType, path: JobPath, raw: unknown): z.ZodType | undefined {
  let schema: z.ZodType | undefined = chosen(bare(root), raw);
  let value: unknown = raw;
  for (const step of path) {
    value = valueAt(value, [step]);
    if (schema instanceof z.ZodObject) schema = Object.hasOwn(schema.shape, step) ? (schema.shape[step] as z.ZodType) : undefined;
    else if (schema instanceof z.ZodArray) schema = schema.element as z.ZodType;
    else if (schema instanceof z.ZodDiscriminatedUnion && step === KIND) schema = optionsOf(schema)[0]?.shape[KIND] as z.ZodType;
    else return undefined;
    if (schema === undefined) return undefined;
    const inner = chosen(bare(schema), value);
    schema = inner === bare(schema) ? schema : inner;
    schema = step === path.at(-1) ? schema : bare(schema);
  }
  return schema;
}

function chosen(schema: z.ZodType, value: unknown): z.ZodType {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema;
  const kind = valueAt(value, [KIND]);
  return optionsOf(schema).find((option) => kindOf(option) === kind) ?? schema;
}

const optionsOf = (schema: z.ZodType): readonly z.ZodObject[] =>
  schema instanceof z.ZodDiscriminatedUnion ? (schema.options as readonly z.ZodObject[]) : [];

/** The kinds of a block, also of one that may be left out. */
const kindsOf = (schema: z.ZodType | undefined): readonly string[] => (schema === undefined ? [] : optionsOf(bare(schema)).map(kindOf));

/** The key that tells kinds of a block apart. */
const KIND = "kind";

function kindOf(option: z.ZodObject): string {
  const literal: unknown = option.shape[KIND];
  return literal instanceof z.ZodLiteral ? String(literal.value) : "";
}

/** What stands at `path` in the file's data; undefined where nothing does. */
function valueAt(raw: unknown, path: JobPath): unknown {
  let value: unknown = raw;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[step];
  }
  return value;
}
