// Data flows one way: a file may import its own room and the rooms and packages on its row of the map.
import { join, relative } from "node:path";
import { describe, expect, test } from "vitest";
import { house, type Room } from "./rooms.ts";
import { codeOnly, filesUnder, lineAt, roomOf, type SourceFile } from "./source-files.ts";

const files = filesUnder("src", ".ts");
const names = house.map((room) => room.name);

interface Import {
  readonly name: string;
  readonly typeOnly: boolean;
  readonly line: number;
}

function importsOf({ text }: SourceFile): readonly Import[] {
  const code = codeOnly(text);
  const found: Import[] = [];
  // The name is a string and so blanked in the code: find the place there, read the name in the text.
  for (const match of code.matchAll(/\b(import|export)\b([^;"'`]*?)(?:from\s*|\(\s*)?(["'`])/g)) {
    const [whole, , between = ""] = match;
    const from = match.index + whole.length;
    const isImport = /^import/.test(whole) || /from\s*["'`]$/.test(whole);
    if (!isImport || /[=]/.test(between.replace(/\{[^}]*\}/, ""))) continue;
    const name = text.slice(from).match(/^[^"'`]*/)?.[0] ?? "";
    found.push({ name, typeOnly: /^\s*type\b/.test(between), line: lineAt(text, match.index) });
  }
  return found;
}

function complaint(file: SourceFile, { name, typeOnly }: Import, row: Room): string | null {
  if (!name.startsWith(".")) {
    const node = name.startsWith("node:");
    const allowed = row.packages.some((one) => one === name || name.startsWith(`${one}/`) || (node && one === "node:*"));
    return allowed ? null : `the room ${row.name} may not import the package ${name}; its list is ${row.packages.join(", ") || "empty"}`;
  }
  if (!name.endsWith(".ts") && !name.endsWith(".json")) return `${name}: imports name the file with its ending .ts`;
  const target = relative("src", join(file.path, "..", name)).replaceAll("\\", "/");
  const room = target.split("/")[0] ?? "";
  if (room === row.name || row.rooms.includes(room) || row.files?.includes(target.replace(/\.ts$/, ""))) return null;
  if (typeOnly && row.types?.includes(room)) return null;
  const only = row.types?.includes(room) ? " but its types (import type)" : "";
  return `the room ${row.name} may not import ${room}${only}: data flows one way, from the inside out`;
}

test("there are files to check, and each lies in a room of the map", () => {
  expect(files.length).toBeGreaterThan(20);
  expect(files.map(({ path }) => roomOf(path)).filter((room) => !names.includes(room))).toEqual([]);
});

test.each(house)("the row of $name names only rooms above it", ({ name, rooms, types = [], files: single = [] }) => {
  const above = names.slice(0, names.indexOf(name));
  const named = [...rooms, ...types, ...single.map((file) => file.split("/")[0] ?? "")];
  expect(named.filter((other) => !above.includes(other))).toEqual([]);
});

test("imports are seen in each form that the language has", () => {
  const text = [
    'import a from "./a.ts";',
    'import type { B } from "../b/b.ts";',
    'import {\n  c,\n  type D,\n} from "node:fs";',
    'export { e } from "../e/e.ts";',
    'import "./f.ts";',
    'const g = await import("g");',
    'const notOne = "import x from \'y\'"; // import z from "z"',
    'export const name = "plain";',
  ].join("\n");
  const seen = importsOf({ path: "src/a/x.ts", text });
  expect(seen.map(({ name, typeOnly, line }) => [name, typeOnly, line])).toEqual([
    ["./a.ts", false, 1],
    ["../b/b.ts", true, 2],
    ["node:fs", false, 3],
    ["../e/e.ts", false, 7],
    ["./f.ts", false, 8],
    ["g", false, 9],
  ]);
});

describe.each(house)("src/$name", (row) => {
  test("imports only what its row allows", () => {
    const wrong = files
      .filter(({ path }) => roomOf(path) === row.name)
      .flatMap((file) =>
        importsOf(file).flatMap((one) => {
          const what = complaint(file, one, row);
          return what === null ? [] : [`${file.path}:${one.line}: ${what}`];
        }),
      );
    expect(wrong).toEqual([]);
  });
});

describe("the rule itself", () => {
  const judge = (room: string, text: string): readonly (string | null)[] => {
    const row = house.find((one) => one.name === room);
    if (row === undefined) throw new Error(`no room ${room}`);
    const file = { path: `src/${room}/x.ts`, text };
    return importsOf(file).map((one) => complaint(file, one, row));
  };

  test.each([
    ["mechanics", 'import { makePlan } from "../plan/make-plan.ts";'],
    ["mechanics", 'import { readFileSync } from "node:fs";'],
    ["units", 'import type { Cited } from "../sources/cited.ts";'],
    ["site", 'import { parseJob } from "../job/parse.ts";'],
    ["site", 'import { line } from "../drawing/element.ts";'],
    ["packet", 'import { z } from "zod";'],
    ["plan", 'import { x } from "../plan/x";'],
  ])("src/%s is refused %s", (room, text) => {
    expect(judge(room, text)).toEqual([expect.any(String)]);
  });

  test.each([
    ["mechanics", 'import { SAME_mm } from "../units/tolerance.ts";'],
    ["site", 'import type { Job } from "../job/job.ts";'],
    ["site", 'import { sheetSize } from "../drawing/paper.ts";'],
    ["cli", 'import { readFile } from "node:fs/promises";'],
    ["packet", 'import { row } from "./row.ts";'],
  ])("src/%s may %s", (room, text) => {
    expect(judge(room, text)).toEqual([null]);
  });
});
