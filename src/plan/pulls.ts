// What do the cables of a run ask of the posts that hold and bend them? A demand, with no capacity beside it.
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import type { Bay, Bend, Plan, Run, Vertical } from "./plan.ts";
import type { CornerPull, PostPull } from "./readings.ts";
import { courseHeight } from "./set-off.ts";

export function pullsOf(
  layout: Pick<Plan, "runs" | "courses" | "bays" | "climate" | "verticals">,
  bendAngle_min: Radian,
): readonly PostPull[] {
  const { runs, courses, bays, climate, verticals } = layout;
  const joints = new Set([
    ...bays.flatMap(({ kind, leftId, rightId }) => (kind === "corner" ? [leftId, rightId] : [])),
    ...verticals.filter(({ corner }) => corner !== undefined).map(({ id }) => id),
  ]);
  return runs.flatMap((run) => {
    // All cables of the run are taken with what the hardest day adds to the one that gains most.
    const highest = run.tension.high + (climate.find(({ runId }) => runId === run.id)?.hardest.worst ?? 0);
    const height: Mm = courses.reduce((sum, course) => sum + courseHeight(course, run), 0) / courses.length;
    const common = { runId: run.id, cables: courses.length, height };
    const pull = (postId: string, cause: PostPull["cause"], each: Newton): PostPull => {
      const pull_target = each * courses.length;
      return { ...common, postId, cause, pull_target, pull_high: (pull_target * highest) / run.tension.target };
    };
    const [first, last] = [run.spans[0], run.spans.at(-1)];
    // Where the guard turns or its slope changes the posts take the bend, however small it is.
    const bends = wholeBends(run, verticals).filter(({ postId, angle }) => angle > bendAngle_min || joints.has(postId));
    return [
      pull(run.left.postId, "end", run.left.pulls ? run.tension.target : (first?.tension ?? 0)),
      ...bends.map((bend) => pull(bend.postId, "bend", bendForce(run, bend, bays))),
      pull(run.right.postId, "end", run.right.pulls ? run.tension.target : (last?.tension ?? 0)),
    ];
  });
}

/** The bore of one post at a corner bends the cable twice: the post bears both. */
function wholeBends({ bends }: Run, verticals: readonly Vertical[]): readonly Bend[] {
  const turnOf = (postId: string): Radian | undefined => verticals.find(({ id }) => id === postId)?.corner?.turn;
  return bends.flatMap((bend, index) => {
    const turn = turnOf(bend.postId);
    if (turn === undefined) return [bend];
    return bends[index - 1]?.postId === bend.postId ? [] : [{ ...bend, angle: Math.abs(turn) }];
  });
}

/**
 * Resultant of the two tensions at a bend: the larger one on both sides, as friction may turn when the other end is pulled; or the two as
 * they are where the cable slips, which is more where a bend is small, since friction pulls the post along.
 */
function bendForce(run: Run, bend: Bend, bays: readonly Bay[]): Newton {
  const beside = new Set(bays.filter((bay) => bay.leftId === bend.postId || bay.rightId === bend.postId).map((bay) => bay.id));
  const tensions = run.spans.filter((span) => beside.has(span.bayId)).map((span) => span.tension);
  const most = Math.max(...tensions);
  return Math.max(resultant(most, most, bend.angle), resultant(most, Math.min(...tensions), bend.angle));
}

/** One pulls back, the other onward after a turn: the law of cosines, in the form that keeps its digits where the turn is small. */
const resultant = (back: Newton, onward: Newton, turn: Radian): Newton =>
  Math.hypot(back - onward, 2 * Math.sqrt(back * onward) * Math.sin(turn / 2));

/** One run pulls a corner post back along its side, the other onward along the next: between the two lies what is left of the turn. */
export function cornerPullsOf({ verticals }: Pick<Plan, "verticals">, pulls: readonly PostPull[]): readonly CornerPull[] {
  return verticals.flatMap(({ id, corner }): readonly CornerPull[] => {
    const [left, right] = pulls.filter(({ postId, cause }) => postId === id && cause === "end");
    if (corner === undefined || corner.isPassed || left === undefined || right === undefined) return [];
    return [
      {
        postId: id,
        runIds: [left.runId, right.runId],
        pull_target: resultant(left.pull_target, right.pull_target, corner.turn),
        pull_high: resultant(left.pull_high, right.pull_high, corner.turn),
      },
    ];
  });
}
