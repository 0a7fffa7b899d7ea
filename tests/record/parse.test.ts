import { describe, expect, test } from "vitest";
import { parseRecord } from "../../src/record/parse.ts";

const closingOf = (closing: string) =>
  parseRecord(`record: { job: 0001-a, revision: "0", written by: RT }\nclosing: { ${closing} }\n`).value?.closing;

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
