// Every source that is named exists in the list, and every source of the list is used.
import { basename } from "node:path";
import { expect, test } from "vitest";
import { sources } from "../../src/sources/sources.ts";
import { filesUnder, lineAt } from "./source-files.ts";

const ids = Object.keys(sources);
const code = filesUnder("src", ".ts").filter(({ path }) => path !== "src/sources/sources.ts");
const validation = filesUnder("tests/validation", ".test.ts").filter(({ path }) => !path.startsWith("tests/validation/hand/"));

/** Words that may stand behind "Source:" in place of an id. */
const inWords = ["practice", "memory", "derived", "job"];

/** A word with a hyphen or a digit, right behind "Source:" or behind a semicolon there, is meant as an id. */
function citedIds(text: string): readonly { id: string; line: number }[] {
  return [...text.matchAll(/^[ \t]*\*?[ \t]*Source:[ \t]*(.+)$/gm)].flatMap((match) =>
    (match[1] ?? "")
      .split(";")
      .map((part) => part.trim().match(/^[a-z][a-z0-9]*(?:-[a-z0-9]+)+(?=[,.\s]|$)/)?.[0] ?? "")
      .filter((id) => id !== "")
      .map((id) => ({ id, line: lineAt(text, match.index) })),
  );
}

test("there are sources, code and validation tests to check", () => {
  expect(ids.length).toBeGreaterThan(10);
  expect(code.length).toBeGreaterThan(20);
  expect(validation.length).toBeGreaterThan(3);
});

test("a docstring names only ids that the list has", () => {
  const wrong = code.flatMap(({ path, text }) =>
    citedIds(text)
      .filter(({ id }) => !ids.includes(id) && !inWords.includes(id))
      .map(({ id, line }) => `${path}:${line}: no source "${id}" in src/sources/sources.ts`),
  );
  expect(wrong).toEqual([]);
});

test("docstrings do name ids: the reading of them works", () => {
  expect(code.flatMap(({ text }) => citedIds(text)).length).toBeGreaterThan(5);
  expect(citedIds(" * Source: irc-2021, R312; derived; a-b-2 and more").map(({ id }) => id)).toEqual(["irc-2021", "a-b-2"]);
});

test("a validation test is named after its source", () => {
  const wrong = validation.filter(({ path }) => !ids.includes(basename(path, ".test.ts")));
  expect(wrong.map(({ path }) => `${path}: no such source in src/sources/sources.ts`)).toEqual([]);
});

test("every source of the list is used by code or by a validation test of its name", () => {
  const tested = validation.map(({ path }) => basename(path, ".test.ts"));
  const unused = ids.filter((id) => {
    const word = new RegExp(`["'\`]${id}["'\`]|Source:.*\\b${id}\\b`);
    return !tested.includes(id) && !code.some(({ text }) => word.test(text));
  });
  expect(
    unused.filter((id) => !inWords.includes(id)).map((id) => `src/sources/sources.ts: "${id}" is used nowhere: cite it or take it out`),
  ).toEqual([]);
});

test("a source that was not read in full says so", () => {
  for (const [id, source] of Object.entries(sources)) {
    expect(source.title, id).not.toBe("");
    expect(["full text", "excerpt", "secondary", "from memory", "not published"], id).toContain(source.seen);
  }
});
