// Does a job file that can't be read, or a folder that can't be written to, stop nothing else and say what to do?
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { type Effects, realEffects } from "../../src/cli/effects.ts";
import { run } from "../../src/cli/run.ts";
import { exampleJob, memoryEffects } from "../support/memory-effects.ts";

const folder = mkdtempSync(join(tmpdir(), "reevebook-unread-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const [jobs, out] = [join(folder, "jobs"), join(folder, "out")];
mkdirSync(jobs);
writeFileSync(join(jobs, "good.yaml"), exampleJob("0001-good"));
mkdirSync(join(jobs, "folder.yaml"));
symlinkSync(join(folder, "nowhere"), join(jobs, "link.yaml"));

/** The real files, with what is said kept. */
const effectsOf = (): Effects & { readonly text: () => string } => {
  const said: string[] = [];
  const write = (text: string): void => {
    said.push(text);
  };
  return { ...realEffects, threads: false, output: { terminal: false, write, warn: write }, text: () => said.join("") };
};

const TOLD = [
  `${join(jobs, "folder.yaml")}:1:1: error: this is a folder, not a job file\n  fix: name a file; --jobs takes a folder of them\n`,
  `${join(jobs, "link.yaml")}:1:1: error: there is no job file "${join(jobs, "link.yaml")}"\n  fix: check its name; a link must lead to a file\n`,
].join("");

describe("run", () => {
  test("a folder and a broken link among the job files are told, code 1, and the good job is built", async () => {
    const effects = effectsOf();
    expect(await run(["build", "--no-pdf", "--jobs", jobs, "--out", out], effects)).toBe(1);
    expect(effects.text()).toContain(TOLD);
    expect(effects.text()).toMatch(/^1 job built, 0 unchanged, 2 failed/m);
    expect(readdirSync(join(out, "0001-good"))).toContain("plan.json");
  });

  test("with nothing changed they are told again, still with code 1", async () => {
    const effects = effectsOf();
    expect(await run(["build", "--no-pdf", "--jobs", jobs, "--out", out], effects)).toBe(1);
    expect(effects.text()).toBe(`${TOLD}nothing to do: 1 job unchanged\n`);
  });

  test("check tells them and the verdict of the good job", async () => {
    const effects = effectsOf();
    expect(await run(["check", "--jobs", jobs], effects)).toBe(1);
    expect(effects.text()).toContain(TOLD);
    expect(effects.text()).toMatch(/good\.yaml: job 0001-good, verdict: ask/);
    expect(effects.text()).toMatch(/^1 job without errors, 2 with errors$/m);
  });

  test("a folder that was named alone is code 1 and writes nothing", async () => {
    const effects = effectsOf();
    expect(await run(["build", "--no-pdf", "--out", join(folder, "none"), jobs], effects)).toBe(1);
    expect(effects.text()).toMatch(/this is a folder, not a job file/);
    expect(existsSync(join(folder, "none"))).toBe(false);
  });

  test("a file that the system keeps from us is told with the system's word for it, and the other is built", async () => {
    const memory = memoryEffects({ "jobs/a.yaml": exampleJob("0001-a"), "jobs/b.yaml": exampleJob("0002-b") });
    const read = (path: string): Uint8Array | undefined => {
      if (path === "jobs/b.yaml") throw Object.assign(new Error("EACCES: permission denied"), { code: "EACCES", syscall: "open" });
      return memory.files.read(path);
    };
    expect(await run(["build", "--no-pdf"], { ...memory, files: { ...memory.files, read } })).toBe(1);
    expect(memory.warned.join("")).toContain("jobs/b.yaml:1:1: error: this file can't be read (EACCES)\n  fix: ");
    expect([...memory.disk.keys()]).toContain("output/0001-a/index.html");
  });

  test.each([["file"], ["file/below"]])(
    "an output folder that is a file (%s) is code 1 with what to do, and the file stays",
    async (name) => {
      writeFileSync(join(folder, "file"), "mine");
      const effects = effectsOf();
      expect(await run(["build", "--no-pdf", "--jobs", jobs, "--out", join(folder, name)], effects)).toBe(1);
      expect(effects.text()).toContain(
        `nothing can be written to the folder "${join(folder, name)}": a file stands in its way\n  fix: name another folder after --out`,
      );
      expect(effects.text()).not.toContain("built");
      expect(readFileSync(join(folder, "file"), "utf8")).toBe("mine");
    },
  );

  test("a browser that is not where REEVEBOOK_BROWSER says is code 1 with what to do, and nothing is written", async () => {
    const effects = { ...effectsOf(), env: { REEVEBOOK_BROWSER: join(folder, "no-browser") } };
    expect(await run(["build", "--jobs", jobs, "--out", join(folder, "none")], effects)).toBe(1);
    expect(effects.text()).toContain(`REEVEBOOK_BROWSER names "${join(folder, "no-browser")}", but there is no such file\n  fix: `);
    expect(effects.text()).not.toContain("fault");
    expect(existsSync(join(folder, "none"))).toBe(false);
  });

  test("--out or --jobs without a name is refused", async () => {
    for (const option of ["--out", "--jobs"]) {
      const effects = effectsOf();
      expect.soft(await run(["build", "--no-pdf", option, ""], effects)).toBe(1);
      expect.soft(effects.text()).toContain(`${option} takes the name of a folder, not ""`);
    }
  });
});
