import { describe, expect, test } from "vitest";
import { exampleText, jobOf, planOf } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";

const name = "rule-of-thumb";
const LBF = 4.4482216152605;
const { groups, plan } = framesOf(jobOf(exampleText(name)));
const own = groups[0]?.flexibility[4]?.[4] ?? 0;
const length = plan.runs[0]?.pathLength ?? 0;

/** Turns of a 1/4-28 nut that take course 5 from 100 to 250 lbf when the strand has this stiffness: dT (L/EA + F55) / pitch. */
const turnsFor = (stiffness: number): number => (150 * LBF * (length / stiffness + own)) / (25.4 / 28);
const withTurns = (text: string) =>
  planOf(exampleText(name).replace("tightening:\n", `calibration:\n  turns: { cable: R1-05, ${text} }\ntightening:\n`));

describe("calibrated", () => {
  test("turns that a strand of 750 kN takes make its stiffness 750 kN, with the job as the source", () => {
    const { cable } = withTurns(`turns: ${turnsFor(750_000).toFixed(6)}, from: 100 lbf, to: 250 lbf`).job;
    expect(cable.stiffness.value.nominal / 750_000).toBeCloseTo(1, 6);
    expect(cable.stiffness).toMatchObject({ source: "job", where: "calibration: turns on R1-05" });
    expect(cable.stiffness.value.low / cable.stiffness.value.nominal).toBeCloseTo(0.95, 9);
  });

  test("the same by ear: T = 4 m L^2 f^2 for both pitches", () => {
    const mass = plan.job.cable.mass_kgPerM.value;
    const [span_m, tension] = [0.876, [100 * LBF, 250 * LBF]];
    const pitch = (force: number): string => (Math.sqrt(force / (4 * mass)) / span_m).toFixed(6);
    const { cable } = withTurns(
      `turns: ${turnsFor(750_000).toFixed(6)}, from pitch: ${pitch(tension[0] ?? 0)} Hz, to pitch: ${pitch(tension[1] ?? 0)} Hz, span: 876 mm`,
    ).job;
    expect(cable.stiffness.value.nominal / 750_000).toBeCloseTo(1, 5);
  });

  test("a stiffer strand needs fewer turns and keeps its target but for what warmth takes", () => {
    const [soft, stiff] = [700_000, 850_000].map((stiffness) =>
      withTurns(`turns: ${turnsFor(stiffness).toFixed(6)}, from: 100 lbf, to: 250 lbf`),
    );
    expect(stiff?.runs[0]?.takeUp.elongation).toBeLessThan(soft?.runs[0]?.takeUp.elongation ?? 0);
    expect(stiff?.climate[0]?.heat.worst).toBeGreaterThan(soft?.climate[0]?.heat.worst ?? 0);
  });

  test("a weighed sample of 10 ft that weighs 160 g replaces the mass of the table", () => {
    const job = jobOf(
      exampleText(name).replace("tightening:\n", "calibration:\n  weighed: { length: 10 ft, weight: 160 g }\ntightening:\n"),
    );
    expect(job.cable.mass_kgPerM.value).toBeCloseTo(0.16 / 3.048, 12);
    expect(job.cable.mass_kgPerM.source).toBe("job");
  });
});
