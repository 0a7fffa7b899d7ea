// What does each check compare, and where do its two sides come from?

import { nearestZone } from "../plan/check-standing.ts";
import { endPostOf, guardEnds } from "../plan/check-wall.ts";
import { cornerSlot } from "../plan/corner-path.ts";
import { halfSeat } from "../plan/hardware.ts";
import { jointsOf } from "../plan/joints.ts";
import type { Check, Plan } from "../plan/plan.ts";
import { cornersOfRun } from "../plan/splits.ts";
import { bearingLimit } from "./bearing-rules.ts";
import { bendDemands, bendLimits } from "./bend-check-rules.ts";
import { faceDemands, faceLimits, hardestPull, infillPull } from "./face-check-rules.ts";
import { guardEndPath } from "./lean-rules.ts";
import { postDistances } from "./mouths.ts";
import { pierDemands, pierLimits } from "./pier-rules.ts";
import { rakeDemands, rakeLimits, type CheckSide as Side } from "./rake-check-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { setOffDemands } from "./set-off-rules.ts";
import { outsidePath } from "./stations.ts";
import type { Input, Working } from "./trace.ts";

const checkNamed = ({ plan }: Reader, id: string): Check =>
  must(
    plan.checks.find((one) => one.id === id),
    `check ${id}`,
  );

const whole = derived("the plan as it stands");

const same = (input: Input): Working => ({ formula: input.symbol, inputs: [input], origin: whole });
const most = (input: Input): Working => ({ formula: `max(${input.symbol})`, inputs: [input], origin: whole });

/** The part of an id behind its kind: strand-R1 gives R1. */
const behind = (id: string, kind: string): string | null => (id.startsWith(`${kind}-`) ? id.slice(kind.length + 1) : null);

/** Beside a wall, as the job has it, or beside a post that leans along its side. */
function gapOf({ at, plan }: Reader, id: string, which: "widest" | "narrowest"): Input {
  const place = guardEnds(plan.job).find((one) => one.id === id);
  const post = place && endPostOf(plan, place);
  return post?.leansAlong?.gap === undefined
    ? at("g", "gap between wall and end post", `${guardEndPath(id)}.gap`)
    : at("g", `${which} gap between wall and ${post.id}`, `verticals.${post.id}.leansAlong.gap.${which}`);
}

/** Of every opening of the level sides, those of raised sides too. */
const openings = ({ gaps, setOff }: Plan, field: "clear" | "spacing"): readonly string[] => [
  ...gaps.map((_, nth) => `gaps[${nth}].${field}`),
  ...(setOff?.gaps ?? []).map((_, nth) => `setOff.gaps[${nth}].${field}`),
];

const demands: Readonly<Record<string, Side>> = {
  ...rakeDemands,
  ...faceDemands,
  ...pierDemands,
  ...bendDemands,
  ...setOffDemands,
  "guard-height": ({ at }) => same(at("H", "height of the guard", "opening.guardHeight")),
  "opening-at-rest": ({ all, plan }) => most(all("c", "clear gap of each opening", openings(plan, "clear"))),
  "gap-below": ({ at }) => same(at("g", "gap under the bottom rail", "job.frame.gapBelow")),
  "wall-gap": (reader, end) => same(gapOf(reader, end, "widest")),
  "wall-reach": (reader, end) => same(gapOf(reader, end, "narrowest")),
  "post-spacing": ({ plan }) =>
    most(given("d", "stations of neighbouring posts of a side, one less the other", postDistances(plan), "length")),
  "free-length": ({ at }, _, { where }) => same(at("f", "free length of the bay with the least to spare", `bays.${bayOf(where)}.free`)),
  "cable-spacing": ({ all, plan }) => most(all("a", "spacing of each opening", openings(plan, "spacing"))),
  "edge-distance": (reader, _, { where }) => {
    const bore = must(
      reader.plan.bores.find(({ mark }) => mark === where),
      `bore ${where}`,
    );
    const { at } = reader;
    // To the arris that the bore cuts off.
    const onMitre = bore.skew !== 0;
    const inSleeve = bore.sleeveHole !== undefined;
    const isSunk = bore.counterbore !== null && !inSleeve;
    return {
      formula: `w / ${onMitre ? "sqrt(8)" : "2"} - abs(o) - ${isSunk ? "max(d, D)" : "d"} / 2`,
      inputs: [
        inSleeve
          ? at("w", "wood in the sleeve, square to the side", `verticals.${bore.verticalId}.core.across`)
          : at("w", "post or spacer square to the side", `verticals.${bore.verticalId}.across`),
        at("o", "offset of the bore from the middle", `bores.${where}.offset`),
        at("d", "diameter of the bore", `bores.${where}.diameter`),
        ...(isSunk ? [at("D", "diameter of its counterbore", `bores.${where}.counterbore.diameter`)] : []),
      ],
      origin: derived("the bore that comes nearest to an edge"),
    };
  },
  hardware: ({ at, plan }, postId, { where }) => {
    const mark = where.split(",")[0] ?? "";
    const bore = must(
      plan.bores.find((one) => one.mark === mark),
      `bore ${mark}`,
    );
    const zone = must(nearestZone(bore, plan, plan.job)?.zone, `hardware on ${postId}`);
    const nth = plan.hardware.indexOf(zone);
    return {
      formula: "max(z1 - h, h - z2) - r",
      inputs: [
        at("h", "height of the bore", `bores.${mark}.height`),
        at("z1", `lower end of ${zone.what}`, `hardware[${nth}].from`),
        at("z2", `upper end of ${zone.what}`, `hardware[${nth}].to`),
        given("r", "half of what the bore takes: bore, counterbore or washer", halfSeat(bore, plan.job), "length"),
      ],
      origin: derived("the bore that comes nearest to hardware on this post"),
    };
  },
  "corner-slot": (reader, sideId) => {
    const { plan, at } = reader;
    const side = must(
      plan.sides.find(({ id }) => id === sideId),
      `side ${sideId}`,
    );
    const next = must(plan.sides[side.index + 1], "next side");
    return {
      formula: "slot(L - e, s, t, w)",
      inputs: [
        at("L", `length of side ${sideId}`, `sides.${sideId}.length`),
        at("e", "outer face of its last post", `sides.${sideId}.endsAt`),
        at("s", "outer face of the first post of the next side", `sides.${next.id}.startsAt`),
        at("t", "turn", `sides.${sideId}.turn`),
        at("w", "post square to the side", `${outsidePath(plan)}.across`),
      ],
      functions: {
        slot: {
          means: "least distance of the two edges that face each other, inside and outside of the corner",
          of: (left, right, turn, across) =>
            cornerSlot({ setback_left: Number(left), setback_right: Number(right), turn: Number(turn), across: Number(across) }),
        },
      },
      origin: derived("plan geometry"),
    };
  },
  "pair-gap": ({ plan, at }, postId) => {
    const posts = plan.verticals.filter(({ kind }) => kind === "post");
    const left = posts.findIndex(({ id }) => id === postId);
    const right = must(posts[left + 1], "post");
    return {
      formula: "x2 - w / 2 - x1 - w / 2",
      inputs: [
        at("x1", `station of ${postId}`, `verticals.${postId}.station`),
        at("x2", `station of ${right.id}`, `verticals.${right.id}.station`),
        at("w", "post along the side", `verticals.${postId}.along`),
      ],
      origin: derived("plan geometry"),
    };
  },
  "run-corners": ({ run, plan }, id) =>
    same(
      given(
        "n",
        "corners and changes of slope that the run passes; a turn as small as on a curve counts by its share of a right angle",
        cornersOfRun(run(id), plan.sides, plan.job),
        "count",
      ),
    ),
  "run-length": ({ at }, id) => same(at("L", "length of the run", `runs.${id}.pathLength`)),
  strand: ({ at, all, tightening }, id) => ({
    formula: "max(T, r)",
    inputs: [
      at("T", "target", `runs.${id}.tension.target`),
      all(
        "r",
        "greatest reading of each step",
        tightening(id).steps.map(({ number }) => `tightening.${id}.steps.${number}.reading_high`),
      ),
    ],
    origin: whole,
  }),
  required: ({ at }, id, { where }) =>
    same(at("t", "tension of the span with the smallest margin", `runs.${id}.spans.${spanOf(where)}.tension`)),
  thread: ({ run, number, at }, id) => {
    const ends = run(id).takeUp.ends.map(({ postId }) => `runs.${id}.takeUp.ends.${postId}`);
    const reach = ends.map((end) => number(`${end}.travel_high`) + number(`${end}.slack`));
    return {
      formula: "max(t) + r",
      inputs: [
        given("t", "travel of each nut with the least stiffness, slack included", reach, "length"),
        at("r", "thread to be left", `runs.${id}.takeUp.reserve`),
      ],
      origin: whole,
    };
  },
  infill: infillPull,
  season: hardestPull,
  bearing: (reader, rest) => hardestPull(reader, rest.split("-")[0] ?? ""),
  "push-through": ({ all, plan }) => ({
    formula: "min(F)",
    inputs: [
      all(
        "F",
        "of each span",
        plan.runs.flatMap(({ id, spans }) => spans.map(({ bayId }) => `runs.${id}.spans.${bayId}.pushThrough.sliding`)),
      ),
    ],
    origin: whole,
  }),
  frame: ({ at }, id) => same(at("q", "ratio of the frame's check", `frame.checks.${id}.ratio`)),
};

/** "R1, bay A2" gives A2. */
const spanOf = (where: string): string => where.split(" bay ")[1] ?? "";

const stated =
  (path: string, what: string): Side =>
  ({ at }) =>
    same(at("l", what, path));
const openingSphere = stated("job.code.openingSphere", "sphere that must not pass");

/** "bay A2" gives A2. */
const bayOf = (where: string): string => where.slice("bay ".length);

/** The job's own limit, and what the criterion bears in the spans of that bay. */
const freeLimit: Side = ({ at, all, plan }, _, { where }) => {
  const stops = plan.runs.flatMap(({ id, spans }) =>
    spans
      .filter(({ bayId, free_stop }) => bayId === bayOf(where) && free_stop !== null)
      .map(({ bayId }) => `runs.${id}.spans.${bayId}.free_stop`),
  );
  const own = at("l", "longest free length of the job", "job.spacers.free_max");
  return stops.length === 0
    ? same(own)
    : {
        formula: "min(l, s)",
        inputs: [own, all("s", "longest free length at which the span still meets the criterion", stops)],
        origin: derived("one stop for a free length, the strictest"),
      };
};

const limits: Readonly<Record<string, Side>> = {
  ...rakeLimits,
  ...faceLimits,
  ...pierLimits,
  ...bendLimits,
  "guard-height": stated("job.code.guardHeight_min", "least height of the guard"),
  "opening-at-rest": openingSphere,
  "gap-below": openingSphere,
  "corner-slot": openingSphere,
  "pair-gap": openingSphere,
  "wall-gap": stated("job.limits.wallGap_max", "widest gap to a wall"),
  "wall-reach": stated("job.limits.wallGap_min", "narrowest gap that a tool reaches through"),
  "post-spacing": stated("job.posts.spacing_max", "largest spacing of posts"),
  "free-length": freeLimit,
  "cable-spacing": stated("job.limits.cableSpacing_max", "largest spacing of cables"),
  hardware: stated("job.posts.hardwareClearance", "least clearance between bores and hardware"),
  "edge-distance": stated("job.limits.edgeDistance_min", "least wood or wall beside a bore"),
  crossing: stated("job.limits.betweenBores_min", "least wood between two bores that cross"),
  "run-corners": stated("job.limits.bends_max", "corners and changes of slope that a run may pass"),
  "run-length": ({ at, run }, id) =>
    same(at("l", "longest run", jointsOf([run(id)]).length > 0 ? "job.limits.runWithBends_max" : "job.limits.runStraight_max")),
  strand: stated("target.workingLimit", "working limit of the strand"),
  season: stated("target.workingLimit", "working limit of the strand"),
  required: ({ at }, id, { where }) => same(at("q", "what the criterion asks of that span", `runs.${id}.spans.${spanOf(where)}.required`)),
  thread: ({ at }, id) => same(at("a", "free thread after the first turns", `runs.${id}.takeUp.threadAvailable`)),
  infill: ({ at }) => ({
    formula: "B / 1.5",
    inputs: [at("B", "breaking force", "job.cable.breakingForce")],
    origin: from("en-1993-1-11", "6.2: breaking force / (1.5 x 1.0)"),
  }),
  bearing: bearingLimit,
  frame: () => same(given("l", "a ratio holds up to 1", 1, "share")),
};

const sideOf =
  (sides: Readonly<Record<string, Side>>): Rule["explain"] =>
  (reader, [id = ""]) => {
    const kind = Object.keys(sides).find((name) => id === name || behind(id, name) !== null);
    return kind === undefined ? null : (sides[kind]?.(reader, behind(id, kind) ?? "", checkNamed(reader, id)) ?? null);
  };

export const checkRules: readonly Rule[] = [
  rule("checks.*.ratio", "How much of its limit the check {} uses", (reader, [id = ""]) => {
    const { rule: how } = checkNamed(reader, id);
    const { at } = reader;
    if (reader.number(`checks.${id}.${how === "at most" ? "limit" : "demand"}.value`) === 0) {
      return { formula: "z", inputs: [given("z", "there is nothing to divide by", 0, "share")], origin: whole };
    }
    return {
      formula: how === "at most" ? "D / l" : "l / D",
      inputs: [at("D", "demand", `checks.${id}.demand.value`), at("l", `limit: ${how} this`, `checks.${id}.limit.value`)],
      origin: from(checkNamed(reader, id).source, checkNamed(reader, id).sourceWhere),
    };
  }),
  rule("checks.*.demand.value", "Demand of the check {}", sideOf(demands)),
  rule("checks.*.limit.value", "Limit of the check {}", sideOf(limits)),
];
