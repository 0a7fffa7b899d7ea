// Where does each number that went into a check of the frame come from, and where on the member does the check stand?
import { sectionOfPost } from "../plan/as-found.ts";
import type { PostQuestion } from "../plan/frame-check-post.ts";
import { postMember, railMember } from "../plan/frame-members.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import { heightOf, postPart } from "./frame-post-parts.ts";
import { railPart } from "./frame-rail-parts.ts";
import { stressPart } from "./frame-stress-parts.ts";
import { framedOf, loadOnPost, ofCables, railSituationOf, situationOf, situationsOf } from "./framed.ts";
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

function part(reader: Reader, [id = "", key]: readonly string[]): Working | null {
  const check = named(reader, id);
  const own = must(check.parts[Number(/\d+/.exec(key ?? "")?.[0])], `part ${key} of ${id}`);
  if (own.value >= MOST_part) {
    return {
      formula: "z",
      inputs: [given("z", "the member buckles under this before it can bend: no number says how much", MOST_part, "share")],
      origin: from(check.source, check.sourceWhere),
    };
  }
  if (id.startsWith("wall-")) return wallPart(reader, check, own.name);
  if (id.startsWith("post-deflection")) return deflectionPart(reader, check, own.name);
  return stressPart(reader, check, own.name) ?? (/^(post|base)-/.test(id) ? postPart : railPart)(reader, check, own.name);
}

function deflectionPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  const { at, plan } = reader;
  const partOf = (symbol: string, own: string, what: string) =>
    at(symbol, what, `frame.checks.${check.id}.parts[${check.parts.findIndex((one) => one.name === own)}].value`);
  const load = partOf("P", "P", "load at the top on this post");
  const height = partOf("h", "h", "height of the load");
  switch (name) {
    case "P":
      return loadPart(reader, check);
    case "h":
      return {
        formula: "H",
        inputs: [at("H", "height of the guard's top, where the code's load acts", "opening.guardHeight")],
        origin: derived("the load acts at the top"),
      };
    case "by bending of the post":
      return {
        formula: "P * h ^ 3 / (3 * E * I)",
        inputs: [
          load,
          height,
          at("E", "modulus of the posts", "frame.posts.modulus"),
          given(
            "I",
            "second moment of the post square to the side",
            postMember(plan.job, sectionOfPost(plan.job, check.member)).section.y.inertia_mm4,
            "second moment",
            derived("whole section"),
          ),
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

/** Where the job tells the section of some posts. */
function sectionPath({ plan }: Reader, { posts, ofSection }: PostQuestion): string {
  const nth = plan.job.posts.asFound.findIndex(({ post, section }) => section !== null && posts.some((one) => one.post.id === post));
  return ofSection === "" ? "job.posts.section" : `job.posts.asFound[${nth}].section`;
}

function wallPart(reader: Reader, { id }: FrameCheck, name: string): Working | null {
  const { posts, top, bottom, guard } = framedOf(reader);
  const ofPosts = posts.find(({ ofSection }) => id === `wall-posts${ofSection.replaceAll(" ", "-")}`);
  const strength = (ofPosts ?? (id === "wall-top-rail" ? top : must(bottom ?? undefined, "bottom rail"))).strength(guard.permanent);
  if (strength?.kind !== "metal" || strength.wall === null) return null;
  const [first, second, path] =
    ofPosts !== undefined
      ? (["along", "across", sectionPath(reader, ofPosts)] as const)
      : (["width", "depth", `job.frame.${id === "wall-top-rail" ? "topRail" : "bottomRail"}`] as const);
  const { at } = reader;
  const wall = at("n", "wall as it is called", `${path}.wall`);
  const share = given("q", "design wall over that: tube of steel is made to the thin side", strength.wall / Number(wall.value), "share");
  if (name === "t") return { formula: "q * n", inputs: [share, wall], origin: derived("design wall") };
  if (name !== "b") return null;
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
  rule("frame.checks.*.parts.*.value", "A number of the frame's check {0}; {1} counts from its first", part),
  rule("frame.checks.*.height", "Height above the datum at which the frame's check {} stands", heightOf),
];
