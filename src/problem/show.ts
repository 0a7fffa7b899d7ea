// How does a problem look on the terminal? File, line and column, the line itself, a caret, why, and what to do.
import type { JobPath, Problem } from "./problem.ts";

/** Counted from 1; `endColumn` is the first column behind. */
export interface ShownPlace {
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

export interface ShowOptions {
  /** As the user named it. */
  readonly file: string;
  readonly text: string;
  readonly locate: (path: JobPath, at?: "key" | "value") => ShownPlace;
}

/** All problems, one below the other, each ending with a new line. */
export const showProblems = (problems: readonly Problem[], options: ShowOptions): string =>
  problems.map((problem) => showProblem(problem, options)).join("");

function showProblem(problem: Problem, { file, text, locate }: ShowOptions): string {
  const place = problemPlace(problem, { text, locate });
  const lines = [`${file}:${place.line}:${place.column}: ${problem.severity}: ${problem.what}`];
  // What concerns the whole file has no line of its own to show.
  if (problem.path.length > 0 || problem.range !== undefined) lines.push(...sourceLines(text, place));
  if (problem.why !== undefined) lines.push(`  why: ${problem.why}`);
  lines.push(`  fix: ${problem.fix}`);
  return `${lines.map(printable).join("\n")}\n`;
}

/** Where a problem stands in the text: by its range, or else by its path. */
export function problemPlace(problem: Problem, { text, locate }: Pick<ShowOptions, "text" | "locate">): ShownPlace {
  if (problem.range === undefined) return locate(problem.path, problem.at);
  const [from, to] = problem.range;
  const start = text.lastIndexOf("\n", from - 1) + 1;
  const lineEnd = text.indexOf("\n", from);
  const end = Math.min(to, lineEnd === -1 ? text.length : lineEnd);
  const column = from - start + 1;
  let line = 1;
  for (let at = text.indexOf("\n"); at !== -1 && at < from; at = text.indexOf("\n", at + 1)) line += 1;
  return { line, column, endColumn: column + Math.max(1, end - from) };
}

/** Wider lines are cut around the caret. */
const MOST_COLUMNS = 100;
const BEFORE_CARET = 40;

function sourceLines(text: string, { line, column, endColumn }: ShownPlace): readonly string[] {
  const source = (text.split("\n", line)[line - 1] ?? "").trimEnd();
  const from = source.length > MOST_COLUMNS && column > BEFORE_CARET ? column - BEFORE_CARET : 0;
  const shown = source.slice(from, from + MOST_COLUMNS);
  const carets = Math.max(1, Math.min(endColumn - column, MOST_COLUMNS - (column - 1 - from)));
  const number = `${line}`.padStart(5);
  return [`${number} | ${shown}`.trimEnd(), `      | ${" ".repeat(column - 1 - from)}${"^".repeat(carets)}`];
}

/** A tab as one space, so that the caret stands right; any other control sign, which might steer the terminal, as a question mark. */
const printable = (line: string): string => line.replaceAll("\t", " ").replace(/[\p{Cc}\p{Cf}]/gu, "?");
