// Up to which free length does a bay still fit: the job's own limit, or what the criterion bears, whichever is less?
import type { Mm } from "../units/quantity.ts";
import type { Bay, Plan } from "./plan.ts";
import { clearOf } from "./sleeve.ts";

/** Longest free length of a bay: where the criterion gives none, or a longer one, the limit of the job. */
export function longestFree({ runs, job }: Pick<Plan, "runs" | "job">, bayId: string): Mm {
  const stops = runs.flatMap(({ spans }) =>
    spans.flatMap((span) => (span.bayId === bayId && span.free_stop !== null ? [span.free_stop] : [])),
  );
  return Math.min(job.spacers.free_max.value, ...stops);
}

/** The same for a tape, which finds sleeves where the free length of the cable counts to the wood inside. */
export const longestClear = (plan: Pick<Plan, "runs" | "job" | "verticals">, bay: Bay): Mm =>
  longestFree(plan, bay.id) - bay.free + clearOf(bay, plan);
