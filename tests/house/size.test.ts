// A file answers one question that it states in its first line, and is short enough to be read at once.
import { basename } from "node:path";
import { expect, test } from "vitest";
import { codeOnly, filesUnder, lineAt } from "./source-files.ts";

const LINES_max = 300;
/** Published rows, the list of sources and the widths of the font's letters are as long as they are. */
const isData = (path: string): boolean =>
  path.startsWith("src/tables/") || path === "src/sources/sources.ts" || path === "src/drawing/font-metrics.ts";

const files = filesUnder("src", ".ts").filter(({ path }) => !path.endsWith(".d.ts"));
const tests = filesUnder("tests", ".ts");

test("there are files to check", () => {
  expect(files.length).toBeGreaterThan(20);
  expect(tests.length).toBeGreaterThan(10);
});

/** A program's own first line stands before the question. */
const firstLine = (text: string): string => text.replace(/^#!.*\n/, "").split("\n")[0] ?? "";

test("the first line of each file is a comment that states its question", () => {
  const wrong = files.filter(({ text }) => !/^\/\/ .*\?/.test(firstLine(text)));
  expect(wrong.map(({ path, text }) => `${path}:1: "${firstLine(text)}" is no question in a // comment`)).toEqual([]);
});

test(`no file but data tables has more than ${LINES_max} lines`, () => {
  const long = files
    .filter(({ path }) => !isData(path))
    .map(({ path, text }) => ({ path, lines: text.trimEnd().split("\n").length }))
    .filter(({ lines }) => lines > LINES_max);
  expect(long.map(({ path, lines }) => `${path}: ${lines} lines: it answers more than one question, split it`)).toEqual([]);
});

test("file names are kebab-case, and no file is an index", () => {
  const wrong = files.filter(({ path }) => !/^[a-z0-9]+(-[a-z0-9]+)*\.ts$/.test(basename(path)) || basename(path) === "index.ts");
  expect(wrong.map(({ path }) => path)).toEqual([]);
});

test("no default export, enum, any, or class that is no error", () => {
  const rules = [/^export default\b/gm, /\benum\s+\w/g, /(?::|\bas|<)\s*any\b/g, /\bclass\s+\w+(?!\w*\s+extends\s+\w*Error)/g];
  const wrong = files.flatMap(({ path, text }) => {
    const code = codeOnly(text);
    return rules.flatMap((rule) => [...code.matchAll(rule)].map((match) => `${path}:${lineAt(code, match.index)}: ${match[0]}`));
  });
  expect(wrong).toEqual([]);
});

test("a test is not skipped, and none runs alone", () => {
  const wrong = tests.flatMap(({ path, text }) => {
    const code = codeOnly(text);
    return [...code.matchAll(/\b(?:test|it|describe)\.(?:only|skip|todo)\b/g)].map(
      (match) => `${path}:${lineAt(code, match.index)}: ${match[0]}`,
    );
  });
  expect(wrong).toEqual([]);
});
