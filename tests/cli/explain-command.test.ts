// Does the terminal say where a number comes from, for a job named in each way, and refuse what is not there?
import { describe, expect, test } from "vitest";
import { run } from "../../src/cli/run.ts";
import { exampleJob, type MemoryEffects, memoryEffects } from "../support/memory-effects.ts";

const two = (): MemoryEffects => memoryEffects({ "jobs/a.yaml": exampleJob("0001-front"), "jobs/b.yaml": exampleJob("0002-back") });
const ask = async (words: readonly string[], effects = two()) => ({
  code: await run(["explain", ...words], effects),
  said: effects.said.join(""),
  warned: effects.warned.join(""),
  written: effects.written,
});

describe("reevebook explain", () => {
  test.each(["jobs/a.yaml", "a.yaml", "a", "0001-front", "0001-FRONT", "0001"])("%s names the job", async (job) => {
    const { code, said, written } = await ask([job, "courses.5.height"]);
    expect(code).toBe(0);
    expect(said).toMatch(/^courses\.5\.height\nHeight of course 5 above the datum: this is drilled\n/);
    expect(written).toEqual([]);
  });

  test("a number is told with its formula, its numbers, its source, its rounding and the paths of its inputs", async () => {
    const { said } = await ask(["0001", "runs.R1.tension.high"]);
    expect(said).toContain("plan.json runs[0].tension.high\n");
    expect(said).toContain("formula   min(T * (1 + b), W)\n");
    expect(said).toMatch(/\n {10}= min\([\d.]+ \* \(1 \+ 0\.1\), [\d.]+\)\n/);
    const [value, again] = [/value {5}(.*)\n/.exec(said)?.[1], /\n {10}= ([\d.]+ N .*)\n/.exec(said)?.[1]];
    expect(value).toMatch(/^[\d.]+ N \(\d+ lbf\)$/);
    expect(again).toBe(value);
    expect(said).toMatch(/\nsource {4}\[derived\] /);
    expect(said).toMatch(/\nrounding {2}none in the plan/);
    expect(said).toContain("  b = 0.1 (10 %)                        allowed difference of a reading, as a share\n");
    expect(said).toContain("job.tightening.band\n");
    expect(said).toContain("[practice] Common practice, no source; a reading within 10 %\n");
  });

  test.each([
    [["0001", "R1"], /^run R1: \d+ values\n/],
    [["0001", "P1-05"], /^bore P1-05: \d+ values\n/],
    [["0001", "course", "05"], /^course 5: \d+ values\n[\s\S]*courses\.5\.height {2,}508 mm \(20"\)\n/],
    // A thread of 1/4-28 rises 1/28 in a turn; 1/32 in would be its nearest mark on a tape.
    [["0001", "job.fittings.stud.pitch"], /\nvalue {5}0\.907143 mm \(1\/28"\)\n/],
    [["0001", "job.cable.diameter"], /\nvalue {5}3\.175 mm \(1\/8"\)\n/],
    [["0001", "runs.R1.takeUp.ends[0].travel_high"], /\nvalue {5}[\d.]+ mm \(\d\.\d+ in\)\n/],
    [["0001", "job.site.coldest"], /\nvalue {5}-10 deg C \(14 deg F\)\n[\s\S]*source {4}\[practice\]/],
    [["0001", "job.cable.mass_kgPerM"], /kg\/m\n/],
    [["0001", "verticals.P1.role"], /\nvalue {5}end\n[\s\S]*no explanation of its own; explained near it:\n {2}verticals\.P1\.station /],
    [["0001", "frame.posts.modulus"], /\nvalue {5}[\d.]+ MPa \(\d+ psi\)\n/],
    [["0001", "job.posts.wood"], /^job\.posts\.wood\.value: 3 values\n/],
  ])("%j is answered", async (words, text) => {
    const { code, said } = await ask(words);
    expect(code).toBe(0);
    expect(said).toMatch(text);
  });

  test("without a value it lists marks and paths that can be asked, each of which is answered", async () => {
    const { code, said } = await ask(["0001"]);
    expect(code).toBe(0);
    expect(said).toMatch(/^Marks: R1, R1-01 to R1-\d\d, P1-01 to /);
    const paths = [...said.matchAll(/^ {2}(\S+)/gm)].map(([, path = ""]) => path);
    expect(paths.length).toBeGreaterThan(100);
    for (const path of ["runs.R1.tension.target", paths[0] ?? "", paths.at(-1) ?? ""]) {
      expect(paths).toContain(path);
      expect((await ask(["0001", path])).code).toBe(0);
    }
  });

  test("no line is wider than 100 signs, a long path aside", async () => {
    for (const value of [
      undefined,
      "R1",
      "runs.R1.spans.A1.required",
      "tightening.R1.steps.2.reading_exact",
      "climate.R1.both.each[1]",
      "frame.checks",
    ]) {
      const { said } = await ask(value === undefined ? ["0001"] : ["0001", value]);
      const isPath = (line: string): boolean => /^ {2}frame\.checks\.[\w-]+\.parts\..+\.(name|value|unit)$/.test(line);
      expect(said.split("\n").filter((line) => line.length > 100 && !isPath(line))).toEqual([]);
    }
  });

  test("an unknown value is code 1 with the nearest known ones", async () => {
    const { code, said, warned } = await ask(["0001", "runs.R1.tension.taget"]);
    expect([code, said]).toEqual([1, ""]);
    expect(warned).toMatch(/^the plan of jobs\/a\.yaml has no "runs\.R1\.tension\.taget"; nearest to it:\n {2}runs\.R1\.tension\.target\n/);
  });

  test.each([
    [["0003", "R1"], /^there is no job "0003"; there are: a\.yaml, b\.yaml\n$/],
    [["000", "R1"], /^"000" may be each of these jobs: jobs\/a\.yaml, jobs\/b\.yaml\n$/],
    [["x.yaml", "R1", "--jobs", "nowhere"], /^there is no job file "x\.yaml" and no folder "nowhere"; --jobs names another\n$/],
  ])("%j is code 1 with the reason", async (words, reason) => {
    const { code, warned } = await ask(words);
    expect(code).toBe(1);
    expect(warned).toMatch(reason);
  });

  test("a job with an error is code 1 with its place", async () => {
    const bad = memoryEffects({ "jobs/a.yaml": exampleJob("0001-front").replace("clear opening: 29 in", "clear opening: 29") });
    const { code, warned } = await ask(["a", "R1"], bad);
    expect(code).toBe(1);
    expect(warned).toMatch(/jobs\/a\.yaml:\d+:\d+: error: /);
  });

  test("signs that steer a terminal are not sent back to it", async () => {
    const { warned } = await ask(["0001", "R1\u001b[31m"]);
    expect(warned).toContain('no "R1?[31m"');
  });
});
