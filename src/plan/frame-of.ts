// What does the plan say of the frame: its members, its answer to the cables, its checks and the window of tensions?
import type { Job } from "../job/job.ts";
import type { Cited } from "../sources/cited.ts";
import type { Newton } from "../units/quantity.ts";
import { bearingOf } from "./check-bearing.ts";
import { leastBend } from "./check-bend.ts";
import { holdOf } from "./check-face.ts";
import type { Checked } from "./check-row.ts";
import { hardestOf } from "./check-tension.ts";
import { coveredOf } from "./climate.ts";
import { faceOf, isOnFace } from "./face-end.ts";
import { answersOf } from "./frame-answer.ts";
import { checkFrame, movementShare, tensionShare } from "./frame-checks.ts";
import { baseStiffness, modulusForBuckling, postMember, railMember, spacerMember, trialPull } from "./frame-members.ts";
import type { FrameCheck, FramePlan } from "./frame-plan.ts";
import { type FrameGroup, withCables } from "./frames.ts";
import { movementLimit } from "./movement.ts";
import { pierNamed } from "./pier.ts";
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
  const bands = new Map(groups.map((group) => [group, coveredBands(group, runs, job)]));
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
    spacers: parts.verticals.some(({ kind }) => kind === "spacer")
      ? { name: job.spacers.section.name, modulus: spacerMember(job).modulus, modulus_min: null }
      : null,
    trial: trialPull(job),
    sides: groups.flatMap((group) => answersOf(group, parts)),
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
          movement: movementShare(checks),
          hardest: hardestOf(parts, run),
          washer: leastBearing(run, parts, job),
          bend: leastBend(parts, run, job),
          face: leastHold(run, job),
          covered_band: bandOf(bands.get(group), group, run),
        },
        job,
      );
    }),
  };
}

/** The end whose washer the wood bears least. */
function leastBearing(run: Run, parts: Framed, job: Job): Cited<Newton> | null {
  if (job.posts.section.material !== "wood") return null;
  return leastOf([run.left, run.right].filter((end) => !isOnFace(end)).map((end) => bearingOf(end, parts, job).capacity));
}

/** The end on a face or in a pier that holds least, by its thread or by its rating. */
const leastHold = (run: Run, job: Job): Cited<Newton> | null =>
  leastOf(
    [run.left, run.right]
      .filter(isOnFace)
      .flatMap((end) => (end.kind === "anchor" ? [pierNamed(job, end.postId).anchor.rated] : [holdOf(end, job), faceOf(job).rated]))
      .filter((capacity) => capacity !== null),
  );

const leastOf = (capacities: readonly Cited<Newton>[]): Cited<Newton> | null =>
  capacities.reduce<Cited<Newton> | null>((least, one) => (least === null || one.value < least.value ? one : least), null);

interface CoveredBands {
  readonly low: readonly Newton[];
  readonly high: readonly Newton[];
}

/** Losses of a group's runs with the least and the greatest stiffness of the strand. */
function coveredBands(group: FrameGroup, runs: readonly Run[], job: Job): CoveredBands {
  const { low, high } = job.cable.stiffness.value;
  const targets = group.runs.map(({ id }) => find(runs, (one) => one.id === id).tension.target);
  const covered = (stiffness: number): readonly Newton[] => coveredOf(withCables(group, stiffness, job), targets, job);
  return { low: covered(low), high: covered(high) };
}

function bandOf(bands: CoveredBands | undefined, { runs }: FrameGroup, run: Run): { readonly low: Newton; readonly high: Newton } {
  const own = runs.findIndex(({ id }) => id === run.id);
  return { low: bands?.low[own] ?? 0, high: bands?.high[own] ?? 0 };
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
