// Where do heights, gaps, stations and free lengths come from?

import { cornerPath } from "../plan/corner-path.ts";
import { jointSetback } from "../plan/outline.ts";
import type { SidePlan, Vertical } from "../plan/plan.ts";
import type { RakePlan } from "../plan/rake-plan.ts";
import { courseRules } from "./course-rules.ts";
import { overJoint } from "./joint.ts";
import { longestFreeOf } from "./lean-rules.ts";
import { cornerRules, heldWidth, leftEndOf, rightEndOf } from "./mouths.ts";
import { leadingRake } from "./rake-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { setOffRules } from "./set-off-rules.ts";
import { verticalNamed, verticalRules } from "./stations.ts";
import type { Input, Origin, Working } from "./trace.ts";

const job = (where: string): Origin => from("job", where);

/** Where no side is level, the guard's heights are those of a rake. */
const levelOrRaked =
  (field: keyof RakePlan["opening"], level: Rule["explain"]): Rule["explain"] =>
  (reader, keys) => {
    const rake = leadingRake(reader.plan);
    if (rake === undefined) return level(reader, keys);
    return {
      formula: "h",
      inputs: [reader.at("h", `of side ${rake.sideId}, as no side is level`, `rakes.${rake.sideId}.opening.${field}`)],
      origin: derived("the rake that slopes least"),
    };
  };

const frame: readonly Rule[] = [
  rule(
    "opening.bottom",
    "Lower edge of the opening above the datum",
    levelOrRaked("bottom", ({ at, plan }) => ({
      formula: plan.job.frame.bottomRail === null ? "g" : "g + r",
      inputs: [
        at("g", "gap from the datum to the bottom rail, 0 without one", "job.frame.gapBelow"),
        ...(plan.job.frame.bottomRail === null ? [] : [at("r", "depth of the bottom rail", "job.frame.bottomRail.depth")]),
      ],
      origin: job("frame"),
    })),
  ),
  rule(
    "opening.top",
    "Underside of the top rail above the datum",
    levelOrRaked("top", ({ at }) => ({
      formula: "b + c",
      inputs: [at("b", "lower edge of the opening", "opening.bottom"), at("c", "clear opening", "job.frame.clearOpening")],
      origin: job("frame: clear opening"),
    })),
  ),
  rule(
    "opening.guardHeight",
    "Height of the guard: top of the top rail above the datum",
    levelOrRaked("guardHeight", ({ at }) => ({
      formula: "t + d",
      inputs: [at("t", "underside of the top rail", "opening.top"), at("d", "depth of the top rail", "job.frame.topRail.depth")],
      origin: job("frame"),
    })),
  ),
];

const faceOf = (side: SidePlan, end: "first" | "last", reader: Reader): Working => {
  const { at, plan } = reader;
  const of = must(plan.job.sides[side.index], `side ${side.id}`);
  const length = at("L", "length of the side", `sides.${side.id}.length`);
  const sign = end === "first" ? "-" : "+";
  if ((end === "first" ? side.begins : side.ends)?.kind === "pier") {
    return end === "first"
      ? { formula: "z", inputs: [given("z", "the side is measured from the face of the pier", 0, "length")], origin: job("guard: start") }
      : { formula: "L", inputs: [length], origin: job("guard: end") };
  }
  if (of.stations !== null) {
    const nth = end === "first" ? 0 : of.stations.length - 1;
    const station = at("x", `station of its ${end} post`, `job.sides.${side.id}.stations[${nth}]`);
    const posts = plan.verticals.filter(({ kind, sideIndex }) => kind === "post" && sideIndex === side.index);
    const own = must(end === "first" ? posts[0] : posts.at(-1), "post");
    return {
      formula: `x ${sign} w / 2`,
      inputs: [station, at("w", `${own.id} along the side`, `verticals.${own.id}.along`)],
      origin: job("guard: sides: stations"),
    };
  }
  const turn = end === "first" ? (plan.sides[side.index - 1]?.turn ?? null) : side.turn;
  const guardEnd = end === "first" ? side.begins : side.ends;
  if (guardEnd !== null) {
    const wall = guardEnd.gap;
    const path = `sides.${side.id}.${end === "first" ? "begins" : "ends"}.gap`;
    const gap = wall === null ? given("g", "gap to a wall: there is none", 0, "length") : at("g", "gap between wall and end post", path);
    return end === "first"
      ? { formula: "g", inputs: [gap], origin: job("guard: start") }
      : { formula: "L - g", inputs: [length, gap], origin: job("guard: end") };
  }
  const left = end === "first" ? side.index - 1 : side.index;
  const onePost = plan.verticals.find(({ corner, sideIndex }) => corner !== undefined && sideIndex === left);
  if (onePost !== undefined) {
    const station = at("x", `its middle from the start of the side, or to its end`, `verticals.${onePost.id}.corner.nextStation`);
    const inputs = [station, at("w", `width of ${onePost.id}, which makes the corner`, `verticals.${onePost.id}.along`)];
    return end === "first"
      ? { formula: "x - w / 2", inputs, origin: derived("corner of one post") }
      : { formula: "L - x + w / 2", inputs: [length, ...inputs], origin: derived("corner of one post") };
  }
  const ended = plan.transitions.some(({ leftSideId, passes }) => leftSideId === plan.sides[left]?.id && !passes);
  const setback = given(
    "c",
    ended && turn === 0
      ? "half the gap between two posts where runs end"
      : "setback of the corner posts: where their inner edges would touch, and a clearance",
    jointSetback(plan.job, left, new Set(ended ? [left] : [])),
    "length",
    {
      ...(plan.job.posts.cornerSetback ?? plan.job.posts.cornerClearance),
    },
  );
  return end === "first"
    ? { formula: "c", inputs: [setback], origin: derived("corner of two posts") }
    : { formula: "L - c", inputs: [length, setback], origin: derived("corner of two posts") };
};

const sideNamed = ({ plan }: Reader, id: string | undefined): SidePlan =>
  must(
    plan.sides.find((side) => side.id === id),
    `side ${id}`,
  );

const sides: readonly Rule[] = [
  rule("sides.*.startsAt", "Outer face of the first post of side {}, from the side's left-hand start", (reader, [id]) =>
    faceOf(sideNamed(reader, id), "first", reader),
  ),
  rule("sides.*.endsAt", "Outer face of the last post of side {}, from the side's left-hand start", (reader, [id]) =>
    faceOf(sideNamed(reader, id), "last", reader),
  ),
  rule("sides.*.length", "Length of side {} along the line of the bores", ({ at }, [id]) => ({
    formula: "L",
    inputs: [at("L", "length in the job file", `job.sides.${id}.length`)],
    origin: job("guard: sides: length"),
  })),
];

/** Between two sides of which one slopes at least. */
function slopingJoint(
  { at }: Reader,
  { left, right, inputs }: { readonly left: Vertical; readonly right: Vertical; readonly inputs: readonly Input[] },
): Working {
  return {
    formula: "nearest(reach(L - x1 - w1 / 2, x2 - w2 / 2, turn, s1, s2), 0.000001)",
    inputs: [
      at("L", `length of side ${left.sideId}`, `sides.${left.sideId}.length`),
      ...inputs,
      at("turn", `turn of side ${left.sideId}`, `sides.${left.sideId}.turn`),
      at("s1", `slope of side ${left.sideId}`, `verticals.${left.id}.slope`),
      at("s2", `slope of side ${right.sideId}`, `verticals.${right.id}.slope`),
    ],
    functions: {
      reach: {
        means:
          "length in space from where the cable leaves the left post to where it enters the right one: level as chord(a, b, turn), up by a tan s1 + b tan s2",
        of: overJoint(({ chord }) => chord),
      },
    },
    origin: derived("geometry in space"),
    rounding: "to a millionth of a millimetre, so that equal bays compare equal",
  };
}

const bays: readonly Rule[] = [
  rule("bays.*.free", "Free length of a cable in bay {}, between the two faces that hold it", (reader, [id]) => {
    const bay = must(
      reader.plan.bays.find((one) => one.id === id),
      `bay ${id}`,
    );
    const [left, right] = [verticalNamed(reader, bay.leftId), verticalNamed(reader, bay.rightId)];
    const post = (symbol: string, one: Vertical): readonly Input[] => [
      reader.at(`x${symbol}`, `station of ${one.id}`, `verticals.${one.id}.station`),
      heldWidth(reader, one, `w${symbol}`),
    ];
    const inputs = [...post("1", left), ...post("2", right)];
    const rounding = "to a millionth of a millimetre, so that equal bays compare equal";
    if (bay.longestCourse !== undefined) return { ...longestFreeOf(reader, { left, right, inputs }), rounding };
    if (left.corner !== undefined || right.corner !== undefined) {
      const [low, high] = [leftEndOf(reader, left, bay.sideId), rightEndOf(reader, right)];
      return {
        formula: `nearest(${high.term} - ${low.term}, 0.000001)`,
        inputs: [...low.inputs, ...high.inputs],
        origin: derived("from one mouth to the next, along the side"),
        rounding,
      };
    }
    if (bay.kind !== "corner") {
      const slope = left.slope === 0 ? [] : [reader.at("s", "slope of the side", `verticals.${left.id}.slope`)];
      const level = "x2 - w2 / 2 - (x1 + w1 / 2)";
      const formula = left.slope === 0 ? `nearest(${level}, 0.000001)` : `nearest((${level}) / cos(s), 0.000001)`;
      return { formula, inputs: [...inputs, ...slope], origin: derived("stations as set out"), rounding };
    }
    if (left.slope !== 0 || right.slope !== 0) return slopingJoint(reader, { left, right, inputs });
    const turn = reader.at("turn", `turn of side ${left.sideId}`, `sides.${left.sideId}.turn`);
    return {
      formula: "nearest(chord(L - x1 - w1 / 2, x2 - w2 / 2, turn), 0.000001)",
      inputs: [reader.at("L", `length of side ${left.sideId}`, `sides.${left.sideId}.length`), ...inputs, turn],
      functions: {
        chord: {
          means: "chord(a, b, turn) = sqrt((a + b cos turn)^2 + (b sin turn)^2), a and b from the corner point to the near faces",
          of: (a, b, angle) => cornerPath({ setback_left: Number(a), setback_right: Number(b), turn: Number(angle) }).chord,
        },
      },
      origin: derived("plan geometry"),
      rounding,
    };
  }),
];

/** Heights of hardware stand in the job: each post that has it bears them. */
const hardware: readonly Rule[] = (["from", "to"] as const).map((end) =>
  rule(`hardware.*.${end}`, `${end === "from" ? "Lowest" : "Highest"} place of hardware {} on its post`, ({ at, plan }, [key = ""]) => {
    const zone = plan.hardware[Number(/\d+/.exec(key)?.[0])];
    const index = plan.job.posts.hardware.findIndex(
      ({ what, from: low, to: high, posts }) =>
        what === zone?.what && low === zone.from && high === zone.to && (posts === null || posts.includes(zone.postId)),
    );
    const what = `${zone?.what ?? ""} as it was found on ${zone?.postId ?? ""}`;
    return { formula: "h", inputs: [at("h", what, `job.posts.hardware[${index}].${end}`)], origin: from("job", "posts: hardware") };
  }),
);

export const layoutRules: readonly Rule[] = [
  ...hardware,
  ...courseRules,
  ...setOffRules,
  ...frame,
  ...sides,
  ...verticalRules,
  ...cornerRules,
  ...bays,
];
