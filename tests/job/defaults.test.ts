import { describe, expect, test } from "vitest";
import { friction, postLengths, readingStep, stockLengths, tapeStep } from "../../src/job/defaults.ts";
import { changedText, exampleText, jobOf } from "../support/example-jobs.ts";

const name = "rule-of-thumb";
const job = jobOf(exampleText(name));

// Common practice, no source: the rules of thumb of those who fit cable infill.
describe("defaults of common practice", () => {
  test("cables at most 3 in apart, 2 corners and 40 ft in a run, 70 ft straight, walls 3 to 4 in", () => {
    const { cableSpacing_max, bends_max, runWithBends_max, runStraight_max, wallGap_min, wallGap_max } = job.limits;
    expect([cableSpacing_max, bends_max, runWithBends_max, runStraight_max, wallGap_min, wallGap_max].map(({ value }) => value)).toEqual([
      76.2, 2, 12_192, 21_336, 76.2, 101.6,
    ]);
  });

  test("posts at most 6 ft apart and cables free over at most 3 ft", () => {
    const bare = jobOf(changedText(name, { "  largest spacing: 6 ft": "  # none", "  longest free length: 3 ft": "  # none" }));
    expect([bare.posts.spacing_max.value, bare.spacers.free_max.value]).toEqual([1828.8, 914.4]);
    expect(bare.posts.spacing_max.source).toBe("practice");
  });

  test("1/8 in cable: 1/4 in to pass, 5/16 in at the stud, 1/4 in and 3/8 in at the grip, 3/8 in where the back is out of reach", () => {
    const { passBore, stud, grip } = job.fittings;
    expect([passBore, stud.bore, grip.bore, grip.counterbore, grip.boreNoBack].map(({ value }) => value)).toEqual([
      6.35, 7.9375, 6.35, 9.525, 9.525,
    ]);
  });

  test("a gripping fitting that needs a wider counterbore has a bore without back that takes it too", () => {
    const grip = (keys: string) =>
      jobOf(
        changedText(name, {
          "  # Every dimension": `  grip: { ${keys}washer: 1-1/4 in }\n  # Every dimension`,
          "  grip: { washer: 1-1/4 in }\n": "",
        }),
      ).fittings.grip;
    expect(grip("counterbore: 1/2 in, ").boreNoBack).toEqual({ value: 12.7, source: "job", where: "fittings: grip: counterbore" });
    expect(grip("counterbore: 5/16 in, ").boreNoBack).toMatchObject({ value: 9.525, source: "practice" });
    expect(grip("counterbore: 1/2 in, bore without back: 17/32 in, ").boreNoBack.value).toBeCloseTo(13.49375, 9);
  });

  test("ready cables come in steps of 5 ft from 5 ft to 70 ft", () => {
    const { supply } = job;
    if (supply.kind !== "ready") expect.fail("the example buys ready lengths");
    expect(supply.lengths.value.map((length) => length / 304.8)).toEqual([5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70]);
  });
});

describe("defaults with a source", () => {
  test("IRC 2021 R312.1.2 and R312.1.3: 36 in high, no 4 in sphere through", () => {
    expect(job.code.guardHeight_min).toMatchObject({ value: 914.4, source: "irc-2021", where: "R312.1.2" });
    expect(job.code.openingSphere).toMatchObject({ value: 101.6, source: "irc-2021", where: "R312.1.3" });
  });

  test("a height that the job states replaces the edition's and says so", () => {
    const stricter = jobOf(changedText(name, { "  # guard height: 36 in": "  guard height: 42 in" }));
    expect(stricter.code.guardHeight_min).toEqual({ value: 1066.8, source: "job", where: "code: guard height" });
  });

  test("every default names a source and a place in it", () => {
    const cited: { readonly source: string; readonly where: string }[] = [];
    JSON.stringify(job, (_, value: unknown) => {
      if (typeof value === "object" && value !== null && "source" in value && "where" in value) cited.push(value as (typeof cited)[number]);
      return value;
    });
    expect(cited.length).toBeGreaterThan(40);
    for (const { source, where } of cited) expect(source.length * where.length).toBeGreaterThan(0);
  });
});

describe("defaults that depend on the job", () => {
  test("posts of wood come in 8, 10, 12 and 16 ft, posts of tube as the tube does", () => {
    expect(postLengths("wood").value.map((length) => length / 304.8)).toEqual([8, 10, 12, 16].map((feet) => expect.closeTo(feet, 9)));
    expect(postLengths("steel")).toEqual(stockLengths("steel"));
  });

  test("a job in mm is set out in whole mm and read in steps of 25 N", () => {
    expect([tapeStep("mm").value, readingStep("mm").value, tapeStep("inch").value]).toEqual([1, 25, 1.5875]);
  });

  test("wood is bought from 8 ft, tube in 20 ft (both from memory)", () => {
    expect(stockLengths("wood").value[0]).toBe(2438.4);
    expect(stockLengths("steel").value[0]).toBe(6096);
  });

  test("strand on a plastic bushing: within 0.20 and 0.45 of the drive guide's table 7.21", () => {
    expect(friction().value).toBeGreaterThanOrEqual(0.2);
    expect(friction().value).toBeLessThanOrEqual(0.45);
  });
});
