// Does the JSON Schema say of the examples what the reader says? Checked by a validator that is not ours.
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { run } from "../../src/cli/run.ts";
import { exampleNames, exampleText } from "../support/example-jobs.ts";
import { memoryEffects } from "../support/memory-effects.ts";

const schemaOf = async (...words: readonly string[]): Promise<Record<string, unknown>> => {
  const effects = memoryEffects({});
  expect(await run(["schema", ...words], effects)).toBe(0);
  return JSON.parse(effects.said.join("")) as Record<string, unknown>;
};
const validatorOf = async (kind: string) => new Ajv({ strict: true, allowUnionTypes: true, allErrors: true }).compile(await schemaOf(kind));

describe("reevebook schema", () => {
  test("it is a draft 7 schema; job is what it gives without a word", async () => {
    const job = await schemaOf();
    expect(job).toEqual(await schemaOf("job"));
    expect(job["$schema"]).toBe("http://json-schema.org/draft-07/schema#");
    expect(job["title"]).toBe("Job file of Reevebook");
  });

  test("every example is valid, its scalars as an editor's YAML reads them", async () => {
    const valid = await validatorOf("job");
    for (const name of exampleNames) {
      valid(parse(exampleText(name)));
      expect.soft(valid.errors ?? [], name).toEqual([]);
    }
    const record = await validatorOf("record");
    record(parse(exampleText("0001-level-deck-straight.record")));
    expect(record.errors ?? []).toEqual([]);
  });

  test.each([
    ["an unknown key", "clear opening: 29 in", "clear openning: 29 in", "additionalProperties"],
    ["a missing key", "units: inch ", "# units ", "required"],
    ["a word that is none of the few", "paper: letter", "paper: legal", "enum"],
    ["a list in place of a value", "clear opening: 29 in", "clear opening: [29 in]", "type"],
    ["no kind of end", "end: { kind: post,", "end: { kind: tree,", "anyOf|oneOf|const"],
  ])("%s is found", async (_, from, to, keyword) => {
    const valid = await validatorOf("job");
    const text = exampleText("0001-level-deck-straight");
    expect(text).toContain(from);
    expect(valid(parse(text.replace(from, to)))).toBe(false);
    expect((valid.errors ?? []).map((error) => error.keyword).join(" ")).toMatch(new RegExp(keyword));
  });

  test("descriptions say what a value is, its plausible range, its few words or an example", async () => {
    const text = JSON.stringify(await schemaOf());
    expect(text).toContain('"description":"the drop, 0 in to 100 m"');
    expect(text).toContain('"enum":["preliminary","for permit","for construction","as built"]');
    expect(text).toContain('"examples":["0001-porch-front"]');
  });

  test("another word is refused with what it takes; --help tells the line that an editor needs", async () => {
    const effects = memoryEffects({});
    expect(await run(["schema", "jobs"], effects)).toBe(1);
    expect(effects.warned.join("")).toContain('schema takes job or record, not "jobs"');
    expect(await run(["schema", "--help"], effects)).toBe(0);
    expect(effects.said.join("")).toContain("# yaml-language-server: $schema=job.schema.json");
  });
});
