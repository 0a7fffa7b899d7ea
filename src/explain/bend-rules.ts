// Where and by how much does a cable turn, and where do its end bores stand?

import type { Vertical } from "../plan/plan.ts";
import { overJoint } from "./joint.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { passedBy, passedThrough } from "./run-rules.ts";
import type { Input, Working } from "./trace.ts";

interface BendPlace {
  /** The post that makes a corner by itself, in which the bend lies. */
  readonly inside?: Vertical;
  /** Number of the span before or behind the bend. */
  readonly span: number;
  /** Where the cable leaves a post into that span, or enters the next post from it. */
  readonly where: "leaving" | "entering";
  /** How much farther out the span ends than it begins. */
  readonly shift: number;
}

/** The bends of a run in their order. */
function placesOf(reader: Reader, id: string): readonly BendPlace[] {
  const { spans, left, right, members } = reader.geometry(id);
  return spans.flatMap(({ bay }, span): readonly BendPlace[] => {
    const shift = (span === spans.length - 1 ? right.offset : 0) - (span === 0 ? left.offset : 0);
    // It enters the bore from the span before and leaves it into this one.
    const inside = members[span];
    if (inside?.corner?.isPassed === true) {
      return [
        { span: span - 1, where: "entering", shift: 0, inside },
        { span, where: "leaving", shift: 0, inside },
      ];
    }
    if (bay.kind !== "corner" && shift === 0) return [];
    return [
      { span, where: "leaving", shift },
      { span, where: "entering", shift },
    ];
  });
}

const placeOf = (reader: Reader, id: string, key: string): BendPlace =>
  must(placesOf(reader, id)[Number(/\d+/.exec(key)?.[0])], `bend ${key} of run ${id}`);

function angleOf(reader: Reader, [id = "", key = ""]: readonly string[]): Working {
  const { span, where, shift, inside } = placeOf(reader, id, key);
  if (inside !== undefined) {
    return {
      formula: "abs(t) / 2",
      inputs: [reader.at("t", `turn of the corner at ${inside.id}`, `verticals.${inside.id}.corner.turn`)],
      origin: derived("the bore bisects the turn: each of its mouths bends the cable by half of it"),
    };
  }
  const { bay } = must(reader.geometry(id).spans[span], "span");
  if (bay.kind !== "corner") {
    return {
      formula: "abs(atan2(o, f))",
      inputs: [
        given("o", "offset of the end bore from the middle of its post", shift, "length"),
        reader.at("f", "free length of the bay", `bays.${bay.id}.free`),
      ],
      origin: derived("plan geometry"),
    };
  }
  const [left, right] = [bay.leftId, bay.rightId];
  const side = must(
    reader.plan.verticals.find((one) => one.id === left),
    left,
  ).sideId;
  const sloping = slopingBend(reader, left, right, where);
  if (sloping !== null) return sloping;
  const onLeaving = "atan2(b * sin(t), a + b * cos(t))";
  const setbacks: readonly Input[] = [
    given("a", "from the near face of the left-hand post to the corner point", setbackOf(reader, left, "to its right"), "length"),
    given("b", "from the corner point to the near face of the right-hand post", setbackOf(reader, right, "to its left"), "length"),
  ];
  return {
    formula: where === "leaving" ? `abs(${onLeaving})` : `abs(t - ${onLeaving})`,
    inputs: [...setbacks, reader.at("t", `turn of side ${side}`, `sides.${side}.turn`)],
    origin: derived("plan geometry of a corner of two posts"),
  };
}

/** In space, where one of the two sides slopes at least. */
function slopingBend(reader: Reader, leftId: string, rightId: string, where: BendPlace["where"]): Working | null {
  const post = (id: string): Vertical =>
    must(
      reader.plan.verticals.find((one) => one.id === id),
      id,
    );
  const [left, right] = [post(leftId), post(rightId)];
  if (left.slope === 0 && right.slope === 0) return null;
  return {
    formula: "bend(a, b, t, s1, s2)",
    inputs: [
      given("a", "from the near face of the left-hand post to the joint, level", setbackOf(reader, leftId, "to its right"), "length"),
      given("b", "from the joint to the near face of the right-hand post, level", setbackOf(reader, rightId, "to its left"), "length"),
      reader.at("t", `turn of side ${left.sideId}`, `sides.${left.sideId}.turn`),
      reader.at("s1", `slope of side ${left.sideId}`, `verticals.${leftId}.slope`),
      reader.at("s2", `slope of side ${right.sideId}`, `verticals.${rightId}.slope`),
    ],
    functions: {
      bend: {
        means: "angle in space between the cable in its post and the straight line to the next post",
        of: overJoint((path) => path[where === "leaving" ? "angle_left" : "angle_right"]),
      },
    },
    origin: derived("geometry in space"),
  };
}

function setbackOf({ plan }: Reader, id: string, where: "to its right" | "to its left"): number {
  const post = must(
    plan.verticals.find((one) => one.id === id),
    id,
  );
  const length = plan.sides[post.sideIndex]?.length ?? 0;
  return (where === "to its right" ? length - post.station : post.station) - (post.core ?? post).along / 2;
}

function alongOf(reader: Reader, [id = "", key = ""]: readonly string[]): Working {
  const { span, where } = placeOf(reader, id, key);
  const { members, spans } = reader.geometry(id);
  const reached = spans.slice(0, where === "leaving" ? span : span + 1);
  return {
    formula: "sum(w) + sum(f)",
    inputs: [
      passedThrough(reader, passedBy(reader.run(id), members.slice(0, span + 1)), "posts and spacers passed before it, along the cable"),
      given(
        "f",
        "length of the cable in each bay before it",
        reached.map((one) => one.to - one.from),
        "length",
      ),
    ],
    origin: derived("plan geometry"),
  };
}

function offsetOf(reader: Reader, runId: string, end: "left" | "right"): Working {
  const { at } = reader;
  if (reader.run(runId)[end].offset === 0) {
    return {
      formula: "z",
      inputs: [given("z", "the only run that ends on this post, or on this face of it, stands in its middle", 0, "length")],
      origin: derived("end bores"),
    };
  }
  const sign = end === "right" ? "-" : "";
  const inSleeve = reader.plan.job.posts.sleeve !== null;
  return {
    formula: `${sign}up((max(w1, w2) / 2 + max(d1, d2, d3) / 2 + g${inSleeve ? " + (c1 + c2) / 2" : ""}) / 2, s)`,
    inputs: [
      ...(inSleeve
        ? [
            at("c1", "clearance round a washer in its hole in the sleeve", "job.posts.sleeve.washerClearance"),
            at("c2", "clearance round a bore in the sleeve", "job.posts.sleeve.boreClearance"),
          ]
        : []),
      at("w1", "washer at a stud end", "job.fittings.stud.washerDiameter"),
      at("w2", "washer at a gripping end", "job.fittings.grip.washerDiameter"),
      at("d1", "bore of a stud end", "job.fittings.stud.bore"),
      at("d2", "counterbore of a gripping end", "job.fittings.grip.counterbore"),
      at("d3", "bore of a gripping end without counterbore", "job.fittings.grip.boreNoBack"),
      given(
        "g",
        "wood left between the washer of one run and the bore of the other",
        BETWEEN_BORES_mm,
        "length",
        from("practice", "wood between washer and bore"),
      ),
      at("s", "step of the tape", "job.limits.tapeStep"),
    ],
    origin: derived("two runs end on one post, their bores set off to both sides"),
    rounding: "up to the next mark of the tape, so that no less wood is left",
  };
}

/** As the plan leaves it between two bores of one post. */
const BETWEEN_BORES_mm = 6.35;

export const bendRules: readonly Rule[] = [
  rule("runs.*.bends.*.angle", "Turn of the cable of run {}, bend {} from the left", angleOf),
  rule("runs.*.bends.*.at", "Way along run {} from the left-hand bearing face to bend {}", alongOf),
  rule(
    "runs.*.left.offset",
    "Distance of the left-hand end bores of run {} from the middle of their post, away from the deck",
    (reader, [id = ""]) => offsetOf(reader, id, "left"),
  ),
  rule(
    "runs.*.right.offset",
    "Distance of the right-hand end bores of run {} from the middle of their post, away from the deck",
    (reader, [id = ""]) => offsetOf(reader, id, "right"),
  ),
];
