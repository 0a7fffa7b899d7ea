// Does the compiled program do what its sources do, with threads and with several files at once?
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { exampleJob } from "../support/memory-effects.ts";

/** Enough for two threads where there are two cores. */
const JOBS = 90;
const folder = mkdtempSync(join(tmpdir(), "reevebook-program-"));
const jobs = join(folder, "jobs");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const node = (...words: readonly string[]) => spawnSync(process.execPath, words, { encoding: "utf8" });

beforeAll(() => {
  expect(node("src/cli/compile.mjs").status).toBe(0);
  mkdirSync(jobs);
  for (let index = 0; index < JOBS; index += 1) {
    const text = exampleJob(`T-${index}`).replace("length: 23 ft", `length: ${8 + (index % 20)} ft`);
    writeFileSync(join(jobs, `${String(index).padStart(2, "0")}.yaml`), text);
  }
});

describe("the compiled program", () => {
  test("says its version and its help, and refuses an unknown command with code 1", () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
    expect(node(".build/main.js", "--version").stdout).toBe(`${version}\n`);
    expect(node(".build/main.js", "--help").stdout).toContain("reevebook build [jobs...]");
    expect(node(".build/main.js", "dance").status).toBe(1);
  });

  test.skipIf(process.platform === "win32")("a reader that closes its pipe early is no fault", () => {
    const said = spawnSync("bash", ["-c", `set -o pipefail; "${process.execPath}" .build/main.js check jobs/*.yaml | head -n 1`], {
      encoding: "utf8",
    });
    expect(said.stdout).toContain("0001-level-deck-straight");
    expect([said.status, said.stderr.includes("EPIPE")]).toEqual([0, false]);
  });

  test("90 jobs at once, one of them bad, give the pages that each gives alone, byte for byte", () => {
    writeFileSync(join(jobs, "07.yaml"), "][");
    const all = join(folder, "all");
    const many = node(".build/main.js", "build", "--no-pdf", "--jobs", jobs, "--out", all);
    expect(many.status).toBe(1);
    expect(many.stdout.split("\n").at(-2)).toMatch(/^89 jobs built, 0 unchanged, 1 failed/);
    expect(many.stderr).toMatch(/07\.yaml:1:\d+: error: /);
    for (const index of [0, 45, 89]) {
      const one = join(folder, `one-${index}`);
      const file = join(jobs, `${String(index).padStart(2, "0")}.yaml`);
      expect(node(".build/main.js", "build", "--no-pdf", "--out", one, file).status).toBe(0);
      const names = readdirSync(join(one, `T-${index}`)).sort();
      expect(names).toEqual(readdirSync(join(all, `T-${index}`)).sort());
      for (const name of names) {
        const [alone, together] = [one, all].map((out) => readFileSync(join(out, `T-${index}`, name)));
        expect.soft(alone?.equals(together ?? Buffer.alloc(0)), `${name} of T-${index}`).toBe(true);
      }
    }
  });

  test("what was built is frozen, and verified by the same program, which makes it again", () => {
    const kept = join(folder, "kept");
    const file = join(jobs, "45.yaml");
    const frozen = node(".build/main.js", "freeze", "--no-pdf", "--out", join(folder, "one-45"), "--into", kept, file);
    expect([frozen.status, frozen.stderr]).toEqual([0, ""]);
    const verified = node(".build/main.js", "verify", kept);
    expect([verified.status, verified.stderr]).toEqual([0, ""]);
    expect(verified.stdout).toContain("made again from data/45.yaml by this program: page, plan and data are the same, byte for byte");
    const info = readFileSync(join(kept, "T-45-r0", "bag-info.txt"), "utf8");
    expect(info).toMatch(/\nProgram-Digest: [0-9a-f]{64}\n/);
  });

  test("what layouts get from filters is markup on the page, not words", () => {
    const page = readFileSync(join(folder, "all", "T-0", "index.html"), "utf8");
    expect(page.match(/<table/g)?.length).toBeGreaterThan(10);
    expect(page).not.toContain("&lt;table");
  });

  test("the list of 89 jobs is in the order of their numbers, and a second run does nothing", () => {
    const list = readFileSync(join(folder, "all", "index.html"), "utf8");
    const listed = [...list.matchAll(/href="(T-\d+)\/index\.html"/g)].map((found) => found[1]);
    expect(listed).toHaveLength(89);
    expect(listed).toEqual([...listed].sort());
    rmSync(join(jobs, "07.yaml"));
    const again = node(".build/main.js", "build", "--no-pdf", "--jobs", jobs, "--out", join(folder, "all"));
    expect(again.status).toBe(0);
    expect(again.stdout).toBe("nothing to do: 89 jobs unchanged\n");
  });
});
