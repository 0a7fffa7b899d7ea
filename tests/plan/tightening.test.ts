import { describe, expect, test } from "vitest";
import { stepTargets } from "../../src/mechanics/sequence.ts";
import { cableSystem } from "../../src/mechanics/sequence-solve.ts";
import { changedText, exampleNames, examplePlan, exampleText, jobOf, planOf } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";

const LBF = 4.4482216152605;

describe.each(exampleNames)("tightenGroup of %s", (name) => {
  const { plan, groups } = framesOf(jobOf(exampleText(name)));

  test("the last step leaves every cable at its target", () => {
    for (const group of groups) {
      const last = plan.tightening.filter(({ together }) => together.includes(group.runs[0]?.id ?? "")).at(-1);
      const target = plan.runs.find(({ id }) => id === last?.runId)?.tension.target ?? 0;
      for (const tension of last?.steps.at(-1)?.tensions ?? []) expect(tension / target).toBeCloseTo(1, 9);
    }
  });

  test("no step on any day of the table comes above what strand and washers are checked with", () => {
    for (const { runId, steps, days, most_onAnyDay } of plan.tightening) {
      for (const { readings } of days) {
        for (const [nth, reading] of readings.entries()) {
          const step = steps[nth];
          if (reading === null || step === undefined) continue;
          expect(Math.min((reading * step.reading_high) / step.reading, plan.target.workingLimit)).toBeLessThanOrEqual(
            most_onAnyDay + 1e-9,
          );
        }
      }
      const of = (kind: string) => plan.checks.filter(({ id }) => id.startsWith(`${kind}-${runId}`));
      for (const { demand } of [...of("season"), ...of("bearing")]) expect(demand?.value).toBeGreaterThanOrEqual(most_onAnyDay);
    }
  });

  test("each pass pulls every cable once, and every reading lies inside its band and under the working limit", () => {
    for (const { steps, passes, order } of plan.tightening) {
      expect(steps).toHaveLength(passes.length * order.length);
      for (const { number } of passes) {
        expect(steps.filter(({ pass }) => pass === number).map(({ course }) => course)).toEqual(order);
      }
      for (const step of steps) {
        expect(step.reading_low).toBeLessThan(step.reading);
        expect(step.reading_high).toBeGreaterThan(step.reading);
        expect(step.reading_high).toBeLessThanOrEqual(plan.target.workingLimit + 1e-9);
      }
    }
  });

  test("the recommended order asks for no higher reading than the customary one, and none asks for less than the bound", () => {
    for (const { recommended, customary, bound } of plan.tightening) {
      expect(recommended.highest_overTarget).toBeLessThanOrEqual(customary.highest_overTarget + 1e-9);
      expect(recommended.highest_overTarget).toBeGreaterThanOrEqual(bound - 0.006);
    }
  });
});

describe("tightenGroup", () => {
  test("one compensated pass of 0001 stops at the step targets of its frame", () => {
    const { plan, groups } = framesOf(jobOf(exampleText("rule-of-thumb")));
    const [group] = groups;
    const [tightening] = plan.tightening;
    if (group === undefined || tightening === undefined) throw new Error("no group");
    const target = group.courses.map(() => plan.runs[0]?.tension.target ?? 0);
    const readings = stepTargets(cableSystem(group), { order: tightening.order.map((course) => course - 1), target });
    for (const step of tightening.steps) expect(step.reading_exact).toBeCloseTo(readings[step.course - 1] ?? 0, 6);
  });

  test("passes that the job states are made as stated, the last one compensated", () => {
    const plan = planOf(changedText("rule-of-thumb", { "tightening:\n": "tightening:\n  passes: [60 %, 100 %]\n" }));
    expect(plan.tightening[0]?.passes).toEqual([
      { number: 1, kind: "plain", share: 0.6 },
      { number: 2, kind: "compensated", share: 1 },
    ]);
    const first = plan.tightening[0]?.steps[0];
    expect((first?.reading_exact ?? 0) / (plan.runs[0]?.tension.target ?? 1)).toBeCloseTo(0.6, 9);
  });

  test("a strand that may carry no more than the target is refused, with the share of the target that would do", () => {
    const target = (examplePlan("rule-of-thumb").runs[0]?.tension.target ?? 0) / LBF;
    const share = Math.ceil((100 * target * 1.02) / 1780);
    const plan = planOf(changedText("rule-of-thumb", { "  grade: 316": `  grade: 316\n  working share: ${share} %` }));
    const refusal = plan.tightening[0]?.refusal ?? null;
    if (refusal !== null) {
      expect(refusal.broken).toBe("reading");
      expect(refusal.overLimit).toBeGreaterThan(1);
      expect(refusal.targetShare).toBeLessThan(1);
    } else expect(plan.tightening[0]?.passes.length).toBeGreaterThan(1);
  });
});
