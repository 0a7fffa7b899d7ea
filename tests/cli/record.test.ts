// Is a record read with its job, is the job made again when it changes, and does a wrong one stop only its own job?
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { run } from "../../src/cli/run.ts";
import { exampleJob, type MemoryEffects, memoryEffects } from "../support/memory-effects.ts";

const pagesOnly = ["build", "--no-pdf"];
const record = readFileSync("jobs/0001-level-deck-straight.record.yaml", "utf8");
const both = (text = record): MemoryEffects =>
  memoryEffects({ "jobs/a.yaml": exampleJob(), "jobs/a.record.yaml": text, "jobs/b.yaml": exampleJob("0002-b") });
const pageOf = ({ disk }: MemoryEffects): string => String(disk.get("output/0001-porch-front/index.html"));

describe("a record beside its job file", () => {
  test("it is no job of its own, and fills the page of its job alone", async () => {
    const effects = both();
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.said.at(-1)).toMatch(/^2 jobs built, 0 unchanged, 0 failed/);
    expect(pageOf(effects)).toContain("What was built");
    expect(pageOf(effects)).toContain('href="record.json"');
    const data = JSON.parse(String(effects.disk.get("output/0001-porch-front/record.json"))) as { differences: readonly unknown[] };
    expect(data.differences).toHaveLength(2);
    expect(effects.disk.get("output/0001-porch-front/0001-porch-front.record.yaml")).toBe(record);
    expect(effects.disk.get("output/0001-porch-front/0001-porch-front.yaml")).toBe(exampleJob());
    expect(String(effects.disk.get("output/0002-b/index.html"))).not.toContain("What was built");
  });

  test("its job is made again when the record changes, comes or goes, and no other", async () => {
    const effects = both();
    await run(pagesOnly, effects);
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.said.at(-1)).toBe("nothing to do: 2 jobs unchanged\n");
    effects.disk.set("jobs/a.record.yaml", record.replace("written by: R. Teasel", "written by: H. Marram"));
    await run(pagesOnly, effects);
    expect(effects.said.at(-1)).toMatch(/^1 job built, 1 unchanged/);
    expect(pageOf(effects)).toMatch(/Record written by<\/dt>\s*<dd[^>]*>H\. Marram|Record written by.*H\. Marram/);
    effects.disk.delete("jobs/a.record.yaml");
    await run(pagesOnly, effects);
    expect(effects.said.at(-1)).toMatch(/^1 job built, 1 unchanged/);
    expect(pageOf(effects)).not.toContain("What was built");
    expect(effects.disk.has("output/0001-porch-front/record.json")).toBe(false);
  });

  test("an error in it names its own file, line and column, stops its job and no other, and gives code 1", async () => {
    const effects = both(record.replace("mark: P3-05, height", "mark: P3-5, height"));
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.record\.yaml:\d+:13: error: the plan has no bore P3-5\n/);
    expect(effects.warned.join("")).toContain("fix: did you mean P3-05?");
    expect([...effects.disk.keys()].some((path) => path.startsWith("output/0001-porch-front"))).toBe(false);
    expect(effects.disk.has("output/0002-b/index.html")).toBe(true);
  });

  test("a difference that nobody accepted is counted when building and told by check, with code 0", async () => {
    const open = record.replace("mark: P3-05, planned", "mark: P2-05, planned");
    const built = both(open);
    expect(await run(pagesOnly, built)).toBe(0);
    expect([...built.said, ...built.warned].join("")).toContain('jobs/a.yaml: 2 warnings, told by "npx reevebook check jobs/a.yaml"');
    const checked = both(open);
    expect(await run(["check"], checked)).toBe(0);
    expect(checked.said.join("")).toMatch(/jobs\/a\.record\.yaml:\d+:28: warning: the bore P3-05 was made at 20-1\/4"/);
  });

  test("a record without its job file is told and gives code 1, whatever else is unchanged", async () => {
    const effects = both();
    await run(pagesOnly, effects);
    effects.disk.set("jobs/c.record.yaml", record);
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toContain("jobs/c.record.yaml: error: there is no job file beside this record");
    expect(await run(["check"], effects)).toBe(1);
  });

  test("named where a job file is wanted, as a shell does with *.yaml, it stands for its job", async () => {
    const effects = both();
    expect(await run([...pagesOnly, "jobs/a.record.yaml", "jobs/a.yaml"], effects)).toBe(0);
    expect(effects.said.at(-1)).toMatch(/^1 job built/);
    const alone = memoryEffects({ "jobs/a.record.yaml": record });
    expect(await run([...pagesOnly, "jobs/a.record.yaml"], alone)).toBe(1);
    expect(alone.warned.join("")).toMatch(/^jobs\/a\.yaml:1:1: error: there is no job file "jobs\/a\.yaml"\n {2}fix: /);
    expect(pageOf(effects)).toContain("What was built");
  });

  test("job file and record may end differently, in capitals too, and either names the job", async () => {
    const effects = memoryEffects({ "jobs/a.yml": exampleJob(), "jobs/a.RECORD.YAML": record });
    expect(await run([...pagesOnly, "jobs/a.RECORD.YAML"], effects)).toBe(0);
    expect(pageOf(effects)).toContain("What was built");
    expect(await run(["explain", "jobs/a.RECORD.YAML", "courses.5.height"], effects)).toBe(0);
    expect(effects.said.join("")).toContain('20"');
  });

  test("two records of one job stop it: neither can be chosen", async () => {
    const effects = both();
    expect(await run(pagesOnly, effects)).toBe(0);
    effects.disk.set("jobs/a.record.yml", record);
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toContain("jobs/a.record.yaml:1:1: error: the same job has another record: jobs/a.record.yml\n");
    expect(effects.disk.has("output/0001-porch-front/index.html")).toBe(false);
    expect(effects.disk.has("output/0002-b/index.html")).toBe(true);
  });

  test("what a system leaves beside a record under a name with a dot in front is no record", async () => {
    const effects = both();
    effects.disk.set("jobs/._a.record.yaml", "\u0000\u0005");
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.warned).toEqual([]);
  });

  test("a job file that has errors tells those of its record too", async () => {
    const effects = both(record.replace("last: 388 lbf", "last: 388"));
    effects.disk.set("jobs/a.yaml", exampleJob().replace("units: inch", "units: inches"));
    expect(await run(["check"], effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.yaml:\d+:\d+: error/);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.record\.yaml:\d+:\d+: error: "388" has no unit/);
  });
});
