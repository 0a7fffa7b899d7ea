// What is a rule that explains all numbers of one kind, and how is one of them traced by it?
import { evaluate } from "./formula.ts";
import { kindAt } from "./kind.ts";
import type { Place } from "./path.ts";
import type { Reader } from "./reader.ts";
import type { Trace, Working } from "./trace.ts";

export interface Rule {
  /** courses.*.height */
  readonly pattern: string;
  /** In words; each {} is one of the marks in the pattern's stars. */
  readonly what: string;
  /** null where this number has no explanation of its own. */
  readonly explain: (reader: Reader, keys: readonly string[]) => Working | null;
}

export const rule = (pattern: string, what: string, explain: Rule["explain"]): Rule => ({ pattern, what, explain });

/** The words of a rule with its marks put in. */
export function wordsOf(what: string, keys: readonly string[]): string {
  let next = 0;
  return what.replace(/\{(\d?)\}/g, (_, index: string) => keys[index === "" ? next++ : Number(index)] ?? "");
}

/** The trace of the number at a place; null where its rule has none. */
export function traceOf({ explain, what }: Rule, place: Place, reader: Reader): Trace | null {
  const kind = kindAt(place);
  if (kind === null || typeof place.value !== "number") return null;
  const working = explain(reader, place.keys);
  if (working === null) return null;
  const terms = new Map(working.inputs.map(({ symbol, value }) => [symbol, value]));
  const functions = Object.fromEntries(Object.entries(working.functions ?? {}).map(([name, { of }]) => [name, of]));
  const { path, jsonPath, keys, value } = place;
  return { ...working, path, jsonPath, what: wordsOf(what, keys), kind, value, recomputed: evaluate(working.formula, terms, functions) };
}
