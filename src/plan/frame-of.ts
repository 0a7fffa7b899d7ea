// What does the plan say of the frame: its members, its answer to the cables, its checks and the window of tensions?
import type { Job } from "../job/job.ts";
import type { Cited } from "../sources/cited.ts";
import type { Newton } from "../units/quantity.ts";
import { bearingOf } from "./check-bearing.ts";
import type { Checked } from "./check-row.ts";
import { hardestOf } from "./check-tension.ts";
import { climateOf } from "./climate.ts";
import { answersOf } from "./frame-answer.ts";
import { checkFrame, tensionShare } from "./frame-checks.ts";
import { baseStiffness, modulusForBuckling, postMember, railMember, trialPull } from "./frame-members.ts";
import type { FrameCheck, FramePlan } from "./frame-plan.ts";
import { type FrameGroup, withCables } from "./frames.ts";
import { movementLimit } from "./movement.ts";
import type { Check, Run } from "./plan.ts";
import { windowOf } from "./tension-guard.ts";
import type { DemandedRun } from "./tensions.ts";

interface Framed extends Checked {
  readonly groups: readonly FrameGroup[];
  readonly demanded: readonly DemandedRun[];
}

export function frameOf(parts: Framed, job: Job): FramePlan {
  const { groups, runs, demanded, tightening } = parts;
  const checks = checkFrame({ ...parts, job });
  const strength = tensionShare(checks);
  return {
    posts: {
      name: job.posts.section.name,
      modulus: postMember(job).modulus,
      modulus_min: modulusForBuckling(postMember(job), job.posts.wood, job),
      base: baseStiffness(job),
    },
    topRail: {
      name: job.frame.topRail.name,
      modulus: railMember(job.frame.topRail, job).modulus,
      modulus_min: modulusForBuckling(railMember(job.frame.topRail, job), job.frame.topRail.wood, job),
    },
    trial: trialPull(job),
    sides: groups.flatMap((group) => answersOf(group, runs)),
    movement_max: movementLimit(job),
    checks,
    remedy: null,
    windows: runs.map((run) => {
      const group = find(groups, (one) => one.runs.some(({ id }) => id === run.id));
      return windowOf(
        {
          run,
          demanded: find(demanded, (one) => one.run.id === run.id),
          tightening: find(tightening, ({ runId }) => runId === run.id),
          strength,
          hardest: hardestOf(parts, run),
          washer: leastBearing(run, parts, job),
          covered_band: coveredBand(group, runs, run, job),
        },
        job,
      );
    }),
  };
}

/** The end whose washer the wood bears least. */
function leastBearing(run: Run, parts: Framed, job: Job): Cited<Newton> | null {
  if (job.posts.section.material !== "wood") return null;
  const [left, right] = [bearingOf(run.left, parts, job).capacity, bearingOf(run.right, parts, job).capacity];
  return right.value < left.value ? right : left;
}

/** Losses of a run with the least and the greatest stiffness of the strand. */
function coveredBand(group: FrameGroup, runs: readonly Run[], run: Run, job: Job): { readonly low: Newton; readonly high: Newton } {
  const { low, high } = job.cable.stiffness.value;
  const targets = group.runs.map(({ id }) => find(runs, (one) => one.id === id).tension.target);
  const covered = (stiffness: number): Newton =>
    find(climateOf(withCables(group, stiffness, job), targets, job), ({ runId }) => runId === run.id).covered;
  return { low: covered(low), high: covered(high) };
}

function find<T>(list: readonly T[], is: (one: T) => boolean): T {
  const found = list.find(is);
  if (found === undefined) throw new RangeError("a run without its group: the frames and the runs disagree");
  return found;
}

/** A check of the frame as a row among the others. */
export const rowOf = (check: FrameCheck): Check => ({
  id: `frame-${check.id}`,
  name: check.name,
  where: check.member,
  rule: "at most",
  demand: check.verdict === "ask" ? null : { value: check.ratio, kind: "share" },
  limit: check.verdict === "ask" ? null : { value: 1, kind: "share" },
  ratio: check.verdict === "ask" ? null : check.ratio,
  source: check.source,
  sourceWhere: check.sourceWhere,
  verdict: check.verdict,
  advice: check.advice,
});
