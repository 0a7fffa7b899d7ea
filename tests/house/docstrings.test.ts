// Every formula says what it does, with the unit of each argument and of its result, its refusals and its source.
import { describe, expect, test } from "vitest";
import { codeOnly, filesUnder, lineAt, type SourceFile } from "./source-files.ts";

const rooms = ["geometry", "mechanics", "stock", "tables"];

interface Exported {
  readonly name: string;
  readonly line: number;
  /** The comment that ends just above it; empty when there is none. */
  readonly docstring: string;
  /** One entry for each argument; a taken-apart object gives the names it takes. */
  readonly parameters: readonly (readonly string[])[];
}

function exportedFunctions({ text }: SourceFile): readonly Exported[] {
  const code = codeOnly(text);
  const starts = /^export (?:(?:async )?function\*? (\w+)\s*(?:<[^(]*>)?|const (\w+)\s*(?::[^=\n]+)?=\s*(?:async )?(?:<[^(]*>)?)(?=\()/gm;
  return [...code.matchAll(starts)].flatMap((match) => {
    const open = match.index + match[0].length;
    const close = matching(code, open);
    const name = match[1] ?? match[2] ?? "";
    // A constant that is made by a call in parentheses is no function.
    if (match[2] !== undefined && !/^\s*(?::[^=]+)?=>/.test(code.slice(close + 1))) return [];
    const parameters = splitTop(code.slice(open + 1, close)).map(namesOf);
    return [{ name, line: lineAt(text, match.index), docstring: commentAbove(text, match.index), parameters }];
  });
}

function matching(code: string, open: number): number {
  let depth = 0;
  for (let index = open; index < code.length; index += 1) {
    if ("([{".includes(code[index] ?? "")) depth += 1;
    if (")]}".includes(code[index] ?? "")) depth -= 1;
    if (depth === 0) return index;
  }
  return code.length;
}

/** At the commas that lie in no bracket. The arrow of a function type is no bracket. */
function splitTop(list: string): readonly string[] {
  const parts: string[] = [""];
  let depth = 0;
  for (const sign of list.replaceAll("=>", "  ")) {
    if ("([{<".includes(sign)) depth += 1;
    if (")]}>".includes(sign)) depth -= 1;
    if (sign === "," && depth === 0) parts.push("");
    else parts[parts.length - 1] += sign;
  }
  return parts.map((part) => part.trim()).filter((part) => part !== "");
}

function namesOf(parameter: string): readonly string[] {
  if (!/^[{[]/.test(parameter)) return [parameter.match(/^(?:\.\.\.)?(\w+)/)?.[1] ?? parameter];
  const inside = parameter.slice(1, matching(parameter, 0));
  return splitTop(inside).map((one) => one.match(/^(?:\.\.\.)?(\w+)/)?.[1] ?? one);
}

function commentAbove(text: string, index: number): string {
  const before = text.slice(0, index).trimEnd();
  if (!before.endsWith("*/")) return "";
  const from = before.lastIndexOf("/**");
  const lines = before.slice(from + 3, -2).split("\n");
  return lines.map((line) => line.replace(/^\s*\* ?/, "").trimEnd()).join("\n");
}

/** A tag with the lines that go on below it. */
function entries(docstring: string, tag: string): readonly string[] {
  return docstring
    .split(/\n(?=@|Source:|Valid:)/)
    .filter((part) => part.trimStart().startsWith(tag))
    .map((part) => part.trim().slice(tag.length).replaceAll("\n", " ").trim());
}

const UNIT = /\[[^\]]+\]/;
const UNITS = /\[[^\]]+\]/g;

function faultsOf({ name, docstring, parameters }: Exported): readonly string[] {
  if (docstring === "") return [`${name} has no docstring`];
  const faults: string[] = [];
  const what = docstring.split(/\n(?=@|Source:|Valid:)/)[0]?.trim() ?? "";
  if (what.length < 10 || what.startsWith("@")) faults.push(`${name} does not say what it does`);
  const params = entries(docstring, "@param");
  for (const names of parameters) {
    const told = (parameter: string): boolean => params.some((one) => new RegExp(`^(?:\\w+\\.)?${parameter} - \\S`).test(one));
    // A taken-apart object is told key by key, or as a whole under any name with a unit for each of its values.
    if (names.length > 1 && params.some((one) => (one.match(UNITS) ?? []).length >= names.length)) continue;
    for (const missing of names.filter((parameter) => !told(parameter))) {
      faults.push(`${name}: @param ${missing} - meaning [unit] is missing`);
    }
  }
  for (const one of params) if (!UNIT.test(one)) faults.push(`${name}: @param ${one.split(" ")[0]} has no [unit]`);
  const returns = entries(docstring, "@returns");
  if (returns.length !== 1 || !UNIT.test(returns[0] ?? "")) faults.push(`${name}: @returns meaning [unit] is missing`);
  if (entries(docstring, "@throws").length === 0) faults.push(`${name}: @throws is missing (or "@throws never")`);
  if ((entries(docstring, "Source:")[0] ?? "").length < 4) faults.push(`${name}: Source: is missing`);
  return faults;
}

describe.each(rooms)("src/%s", (room) => {
  const files = filesUnder(`src/${room}`, ".ts");
  const functions = files.flatMap((file) => exportedFunctions(file).map((one) => ({ ...one, path: file.path })));

  test("has exported functions to check", () => expect(functions.length).toBeGreaterThan(0));

  test("each exported function has its docstring with units, refusals and source", () => {
    expect(functions.flatMap((one) => faultsOf(one).map((fault) => `${one.path}:${one.line}: ${fault}`))).toEqual([]);
  });
});

describe("the rule itself", () => {
  const good = [
    "/**",
    " * Sag of a span under its weight: f = w L^2 / (8 H).",
    " *",
    " * @param weight_NPerMm - weight [N/mm]",
    " * @param span - clear length [mm]",
    " * @returns sag at the middle [mm]",
    " * @throws never",
    " * Source: a-book, eq. 1",
    " */",
    "export const sag = (weight_NPerMm: number, { span }: { span: number }): number => weight_NPerMm * span;",
  ].join("\n");
  const faults = (text: string) => exportedFunctions({ path: "x.ts", text }).flatMap(faultsOf);

  test("lets a whole docstring pass", () => {
    expect(exportedFunctions({ path: "x.ts", text: good })).toHaveLength(1);
    expect(faults(good)).toEqual([]);
  });

  test.each([
    ["the unit of an argument", good.replace("weight [N/mm]", "weight")],
    ["an argument", good.replace(/ \* @param span.*\n/, "")],
    ["the unit of the result", good.replace("middle [mm]", "middle")],
    ["the refusals", good.replace(/ \* @throws.*\n/, "")],
    ["the source", good.replace(/ \* Source.*\n/, "")],
    ["what it does", good.replace(/ \* Sag of.*\n/, "")],
  ])("misses %s when it is left out", (_what, text) => {
    expect(faults(text)).toHaveLength(1);
  });

  test("sees a function without any docstring, and takes no constant for one", () => {
    expect(faults("export function area(width: number): number {\n  return width;\n}")).toEqual(["area has no docstring"]);
    expect(faults("export const ratio = (1 + 2) / 3;")).toEqual([]);
  });
});
