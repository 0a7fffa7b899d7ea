// What differs between two things, property by property?
import { SAME_mm } from "../units/tolerance.ts";
import type { Difference, Draft, Value } from "./changes.ts";

type Kind = Exclude<Value, string>["kind"];

/** A number that differs by more than `same`; null where there is none. */
export function numberDiffers(
  of: string,
  [from, to]: readonly [number | null | undefined, number | null | undefined],
  { kind, same = SAME_mm }: { readonly kind: Kind; readonly same?: number },
): readonly Difference[] {
  const numberOf = (value: number | null | undefined): Value | null => (value === null || value === undefined ? null : { value, kind });
  const [before, after] = [numberOf(from), numberOf(to)];
  if (before === null && after === null) return [];
  if (before !== null && after !== null && Math.abs((to ?? 0) - (from ?? 0)) <= same) return [];
  return [{ of, from: before, to: after }];
}

export const wordDiffers = (of: string, [from, to]: readonly [string | null, string | null]): readonly Difference[] =>
  from === to ? [] : [{ of, from, to }];

/** Changes that say the same of several marks become one with all of them. */
export function gathered(drafts: readonly Draft[]): readonly Draft[] {
  const groups = new Map<string, Draft>();
  for (const draft of drafts) {
    const { todo, subject, what, differences } = draft;
    const key = JSON.stringify([todo, subject, what, differences]);
    const known = groups.get(key);
    groups.set(key, known === undefined ? draft : { ...known, marks: [...known.marks, ...draft.marks], ...leastLeft(known, draft) });
  }
  return [...groups.values()];
}

function leastLeft(a: Draft, b: Draft): Pick<Draft, "left"> {
  const left = [a.left, b.left].filter((one) => one !== undefined);
  return left.length === 0 ? {} : { left: Math.min(...left) };
}
