// Which unit the sheets print first changes no number of a plan, but for what is read or bought in steps of that unit.
import { describe, expect, test } from "vitest";
import { changedText, planOf } from "../support/example-jobs.ts";

/** Every step and every dimension that has a default in each unit, stated. */
const stated: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "0001-level-deck-straight": {
    "  # Every dimension": "  pass bore: 1/4 in\n  bushing bore: 1/4 in\n  bushing: { length: 3/8 in }\n  # Every dimension",
    "  stud: { washer: 1-1/2 in }\n  grip: { washer: 1-1/2 in }\n":
      "  stud: { thread: 1/4-28, bore: 5/16 in, thread length: 2 in, washer: 1-1/2 in }\n" +
      "  grip: { bore: 1/4 in, counterbore: 3/8 in, body length: 1-1/4 in, bore without back: 3/8 in, washer: 1-1/2 in }\n",
    "tightening:\n": "limits: { tape step: 1/16 in }\ntightening:\n  reading step: 5 lbf\n",
  },
};

/** A trial pull, a bit and a tool are of sizes that are sold or read in the job's unit. */
const ofItsUnit = /^\.(?:job\.units|frame\.trial|bits\.\d+\.bitLength_min|tools)\b/;

function numbersIn(value: unknown, path = ""): readonly (readonly [path: string, value: number])[] {
  if (ofItsUnit.test(path)) return [];
  if (typeof value === "number") return [[path, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

describe.each(Object.entries(stated))("%s", (name, changes) => {
  test("has the same numbers, path by path, whether it prints inches or millimetres first", () => {
    const inch = numbersIn(planOf(changedText(name, changes)));
    const mm = new Map(numbersIn(planOf(changedText(name, { ...changes, "units: inch": "units: mm" }))));
    expect(inch.length).toBeGreaterThan(1000);
    expect(mm.size).toBe(inch.length);
    for (const [path, value] of inch) expect.soft(mm.get(path), path).toBeCloseTo(value, 9);
  });
});
