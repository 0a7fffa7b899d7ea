// Are the order search, the passes and their refusals explained, by numbers that are computed another way than the plan's?
import { describe, expect, test } from "vitest";
import { traceAll } from "../../src/explain/explain.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../support/example-jobs.ts";
import { disagreeing, traceOf } from "../support/traces.ts";

const NAME = "rule-of-thumb";
const straight = examplePlan(NAME);
/** 14 cables: more than the search goes through by sets. */
const tall = planOf(changedText(NAME, { "clear opening: 29 in": "clear opening: 44 in" }));

const refusalOf = (plan: Plan): NonNullable<Plan["tightening"][number]["refusal"]> => {
  const refusal = plan.tightening[0]?.refusal ?? null;
  if (refusal === null) throw new Error("nothing is refused");
  return refusal;
};

describe("the order search", () => {
  test.each(["recommended", "customary"])("highest and least of the %s order come from a pass over the run's cables", (kept) => {
    const highest = traceOf(straight, `tightening.R1.${kept}.highest_overTarget`);
    const least = traceOf(straight, `tightening.R1.${kept}.leastAfterPlain_overTarget`);
    expect(highest.formula).toBe("max(r) / T");
    expect(least.formula).toBe("min(t) / T");
    expect(highest.inputs[0]?.value).toHaveLength(straight.courses.length);
    expect(least.inputs[0]?.value).toHaveLength(straight.courses.length);
  });

  test("up to 12 cables the bound is the least over all orders, by sets; above, it is the quick one", () => {
    expect(traceOf(straight, "tightening.R1.bound").functions?.["least"]?.means).toContain("all n! orders");
    expect(tall.courses.length).toBeGreaterThan(12);
    expect(traceOf(tall, "tightening.R1.bound").formula).toBe("max(T, min(a), min(b)) / T");
    expect(traceOf(tall, "tightening.R1.bound").value).toBeLessThanOrEqual(tall.tightening[0]?.recommended.highest_overTarget ?? 0);
    expect(disagreeing(traceAll(tall))).toEqual([]);
  });

  test("a bound or a highest reading that was changed by hand disagrees with its explanation", () => {
    const tightening = straight.tightening.map((one) => ({
      ...one,
      bound: one.bound + 1e-6,
      ordersTried: one.ordersTried + 1,
      recommended: { ...one.recommended, highest_overTarget: one.recommended.highest_overTarget + 1e-6 },
      plain: { ...one.plain, passes_5: (one.plain.passes_5 ?? 0) + 1 },
    }));
    const lies = disagreeing(traceAll({ ...straight, tightening })).map((line) => line.split(" ")[0]);
    expect(lies).toEqual([
      "tightening.R1.recommended.highest_overTarget",
      "tightening.R1.bound",
      "tightening.R1.ordersTried",
      "tightening.R1.plain.passes_5",
    ]);
  });
});

describe("passes", () => {
  test("on another day a step reads what it reads in the log, times that day's target over the log's", () => {
    const { formula, inputs } = traceOf(straight, "tightening.R1.days[0].readings[2]");
    expect(formula).toBe("nearest(r * h / T, s)");
    expect(inputs.map(({ paths }) => paths[0])).toEqual([
      "tightening.R1.steps.3.reading_exact",
      "climate.R1.days[0].high",
      "runs.R1.tension.target",
      "job.tightening.readingStep",
    ]);
  });

  test.each([
    ["shares of the plan's own choice", { "  grade: 316": "  grade: 316\n  working share: 22 %" }],
    ["shares that the job asks for", { "\ntightening:\n": "\ntightening:\n  passes: [60 %, 100 %]\n" }],
  ])("%s are traced", (_, changes) => {
    const plan = planOf(changedText(NAME, changes));
    expect(plan.tightening[0]?.passes).toHaveLength(2);
    expect(disagreeing(traceAll(plan))).toEqual([]);
    const shares = plan.tightening[0]?.passes.map(({ number }) => traceOf(plan, `tightening.R1.passes.${number}.share`).recomputed);
    expect(shares).toEqual(plan.tightening[0]?.passes.map(({ share }) => share));
  });
});

describe("passes that keep no limit", () => {
  const fields = ["overLimit", "course", "pass", "targetShare"] as const;

  test.each([
    ["reading", { "  grade: 316": "  grade: 316\n  working share: 12 %" }],
    ["movement", { "\ntightening:\n": "\nlimits: { largest movement: 0.1 % }\ntightening:\n" }],
  ] as const)("of the %s are traced", (broken, changes) => {
    const plan = planOf(changedText(NAME, changes));
    expect(refusalOf(plan).broken).toBe(broken);
    for (const field of fields) {
      expect.soft(traceOf(plan, `tightening.R1.refusal.${field}`).recomputed, field).toBeCloseTo(refusalOf(plan)[field], 9);
    }
    expect(disagreeing(traceAll(plan))).toEqual([]);
  });

  test("passes that would do are found by adding one after the other", () => {
    const plan = planOf(
      changedText(NAME, {
        "  grade: 316": "  grade: 316\n  working share: 22 %",
        "\ntightening:\n": "\ntightening:\n  most passes: 1\n",
      }),
    );
    expect(refusalOf(plan).morePasses).toBe(2);
    const { formula, recomputed } = traceOf(plan, "tightening.R1.refusal.morePasses");
    expect(formula).toBe("p + first(q, l)");
    expect(recomputed).toBe(2);
  });
});
