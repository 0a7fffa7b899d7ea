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

  // The pitch of a string goes with the root of its tension: what the log prints for a step, taken to the ends of its band and to other days.
  test.each(exampleNames)(
    "%s: a tuner that hears from low to high hears every step of the log, on each of its days, at both ends of its band",
    (name) => {
      const plan = examplePlan(name);
      const { pitch_Hz } = instrumentRange(plan, plan.job);
      for (const { runId, steps, days } of plan.tightening) {
        const proved = plan.runs.find(({ id }) => id === runId);
        const span = proved?.spans.find(({ bayId }) => bayId === proved.proof.bayId);
        if (pitch_Hz === null || span === undefined || span.free < 304.8) continue;
        for (const [place, { reading, reading_low, reading_high, pitch_Hz: heard, mark }] of steps.entries()) {
          const others = days.flatMap(({ readings }) => readings[place] ?? []);
          for (const other of [reading_low, reading_high, ...others]) {
            const pitch = heard * Math.sqrt(other / reading);
            expect.soft(pitch, mark).toBeGreaterThanOrEqual(pitch_Hz.low);
            expect.soft(pitch, mark).toBeLessThanOrEqual(pitch_Hz.high);
          }
        }
      }
    },
  );

  // 118.7 Hz at 390 lbf sounds at 350 lbf by the root of 350/390; 124.1 Hz at 475 lbf, the highest stop of its coldest day.
  test("0001: from 112 to 137 Hz", () => {
    const straight = examplePlan("0001-level-deck-straight");
    const { pitch_Hz } = instrumentRange(straight, straight.job);
    expect(pitch_Hz?.low).toBeCloseTo(112.5, 0);
    expect(pitch_Hz?.high).toBeCloseTo(137, 0);
  });
});
