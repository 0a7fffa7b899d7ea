import { describe, expect, test } from "vitest";
import { keysOf } from "../../src/job/issues.ts";
import { parseJob } from "../../src/job/parse.ts";
import { jobFile } from "../../src/job/schema.ts";
import { skeleton } from "../../src/job/skeleton.ts";

const text = skeleton("0042-new-deck");
/** The same with every optional line put in force. */
const filled = text.replace(/^(\s*)# ((?:- )?[a-z ]+:)/gm, "$1$2");

describe("skeleton", () => {
  test("a new job file reads without a problem and carries its number", () => {
    const { value, problems } = parseJob(text);
    expect(problems).toEqual([]);
    expect(value?.identity.number).toBe("0042-new-deck");
  });

  test("every key of every block stands in it, so that nobody must look elsewhere", () => {
    const shape: Readonly<Record<string, Parameters<typeof keysOf>[0]>> = jobFile.shape;
    const keys = [...Object.keys(shape), ...Object.values(shape).flatMap((schema) => keysOf(schema))];
    expect(keys.length).toBeGreaterThan(60);
    expect(keys.filter((key) => !new RegExp(`(^|[\\s{#,])${key}:`).test(text))).toEqual([]);
  });

  test("its remarks hold values that read as well: pool barrier, limits, stock and the strand's own data", () => {
    const lines = ["pool barrier", "guard height", "breaking force", "working share", "bushing angle"];
    for (const key of lines) {
      const { problems } = parseJob(text.replace(new RegExp(`# (${key}: )`), "$1"));
      expect(problems, key).toEqual([]);
    }
    expect(filled).not.toBe(text);
  });
});
