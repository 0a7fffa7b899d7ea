// Where does each number that went into a check of the frame come from, and where on the member does the check stand?
import { sectionOfPost } from "../plan/as-found.ts";
import type { Strength } from "../plan/frame-check-strength.ts";
import { postMember, railMember } from "../plan/frame-members.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import { heightOf, postPart } from "./frame-post-parts.ts";
import { railPart } from "./frame-rail-parts.ts";
import { spacerDeflection, spacerPart } from "./frame-spacer-parts.ts";
import { stressPart } from "./frame-stress-parts.ts";
import { framedOf, loadOnPost, ofCables, railSituationOf, sectionPath, situationOf, situationsOf, topOfGuard } from "./framed.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const named = ({ plan }: Reader, id: string): FrameCheck =>
  must(
    plan.frame.checks.find((one) => one.id === id),
    `frame check ${id}`,
  );

/** A member that buckles has this in place of a number without end. */
const MOST_part = 1e15;

function part(reader: Reader, [id = "", key = ""]: readonly string[]): Working | null {
  const check = named(reader, id);
  const own = must(
    check.parts.find(({ name }) => name === key),
    `part ${key} of ${id}`,
  );
  if (own.value >= MOST_part) {
    return {
      formula: "z",
      inputs: [given("z", "the member buckles under this before it can bend: no number says how much", MOST_part, "share")],
      origin: from(check.source, check.sourceWhere),
    };
  }
  if (id.startsWith("wall-")) return wallPart(reader, check, own.name);
  if (id.startsWith("spacer-")) return spacerPart(reader, check, own.name);
  if (id.startsWith("post-deflection")) return deflectionPart(reader, check, own.name);
  return stressPart(reader, check, own.name) ?? (/^(post|base)-/.test(id) ? postPart : railPart)(reader, check, own.name);
}

function deflectionPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  const { at, plan } = reader;
  const partOf = (symbol: string, own: string, what: string) =>
    at(symbol, what, `frame.checks.${check.id}.parts[${check.parts.findIndex((one) => one.name === own)}].value`);
  const { section, modulus } = postMember(plan.job, sectionOfPost(plan.job, check.member));
  const load = partOf("P", "P", "load at the top on this post");
  const height = partOf("h", "h", "height of the load");
  const top = topOfGuard(reader);
  switch (name) {
    case "P":
      return loadPart(reader, check);
    case "h":
      return { formula: top.text, inputs: top.inputs, origin: derived("the load acts at the top") };
    case "by bending of the post":
      return {
        formula: "P * h ^ 3 / (3 * E * I)",
        inputs: [
          load,
          height,
          modulus.value === plan.frame.posts.modulus.value
            ? at("E", "modulus of the posts", "frame.posts.modulus")
            : given(
                "E",
                `modulus of ${check.member}, which has a section of its own`,
                modulus.value,
                "stress",
                from(modulus.source, modulus.where),
              ),
          given("I", "second moment of the post square to the side", section.y.inertia_mm4, "second moment", derived("whole section")),
        ],
        origin: derived("cantilever"),
      };
    case "by turn of its base":
      return plan.frame.posts.base.value === "fixed"
        ? { formula: "z", inputs: [given("z", "a fixed base does not turn", 0, "length")], origin: derived("fixed base") }
        : {
            formula: "P * h ^ 2 / k",
            inputs: [load, height, at("k", "stiffness of the base against turning", "frame.posts.base")],
            origin: derived("a spring that turns"),
          };
    default:
      return null;
  }
}

/** The load of this check on its post, the same at every height. */
function loadPart(reader: Reader, check: FrameCheck): Working | null {
  const [one] = situationsOf(reader, check);
  if (one === undefined || one.load === null) return null;
  const { text, inputs } = loadOnPost({ ...one, load: one.load });
  return { formula: text, inputs, origin: derived("what stands on a length of the top, or one load") };
}

/** The tube of a row of walls: of the posts of one section, or of a rail. */
function walled(
  reader: Reader,
  id: string,
): { readonly strength: Strength | null; readonly path: string; readonly sizes: readonly [string, string] } {
  const { posts, guard, top, bottom, spacers } = framedOf(reader);
  if (id === "wall-spacers") {
    return { strength: spacers?.strength(guard.permanent) ?? null, path: "job.spacers.section", sizes: ["along", "across"] };
  }
  const own = posts.find(({ ofSection }) => id === `wall-posts${ofSection.replaceAll(" ", "-")}`);
  if (own !== undefined) {
    const path = sectionPath(reader, must(own.posts[0], "post").post.id);
    return { strength: own.strength(guard.permanent), path, sizes: ["along", "across"] };
  }
  const isTop = id === "wall-top-rail";
  const rail = isTop ? top : must(bottom ?? undefined, "bottom rail");
  return { strength: rail.strength(guard.permanent), path: `job.frame.${isTop ? "topRail" : "bottomRail"}`, sizes: ["width", "depth"] };
}

function wallPart(reader: Reader, { id }: FrameCheck, name: string): Working | null {
  const { strength, path, sizes } = walled(reader, id);
  if (strength?.kind !== "metal" || strength.wall === null) return null;
  const { at } = reader;
  const wall = at("n", "wall as it is called", `${path}.wall`);
  const share = given("q", "design wall over that: tube of steel is made to the thin side", strength.wall / Number(wall.value), "share");
  if (name === "t") return { formula: "q * n", inputs: [share, wall], origin: derived("design wall") };
  if (name !== "b") return null;
  const [first, second] = sizes;
  return {
    formula: "max(x, y) - 2 * q * n",
    inputs: [at("x", `${first} of the tube`, `${path}.${first}`), at("y", `${second} of the tube`, `${path}.${second}`), share, wall],
    origin: derived("flat width between the walls"),
  };
}

/** Demands that follow from no parts of their own row, or not in a way that its formula says. */
export function ownDemand(reader: Reader, check: FrameCheck): Working | null {
  if (check.id.startsWith("movement-")) {
    const { post, place } = situationOf(reader, check);
    const { text, inputs } = ofCables(reader, post, { force: "movement", axis: "x", height: place.height });
    return { formula: text, inputs, origin: derived("superposition") };
  }
  if (check.id.startsWith("spacer-deflection-")) return spacerDeflection(reader, check);
  if (!check.id.startsWith("top-rail-deflection-")) return null;
  const { load, push } = railSituationOf(reader, check);
  const { at, plan } = reader;
  const { section } = railMember(plan.job.frame.topRail, plan.job);
  const partOf = (symbol: string, nth: number, what: string) => at(symbol, what, `frame.checks.${check.id}.parts[${nth}].value`);
  return {
    formula: load?.isLine === true ? "5 * P * L ^ 3 / (384 * E * I)" : "P * L ^ 3 / (48 * E * I)",
    inputs: [
      partOf("P", 0, "load on the bay"),
      partOf("L", 1, "length of the bay"),
      at("E", "modulus of the top rail", "frame.topRail.modulus"),
      given(
        "I",
        `second moment of the top rail, ${push === "square" ? "level" : "upright"}`,
        section[push === "square" ? "x" : "y"].inertia_mm4,
        "second moment",
        derived("whole section"),
      ),
    ],
    origin: derived("beam on two supports"),
  };
}

export const framePartRules: readonly Rule[] = [
  rule("frame.checks.*.parts.*.value", "{1}, as it goes into the frame's check {0}", part),
  rule("frame.checks.*.height", "Height above the datum at which the frame's check {} stands", heightOf),
];
