// Where in the file does a value of the job stand?
import { isMap, isPair, isScalar, isSeq, LineCounter, type Node } from "yaml";
import type { JobPath } from "../problem/problem.ts";
import { type JobDocument, parseYaml } from "./data.ts";

/** Counted from 1; `endColumn` is the first column behind, on the same line. */
interface Place {
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

export type Locate = (path: JobPath, at?: "key" | "value") => Place;

/** Reads the text once; then finds any path of the job in it, or the nearest block around it. */
export function locator(text: string): Locate {
  return locatorOf(text, parseYaml(text));
}

export function locatorOf(text: string, document: JobDocument | null): Locate {
  const placeAt = placesOf(text);
  return (path, at = "value") => {
    const range = document === null ? null : rangeAt(document.contents, path, at);
    return range === null ? { line: 1, column: 1, endColumn: 1 } : placeAt(range);
  };
}

/** Offsets -> line and columns. */
function placesOf(text: string): (range: readonly [from: number, to: number]) => Place {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) lines.addNewLine(at + 1);
  return ([from, to]) => {
    const { line, col } = lines.linePos(from);
    const lineEnd = text.indexOf("\n", from);
    const end = Math.min(to, lineEnd === -1 ? text.length : lineEnd);
    const width = text.slice(from, end).trimEnd().length;
    return { line, column: col, endColumn: col + Math.max(1, width) };
  };
}

type Range = readonly [from: number, to: number];

interface YamlPair {
  readonly key: Node | null;
  readonly value: Node | null;
}

/** The deepest part of the path that exists; null for the file itself. */
function rangeAt(root: Node | null, path: JobPath, at: "key" | "value"): Range | null {
  let node = root;
  let found: { readonly key: Node | null; readonly value: Node | null } | null = null;
  let isWhole = true;
  for (const step of path) {
    const next: YamlPair | null = isMap(node)
      ? pairOf(node.items as readonly YamlPair[], step)
      : isSeq(node)
        ? itemOf(node.items as readonly Node[], step)
        : null;
    if (next === null) {
      isWhole = false;
      break;
    }
    found = next;
    node = next.value;
  }
  if (found === null) return null;
  const { key, value } = found;
  // A block spread over lines is shown by its key; so is a value that is not there.
  const showsValue = isWhole && at === "value" && value !== null && (isScalar(value) ? hasText(value) : isFlow(value));
  if (showsValue || key === null) return firstOf(value);
  return rangeOf(key);
}

const pairOf = (pairs: readonly YamlPair[], step: string | number): YamlPair | null =>
  pairs.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(step)) ?? null;

function itemOf(items: readonly Node[], step: string | number): YamlPair | null {
  const item = typeof step === "number" ? items[step] : undefined;
  return item === undefined ? null : { key: null, value: item };
}

const isFlow = (node: Node): boolean => (isMap(node) || isSeq(node)) && node.flow === true;

function hasText(node: Node): boolean {
  const [from, to] = node.range ?? [0, 0];
  return to > from;
}

/** A list entry that is a block is shown by its first key. */
function firstOf(node: Node | null): Range | null {
  if (isMap(node) && node.flow !== true) {
    const first: unknown = node.items[0];
    if (isPair(first)) return rangeOf(first.key as Node | null);
  }
  return rangeOf(node);
}

function rangeOf(node: Node | null): Range | null {
  const range = node?.range;
  return range ? [range[0], range[1]] : null;
}
