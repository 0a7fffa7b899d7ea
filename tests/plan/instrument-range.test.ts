import { describe, expect, test } from "vitest";
import { instrumentRange } from "../../src/plan/instrument-range.ts";
import { exampleNames, examplePlan } from "../support/example-jobs.ts";

const LBF = 4.4482216;

describe("instrumentRange", () => {
  test.each(exampleNames)(
    "%s: a gauge that reads from lowest to highest reads every band of the proof and of the spans behind bends",
    (name) => {
      const plan = examplePlan(name);
      const { lowest, highest } = instrumentRange(plan, plan.job);
      for (const { id, proof, spans, tension } of plan.runs) {
        expect.soft(lowest, id).toBeLessThanOrEqual(proof.low);
        expect.soft(highest, id).toBeGreaterThanOrEqual(proof.high);
        // Shorter spans (12 in) are not read.
        for (const span of spans.filter(({ free }) => free >= 304.8)) {
          expect.soft(lowest, span.bayId).toBeLessThanOrEqual((span.tension * tension.low) / tension.target + 1e-9);
        }
      }
    },
  );

  test("behind the corners of a U bay B1 is proved from 163 lbf on, although the nut reads 260 at least", () => {
    const plan = examplePlan("0002-deck-two-corners");
    const { lowest, highest } = instrumentRange(plan, plan.job);
    expect(lowest / LBF).toBeCloseTo(160, 5);
    // In steps of the readings, 5 lbf.
    expect(((highest / LBF) % 5) + 1).toBeCloseTo(1, 5);
  });
});
