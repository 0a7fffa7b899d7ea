// What do the spans of all runs have in common: which belong to one bay, where does a sphere pass most easily?
import type { Plan, Run } from "../../plan/plan.ts";
import type { SpanReading } from "../../plan/readings.ts";

export interface SpanOfRun {
  readonly run: Run;
  readonly span: SpanReading;
}

/** Every run's span in one bay. */
export const spansInBay = (plan: Plan, bayId: string): readonly SpanOfRun[] =>
  plan.runs.flatMap((run) => run.spans.filter((span) => span.bayId === bayId).map((span) => ({ run, span })));

/** The spans of the bays that are tested first, one bay for each side. */
export const openingSpans = (plan: Plan): readonly SpanOfRun[] => plan.openingBayIds.flatMap((bayId) => spansInBay(plan, bayId));
