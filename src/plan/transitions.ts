// Where the slope changes, does a run pass or do two runs end there: what does each way come to?
import type { Job } from "../job/job.ts";
import { length } from "../units/print.ts";
import type { Radian } from "../units/quantity.ts";
import { jointOf, jointPath } from "./corner-path.ts";
import { endsOnOnePost } from "./corner-post.ts";
import { farShare } from "./friction.ts";
import type { OutlineChoice } from "./outline-choice.ts";
import type { SidePlan } from "./plan.ts";
import type { Transition, Way } from "./rake-plan.ts";
import { bestOf, type Cut } from "./splits.ts";

/** Each place where the slope changes, with the best guard that passes it and the best one that ends there. */
export const transitionsOf = ({ chosen, options, changes }: OutlineChoice, courseCount: number, job: Job): readonly Transition[] =>
  changes.flatMap((index): readonly Transition[] => {
    const [side, next] = [chosen.sides[index], chosen.sides[index + 1]];
    if (side === undefined || next === undefined) return [];
    const way = (isEnded: boolean): Way | null => {
      const best = bestOf(options.filter(({ endedAt }) => endedAt.has(index) === isEnded));
      return best?.cuts == null ? null : wayOf(best.cuts, { sides: best.sides, courseCount }, job);
    };
    const [pass, end] = [way(false), way(true)];
    const passes = !chosen.endedAt.has(index);
    const { angle_left, angle_right } = jointAngles(side, next);
    const common = { id: `${side.id}/${next.id}`, leftSideId: side.id, rightSideId: next.id, bend: angle_left + angle_right };
    return [{ ...common, passes, pass, end, why: whyOf({ passes, pass, end }, job) }];
  });

interface Laid {
  readonly sides: readonly SidePlan[];
  readonly courseCount: number;
}

const jointAngles = (left: SidePlan, right: SidePlan): { readonly angle_left: Radian; readonly angle_right: Radian } =>
  jointPath({ setback_left: left.length - left.endsAt, setback_right: right.startsAt, ...jointOf(left, right) });

function wayOf(found: readonly Cut[], { sides, courseCount }: Laid, job: Job): Way {
  const runs = found.slice(1).map((to, index) => {
    const from = found[index] ?? to;
    const joints = sides.slice(from.corners_after, to.corners_before).filter(({ ends }) => ends === null);
    const bends = joints.flatMap((side) => {
      const next = sides[side.index + 1];
      if (endsOnOnePost(job, side.index)) return [Math.abs(side.turn ?? 0) / 2, Math.abs(side.turn ?? 0) / 2];
      const { angle_left, angle_right } = next === undefined ? { angle_left: 0, angle_right: 0 } : jointAngles(side, next);
      return [angle_left, angle_right];
    });
    const run = to.endAt - from.startAt;
    return { length: run, turned: bends.reduce((sum, bend) => sum + bend, 0), farShare: farShare(run, bends, job) };
  });
  return {
    runs: runs.length,
    cables: runs.length * courseCount,
    fittings: 2 * runs.length * courseCount,
    longest: Math.max(...runs.map((run) => run.length)),
    turned: Math.max(...runs.map(({ turned }) => turned)),
    farShare: Math.min(...runs.map(({ farShare }) => farShare)),
  };
}

/** What each way comes to stands beside it, in `pass` and `end`. */
function whyOf({ passes, pass, end }: Pick<Transition, "passes" | "pass" | "end">, job: Job): string {
  const { bends_max, runWithBends_max } = job.limits;
  if (pass === null) {
    const longest = length(runWithBends_max.value, { units: job.units, style: "feet" });
    return `ends here: no run may pass, since a run turns at most ${bends_max.value} corners or changes of slope and is then at most ${longest} long`;
  }
  if (end === null) return "passes: there is no choice of runs that end here within the limits";
  if (pass.runs < end.runs) return "passes: fewer runs, so fewer ends to bore, buy and tighten";
  return passes
    ? "passes: as many runs either way, and the choice of fewest extra posts and shortest runs falls so"
    : "ends here: as many runs either way, so no cable is bent where none needs to be, or posts are saved";
}
