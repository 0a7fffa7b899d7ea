// What do the spans of all runs have in common: which is the worst, which belong to one bay?
import type { Plan, Run, SpanReading, TighteningStep } from "../../plan/plan.ts";

export interface SpanOfRun {
  readonly run: Run;
  readonly span: SpanReading;
}

const everySpan = (plan: Plan): readonly SpanOfRun[] => plan.runs.flatMap((run) => run.spans.map((span) => ({ run, span })));

/** The span where the sphere of the code passes with the least push; undefined without runs. */
export function worstPush(plan: Plan): SpanOfRun | undefined {
  return everySpan(plan).reduce<SpanOfRun | undefined>(
    (worst, each) => (!worst || each.span.pushThrough.sliding < worst.span.pushThrough.sliding ? each : worst),
    undefined,
  );
}

/** Every run's span in one bay. */
export const spansInBay = (plan: Plan, bayId: string): readonly SpanOfRun[] => everySpan(plan).filter(({ span }) => span.bayId === bayId);

/** The last step of a run: its band is what the finished cables must show at the nut. */
export const lastStep = (plan: Plan, runId: string): TighteningStep | undefined =>
  plan.tightening.find((tightening) => tightening.runId === runId)?.steps.at(-1);
