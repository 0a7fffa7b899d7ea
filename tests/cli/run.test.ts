// Do bad jobs leave the others alone, is everything written whole, and is nothing done twice?
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { build } from "../../src/cli/build-command.ts";
import { run } from "../../src/cli/run.ts";
import { survey } from "../../src/cli/survey.ts";
import { type Printer, PrintFault, type PrintJob } from "../../src/pdf/print.ts";
import { exampleJob, type MemoryEffects, memoryEffects } from "../support/memory-effects.ts";

const pagesOnly = ["build", "--no-pdf"];
const bad = exampleJob("0002-bad").replace("clear opening: 29 in", "clear opening: 29");
const weakJob = readFileSync("jobs/0007-too-much-for-the-frame.yaml", "utf8");
const outputs = ({ disk }: MemoryEffects): string[] => [...disk.keys()].filter((path) => path.startsWith("output/")).sort();

/** The four issues, and the templates for each paper. */
const prints = ["crew", "homeowner", "permit", "record", "templates-a4", "templates-letter"];

describe("blank", () => {
  test("prints a job file that is built as it stands, and writes nothing", async () => {
    const effects = memoryEffects({});
    expect(await run(["blank", "0042-new-deck"], effects)).toBe(0);
    expect(outputs(effects)).toEqual([]);
    const text = effects.said.join("");
    expect(text).toContain("number: 0042-new-deck ");
    expect(await run(["check"], memoryEffects({ "jobs/a.yaml": text }))).toBe(0);
  });

  test("refuses a number that no job may have, and prints no file", async () => {
    const effects = memoryEffects({});
    expect(await run(["blank", "../x"], effects)).toBe(1);
    expect(effects.said).toEqual([]);
    expect(effects.warned.join("")).toMatch(/fix: /);
  });
});

describe("run", () => {
  test("two good jobs give a page and data each, a list and a manifest, and code 0", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/b.yaml": exampleJob("0002-b") });
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(outputs(effects)).toEqual(
      expect.arrayContaining([
        "output/0001-a/index.html",
        "output/0001-a/plan.json",
        "output/0001-a/bores.csv",
        "output/0002-b/index.html",
        "output/index.html",
        "output/manifest.json",
        "output/sheets.css",
      ]),
    );
    expect(effects.said.at(-1)).toMatch(/^2 jobs built, 0 unchanged, 0 failed, 0 pages, .* seconds\. Open output\/index\.html\n$/);
  });

  test("a job with an error gives code 1, its line and column, and stops no other", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": bad, "jobs/b.yaml": exampleJob("0003-good"), "jobs/c.yaml": "][" });
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.yaml:\d+:\d+: error: /);
    expect(effects.warned.join("")).toMatch(/jobs\/c\.yaml:1:\d+: error: /);
    expect(outputs(effects).filter((path) => path.startsWith("output/0002-bad"))).toEqual([]);
    expect(outputs(effects)).toContain("output/0003-good/index.html");
    expect(String(effects.disk.get("output/index.html"))).not.toContain("0002-bad");
    expect(effects.said.at(-1)).toMatch(/^1 job built, 0 unchanged, 2 failed/);
  });

  test("a second run with nothing changed writes nothing", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    await run(pagesOnly, effects);
    const before = effects.written.length;
    expect(await run(pagesOnly, effects)).toBe(0);
    expect(effects.written.length).toBe(before);
    expect(effects.said.at(-1)).toBe("nothing to do: 1 job unchanged\n");
  });

  test("of two jobs the one that changed is made again, and the list still has both", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/b.yaml": exampleJob("0002-b") });
    await run(pagesOnly, effects);
    effects.written.length = 0;
    effects.disk.set("jobs/b.yaml", exampleJob("0002-b").replace("length: 23 ft", "length: 22 ft"));
    await run(pagesOnly, effects);
    expect(effects.written.filter((path) => path.includes("0001-a"))).toEqual([]);
    expect(effects.written).toContain("output/0002-b/index.html");
    expect(String(effects.disk.get("output/index.html"))).toContain("0001-a");
    expect(effects.said.at(-1)).toMatch(/^1 job built, 1 unchanged/);
  });

  test("an output that was deleted is made again", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    await run(pagesOnly, effects);
    effects.files.remove("output/0001-a/plan.json");
    await run(pagesOnly, effects);
    expect(outputs(effects)).toContain("output/0001-a/plan.json");
  });

  test("what was made from a job that is gone, renamed or bad now is removed, and nothing else", async () => {
    const effects = memoryEffects({
      "jobs/a.yaml": exampleJob("0001-a"),
      "jobs/b.yaml": exampleJob("0002-b"),
      "jobs/c.yaml": exampleJob("0003-c"),
      "output/0001-a/notes.txt": "mine",
    });
    await run(pagesOnly, effects);
    effects.disk.delete("jobs/a.yaml");
    effects.disk.set("jobs/b.yaml", exampleJob("0009-b"));
    effects.disk.set("jobs/c.yaml", "][");
    expect(await run(pagesOnly, effects)).toBe(1);
    const left = outputs(effects).filter((path) => /000[1-3]-/.test(path));
    expect(left).toEqual(["output/0001-a/notes.txt"]);
    expect(outputs(effects)).toContain("output/0009-b/index.html");
  });

  test("the same number in two files is an error in both, at the number, also when one of them was built before", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/c.yaml": exampleJob("0003-c") });
    await run(pagesOnly, effects);
    effects.disk.set("jobs/b.yaml", exampleJob("0001-A"));
    expect(await run(pagesOnly, effects)).toBe(1);
    const line =
      exampleJob()
        .split("\n")
        .findIndex((text) => text.includes("number: 0001")) + 1;
    const said = effects.warned.join("");
    expect(said).toContain(`jobs/a.yaml:${line}:11: error: the job number 0001-a is used by another file as well: jobs/b.yaml`);
    expect(said).toContain(`jobs/b.yaml:${line}:11: error: the job number 0001-A is used by another file as well: jobs/a.yaml`);
    expect(outputs(effects).filter((path) => /0001-a/i.test(path))).toEqual([]);
    expect(outputs(effects)).toContain("output/0003-c/index.html");
  });

  test("a file name with odd characters is refused", async () => {
    const effects = memoryEffects({ "jobs/a\u00e9.yaml": exampleJob("0001-a") });
    expect(await run(pagesOnly, effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/the name of this file has characters that not every system takes/);
  });

  test("named files alone are built, and the rest of an earlier build stays", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/b.yaml": exampleJob("0002-b") });
    await run(pagesOnly, effects);
    effects.disk.set("jobs/b.yaml", exampleJob("0002-b").replace("length: 23 ft", "length: 22 ft"));
    effects.disk.set("jobs/a.yaml", "][");
    expect(await run([...pagesOnly, "./jobs/b.yaml"], effects)).toBe(0);
    expect(outputs(effects)).toContain("output/0001-a/index.html");
  });

  test("nothing is written outside --out", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    await run([...pagesOnly, "--out", "elsewhere/x"], effects);
    expect(effects.written.length).toBeGreaterThan(4);
    expect(effects.written.filter((path) => !path.startsWith("elsewhere/x/"))).toEqual([]);
  });

  test("a folder that is not there, one without jobs and a file that is not there are code 1 with the reason", async () => {
    for (const [words, reason] of [
      [["build", "--no-pdf", "--jobs", "nowhere"], /no folder "nowhere"/],
      [["build", "--no-pdf", "x.yaml"], /no job file "x.yaml"/],
    ] as const) {
      const effects = memoryEffects({ "jobs/a.txt": "" });
      expect.soft(await run(words, effects)).toBe(1);
      expect.soft(effects.warned.join("")).toMatch(reason);
    }
  });

  test("--paper a4 prints a job of letter on A4", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    await run([...pagesOnly, "--paper", "a4"], effects);
    expect(String(effects.disk.get("output/0001-a/index.html"))).toContain("size:A4 portrait");
  });

  test("check writes nothing, says the verdict of every check, and gives 0 or 1", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    expect(await run(["check"], effects)).toBe(0);
    expect(effects.written).toEqual([]);
    expect(effects.said.join("")).toMatch(/jobs\/a\.yaml: job 0001-a, verdict: \w+/);
    expect(effects.said.filter((line) => /^ {2}(pass|fail|ask|not checked) /.test(line)).length).toBeGreaterThan(5);
    effects.disk.set("jobs/b.yaml", bad);
    expect(await run(["check"], effects)).toBe(1);
  });

  test("check tells what fails of a weak frame, and last the change that makes it hold with what to write", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": weakJob });
    expect(await run(["check"], effects)).toBe(0);
    const lines = effects.said.join("").split("\n");
    expect(lines[0]).toMatch(/verdict: fail$/);
    expect(lines.filter((line) => /^ {2}fail {8}bending of end posts/.test(line)).length).toBeGreaterThan(0);
    expect(lines.findLast((line) => line.startsWith("  "))).toMatch(
      /^ {2}remedy {6}Write in the job file: .*\. Then make the packet again\.$/,
    );
    const sound = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    await run(["check"], sound);
    expect(sound.said.join("")).not.toContain("remedy");
  });
});

const fakePrinter = (print: (job: PrintJob) => Promise<{ bytes: Buffer; pages: number }>): Printer => ({
  print,
  connected: Promise.resolve(),
  atWork: Promise.resolve(),
  version: async () => "none",
  close: () => {},
  crash: () => {},
});

const buildWith = (effects: MemoryEffects, printer: Printer): Promise<number> => {
  const request = readArguments(["build"], "test");
  if (request.command !== "build") throw new Error("build was asked for");
  const found = survey(request.options, { effects, browser: undefined });
  if (typeof found === "string") throw new Error(found);
  return build(found, { effects, browser: undefined, printer });
};

describe("build", () => {
  test("a job whose sheet overflows is code 2, is told by sheet and element, and leaves no file; the other is whole", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/b.yaml": exampleJob("0002-b") });
    const printer = fakePrinter(async ({ name }) => {
      if (name === "0001-a, permit") throw new PrintFault(name, ["sheet Z-603 Bores: table in #bores is wider than its page"]);
      return { bytes: Buffer.from(name), pages: 3 };
    });
    expect(await buildWith(effects, printer)).toBe(2);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.yaml: the packet of 0001-a .*\n {2}sheet Z-603 Bores: table in #bores is wider/);
    expect(outputs(effects).filter((path) => path.includes("0001-a"))).toEqual([]);
    expect(outputs(effects).filter((path) => path.endsWith(".pdf"))).toEqual(prints.map((print) => `output/0002-b/0002-b-${print}-r0.pdf`));
    expect(effects.said.at(-1)).toMatch(/^1 job built, 0 unchanged, 1 failed, 18 pages/);
  });

  test("a job that fails has NOT-FOR-CONSTRUCTION in the name of every PDF and in its links; once it is mended the old files go", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a").replace("pool barrier: false", "pool barrier: true") });
    const printer = fakePrinter(async ({ name }) => ({ bytes: Buffer.from(name), pages: 1 }));
    const pdfs = (): readonly string[] => outputs(effects).filter((path) => path.endsWith(".pdf"));
    const links = (): readonly string[] =>
      [...String(effects.disk.get("output/0001-a/index.html")).matchAll(/href="([^"]+\.pdf)"/g)].map(([, href]) => `output/0001-a/${href}`);
    const named = (suffix: string): readonly string[] => prints.map((print) => `output/0001-a/0001-a-${print}-r0${suffix}.pdf`);
    expect(await buildWith(effects, printer)).toBe(0);
    expect(pdfs()).toEqual(named("-NOT-FOR-CONSTRUCTION"));
    expect([...links()].sort()).toEqual(pdfs());
    effects.disk.set("jobs/a.yaml", exampleJob("0001-a"));
    expect(await buildWith(effects, printer)).toBe(0);
    expect(pdfs()).toEqual(named(""));
    expect([...links()].sort()).toEqual(pdfs());
  });

  test("a printer that breaks down is called a fault of the program", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    expect(
      await buildWith(
        effects,
        fakePrinter(() => Promise.reject(new Error("out of paper"))),
      ),
    ).toBe(2);
    expect(effects.warned.join("")).toMatch(/this is a fault of the program, not of your file:\nError: out of paper/);
  });

  test("a page that is word for word the same is not printed again, though its job is built anew", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a") });
    let printed = 0;
    const printer = fakePrinter(async ({ name }) => {
      printed += 1;
      return { bytes: Buffer.from(name), pages: 1 };
    });
    await buildWith(effects, printer);
    expect(printed).toBe(prints.length);
    effects.files.remove("output/0001-a/plan.json");
    expect(await buildWith(effects, printer)).toBe(0);
    expect(printed).toBe(prints.length);
    expect(outputs(effects)).toContain("output/0001-a/plan.json");
  });
});
