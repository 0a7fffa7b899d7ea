import { describe, expect, test } from "vitest";
import { readData } from "../../src/job/data.ts";

const whats = (text: string): readonly string[] => readData(text).problems.map((problem) => problem.what);

describe("readData", () => {
  test("0001 keeps its zeros, 2026-04-02 and true stay texts, and 12:30 is no number of seconds", () => {
    const { raw, problems } = readData("a: 0001\nb: 2026-04-02\nc: true\nd: 12:30\ne:\n");
    expect(problems).toEqual([]);
    expect({ ...(raw as object) }).toEqual({ a: "0001", b: "2026-04-02", c: "true", d: "12:30", e: "" });
  });

  test("marks of feet and inches need no quotation marks of YAML", () => {
    const { raw } = readData("a: 5'-6 1/2\"\nb: 66-1/2 in # measured\n");
    expect({ ...(raw as object) }).toEqual({ a: "5'-6 1/2\"", b: "66-1/2 in" });
  });

  test("a thousand aliases of aliases are refused one by one and never unfolded", () => {
    const bomb = ["a: &a [1, 1]", ...Array.from({ length: 30 }, (_, i) => `b${i}: &b${i} [*${i === 0 ? "a" : `b${i - 1}`}, *a]`)].join(
      "\n",
    );
    const told = whats(bomb);
    expect(told.length).toBeLessThan(200);
    expect(told[0]).toBe("&a names a place of the file");
  });

  test("text of more than 100000 letters is not read at all", () => {
    expect(whats(`a: ${"x".repeat(100_000)}`)).toEqual(["the file has 100003 letters; no job file needs more than 100000"]);
  });

  test("20000 opening brackets and 3000 nested braces are one problem each", () => {
    expect(whats("[".repeat(20_000))).toEqual(["blocks are nested more deeply than any job file needs"]);
    expect(whats(`a: ${"{a: ".repeat(3000)}`)).toHaveLength(1);
    expect(whats(`${"- ".repeat(25)}1`)).toEqual(["blocks are nested more deeply than any job file needs"]);
  });

  test("a list of 501 entries is not looked into", () => {
    expect(whats(`a: [${"1, ".repeat(500)}1]`)).toEqual(["there are 501 entries here"]);
  });

  test("a key named __proto__ or constructor is a key like any other", () => {
    const { raw, problems } = readData("__proto__: 1\nconstructor: 2\n");
    expect(problems).toEqual([]);
    expect(Object.keys(raw as object)).toEqual(["__proto__", "constructor"]);
    expect(({} as Record<string, unknown>)["1"]).toBeUndefined();
  });

  test("a type of its own (!!int) and a key that is a list are told", () => {
    expect(whats("a: !!int 3\n")).toEqual(['"tag:yaml.org,2002:int" gives a value a type of its own']);
    expect(whats("? [1, 2]\n: 3\n")).toEqual(["a key is not a word"]);
  });
});
