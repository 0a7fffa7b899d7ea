// How stiff are the members and the bases of the frame, and what was found when it was planned again with a change?

import { cantilever } from "../mechanics/beam.ts";
import { alloyOf, conditionsOf, modulusPiece, pieceOf, postMember } from "../plan/frame-members.ts";
import { inches, poundsForce } from "../tables/customary.ts";
import { type Alloy, alloys } from "../tables/metal.ts";
import { woodStrength } from "../tables/timber-strength.ts";
import { woodFactors } from "../tables/wood-factors.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

/** Modulus of a member: of wood, the value of its grade times the factors of its place; of metal, that of its alloy. */
function modulus({ plan }: Reader, member: "posts" | "topRail" | "spacers", property: "modulus" | "modulus_min"): Working | null {
  const { job } = plan;
  const { material, wood, ...size } =
    member === "spacers"
      ? { ...job.spacers.section, wood: job.spacers.wood, x: job.spacers.section.along, y: job.spacers.section.across }
      : member === "posts"
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

/** The plan keeps what it found with the change; how each ratio came about stands in the plan that the change makes. */
function remedyRatio({ all, plan }: Reader): Working | null {
  const { remedy } = plan.frame;
  if (remedy === null) return null;
  return {
    formula: "max(q)",
    inputs: [
      all(
        "q",
        `highest ratio of each kind of check that fails now, with the change: ${remedy.change}`,
        remedy.checks.map(({ kind }) => `frame.remedy.checks.${kind}.ratio`),
      ),
    ],
    origin: derived(
      `the guard was planned again with the change; written into the job file (${remedy.write}), each ratio is explained there`,
    ),
  };
}

/** A pull that a hand scale reads, at a height that a tape finds, in the units of the job. */
function trialSize({ plan }: Reader, field: "pull" | "height"): Working {
  const isInch = plan.job.units === "inch";
  const origin = from("practice", "what a hand scale reads, and a height that a tape finds");
  const step = {
    pull: isInch ? ([50, "lbf", poundsForce(1)] as const) : ([200, "N", 1] as const),
    height: isInch ? ([36, "in", inches(1)] as const) : ([900, "mm", 1] as const),
  }[field];
  const [count, unit, size] = step;
  return {
    formula: "n * u",
    inputs: [
      given("n", `${unit} that are taken for the trial`, count, "count", origin),
      given("u", `1 ${unit}`, size, field === "pull" ? "force" : "length"),
    ],
    origin,
  };
}

export const memberRules: readonly Rule[] = [
  rule("frame.remedy.ratio", "Highest ratio of what fails now, with the change that makes the frame hold", remedyRatio),
  rule("frame.trial.pull", "Pull on a lone post, to compare its movement on site", (reader) => trialSize(reader, "pull")),
  rule("frame.trial.height", "Height of the pull on a lone post", (reader) => trialSize(reader, "height")),
  rule("frame.posts.modulus.value", "Modulus of elasticity of the posts", (reader) => modulus(reader, "posts", "modulus")),
  rule("frame.topRail.modulus.value", "Modulus of elasticity of the top rail", (reader) => modulus(reader, "topRail", "modulus")),
  rule("frame.spacers.modulus.value", "Modulus of elasticity of the spacers", (reader) => modulus(reader, "spacers", "modulus")),
  rule("frame.posts.modulus_min.value", "Modulus of elasticity of the posts for buckling", (reader) =>
    modulus(reader, "posts", "modulus_min"),
  ),
  rule("frame.topRail.modulus_min.value", "Modulus of elasticity of the top rail for buckling", (reader) =>
    modulus(reader, "topRail", "modulus_min"),
  ),
  rule("frame.trial.movement", "Movement of a lone post that is pulled along its side, to compare on site", trial),
  rule("frame.posts.base.value", "Stiffness of the base of a post against turning", base),
  rule("frame.movement_max.value", "Largest movement of a post that is allowed under the cables", ({ at, plan }) => {
    const { bottomRail } = plan.job.frame;
    return {
      formula: `q * (g + ${bottomRail === null ? "" : "r + "}c + d)`,
      inputs: [
        at("q", "share of the height", "job.limits.movementShare_max"),
        at("g", "gap below on level sides", "job.frame.gapBelow"),
        ...(bottomRail === null ? [] : [at("r", "depth of the bottom rail", "job.frame.bottomRail.depth")]),
        at("c", "clear opening of level sides", "job.frame.clearOpening"),
        at("d", "depth of the top rail", "job.frame.topRail.depth"),
      ],
      origin: derived("a share of the height of the level guard"),
    };
  }),
];
