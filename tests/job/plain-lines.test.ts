import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseDocument } from "yaml";
import { readPlainLines } from "../../src/job/plain-lines.ts";
import { exampleNames, exampleText } from "../support/example-jobs.ts";

const badJobs = join(import.meta.dirname, "../bad-jobs");
const badTexts = readdirSync(badJobs)
  .filter((file) => file.endsWith(".yaml"))
  .map((file) => readFileSync(join(badJobs, file), "utf8"));

/** What the parser of YAML reads, with an empty text where nothing stands; undefined when it complains. */
const parsed = (text: string): string | undefined => {
  const document = parseDocument(text, { schema: "failsafe", prettyErrors: false, logLevel: "error" });
  return document.errors.length > 0 ? undefined : JSON.stringify(document.toJS(), (_, value) => value ?? "");
};

const expectSame = (text: string): boolean => {
  const plain = readPlainLines(text);
  if (plain !== undefined) expect(JSON.stringify(plain)).toBe(parsed(text));
  return plain !== undefined;
};

describe("readPlainLines", () => {
  test.each(exampleNames)("the example %s is plain, and reads as the parser of YAML reads it", (name) =>
    expect(expectSame(exampleText(name))).toBe(true),
  );

  test("more than half of the wrong job files are plain, and read as the parser of YAML reads them", () =>
    expect(badTexts.filter(expectSame).length).toBeGreaterThan(badTexts.length / 2));

  test("lists in the column of their key, blocks in lists, lists in braces, and keys with nothing behind them", () => {
    const text = "a:\n- 1\n- x: 1\n  y: {q: [a, 'b'], r: \"c\"} # d\nb:\nc:\n  - z\n";
    expect({ ...readPlainLines(text) }).toEqual({ a: ["1", { x: "1", y: { q: ["a", "b"], r: "c" } }], b: "", c: ["z"] });
    expectSame(text);
  });

  test.each([
    ["a key twice", "a: 1\na: 2\n"],
    ["a key twice in braces", "a: {b: 1, b: 2}\n"],
    ["a tab", "a:\t1\n"],
    ["a second colon", "a: b: c\n"],
    ["a value on two lines", "a: b\n  c\n"],
    ["a bracket that is not closed", "a: [1, 2\n"],
    ["a brace that a bracket closes", "a: {b: 1]\n"],
    ["something behind a brace", "a: {b: 1} c\n"],
    ["a name and a mark", "a: &b c\nd: *b\n"],
    ["a type", "a: !!int 1\n"],
    ["a text in lines", "a: |\n  b\n"],
    ["a backslash between quotation marks", 'a: "\\n"\n'],
    ["a second document", "a: b\n---\nc: d\n"],
    ["a line that begins between two columns", "a:\n    b: 1\n  c: 2\n"],
    ["spaces in front of the first line", "  a: 1\n"],
    ["nothing at all", "# a\n"],
    ["a list", "- a\n"],
    ["an entry that is no value", "a:\n  - - b\n"],
    ["a line of 1001 letters", `a: ${"b".repeat(998)}\n`],
    ["401 entries", `a: \n${"  - b\n".repeat(401)}`],
    ["401 keys", Array.from({ length: 401 }, (_, index) => `k${index}: b\n`).join("")],
    ["a dozen levels", Array.from({ length: 12 }, (_, index) => `${" ".repeat(index)}a:\n`).join("")],
    ["a dozen brackets", `a: ${"[".repeat(12)}b${"]".repeat(12)}\n`],
  ])("%s is left to the parser of YAML", (_, text) => expect(readPlainLines(text)).toBeUndefined());

  test("whatever is changed in plain lines, they are left to the parser of YAML or read as it reads them", () => {
    const lines = [...exampleNames.map(exampleText), ...badTexts].map((text) => text.split("\n"));
    const small = ["a:\n  - 1\n  - x: 1\n    y: {q: [a, 'b'], r: c}\n  - \"z\"\nb:\nc: d # e\n", "l:\n- a\n- b: c\n  d: e\nm: n\n"];
    const part = fc
      .record({ of: fc.constantFrom(...lines), from: fc.nat(80), count: fc.integer({ min: 2, max: 12 }) })
      .map(({ of, from, count }) => {
        const taken = of.slice(from % of.length, (from % of.length) + count);
        const indent = /^ */.exec(taken[0] ?? "")?.[0] ?? "";
        return taken.map((line) => (line.startsWith(indent) ? line.slice(indent.length) : line)).join("\n");
      });
    const sign = fc.constantFrom(..." :#-{}[],\"'&*!|>%?a0~é½–.\\<=@`\n".split(""), "  ", ": ", " #", "- ", "\n  ", "\n- ", "b: c", "---");
    const edit = fc.record({ at: fc.nat(400), drop: fc.nat(2), add: fc.oneof(sign, fc.constant("")) });
    let plain = 0;
    fc.assert(
      fc.property(fc.oneof(part, fc.constantFrom(...small)), fc.array(edit, { maxLength: 3 }), (text, edits) => {
        const changed = edits.reduce((now, { at, drop, add }) => {
          const place = at % (now.length + 1);
          return now.slice(0, place) + add + now.slice(place + drop);
        }, text);
        if (expectSame(changed)) plain += 1;
      }),
      { numRuns: 6000 },
    );
    expect(plain).toBeGreaterThan(600);
  });
});
