// Is what was issued kept whole, never written over, and is every change to it found?

import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { build } from "../../src/cli/build-command.ts";
import { realEffects } from "../../src/cli/effects.ts";
import { freeze } from "../../src/cli/freeze-command.ts";
import { run } from "../../src/cli/run.ts";
import { survey } from "../../src/cli/survey.ts";
import { verify } from "../../src/cli/verify-command.ts";
import type { Printer } from "../../src/pdf/print.ts";
import { exampleJob, type MemoryEffects, memoryEffects } from "../support/memory-effects.ts";

const options = ["--no-pdf"];
const frozen = "kept/0001-a-r0";
const job = exampleJob("0001-a");

const built = async (disk: Readonly<Record<string, string>> = { "jobs/a.yaml": job }): Promise<MemoryEffects> => {
  const effects = memoryEffects(disk);
  expect(await run(["build", ...options], effects)).toBe(0);
  effects.said.length = 0;
  effects.warned.length = 0;
  effects.written.length = 0;
  return effects;
};
const freezeIn = (effects: MemoryEffects, ...more: readonly string[]): Promise<number> =>
  run(["freeze", "--into", "kept", ...options, ...more], effects);
const verifyIn = async (effects: MemoryEffects, ...more: readonly string[]) => {
  const before = effects.said.length + effects.warned.length;
  const writes = effects.written.length;
  const code = await run(["verify", ...(more.length === 0 ? [frozen] : more)], effects);
  expect(effects.written.length).toBe(writes);
  return { code, text: [...effects.said, ...effects.warned].join(""), hasSaid: effects.said.length + effects.warned.length > before };
};
const filesOf = ({ disk }: MemoryEffects, folder: string): ReadonlyMap<string, string> =>
  new Map(
    [...disk]
      .filter(([path]) => path.startsWith(`${folder}/`))
      .map(([path, content]) => [path.slice(folder.length + 1), Buffer.from(content).toString("latin1")] as const)
      .sort(),
  );

/** Both manifests made anew, as somebody would who changes files and manifests together. */
const rehash = (effects: MemoryEffects): void => {
  const paths = [...filesOf(effects, frozen).keys()];
  const bytes = (path: string): Uint8Array => effects.files.read(`${frozen}/${path}`) ?? new Uint8Array();
  const payload = paths.filter((path) => path.startsWith("data/"));
  const size = payload.reduce((sum, path) => sum + bytes(path).length, 0);
  const info = Buffer.from(bytes("bag-info.txt")).toString("utf8");
  effects.disk.set(`${frozen}/bag-info.txt`, info.replace(/Payload-Oxum: .*/, `Payload-Oxum: ${size}.${payload.length}`));
  for (const name of ["manifest", "tagmanifest"]) {
    for (const algorithm of ["sha256", "sha512"]) {
      const listed = name === "manifest" ? payload : paths.filter((path) => !/^data\/|^tagmanifest/.test(path));
      const line = (path: string): string => `${createHash(algorithm).update(bytes(path)).digest("hex")}  ${path}\n`;
      effects.disk.set(`${frozen}/${name}-${algorithm}.txt`, listed.map(line).join(""));
    }
  }
};

describe("reevebook freeze", () => {
  test("a built job goes into a bag of its number and revision, with job file and record, and nothing is written elsewhere", async () => {
    const effects = await built({ "jobs/a.yaml": job, "jobs/a.record.yaml": 'record: { job: 0001-a, revision: "0", written by: RT }\n' });
    expect(await freezeIn(effects)).toBe(0);
    const bag = filesOf(effects, frozen);
    expect([...bag.keys()]).toEqual(
      expect.arrayContaining([
        "README.txt",
        "bag-info.txt",
        "bagit.txt",
        "data/0001-a/bores.csv",
        "data/0001-a/index.html",
        "data/0001-a/P1.dxf",
        "data/0001-a/plan.json",
        "data/a.record.yaml",
        "data/a.yaml",
        "data/index.html",
        "data/sheets.css",
        "manifest-sha256.txt",
        "manifest-sha512.txt",
        "tagmanifest-sha256.txt",
        "tagmanifest-sha512.txt",
      ]),
    );
    expect(bag.get("data/a.yaml")).toBe(job);
    for (const path of filesOf(effects, "output/0001-a").keys())
      expect(bag.get(`data/0001-a/${path}`)).toBe(filesOf(effects, "output/0001-a").get(path));
    expect(effects.written.filter((path) => !path.startsWith(`${frozen}/`))).toEqual([]);
    expect(effects.said.join("")).toMatch(
      /^kept\/0001-a-r0: frozen, \d+ files; status for construction, verdict \w+\n1 job frozen in kept, 0 not\n$/,
    );
    for (const path of [...bag.keys()].filter((name) => name.startsWith("data/"))) expect(bag.get("README.txt")).toContain(`  ${path}\n`);
    expect(bag.get("data/0001-a/index.html")).toContain("What was built");
    const { code, text } = await verifyIn(effects);
    expect([code, text.includes("page, plan and data are the same, byte for byte")]).toEqual([0, true]);
  });

  test("what was issued before goes into the bag with the job file, and what changed is made again from both", async () => {
    const now = job
      .replace("change: first issue }", "change: first issue }\n    - { mark: A, date: 2026-05-02, by: RT, change: lower }")
      .replace("clear opening: 29 in", "clear opening: 28 in");
    const effects = await built({ "jobs/a.yaml": now, "jobs/a.issued.yaml": job });
    expect(await freezeIn(effects)).toBe(0);
    const bag = filesOf(effects, "kept/0001-a-rA");
    expect(bag.get("data/a.issued.yaml")).toBe(job);
    expect(bag.get("data/0001-a/0001-a.issued.yaml")).toBe(job);
    expect(bag.get("data/0001-a/index.html")).toContain("What changed");
    expect(bag.get("README.txt")).toContain("data/a.issued.yaml\n    the job file of the revision that was issued before");
    expect(bag.get("README.txt")).toContain("data/0001-a/changes.json\n    what has changed since");
    const { code, text } = await verifyIn(effects, "kept/0001-a-rA");
    expect([code, text.includes("page, plan and data are the same, byte for byte")]).toEqual([0, true]);
  });

  test("dates are those of the job file, and program and options are named", async () => {
    const effects = await built();
    await freezeIn(effects);
    const info = filesOf(effects, frozen).get("bag-info.txt") ?? "";
    expect([...info.matchAll(/\d{4}-\d\d-\d\d/g)].map(([date]) => date)).toEqual(["2026-04-20"]);
    expect(info).toMatch(/\nExternal-Identifier: 0001-a\n/);
    expect(info).toMatch(/\nJob-Revision: 0\nJob-Status: for construction\nJob-Verdict: \w+\nJob-File: a\.yaml\n/);
    expect(info).toMatch(
      /\nProgram-Version: reevebook source\nProgram-Digest: source\nProgram-Options: --no-pdf\nPayload-Oxum: \d+\.\d+\n$/,
    );
  });

  test("two bags of the same job are the same bytes, and freezing again changes nothing", async () => {
    const [one, two] = [await built(), await built()];
    await freezeIn(one);
    await freezeIn(two);
    expect(filesOf(one, frozen)).toEqual(filesOf(two, frozen));
    one.written.length = 0;
    expect(await freezeIn(one)).toBe(0);
    expect(one.written).toEqual([]);
    expect(one.said.join("")).toContain("kept/0001-a-r0: frozen before, byte for byte the same\n");
  });

  test("a changed job under the same revision is refused and the bag stays; a new revision has a bag of its own", async () => {
    const effects = await built();
    await freezeIn(effects);
    const before = filesOf(effects, frozen);
    const longer = job.replace("length: 23 ft", "length: 22 ft");
    effects.disk.set("jobs/a.yaml", longer);
    await run(["build", ...options], effects);
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/jobs\/a\.yaml: kept\/0001-a-r0 was frozen before and is not the same: .*cables\.csv/);
    expect(effects.warned.join("")).toContain('add a revision under "job: revisions"');
    expect(filesOf(effects, frozen)).toEqual(before);
    const line = '    - { mark: "0", date: 2026-04-20, by: RT, change: first issue }\n';
    effects.disk.set("jobs/a.yaml", longer.replace(line, `${line}    - { mark: A, date: 2026-05-02, by: RT, change: a foot less }\n`));
    await run(["build", ...options], effects);
    expect(await freezeIn(effects)).toBe(0);
    expect(filesOf(effects, "kept/0001-a-rA").size).toBe(before.size);
    expect(filesOf(effects, frozen)).toEqual(before);
    expect((await verifyIn(effects, "kept")).text).toMatch(/\n2 valid, 0 not\. /);
  });

  test("a bag that lost a file is not written over either", async () => {
    const effects = await built();
    await freezeIn(effects);
    effects.disk.delete(`${frozen}/data/0001-a/plan.json`);
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(/is not the same: data\/0001-a\/plan\.json\n/);
    expect(effects.disk.has(`${frozen}/data/0001-a/plan.json`)).toBe(false);
  });

  test.each([
    ["never built", (effects: MemoryEffects) => effects.disk.delete("output/manifest.json")],
    [
      "changed since it was built",
      (effects: MemoryEffects) => effects.disk.set("jobs/a.yaml", job.replace("length: 23 ft", "length: 22 ft")),
    ],
    [
      "built with other options",
      (effects: MemoryEffects) =>
        effects.disk.set(
          "output/manifest.json",
          String(effects.disk.get("output/manifest.json")).replace(/"key":"\w{70}/, (key) => `${key.slice(0, -6)}000000`),
        ),
    ],
  ])("a job that was %s is refused with the build to run, and the other is frozen", async (_why, spoil) => {
    const effects = await built({ "jobs/a.yaml": job });
    spoil(effects);
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(
      /^jobs\/a\.yaml: its packet in output was not built from the file as it is now.*\n {2}fix: npx reevebook build --out output --no-pdf jobs\/a\.yaml, /,
    );
    expect(effects.said.join("")).toBe("0 jobs frozen in kept, 1 not\n");
    expect(effects.written).toEqual([]);
  });

  test("of two jobs the one that is not current is refused and the other is frozen", async () => {
    const effects = await built({ "jobs/a.yaml": job, "jobs/b.yaml": exampleJob("0002-b") });
    effects.disk.set("jobs/b.yaml", "][");
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.said.at(-1)).toBe("1 job frozen in kept, 1 not\n");
    expect(filesOf(effects, frozen).size).toBeGreaterThan(10);
  });

  test("an output that was changed by hand, to the same size, is not taken for what the job file gives", async () => {
    const effects = await built();
    const page = String(effects.disk.get("output/0001-a/index.html"));
    effects.disk.set("output/0001-a/index.html", page.replace("drill", "DRILL"));
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(
      /not what the job file gives: 0001-a\/index\.html\n {2}fix: remove output\/0001-a and build again\n/,
    );
    expect(effects.written).toEqual([]);
  });

  test("a manifest that leads out of the output folder is not followed", async () => {
    for (const path of ["../secret.txt", "0001-a/../../secret.txt", "0002-b/index.html"]) {
      const effects = await built();
      effects.disk.set("secret.txt", "secret");
      const manifest = JSON.parse(String(effects.disk.get("output/manifest.json"))) as { jobs: Record<string, { outputs: unknown[] }> };
      Object.values(manifest.jobs)[0]?.outputs.push({ path, size: 6 });
      effects.disk.set("output/manifest.json", JSON.stringify(manifest));
      expect(await freezeIn(effects)).toBe(1);
      expect(effects.warned.join("")).toContain(`output/manifest.json lists ${path}, which is no output of this job`);
      expect(effects.written).toEqual([]);
    }
  });

  test("an output that the manifest does not list is missed", async () => {
    const effects = await built();
    effects.disk.set(
      "output/manifest.json",
      String(effects.disk.get("output/manifest.json")).replace(/\{"path":"0001-a\/bores\.csv","size":\d+\},/, ""),
    );
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toContain("not what the job file gives: 0001-a/bores.csv\n");
    expect(effects.written).toEqual([]);
  });

  test.each([
    ["../up", /the revision "\.\.\/up" can't name a folder\n {2}fix: mark it with letters, digits and single dots/],
    ["1-2", /can't name a folder/],
    ["A.", /can't name a folder/],
    ["123456789012345678901", /can't name a folder/],
  ])("a revision marked %s can't name a folder", async (mark, reason) => {
    const effects = await built({ "jobs/a.yaml": job.replace('mark: "0"', `mark: "${mark}"`) });
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(reason);
    expect(effects.written).toEqual([]);
  });

  test("what no build made is left out and told; a job that is not for construction is kept and told", async () => {
    const effects = await built({
      "jobs/a.yaml": job.replace("status: for construction ", "status: preliminary "),
      "output/0001-a/notes.txt": "mine",
    });
    expect(await freezeIn(effects)).toBe(0);
    expect(effects.warned.join("")).toBe(
      "note: output/0001-a/notes.txt was not made by a build; it is not frozen\n" +
        'note: every sheet of 0001-a says "NOT FOR CONSTRUCTION - do not bore from this set"; it is kept as what it is\n',
    );
    expect(filesOf(effects, frozen).get("bag-info.txt")).toContain("\nJob-Status: preliminary\n");
    expect([...filesOf(effects, frozen).keys()]).not.toContain("data/0001-a/notes.txt");
  });

  test.each([
    [["--out", "output", "--into", "output/kept"], /lies in the output folder output/],
    [["--into", "output"], /lies in the output folder output/],
    [["--into", "jobs/a.yaml"], /is no folder/],
    [["--into", "kept", "--jobs", "nowhere"], /no folder "nowhere"/],
  ])("%j is refused", async (words, reason) => {
    const effects = await built();
    expect(await run(["freeze", ...options, ...words], effects)).toBe(1);
    expect(effects.warned.join("")).toMatch(reason);
    expect(effects.written).toEqual([]);
  });

  test("a bag whose name differs in capitals only stands in the way, and so does a file", async () => {
    const effects = await built();
    effects.disk.set("kept/0001-A-R0/x", "");
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toContain("kept/0001-A-R0 differs from 0001-a-r0 in capitals only");
    effects.disk.delete("kept/0001-A-R0/x");
    effects.disk.set(frozen, "a file");
    expect(await freezeIn(effects)).toBe(1);
    expect(effects.warned.join("")).toContain("kept/0001-a-r0 is no folder but a file");
  });

  test("a job file without the ending of its kind is refused, as it may have the name of its own folder", async () => {
    const effects = memoryEffects({ "0001-a": job });
    await run(["build", ...options, "0001-a"], effects);
    expect(await freezeIn(effects, "0001-a")).toBe(1);
    expect(effects.warned.join("")).toContain("a job file that is kept needs a name that ends in .yaml");
  });
});

test("a full disk or a file that vanishes is a fault of one job or bag, code 2, and the others are done", async () => {
  const effects = await built({ "jobs/a.yaml": job, "jobs/b.yaml": exampleJob("0002-b") });
  const { files } = effects;
  const full: MemoryEffects["files"]["writeFolder"] = (path, content) => {
    if (path === frozen) throw new Error("no space left on the disk");
    files.writeFolder(path, content);
  };
  const { code } = await withFiles(effects, { writeFolder: full }, (some) => freezeIn(some));
  expect([code, effects.said.at(-1)]).toEqual([2, "1 job frozen in kept, 1 not\n"]);
  expect(effects.warned.join("")).toMatch(/^jobs\/a\.yaml: .*\nError: no space left on the disk/);
  expect(await freezeIn(effects)).toBe(0);
  const vanishing = (path: string): Uint8Array | undefined => (path === `${frozen}/data/0001-a/plan.json` ? undefined : files.read(path));
  const verified = await withFiles(effects, { read: vanishing }, (some) => run(["verify", "kept"], some));
  expect(verified.code).toBe(2);
  expect(effects.warned.join("")).toContain("plan.json was there a moment ago and is gone");
  expect(effects.said.at(-1)).toMatch(/^1 valid, 1 not\. /);
});

const withFiles = async (
  effects: MemoryEffects,
  files: Partial<MemoryEffects["files"]>,
  ask: (some: MemoryEffects) => Promise<number>,
) => ({
  code: await ask({ ...effects, files: { ...effects.files, ...files } }),
});

describe("reevebook verify", () => {
  const kept = async (): Promise<MemoryEffects> => {
    const effects = await built();
    expect(await freezeIn(effects)).toBe(0);
    effects.said.length = 0;
    return effects;
  };

  test("a bag as it was frozen is valid, is made again, and the limits of hashes are said", async () => {
    const { code, text } = await verifyIn(await kept());
    expect(code).toBe(0);
    expect(text).toMatch(
      /^kept\/0001-a-r0: complete and valid: \d+ files, \d+ bytes, SHA-512 and SHA-256\n {2}made again from data\/a\.yaml by this program: page, plan and data are the same, byte for byte\n1 valid, 0 not\. Hashes guard against damage, not against somebody who changes a file and its manifests too\.\n$/,
    );
  });

  test("a folder of bags stands for the bags in it; each that is damaged is told, and the others are valid", async () => {
    const effects = await built({ "jobs/a.yaml": job, "jobs/b.yaml": exampleJob("0002-b") });
    await freezeIn(effects);
    effects.disk.set(`${frozen}/data/0001-a/plan.json`, "{}");
    effects.disk.set("kept/.0003-c-r0.77.part/data/x", "half");
    const { code, text } = await verifyIn(effects, "kept");
    expect(code).toBe(1);
    expect(text).toContain("kept/0002-b-r0: complete and valid");
    expect(text).toMatch(/kept\/0001-a-r0: NOT COMPLETE\n {2}not made again from its job file, as it is not valid\n/);
    expect(text).toMatch(/ {2}data\/0001-a\/plan\.json: damaged or changed.*\n {4}fix: do not use it; take the bag from another copy\n/);
    expect(text).toMatch(/\n1 valid, 1 not\. /);
    expect(text).not.toContain(".part");
  });

  test("a bag that lost its first file is still looked at as a bag", async () => {
    const effects = await kept();
    effects.disk.delete(`${frozen}/bagit.txt`);
    expect(await verifyIn(effects)).toMatchObject({ code: 1, text: expect.stringContaining("so the folder is no bag") });
  });

  test.each(["nowhere", "jobs"])("%s holds no bag", async (folder) => {
    expect(await verifyIn(await kept(), folder)).toMatchObject({ code: 1, text: expect.stringContaining(`${folder}: there is no bag`) });
  });

  test("an output and its manifests that were changed together are found by making the bag again", async () => {
    const effects = await kept();
    const path = `${frozen}/data/0001-a/bores.csv`;
    effects.disk.set(path, String(effects.disk.get(path)).replace("1", "2"));
    rehash(effects);
    const { code, text } = await verifyIn(effects);
    expect(code).toBe(1);
    expect(text).toContain("every hash is right, but it is NOT WHAT ITS JOB FILE GIVES");
    expect(text).toContain(
      "data/0001-a/bores.csv: it is not what the job file gives\n    fix: somebody may have changed files and manifests together",
    );
  });

  test("a file that was added or taken out together with its lines is found", async () => {
    const effects = await kept();
    effects.disk.set(`${frozen}/data/0001-a/more.pdf`, "x");
    effects.disk.delete(`${frozen}/data/0001-a/bores.csv`);
    rehash(effects);
    const { code, text } = await verifyIn(effects);
    expect(code).toBe(1);
    expect(text).toContain("data/0001-a/more.pdf: the job file gives no such file");
    expect(text).toContain("data/0001-a/bores.csv: the job file gives this file, but the bag does not hold it");
  });

  test.each([
    [
      "job file that is no job",
      (effects: MemoryEffects) => effects.disk.set(`${frozen}/data/a.yaml`, "]["),
      /data\/a\.yaml: this program makes no packet of it/,
    ],
    [
      "name of a job file that is not there",
      (effects: MemoryEffects) => spoilInfo(effects, "Job-File: a.yaml", "Job-File: ../../../jobs/a.yaml"),
      /it names the job file data\/\.\.\/\.\.\/\.\.\/jobs\/a\.yaml, which is not there/,
    ],
  ])("a %s is told", async (_what, spoil, reason) => {
    const effects = await kept();
    spoil(effects);
    rehash(effects);
    expect(await verifyIn(effects)).toMatchObject({ code: 1, text: expect.stringMatching(reason) });
  });

  test.each([
    [
      "Program-Digest: source",
      "Program-Digest: 0123456789abcdef",
      /hashes alone were checked, .*it was made by reevebook source \(0123456789ab\), this is reevebook source \(source\)/,
    ],
    ["Program-Version: reevebook source\n", "", /hashes alone were checked, .*bag-info\.txt does not say by which program/],
    ["Program-Options: --no-pdf", "Program-Options: --colour", /hashes alone were checked, .*bag-info\.txt does not say/],
  ])("a bag of another program (%s) is valid by its hashes, and it is said that it was not made again", async (from, to, said) => {
    const effects = await kept();
    spoilInfo(effects, from, to);
    rehash(effects);
    const { code, text } = await verifyIn(effects);
    expect(code).toBe(0);
    expect(text).toMatch(said);
  });

  test("signs that steer a terminal are not sent to it", async () => {
    const effects = await kept();
    effects.disk.set(`${frozen}/data/\u001b[31mred`, "x");
    const { code, text } = await verifyIn(effects);
    expect(code).toBe(1);
    expect(text).toContain("data/?[31mred: not in manifest-sha256.txt or manifest-sha512.txt");
    expect(text).not.toContain("\u001b");
  });

  test("paper that was asked for is asked for again", async () => {
    const effects = memoryEffects({ "jobs/a.yaml": job });
    await run(["build", ...options, "--paper", "a4"], effects);
    expect(await freezeIn(effects)).toBe(1);
    expect(await freezeIn(effects, "--paper", "a4")).toBe(0);
    expect(filesOf(effects, frozen).get("bag-info.txt")).toContain("Program-Options: --paper a4 --no-pdf\n");
    expect((await verifyIn(effects)).code).toBe(0);
  });
});

const spoilInfo = (effects: MemoryEffects, from: string, to: string): void => {
  const path = `${frozen}/bag-info.txt`;
  effects.disk.set(
    path,
    Buffer.from(effects.files.read(path) ?? "")
      .toString("utf8")
      .replace(from, to),
  );
};

/** Prints the name of the document, as a browser of this milestone. */
const fakePrinter = (milestone: string): Printer => ({
  print: async ({ name }) => ({
    bytes: Buffer.from(`%PDF-1.4\n/Creator (Chromium)\n/Producer (Skia/PDF ${milestone})\n${name}`),
    pages: 1,
  }),
  connected: Promise.resolve(),
  atWork: Promise.resolve(),
  version: async () => "none",
  close: () => {},
  crash: () => {},
});

describe("PDFs", () => {
  const request = (command: "build" | "freeze", ...words: readonly string[]) => readArguments([command, ...words], "test");
  const printed = async (): Promise<MemoryEffects> => {
    const effects = memoryEffects({ "jobs/a.yaml": job });
    const asked = request("build");
    const found = asked.command === "build" ? survey(asked.options, { effects, browser: undefined }) : "";
    if (typeof found === "string") throw new Error(found);
    expect(await build(found, { effects, browser: undefined, printer: fakePrinter("m1") })).toBe(0);
    return effects;
  };
  const freezeWith = async (effects: MemoryEffects, printer: Printer, ...words: readonly string[]): Promise<number> => {
    const asked = request("freeze", "--into", "kept", ...words);
    if (asked.command !== "freeze") throw new Error("freeze was asked for");
    return freeze(asked, { effects, browser: undefined, printer });
  };

  test("all six go into the bag, and the browser is named as they name it", async () => {
    const effects = await printed();
    expect(await freezeWith(effects, fakePrinter("m1"), "--print")).toBe(0);
    expect([...filesOf(effects, frozen).keys()].filter((path) => path.endsWith(".pdf"))).toHaveLength(6);
    expect(filesOf(effects, frozen).get("bag-info.txt")).toContain("\nBrowser: Chromium, Skia/PDF m1\n");
  });

  test("one that is gone, or of another size, or with --print of other bytes, is refused", async () => {
    const path = "output/0001-a/0001-a-crew-r0.pdf";
    for (const [content, words] of [
      [undefined, []],
      ["short", []],
      [`%PDF-1.4\n/Creator (Chromium)\n/Producer (Skia/PDF m1)\n0001-a, CREW`, ["--print"]],
    ] as const) {
      const effects = await printed();
      if (content === undefined) effects.disk.delete(path);
      else effects.disk.set(path, content);
      expect(await freezeWith(effects, fakePrinter("m1"), ...words)).toBe(1);
      expect(effects.warned.join("")).toContain("not what the job file gives: 0001-a/0001-a-crew-r0.pdf\n");
      expect(filesOf(effects, "kept").size).toBe(0);
    }
  });

  test("verify checks them by their hashes; with --print it compares them, unless another browser prints", async () => {
    const effects = await printed();
    await freezeWith(effects, fakePrinter("m1"));
    const check = async (print: boolean, printer: Printer) => {
      effects.said.length = 0;
      effects.warned.length = 0;
      const code = await verify({ folders: [frozen], print }, { effects, browser: undefined, printer });
      return { code, text: [...effects.said, ...effects.warned].join("") };
    };
    expect(await check(true, fakePrinter("m1"))).toMatchObject({
      code: 0,
      text: expect.stringContaining("PDFs: printed again and compared"),
    });
    expect(await check(true, fakePrinter("m2"))).toMatchObject({
      code: 0,
      text: expect.stringContaining(
        "PDFs: hashes alone were checked; they were printed by Chromium, Skia/PDF m1, the browser here is Chromium, Skia/PDF m2",
      ),
    });
    const path = `${frozen}/data/0001-a/0001-a-crew-r0.pdf`;
    effects.disk.set(path, `${Buffer.from(effects.files.read(path) ?? "")} `);
    rehash(effects);
    expect(await verifyIn(effects)).toMatchObject({ code: 0, text: expect.stringContaining("PDFs: hashes alone were checked; --print") });
    expect(await check(true, fakePrinter("m1"))).toMatchObject({
      code: 1,
      text: expect.stringContaining("0001-a-crew-r0.pdf: printed again it is another file"),
    });
  });

  test("--print without any browser is code 2", async () => {
    const effects = await printed();
    expect(await verify({ folders: [frozen], print: true }, { effects, browser: undefined })).toBe(2);
    expect(effects.warned.join("")).toContain("there is no browser to print with");
  });
});

describe("on a real disk", () => {
  const folder = mkdtempSync(join(tmpdir(), "reevebook-bags-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const said: string[] = [];
  const output = { terminal: false, write: (text: string) => said.push(text), warn: (text: string) => said.push(text) };
  const effects = { ...realEffects, output, threads: false };
  const at = (path: string): string => join(folder, path);
  const ask = async (...words: readonly string[]) => {
    said.length = 0;
    const code = await run(words, effects);
    return { code, text: said.join("") };
  };
  const freezeHere = () => ask("freeze", ...options, "--jobs", at("jobs"), "--out", at("out"), "--into", at("kept"));

  test("a bag is written whole, without a half beside it, and sha256sum and sha512sum agree with it", async () => {
    mkdirSync(at("jobs"));
    writeFileSync(at("jobs/a.yaml"), job);
    expect((await ask("build", ...options, "--jobs", at("jobs"), "--out", at("out"))).code).toBe(0);
    expect((await freezeHere()).code).toBe(0);
    expect(readdirSync(at("kept"))).toEqual(["0001-a-r0"]);
    for (const tool of ["sha256", "sha512"]) {
      if (spawnSync(`${tool}sum`, ["--version"]).error !== undefined) continue;
      const checked = spawnSync(`${tool}sum`, ["--strict", "-c", `manifest-${tool}.txt`, `tagmanifest-${tool}.txt`], {
        cwd: at(frozen),
        encoding: "utf8",
      });
      expect([checked.status, checked.stderr]).toEqual([0, ""]);
      expect(checked.stdout.split("\n").length).toBeGreaterThan(15);
    }
    expect((await ask("verify", at("kept"))).code).toBe(0);
  });

  test.skipIf(process.platform === "win32")("links are neither followed nor written through", async () => {
    const plan = at(`${frozen}/data/0001-a/plan.json`);
    renameSync(plan, at("plan.json"));
    symlinkSync(at("plan.json"), plan);
    const linked = await ask("verify", at(frozen));
    expect(linked.code).toBe(1);
    expect(linked.text).toContain("data/0001-a/plan.json: this is a link, which a bag must not hold; it was not followed");
    expect((await freezeHere()).text).toContain("is not the same: data/0001-a/plan.json\n");
    renameSync(at("plan.json"), plan);
    expect((await ask("verify", at(frozen))).code).toBe(0);
    renameSync(at(`${frozen}/data/0001-a`), at("packet"));
    symlinkSync(at("packet"), at(`${frozen}/data/0001-a`));
    const outside = await ask("verify", at(frozen));
    expect(outside.code).toBe(1);
    expect(outside.text).toContain("data/0001-a: this is a link");
    expect(outside.text).toContain("data/0001-a/plan.json: missing, though");
    renameSync(at(frozen), at("elsewhere"));
    symlinkSync(at("elsewhere"), at(frozen));
    const before = readFileSync(at("elsewhere/manifest-sha256.txt"));
    expect(await freezeHere()).toMatchObject({ code: 1, text: expect.stringContaining("is no folder but a link") });
    expect(readFileSync(at("elsewhere/manifest-sha256.txt")).equals(before)).toBe(true);
    expect(readdirSync(at("kept"))).toEqual(["0001-a-r0"]);
  });
});
