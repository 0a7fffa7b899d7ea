import { describe, expect, test } from "vitest";
import { parseRecord } from "../../src/record/parse.ts";
import { examplePlan } from "../support/example-jobs.ts";

const closingOf = (closing: string) =>
  parseRecord(`record: { job: 0001-a, revision: "0", written by: RT }\nclosing: { ${closing} }\n`).value?.closing;

test("every bore and cable of the longest example can be written down", () => {
  const { bores, cables, job } = examplePlan("0003-long-boardwalk");
  expect(bores.length).toBeGreaterThan(500);
  const { value, problems } = parseRecord(
    [
      `record: { job: ${job.identity.number}, revision: "0", written by: R. Teasel }`,
      "bores:",
      ...bores.map(({ mark, height }) => `  - { mark: ${mark}, height: ${height.toFixed(1)} mm }`),
      "cables:",
      ...cables.map(({ mark }) => `  - { mark: ${mark}, lot: S-17 }`),
    ].join("\n"),
  );
  expect(problems).toEqual([]);
  expect([value?.bores.length, value?.cables.length]).toEqual([bores.length, cables.length]);
});

test("a file that no record needs is not looked into, and is called a record", () => {
  expect(parseRecord(`a: ${"x".repeat(500_000)}`).problems.map(({ what, fix }) => [what, fix])).toEqual([
    ["the file has 500003 letters; no record needs more than 500000", "check that this is a record"],
  ]);
});

describe("parseRecord", () => {
  test.each([
    ["completed: 2026-05-20", "2038-05-20", true],
    ["completed: 2088-02-29", "2100-02-28", true], // 2100 is no leap year
    ["completed: 2024-02-29", "2036-02-29", true],
    ["completed: 2026-05-20, keep until: 2030-01-01", "2030-01-01", false],
    ["open items: none", "", false],
  ])("%s: kept until %s; by default: %s", (closing, keepUntil, isKeepDefault) => {
    expect(closingOf(closing)).toMatchObject({ keepUntil, isKeepDefault });
  });

  test("the shortest record has nothing but its head", () => {
    const { value, problems } = parseRecord('record: { job: 0001-a, revision: "0", written by: RT }\n');
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ jobNumber: "0001-a", gauge: "", temperature: null, bores: [], cables: [], posts: [], deviations: [] });
  });
});
