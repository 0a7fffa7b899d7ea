import { describe, expect, test } from "vitest";
import type { Problem } from "../../src/problem/problem.ts";
import { problemPlace, showProblems } from "../../src/problem/show.ts";

const text = "sides:\n  - length: 12 ft\n    hieght: 36 in\n";
const unknown: Problem = {
  severity: "error",
  path: ["sides", 0, "hieght"],
  at: "key",
  what: 'a side has no word "hieght"',
  fix: 'did you mean "height"? A side takes length, height, slope, posts.',
};
const locate = () => ({ line: 3, column: 5, endColumn: 11 });

describe("showProblems", () => {
  test("an unknown key at 3:5 shows its line, six carets below it, and the fix", () => {
    expect(showProblems([unknown], { file: "jobs/0007-porch.yaml", text, locate })).toBe(
      [
        'jobs/0007-porch.yaml:3:5: error: a side has no word "hieght"',
        "    3 |     hieght: 36 in",
        "      |     ^^^^^^",
        '  fix: did you mean "height"? A side takes length, height, slope, posts.',
        "",
      ].join("\n"),
    );
  });

  test("the reason stands between the caret and the fix, and a warning says so", () => {
    const shown = showProblems([{ ...unknown, severity: "warning", why: "each key has one meaning" }], { file: "a.yaml", text, locate });
    expect(shown.split("\n").slice(-4)).toEqual([
      "      |     ^^^^^^",
      "  why: each key has one meaning",
      '  fix: did you mean "height"? A side takes length, height, slope, posts.',
      "",
    ]);
    expect(shown).toMatch(/^a\.yaml:3:5: warning: /);
  });

  test("a problem of the whole file shows no line of it", () => {
    const whole: Problem = { severity: "error", path: [], what: "the file holds no job", fix: "begin with a copy" };
    const shown = showProblems([whole], { file: "a.yaml", text: "", locate: () => ({ line: 1, column: 1, endColumn: 1 }) });
    expect(shown).toBe("a.yaml:1:1: error: the file holds no job\n  fix: begin with a copy\n");
  });

  test("a line of 500 letters is cut so that the caret at column 300 stays under its letter", () => {
    const long = `${"a".repeat(299)}X${"b".repeat(200)}`;
    const shown = showProblems([unknown], { file: "a.yaml", text: long, locate: () => ({ line: 1, column: 300, endColumn: 301 }) });
    const [, source = "", caret = ""] = shown.split("\n");
    expect(source.length).toBeLessThanOrEqual(110);
    expect(source[caret.indexOf("^")]).toBe("X");
  });

  test("an escape sign that would steer the terminal is shown as a question mark, a tab as one space", () => {
    const shown = showProblems([{ ...unknown, what: "\u001b[31mred" }], {
      file: "a.yaml",
      text: "\n\n\tx\u001b",
      locate: () => ({ line: 3, column: 2, endColumn: 3 }),
    });
    expect(shown).toContain("?[31mred");
    expect(shown).toContain("    3 |  x?\n      |  ^\n");
  });
});

describe("problemPlace", () => {
  test("a range counts lines and columns from 1 and ends with its line", () => {
    const at = (from: number, to: number) =>
      problemPlace({ severity: "error", path: [], range: [from, to], what: "", fix: "" }, { text, locate });
    expect(at(0, 5)).toEqual({ line: 1, column: 1, endColumn: 6 });
    expect(at(9, 100)).toEqual({ line: 2, column: 3, endColumn: 18 });
    expect(at(text.length, text.length)).toEqual({ line: 4, column: 1, endColumn: 2 });
  });
});
