import { describe, expect, test } from "vitest";
import type { Run } from "../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";

const firstRun = (name: string): Run => {
  const run = examplePlan(name).runs[0];
  if (run === undefined) throw new Error(`${name} has no run`);
  return run;
};

describe("the band of a run's readings", () => {
  test.each(exampleNames)("%s: with the pulling end at its least allowed reading every span still meets the criterion", (name) => {
    for (const run of examplePlan(name).runs) {
      for (const span of run.spans) {
        expect((span.tension * run.tension.low) / run.tension.target).toBeGreaterThanOrEqual(span.required * (1 - 1e-9));
      }
      expect(run.tension.low).toBeLessThanOrEqual(run.tension.target);
      expect(run.tension.target).toBeLessThanOrEqual(run.tension.high);
    }
  });

  test.each(exampleNames)(
    "%s: the last cable of the last pass stops at the run's target, and no reading of that pass lies a quarter below it",
    (name) => {
      const plan = examplePlan(name);
      const { readingStep } = plan.job.tightening;
      for (const { runId, steps, passes, together } of plan.tightening) {
        const { tension } = plan.runs.find(({ id }) => id === runId) ?? {};
        const last = steps.filter((step) => step.pass === passes.length);
        if (runId === together.at(-1)) expect(last.at(-1)?.reading_exact).toBeCloseTo(tension?.target ?? 0, 6);
        for (const step of last) expect(step.reading).toBeGreaterThan(0.75 * (tension?.target ?? 0) - readingStep.value);
      }
    },
  );

  test("275 lbf stated by an engineer are the target of a straight run, within 10 %", () => {
    const straight = examplePlan("boardwalk-6ft").runs.find((run) => run.bends.length === 0);
    expect((straight?.tension.target ?? 0) / 4.4482216152605).toBeCloseTo(275, 6);
  });
});

describe("the span to prove a run at", () => {
  test.each(exampleNames)("%s: it is a bay, never the gap of a corner", (name) => {
    const plan = examplePlan(name);
    for (const run of plan.runs) expect(plan.bays.find((bay) => bay.id === run.proof.bayId)?.kind).toBe("bay");
  });
});

describe("the code's table of tensions", () => {
  test("1,487 mm clear between the posts reads the 1,500 mm column, 1,105 N, whatever spacers stand between (NCC 2022 table 11.3.6a)", () => {
    const run = firstRun("steel-too-long");
    const onSideB = run.spans.filter((span) => span.bayId.startsWith("B"));
    for (const span of onSideB) expect(span.required).toBe(1105);
  });
});

describe("travel of the nuts", () => {
  test("a run symmetric about its middle travels alike at both ends", () => {
    const plan = planOf(changedText("two-corners-4x4", { "length: 9 ft 8 in": "length: 9 ft 7-1/2 in" }));
    const [left, right] = plan.runs[0]?.takeUp.ends ?? [];
    expect(left?.travel).toBeCloseTo(right?.travel ?? 0, 6);
  });

  test("side A of 1.85 m takes less travel at its nut than side B of 4.72 m beyond the corner", () => {
    const { ends, travel, travelPerEnd } = firstRun("steel-too-long").takeUp;
    expect(ends.map((end) => end.postId)).toEqual(["P1", "P7"]);
    expect(ends[0]?.travel).toBeLessThan(ends[1]?.travel ?? 0);
    expect(travelPerEnd).toBe(ends[1]?.travel);
    expect((ends[0]?.travel ?? 0) + (ends[1]?.travel ?? 0)).toBeCloseTo(travel, 9);
  });

  test.each(exampleNames)("%s: thread that is left with the greatest stretch is the reserve, or slack is taken out first", (name) => {
    for (const { takeUp } of examplePlan(name).runs) {
      const short = takeUp.ends.reduce(
        (sum, end) => sum + Math.max(0, end.travel_high + end.slack + takeUp.reserve - takeUp.threadAvailable),
        0,
      );
      expect(takeUp.slackToPull).toBeCloseTo(short, 9);
    }
  });

  test("70 ft of cable use up 2 in of thread: slack is pulled out before the nut is turned, and the check asks", () => {
    const plan = examplePlan("boardwalk-6ft");
    const long = plan.runs.find((run) => run.outsideLength > 60 * 304.8);
    expect(long?.takeUp.slackToPull).toBeGreaterThan(0);
    expect(plan.checks.find((check) => check.id === `thread-${long?.id}`)?.verdict).toBe("ask");
  });
});

describe("the pull on posts", () => {
  test("a square corner of two posts pushes each with 2 T sin 22.5 degrees a cable, towards the inside", () => {
    const plan = examplePlan("two-corners-4x4");
    const bend = plan.pulls.find((pull) => pull.postId === "P3");
    const beside = plan.runs[0]?.spans.find((span) => span.bayId === "A4")?.tension ?? 0;
    expect(bend?.cause).toBe("bend");
    expect(bend?.pull_target).toBeCloseTo(10 * 2 * beside * Math.sin(Math.PI / 8), 6);
  });

  test("a post that two runs end on is named twice, once for each run", () => {
    const plan = examplePlan("0006-porch-existing-posts");
    const shared = plan.verticals.find((vertical) => vertical.role === "shared")?.id;
    expect(plan.pulls.filter((pull) => pull.postId === shared).map((pull) => pull.runId)).toEqual(["R1", "R2"]);
  });
});
