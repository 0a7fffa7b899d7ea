// Does the plan keep its rules? Each check names its demand, its limit and where the limit comes from.

import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { bearingChecks } from "./check-bearing.ts";
import { bendChecks } from "./check-bend.ts";
import { faceChecks } from "./check-face.ts";
import { pierChecks } from "./check-pier.ts";
import { rakeChecks } from "./check-rake.ts";
import { type Checked, limitCheck } from "./check-row.ts";
import { setOffChecks } from "./check-set-off.ts";
import { gateQuestions, hardwareChecks, leanQuestions, mitreQuestions, mountQuestions } from "./check-standing.ts";
import { openQuestions, tensionChecks } from "./check-tension.ts";
import { wallChecks } from "./check-wall.ts";
import { cornerSlot } from "./corner-path.ts";
import { besideBore, endsOnOnePost, seenFrom, standsOn } from "./corner-post.ts";
import { criterionText } from "./criterion.ts";
import { longestFree } from "./free-stop.ts";
import { jointName, jointsOf, jointsWord } from "./joints.ts";
import { restOf } from "./pier.ts";
import type { Bore, Check } from "./plan.ts";
import { allLevelGaps, whereGap } from "./set-off.ts";
import { outsideOf } from "./sleeve.ts";
import { cornersOfRun } from "./splits.ts";

/** All checks in the order in which the sheets print them. */
export function checkPlan(plan: Checked, job: Job): readonly Check[] {
  return [
    ...codeChecks(plan, job),
    ...rakeChecks(plan, job),
    ...layoutChecks(plan, job),
    ...hardwareChecks(plan, job),
    ...mountQuestions(job),
    ...gateQuestions(job),
    ...mitreQuestions(plan),
    ...setOffChecks(plan, job),
    ...leanQuestions(plan),
    ...slotChecks(plan, job),
    ...runChecks(plan, job),
    ...tensionChecks(plan, job),
    ...bearingChecks(plan, job),
    ...bendChecks(plan, job),
    ...faceChecks(plan, job),
    ...pierChecks(plan, job),
    ...openQuestions(plan, job),
  ];
}

function codeChecks(plan: Checked, job: Job): readonly Check[] {
  const widest = allLevelGaps(plan).reduce((most, gap) => (gap.clear > most.clear ? gap : most));
  const checks =
    plan.rakes.length === plan.sides.length
      ? []
      : [
          limitCheck({
            id: "guard-height",
            name: "Height of the guard",
            where: "top of the top rail above the datum",
            rule: "at least",
            demand: plan.opening.guardHeight,
            limit: job.code.guardHeight_min,
            kind: "length",
            advice: "raise the top rail",
          }),
          limitCheck({
            id: "opening-at-rest",
            name: "Clear opening between cables, at rest",
            where: whereGap(widest, plan),
            rule: "at most",
            demand: widest.clear,
            limit: job.code.openingSphere,
            kind: "length",
            advice: "set the cables closer",
          }),
        ];
  const hasLevel = plan.rakes.length < plan.sides.length;
  const below = job.frame.bottomRail === null || !hasLevel ? [] : [job.frame.gapBelow];
  for (const gap of below) {
    checks.push(
      limitCheck({
        id: "gap-below",
        name: "Gap under the bottom rail",
        where: "datum to bottom rail",
        rule: "at most",
        demand: gap,
        limit: job.code.openingSphere,
        kind: "length",
        advice: "lower the bottom rail",
      }),
    );
  }
  return [...checks, ...wallChecks(plan, job)];
}

function layoutChecks(plan: Checked, job: Job): readonly Check[] {
  const posts = plan.verticals.filter((vertical) => vertical.kind !== "spacer");
  const distances = posts.slice(1).flatMap((post, index) => {
    const before = posts[index];
    // Level: what the rail spans along the slope is longer, what leans on it is not.
    return before !== undefined && standsOn(before, post.sideIndex)
      ? [{ where: `${before.id} to ${post.id}`, value: restOf(post) - restOf(seenFrom(before, post.sideIndex)) }]
      : [];
  });
  const widest = distances.reduce((most, one) => (one.value > most.value ? one : most), { where: "-", value: 0 });
  const spacing = allLevelGaps(plan).reduce((most, gap) => (gap.spacing > most.spacing ? gap : most));
  const edge = nearestEdge(plan);
  return [
    limitCheck({
      id: "post-spacing",
      name: "Posts, centre to centre",
      where: widest.where,
      rule: "at most",
      demand: widest.value,
      limit: job.posts.spacing_max,
      kind: "length",
      advice: "add a post, or let an engineer check the rail over this length",
    }),
    freeCheck(plan, job),
    limitCheck({
      id: "cable-spacing",
      name: "Spacing of cables after rounding",
      where: whereGap(spacing, plan),
      rule: "at most",
      demand: spacing.spacing,
      limit: job.limits.cableSpacing_max,
      kind: "length",
      advice: "add a course",
    }),
    limitCheck({
      id: "edge-distance",
      name: "Edge of a bore to the edge of its post",
      where: edge.mark,
      rule: "at least",
      demand: edge.distance,
      limit: job.limits.edgeDistance_min,
      kind: "length",
      advice: edge.mark.startsWith("S")
        ? "use wider spacers (spacers: size), or a smaller bore there (fittings: pass bore)"
        : "use a wider post, or smaller fittings",
    }),
  ];
}

/** The bay that has least to spare: of the job's own limit, or of what the criterion bears there. */
function freeCheck(plan: Checked, job: Job): Check {
  const criterion = criterionText(job);
  const bays = plan.bays
    .filter(({ kind }) => kind !== "pair gap")
    .map(({ id, free }) => ({ id, free, longest: longestFree({ runs: plan.runs, job }, id) }));
  const { id, free, longest } = bays.reduce((most, bay) => (bay.free * most.longest > most.free * bay.longest ? bay : most));
  return limitCheck({
    id: "free-length",
    name: "Free length of a cable",
    where: `bay ${id}`,
    rule: "at most",
    demand: free,
    limit:
      longest < job.spacers.free_max.value ? { value: longest, source: criterion.source, where: criterion.where } : job.spacers.free_max,
    kind: "length",
    advice: "add a spacer",
  });
}

/** Widest hole in what carries: a sleeve carries nothing. */
export const widestInPost = ({ diameter, counterbore, sleeveHole }: Bore): Mm =>
  sleeveHole === undefined ? Math.max(diameter, counterbore?.diameter ?? 0) : diameter;

/** The bore whose edge comes nearest to the edge of its member. */
function nearestEdge(plan: Checked): { readonly mark: string; readonly distance: number } {
  const rooms = new Map(plan.verticals.map((vertical) => [vertical.id, besideBore(vertical)]));
  let nearest = { mark: "-", distance: Number.POSITIVE_INFINITY };
  for (const bore of plan.bores) {
    const distance = (rooms.get(bore.verticalId) ?? 0) - Math.abs(bore.offset) - widestInPost(bore) / 2;
    if (distance < nearest.distance) nearest = { mark: bore.mark, distance };
  }
  return nearest;
}

/** No sphere passes between two posts that stand close, where no cable and no rail may stop it. */
function slotChecks(plan: Checked, job: Job): readonly Check[] {
  const slot = (id: string, where: string, demand: number, advice: string): Check =>
    limitCheck({
      id,
      name: "Slot between two posts",
      where,
      rule: "at most",
      demand,
      limit: job.code.openingSphere,
      kind: "length",
      advice,
    });
  const corners = plan.sides.flatMap((side) => {
    if (side.turn === null || endsOnOnePost(job, side.index)) return [];
    const next = plan.sides[side.index + 1];
    const options = {
      setback_left: side.length - side.endsAt,
      setback_right: next?.startsAt ?? 0,
      turn: side.turn,
      across: outsideOf(job).across,
    };
    return slot(
      `corner-slot-${side.id}`,
      jointName(plan, `${side.id}/${next?.id}`),
      cornerSlot(options),
      "set the two posts nearer to each other",
    );
  });
  const posts = new Map(plan.verticals.map((vertical) => [vertical.id, vertical]));
  const pairs = plan.bays.flatMap(({ kind, leftId, rightId }) => {
    const [left, right] = [posts.get(leftId), posts.get(rightId)];
    if (kind !== "pair gap" || left === undefined || right === undefined) return [];
    const gap = right.station - right.along / 2 - left.station - left.along / 2;
    return [slot(`pair-gap-${leftId}`, `${leftId} to ${rightId}`, gap, "give a smaller pair gap")];
  });
  return [...corners, ...pairs];
}

function runChecks(plan: Checked, job: Job): readonly Check[] {
  return plan.runs.flatMap((run) => {
    const joints = jointsOf([run]);
    const places = jointsWord(plan, joints);
    const longest = joints.length > 0 ? job.limits.runWithBends_max : job.limits.runStraight_max;
    return [
      limitCheck({
        id: `run-corners-${run.id}`,
        name: places === "" || places === "corners" ? "Corners that a run turns" : `Bends of a run: ${places}`,
        where: run.id,
        rule: "at most",
        demand: cornersOfRun(run, plan.sides, job),
        limit: job.limits.bends_max,
        kind: "count",
        advice: `end the run at one of its ${places}`,
      }),
      limitCheck({
        id: `run-length-${run.id}`,
        name: joints.length > 0 ? `Length of a run with ${places}` : "Length of a straight run",
        where: run.id,
        rule: "at most",
        demand: run.pathLength,
        limit: longest,
        kind: "length",
        advice: "cut the guard into more runs",
      }),
    ];
  });
}
