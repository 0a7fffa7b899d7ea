// How stiff is the frame, and how does it stand under its cables?

import { cantilever } from "../mechanics/beam.ts";
import { alongPost, type SideState } from "../mechanics/guard-frame.ts";
import { alloyOf, conditionsOf, modulusPiece, pieceOf, postMember } from "../plan/frame-members.ts";
import type { PostAnswer } from "../plan/frame-plan.ts";
import type { FrameGroup, SideFrame } from "../plan/frames.ts";
import { stateOf } from "../plan/movement.ts";
import { type Alloy, alloys } from "../tables/metal.ts";
import { woodStrength } from "../tables/timber-strength.ts";
import { woodFactors } from "../tables/wood-factors.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Kind, Working } from "./trace.ts";

const solver = derived("plane frame by direct stiffness, one unit load after the other");

interface FramedSide {
  readonly group: FrameGroup;
  readonly frame: SideFrame;
}

function frameOf(reader: Reader, sideId: string): FramedSide {
  const run = must(
    reader.plan.runs.find(({ sideIds }) => sideIds.includes(sideId)),
    `run on side ${sideId}`,
  );
  const { group } = reader.group(run.id);
  return {
    group,
    frame: must(
      group.sides.find(({ side }) => side.id === sideId),
      `frame of side ${sideId}`,
    ),
  };
}

/** A value of a side that is the sum of what each cable does to it. */
function superposed(
  reader: Reader,
  side: FramedSide,
  { read, kind, what }: { readonly read: (state: SideState) => number; readonly kind: Kind; readonly what: string },
): readonly Input[] {
  const { group, frame } = side;
  const cables = group.cableFlexibility;
  const units = cables.map((_, own) =>
    read(
      stateOf(
        frame,
        cables.map((__, cable) => (cable === own ? 1 : 0)),
      ),
    ),
  );
  return [
    given("f", `${what} per newton at the nut of each cable`, units, kind, solver),
    reader.all(
      "T",
      "target at the nut of each cable on this frame",
      group.runs.flatMap(({ id }) => group.courses.map(() => `runs.${id}.tension.target`)),
    ),
  ];
}

const answer = (
  field: keyof PostAnswer,
  what: string,
  kind: Kind,
  read: (side: FramedSide, post: number, own: PostAnswer) => (state: SideState) => number,
): Rule =>
  rule(
    `frame.sides.*.posts.*.${field}`,
    `${what} of {1} on side {0} when all cables stand at their targets`,
    (reader, [sideId = "", postId]) => {
      const side = frameOf(reader, sideId);
      const own = must(
        reader.plan.frame.sides.find((one) => one.sideId === sideId)?.posts.find((one) => one.postId === postId),
        `post ${postId}`,
      );
      const post = side.frame.posts.findIndex(({ id }) => id === postId);
      return {
        formula: "dot(f, T)",
        inputs: superposed(reader, side, { read: read(side, post, own), kind, what }),
        origin: derived("superposition"),
      };
    },
  );

const answers: readonly Rule[] = [
  answer(
    "movement",
    "Largest movement along the side",
    "flexibility",
    ({ frame }, post, { height }) =>
      (state) =>
        alongPost(frame.guard, state, post)(height).movement,
  ),
  answer(
    "top",
    "Movement of the top",
    "flexibility",
    (_, post) =>
      ({ top }) =>
        top[post] ?? 0,
  ),
  answer(
    "baseMoment_Nmm",
    "Moment at the base along the side",
    "length",
    (_, post) =>
      ({ baseMoment }) =>
        baseMoment[post] ?? 0,
  ),
  answer(
    "baseShear",
    "Force that the base hands down along the side",
    "share",
    (_, post) =>
      ({ baseShear }) =>
        baseShear[post] ?? 0,
  ),
  ...(["topRailThrust", "bottomRailThrust"] as const).map((rail) =>
    rule(
      `frame.sides.*.${rail}`,
      `Greatest compression of the ${rail === "topRailThrust" ? "top" : "bottom"} rail of side {} when all cables stand at their targets`,
      (reader, [sideId = ""]): Working => {
        const side = frameOf(reader, sideId);
        const targets = side.group.runs.flatMap(({ id }) => side.group.courses.map(() => reader.run(id).tension.target));
        const thrusts = stateOf(side.frame, targets)[rail];
        const bay = thrusts.indexOf(Math.max(...thrusts));
        if (bay < 0) return { formula: "z", inputs: [given("z", "there is no such rail", 0, "force")], origin: solver };
        return {
          formula: "max(0, dot(f, T))",
          inputs: superposed(reader, side, {
            read: (state) => state[rail][bay] ?? 0,
            kind: "share",
            what: `compression of the rail in bay ${bay + 1} of posts`,
          }),
          origin: derived("superposition"),
        };
      },
    ),
  ),
];

/** Modulus of a member: of wood, the value of its grade times the factors of its place; of metal, that of its alloy. */
function modulus({ plan }: Reader, member: "posts" | "topRail", property: "modulus" | "modulus_min"): Working | null {
  const { job } = plan;
  const { material, wood, ...size } =
    member === "posts"
      ? { ...job.posts.section, wood: job.posts.wood, x: job.posts.section.along, y: job.posts.section.across }
      : { ...job.frame.topRail, x: job.frame.topRail.width, y: job.frame.topRail.depth };
  if (material !== "wood") {
    const { modulus: value }: Alloy = alloys[alloyOf[material]];
    return { formula: "E", inputs: [given("E", `modulus of ${alloyOf[material]}`, value.value, "stress", value)], origin: value };
  }
  const own = pieceOf({ x: size.x, y: size.y, wood });
  const piece = property === "modulus" ? modulusPiece(own) : own;
  const reference = must(woodStrength(piece) ?? undefined, `design values of ${piece.species}`);
  const factors = woodFactors({ property, piece, conditions: conditionsOf(wood, job) });
  return {
    formula: ["E", ...factors.map(({ name }) => name)].join(" * "),
    inputs: [
      given(
        "E",
        `${property === "modulus" ? "modulus" : "least modulus"} of ${piece.species} ${piece.grade} in the table`,
        reference.value[property],
        "stress",
        reference,
      ),
      ...factors.map((factor) => given(factor.name, factor.note ?? "factor of the table", factor.value, "share", factor)),
    ],
    origin: from("nds-2018", "table 4.3.1"),
  };
}

function base({ at, plan }: Reader): Working | null {
  const { value } = plan.job.posts.base;
  const { source, where } = plan.job.posts.base;
  if (value.kind === "fixed") return null;
  if (value.kind === "spring") {
    return {
      formula: "k",
      inputs: [at("k", "stiffness of the base against turning", "job.posts.base.value.stiffness_NmmPerRad")],
      origin: from(source, where),
    };
  }
  const { section, modulus: E } = postMember(plan.job);
  const EI = E.value * section.x.inertia_mm4;
  return {
    formula: "F * h * h / (m - bent(F, h, EI))",
    inputs: [
      at("F", "pull that was tried", "job.posts.base.value.pull"),
      at("h", "height of the pull", "job.posts.base.value.height"),
      at("m", "movement that was measured there", "job.posts.base.value.movement"),
      given("EI", "bending stiffness of the post", EI, "bending stiffness"),
    ],
    functions: {
      bent: {
        means: "F h^3 / (3 EI): what the post's own bending takes of the movement",
        of: (load, height, stiffness) =>
          cantilever({ length: Number(height), load: Number(load), at: Number(height), EI: Number(stiffness) }).deflection,
      },
    },
    origin: from("job", "posts: base, as measured"),
  };
}

function trial({ at, plan }: Reader): Working {
  const { section, modulus: E } = postMember(plan.job);
  const isFixed = plan.frame.posts.base.value === "fixed";
  return {
    formula: isFixed ? "P * h ^ 3 / (3 * EI)" : "P * h ^ 3 / (3 * EI) + P * h * h / k",
    inputs: [
      at("P", "pull", "frame.trial.pull"),
      at("h", "height of the pull", "frame.trial.height"),
      given("EI", "bending stiffness of the post along the side", E.value * section.x.inertia_mm4, "bending stiffness"),
      ...(isFixed ? [] : [at("k", "stiffness of the base against turning", "frame.posts.base")]),
    ],
    origin: derived("cantilever on a spring that turns"),
  };
}

const members: readonly Rule[] = [
  rule("frame.posts.modulus.value", "Modulus of elasticity of the posts", (reader) => modulus(reader, "posts", "modulus")),
  rule("frame.topRail.modulus.value", "Modulus of elasticity of the top rail", (reader) => modulus(reader, "topRail", "modulus")),
  rule("frame.posts.modulus_min.value", "Modulus of elasticity of the posts for buckling", (reader) =>
    modulus(reader, "posts", "modulus_min"),
  ),
  rule("frame.topRail.modulus_min.value", "Modulus of elasticity of the top rail for buckling", (reader) =>
    modulus(reader, "topRail", "modulus_min"),
  ),
  rule("frame.trial.movement", "Movement of a lone post that is pulled along its side, to compare on site", trial),
  rule("frame.posts.base.value", "Stiffness of the base of a post against turning", base),
  rule("frame.movement_max.value", "Largest movement of a post that is allowed under the cables", ({ at }) => ({
    formula: "q * H",
    inputs: [at("q", "share of the height", "job.limits.movementShare_max"), at("H", "height of the guard", "opening.guardHeight")],
    origin: derived("a share of the height"),
  })),
];

export const frameRules: readonly Rule[] = [...members, ...answers];
