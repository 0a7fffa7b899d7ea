// How do tests get at the frames of a job, which the plan computes with but does not carry?
import type { Job } from "../../src/job/job.ts";
import { type FrameGroup, frameGuard } from "../../src/plan/frames.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { makeRuns } from "../../src/plan/runs.ts";
import { chooseCuts, cutsOf } from "../../src/plan/splits.ts";
import { firstStations } from "../../src/plan/verticals.ts";

export interface FramedJob {
  readonly plan: Plan;
  readonly groups: readonly FrameGroup[];
}

/** The plan of a job and its frames, with the strand's stiffness as the job has it. */
export function framesOf(job: Job): FramedJob {
  const { value: plan, problems } = makePlan(job);
  if (plan === undefined) throw new Error(problems.map(({ what }) => what).join("; "));
  const longest = job.supply.kind === "ready" ? Math.max(...job.supply.lengths.value) : job.supply.spoolLength;
  const cuts = chooseCuts(cutsOf(plan.sides, firstStations(plan.sides, job), job), job, longest);
  const runs = cuts === null ? undefined : makeRuns(plan, cuts, job).value;
  if (runs === undefined) throw new Error("no runs");
  return { plan, groups: frameGuard({ ...plan, runs }, job) };
}
