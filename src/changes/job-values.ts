// Which values of the job file were written otherwise?
import { readData } from "../job/data.ts";
import type { ChangedValue } from "./changes.ts";

/** What every new revision changes, and the head of the sheet says. */
const OWN = /^job: (?:issued|revisions)(?::|$)/;

/**
 * Values by their keys, in the order of the new file, then those that are gone.
 *
 * @param before - text of a job file
 * @param after - text of a job file
 * @returns what differs; a length that is written otherwise differs, too
 * @throws never
 */
export function changedValues(before: string, after: string): readonly ChangedValue[] {
  const [old, now] = [valuesOf(before), valuesOf(after)];
  return [...new Set([...now.keys(), ...old.keys()])]
    .filter((key) => !OWN.test(key))
    .map((key) => ({ key, from: old.get(key) ?? null, to: now.get(key) ?? null }))
    .filter(({ from, to }) => from !== to);
}

const valuesOf = (text: string): ReadonlyMap<string, string> => new Map(flat(readData(text).raw, []));

/** A list of plain values is one; entries of others are counted from 1. */
function flat(raw: unknown, path: readonly string[]): readonly (readonly [string, string])[] {
  if (typeof raw === "string") return [[path.join(": "), raw]];
  if (Array.isArray(raw) && raw.every((each) => typeof each === "string")) return [[path.join(": "), raw.join(", ")]];
  if (Array.isArray(raw)) return raw.flatMap((each, index) => flat(each, [...path, `${index + 1}`]));
  return typeof raw === "object" && raw !== null ? Object.entries(raw).flatMap(([key, each]) => flat(each, [...path, key])) : [];
}
