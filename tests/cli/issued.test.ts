// Is what was issued read with its job, is the job made again when it changes, and does a wrong one stop only its own job?
import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { run } from "../../src/cli/run.ts";
import { exampleJob, type MemoryEffects, memoryEffects } from "../support/memory-effects.ts";

const pagesOnly = ["build", "--no-pdf"];
const issued = exampleJob();
const revised = issued
  .replace("change: first issue }", 'change: first issue }\n    - { mark: A, date: 2026-05-02, by: RT, change: "opening measured again" }')
  .replace("clear opening: 29 in", "clear opening: 30 in");
const both = (text = issued): MemoryEffects =>
  memoryEffects({ "jobs/a.yaml": revised, "jobs/a.issued.yaml": text, "jobs/b.yaml": exampleJob("0002-b") });
const pageOf = ({ disk }: MemoryEffects, number = "0001-porch-front"): string => String(disk.get(`output/${number}/index.html`));
const hash = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 12);

describe("the job file as it was issued beside the job file", () => {
  test("it is no job of its own, and fills the sheet of changes of its job alone", async () => {
    const effects = both();
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.said.at(-1)).toMatch(/^2 jobs built, 0 unchanged, 0 failed/);
    expect(pageOf(effects)).toContain("<b>Z-004</b> What changed");
    for (const text of [issued, revised]) expect(pageOf(effects)).toContain(`job file ${hash(text)}`);
    expect(effects.disk.get("output/0001-porch-front/0001-porch-front.issued.yaml")).toBe(issued);
    const data = JSON.parse(String(effects.disk.get("output/0001-porch-front/changes.json"))) as { changes: readonly unknown[] };
    expect(data).toMatchObject({ from: { revision: "0" }, to: { revision: "A" }, between: [] });
    expect(pageOf(effects)).toContain(`${data.changes.length} changes since revision 0`);
    expect(pageOf(effects)).toContain('href="changes.json"');
    expect(pageOf(effects)).toContain('href="changes.csv"');
    expect(pageOf(effects, "0002-b")).not.toContain("Z-004");
    expect(effects.disk.has("output/0002-b/changes.json")).toBe(false);
  });

  test("two builds of it are the same bytes", async () => {
    const [one, two] = [both(), both()];
    await run(pagesOnly, one);
    await run(pagesOnly, two);
    const outputs = ({ disk }: MemoryEffects): ReadonlyMap<string, unknown> =>
      new Map([...disk].filter(([path]) => path.startsWith("output/0001")));
    expect(outputs(one)).toEqual(outputs(two));
  });

  test("its job is made again when it changes, comes or goes, and no other", async () => {
    const effects = both();
    await run(pagesOnly, effects);
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.said.at(-1)).toBe("nothing to do: 2 jobs unchanged\n");
    effects.disk.set("jobs/a.issued.yaml", issued.replace("client: N. Sallow", "client: N. Willow"));
    await run(pagesOnly, effects);
    expect(effects.said.at(-1)).toMatch(/^1 job built, 1 unchanged/);
    expect(pageOf(effects)).toContain("job: client");
    effects.disk.delete("jobs/a.issued.yaml");
    await run(pagesOnly, effects);
    expect(effects.said.at(-1)).toMatch(/^1 job built, 1 unchanged/);
    expect(pageOf(effects)).not.toContain("Z-004");
    expect([...effects.disk.keys()].filter((path) => /output\/.*(?:issued|changes)/.test(path))).toEqual([]);
  });

  test("a file that gives no plan any more is not to be corrected: it is said what to do instead", async () => {
    const effects = both(issued.replace("treated: true", "tretead: true"));
    expect(await run(["check"], effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(
      /jobs\/a\.issued\.yaml:1:1: error: this program makes no plan of what was issued.*\n {2}fix: .*never changed\n$/,
    );
  });

  test.each([
    ["a word that the format does not know", issued.replace("treated: true", "tretead: true"), /jobs\/a\.issued\.yaml:\d+:3: error: /],
    ["no plan", issued.replace("gap below: 2 in", "gap below: 5 in"), /jobs\/a\.issued\.yaml:\d+:\d+: error: the gap of 5"/],
    ["another job's number", exampleJob("0007-c"), /jobs\/a\.issued\.yaml:6:11: error: this file was issued for the job 0007-c/],
    ["no YAML", "a: [", /jobs\/a\.issued\.yaml:1:\d+: error: /],
  ])("an error in it (%s) names its own file, line and column, stops its job and no other, and gives code 1", async (_, text, told) => {
    const effects = both(text);
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(told);
    expect(effects.warned.join("")).not.toMatch(/jobs\/a\.yaml:\d/);
    expect([...effects.disk.keys()].some((path) => path.startsWith("output/0001-porch-front"))).toBe(false);
    expect(effects.disk.has("output/0002-b/index.html")).toBe(true);
  });

  test("two plans of one revision stop the job; the same plan is told, and the job is built without the sheet", async () => {
    const effects = both(revised.replace("clear opening: 30 in", "clear opening: 28 in"));
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.issued\.yaml:19:15: error: two different plans have the revision A/);
    effects.disk.set("jobs/a.issued.yaml", `# as it was issued\n${revised}`);
    expect(await run(pagesOnly, effects)).toBe(0);
    expect([...effects.said, ...effects.warned].join("")).toContain("jobs/a.yaml: 1 warning, told by");
    expect(pageOf(effects)).not.toContain("Z-004");
    const checked = both(revised);
    expect(await run(["check"], checked)).toBe(0);
    expect(checked.said.join("")).toMatch(/jobs\/a\.issued\.yaml:19:15: warning: the job file is at revision A too/);
  });

  test("without its job file it is told and gives code 1; two of one job stop it", async () => {
    const effects = both();
    await run(pagesOnly, effects);
    effects.disk.set("jobs/c.issued.yaml", issued);
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toContain("jobs/c.issued.yaml: error: there is no job file beside what was issued\n  fix: ");
    effects.disk.delete("jobs/c.issued.yaml");
    effects.disk.set("jobs/a.issued.yml", issued);
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toContain("jobs/a.issued.yaml:1:1: error: the same job has another issued file: jobs/a.issued.yml\n");
  });

  test("named where a job file is wanted, as a shell does with *.yaml, it stands for its job", async () => {
    const effects = both();
    expect(await run([...pagesOnly, "jobs/a.issued.yaml", "jobs/a.yaml"], effects)).toBe(0);
    expect(effects.said.at(-1)).toMatch(/^1 job built/);
    expect(pageOf(effects)).toContain("Z-004");
  });

  test("record and issued file may lie beside one job; each is told by itself", async () => {
    const effects = both(issued.replace("units: inch", "units: inches"));
    effects.disk.set("jobs/a.record.yaml", "record: { job: 0001-porch-front, revision: X, written by: RT }\n");
    expect(await run(["check"], effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.record\.yaml:1:\d+: warning: the job file has no revision X/);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.issued\.yaml:\d+:8: error/);
  });
});
