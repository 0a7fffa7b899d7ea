// Which files do the house rules read, and which part of a file is code? Comments, strings and patterns are not.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

export interface SourceFile {
  /** From the project's root, with forward slashes: "src/units/read.ts". */
  readonly path: string;
  readonly text: string;
}

/** All files below a folder whose name ends so, in a fixed order; none where the folder is missing. */
export function filesUnder(folder: string, ending: string): readonly SourceFile[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name).replaceAll("\\", "/"))
    .filter((path) => path.endsWith(ending))
    .sort()
    .map((path) => ({ path, text: readFileSync(path, "utf8") }));
}

/** src/plan/runs.ts -> plan */
export const roomOf = (path: string): string => path.split("/")[1] ?? "";

/** The line, from 1, on which a position of a text lies. */
export const lineAt = (text: string, index: number): number => text.slice(0, index).split("\n").length;

/** The text with every comment, string and pattern blanked, so that positions and lines stay; code inside `${}` stays too. */
export function codeOnly(text: string): string {
  const out = [...text].length === text.length ? text.split("") : Array.from({ length: text.length }, (_, index) => text.charAt(index));
  const blank = (from: number, to: number): void => {
    for (let index = from; index < to; index += 1) if (out[index] !== "\n") out[index] = " ";
  };
  // One entry for each template that is open: how many braces are open inside its current `${}`.
  const templates: number[] = [];
  let at = 0;
  const skipTemplateText = (from: number): number => {
    let index = from;
    while (index < text.length && text[index] !== "`" && !text.startsWith("${", index)) index += text[index] === "\\" ? 2 : 1;
    blank(from, index);
    if (text[index] === "`") return index + 1;
    templates.push(0);
    return index + 2;
  };
  while (at < text.length) {
    const rest = text.slice(at, at + 2);
    const sign = text[at] ?? "";
    if (rest === "//" || rest === "/*") {
      const end = rest === "//" ? text.indexOf("\n", at) : text.indexOf("*/", at + 2) + 2;
      const to = end < at + 2 ? text.length : end;
      blank(at, to);
      at = to;
    } else if (sign === '"' || sign === "'") {
      const end = endOfString(text, at, sign);
      blank(at + 1, end - 1);
      at = end;
    } else if (sign === "`") at = skipTemplateText(at + 1);
    else if (sign === "/" && startsPattern(out.slice(0, at).join("").trimEnd())) {
      const end = endOfPattern(text, at);
      blank(at, end);
      at = end;
    } else if (sign === "}" && templates.at(-1) === 0) {
      templates.pop();
      at = skipTemplateText(at + 1);
    } else {
      const last = templates.length - 1;
      if (last >= 0 && sign === "{") templates[last] = (templates[last] ?? 0) + 1;
      if (last >= 0 && sign === "}") templates[last] = (templates[last] ?? 0) - 1;
      at += 1;
    }
  }
  return out.join("");
}

function endOfString(text: string, from: number, quote: string): number {
  let index = from + 1;
  while (index < text.length && text[index] !== quote) index += text[index] === "\\" ? 2 : 1;
  return index + 1;
}

/** A slash begins a pattern where a value may stand, not behind one. */
const startsPattern = (before: string): boolean =>
  before === "" || /[(,=:[!&|?{};+\-*<>%~^]$/.test(before) || /\b(return|typeof|case|in|of|new|delete|void|throw)$/.test(before);

function endOfPattern(text: string, from: number): number {
  let inClass = false;
  let index = from + 1;
  for (; index < text.length && (inClass || text[index] !== "/"); index += 1) {
    if (text[index] === "\\") index += 1;
    else if (text[index] === "[") inClass = true;
    else if (text[index] === "]") inClass = false;
  }
  return index + 1;
}
