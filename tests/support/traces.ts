// Which explanations do not come to the plan's number, and how does a test get at one of them?
import { explain } from "../../src/explain/explain.ts";
import type { Trace } from "../../src/explain/trace.ts";
import type { Plan } from "../../src/plan/plan.ts";

/** Relative; what is near nothing is a difference of greater numbers, so below 1 it is absolute. */
const PRECISION = 1e-9;

export const disagreeing = (traces: readonly Trace[]): readonly string[] =>
  traces
    .filter(({ value, recomputed }) => !(Math.abs(value - recomputed) <= PRECISION * Math.max(1, Math.abs(value))))
    .map(({ path, value, recomputed, formula }) => `${path} is ${value}, but ${formula} = ${recomputed}`);

export const traceOf = (plan: Plan, path: string): Trace => {
  const answer = explain(plan, path);
  if (answer.kind !== "trace") throw new Error(`${path}: ${JSON.stringify(answer).slice(0, 200)}`);
  return answer.trace;
};
