// How does a wrong file say in comments what must be reported, and where?
//   # problem LINE:COLUMN what was found | fix: what to do
// A fix that ends with ... is pinned as far as it goes. Each file must report what is pinned in it and nothing else.
import { readdirSync } from "node:fs";
import { expect } from "vitest";
import { locator } from "../../src/job/locate.ts";
import type { Problem } from "../../src/problem/problem.ts";
import { problemPlace } from "../../src/problem/show.ts";

export const filesIn = (path: string): readonly string[] => readdirSync(path).filter((file) => file.endsWith(".yaml"));

interface Told {
  readonly place: string;
  readonly what: string;
  readonly fix: string;
}

function pinnedIn(text: string): readonly Told[] {
  return [...text.matchAll(/^\s*# problem (\d+:\d+) (.*) \| fix: (.*)$/gm)].map(([, place = "", what = "", fix = ""]) => ({
    place,
    what,
    fix,
  }));
}

function toldOf(problems: readonly Problem[], text: string): readonly Told[] {
  const locate = locator(text);
  return problems.map((problem) => {
    const { line, column } = problemPlace(problem, { text, locate });
    return { place: `${line}:${column}`, what: problem.what, fix: problem.fix };
  });
}

/** Cuts what was told to what is pinned, where the pin is cut. */
function cutToPins(told: readonly Told[], pins: readonly Told[]): readonly Told[] {
  return told.map((one) => {
    const pin = pins.find(({ place, what, fix }) => place === one.place && what === one.what && fix.endsWith("..."));
    return pin !== undefined && one.fix.startsWith(pin.fix.slice(0, -3)) ? { ...one, fix: pin.fix } : one;
  });
}

export function expectPinned(text: string, problems: readonly Problem[]): void {
  const pins = pinnedIn(text);
  expect(pins.length).toBeGreaterThan(0);
  expect(cutToPins(toldOf(problems, text), pins)).toEqual(pins);
}
