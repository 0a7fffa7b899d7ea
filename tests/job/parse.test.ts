import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { locator } from "../../src/job/locate.ts";
import { parseJob } from "../../src/job/parse.ts";
import { problemPlace, showProblems } from "../../src/problem/show.ts";
import { changedText, exampleNames, exampleText } from "../support/example-jobs.ts";

const name = "rule-of-thumb";

describe("parseJob", () => {
  test.each(exampleNames)("the example %s reads without a problem", (example) =>
    expect(parseJob(exampleText(example)).problems).toEqual([]),
  );

  test("the same text gives the same job, byte for byte", () => {
    expect(JSON.stringify(parseJob(exampleText(name)))).toBe(JSON.stringify(parseJob(exampleText(name))));
  });

  test("a number in single quotation marks with its zeros keeps them", () => {
    expect(parseJob(changedText(name, { "number: 0001-porch-front": "number: '0001'" })).value?.identity.number).toBe("0001");
  });

  test("lines that end in CR and LF, and a mark of byte order in front, change nothing", () => {
    const job = JSON.stringify(parseJob(exampleText(name)).value);
    expect(JSON.stringify(parseJob(exampleText(name).replaceAll("\n", "\r\n")).value)).toBe(job);
    expect(JSON.stringify(parseJob(`\ufeff${exampleText(name)}`).value)).toBe(job);
  });

  test("a file saved as UTF-16, or any other with a zero byte, is told as such at its beginning and nothing else is", () => {
    const text = Buffer.from(exampleText(name), "utf16le").toString("utf8");
    const what = "the file is not plain text in UTF-8";
    expect(parseJob(text).problems).toEqual([
      { severity: "error", path: [], what, fix: "save it as plain text in UTF-8, or name another file" },
    ]);
  });

  test("a letter that was saved in another encoding is told at its value", () => {
    const text = Buffer.from(changedText(name, { "place: 3 Quill": "place: 3 Qu\u00efll" }), "latin1").toString("utf8");
    expect(parseJob(text).problems.map(({ path, what }) => ({ path, what }))).toEqual([
      { path: ["job", "place"], what: "the place holds a letter that was not saved as UTF-8" },
    ]);
  });

  test("an accent behind its letter is joined to it: e and U+0301 become one letter", () => {
    const text = changedText(name, { "place: 3 Quillwort": "place: 3 Caf\u0065\u0301" });
    expect(parseJob(text).value?.identity.place).toBe("3 Caf\u00e9 Lane, Amberfold (invented)");
  });

  test("problems of all blocks come at once, in the order of the file, each once", () => {
    const text = changedText(name, {
      "drop: 38 in": "drop: 38",
      "length: 23 ft": "length: 0 ft",
      "grade: 316": "grade: 318",
      "units: inch": "units: yard",
    });
    const { value, problems } = parseJob(text);
    const locate = locator(text);
    const lines = problems.map((problem) => problemPlace(problem, { text, locate }).line);
    expect(value).toBeUndefined();
    expect(problems).toHaveLength(4);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  test("a whole word of the file taken out or doubled is a job or problems with a fix, at a place in the text", () => {
    const lines = exampleText(name).split("\n");
    fc.assert(
      fc.property(fc.nat(lines.length - 1), fc.constantFrom("drop", "double", "indent", "cut"), (index, how) => {
        const line = lines[index] ?? "";
        const instead = { drop: [], double: [line, line], indent: [`  ${line}`], cut: [line.slice(0, line.length / 2)] }[how];
        expectTold([...lines.slice(0, index), ...instead, ...lines.slice(index + 1)].join("\n"));
      }),
      { numRuns: 300 },
    );
  });

  test("any text at all gives a job or problems, and never throws", () => {
    const yamlish = fc.string({ unit: fc.constantFrom(..."job: \n-[]{},#&*!|>'\"%@`\t0a".split("")), maxLength: 60 });
    fc.assert(fc.property(fc.oneof(fc.string(), fc.string({ unit: "binary" }), yamlish), expectTold), { numRuns: 1500 });
  });

  test("any text at all in place of any value gives a job or problems", () => {
    const values = [...exampleText(name).matchAll(/: ([^{#\n]+)\n/g)].map((match) => match[1] ?? "");
    expect(values.length).toBeGreaterThan(10);
    fc.assert(
      fc.property(
        fc.constantFrom(...values),
        fc.oneof(fc.string({ maxLength: 20 }), fc.string({ unit: "binary", maxLength: 20 })),
        (value, text) => {
          expectTold(exampleText(name).replace(`: ${value}\n`, () => `: ${JSON.stringify(text)}\n`));
        },
      ),
      { numRuns: 500 },
    );
  });
});

function expectTold(text: string): void {
  const { value, problems } = parseJob(text);
  expect(value === undefined).toBe(problems.length > 0);
  const locate = locator(text);
  const lines = text.split("\n").length;
  for (const problem of problems) {
    const { line, column } = problemPlace(problem, { text, locate });
    expect(line >= 1 && line <= lines && column >= 1).toBe(true);
    expect(problem.what.length * problem.fix.length).toBeGreaterThan(0);
    expect(problem.what).not.toMatch(/\binvalid\b|\byou must\b|undefined|NaN|\[object/);
  }
  showProblems(problems, { file: "any.yaml", text, locate });
}
