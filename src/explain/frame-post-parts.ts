// How does a number that went into the check of a post follow from the cables, the code's load and the section?
import { isTurned } from "../plan/frame-check-axes.ts";
import { LIFT } from "../plan/frame-check-base.ts";
import type { LoadedPost } from "../plan/frame-check-loads.ts";
import { alone, postGroups, type Situation, withLoads } from "../plan/frame-check-post.ts";
import { CABLES_ALONE, worstOf } from "../plan/frame-check-row.ts";
import { type Axis, bendingLimit } from "../plan/frame-check-strength.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import { modulus, shearArea } from "./frame-section-parts.ts";
import { loadOnPost, nothing, ofCables, type PostForce, questionOf, situationOf, situationsOf, type Term, topOfGuard } from "./framed.ts";
import { whereMost } from "./lists.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Working } from "./trace.ts";

const statics = derived("superposition; a force times its lever");

const workingOf = ({ text, inputs }: Term, origin = statics): Working => ({ formula: text, inputs, origin });

/** Along the side x, square to it y. */
const axisOf = (name: string): Axis => (name.includes("square") ? "y" : "x");

const loadPart = "load at the top on this post";

const hasLoad = (one: Situation): one is Situation & { readonly load: NonNullable<Situation["load"]> } => one.load !== null;

/** How much of the load acts along an axis of the post. */
const partAlong = ({ towards }: Situation, axis: Axis): number => towards?.parts[axis] ?? 0;

/** Force or moment at a place of a post: of the cables, and of the load where it acts along this axis. */
function acting(reader: Reader, check: FrameCheck, situation: Situation, of: { readonly force: PostForce; readonly axis: Axis }): Term {
  const { height } = situation.place;
  const cables = ofCables(reader, situation.post, { ...of, height });
  const share = partAlong(situation, of.axis);
  if (!hasLoad(situation) || share === 0) return cables;
  const nth = check.parts.findIndex(({ name }) => name === loadPart);
  const load: Term =
    nth < 0 ? loadOnPost(situation) : { text: "P", inputs: [reader.at("P", loadPart, `frame.checks.${check.id}.parts[${nth}].value`)] };
  const top = topOfGuard(reader);
  const lever: Term =
    of.force === "moment"
      ? {
          text: ` * max(0, ${top.text} - z)`,
          inputs: [
            ...top.inputs,
            height === check.height
              ? reader.at("z", "height of this check", `frame.checks.${check.id}.height`)
              : given("z", "height above the datum", height, "length"),
          ],
        }
      : { text: "", inputs: [] };
  const turned = turnedTerm(situation, of.axis, share);
  return {
    text: `${cables.text} + ${turned.text}${load.text}${lever.text}`,
    inputs: [...cables.inputs, ...turned.inputs, ...load.inputs, ...lever.inputs],
  };
}

/** What of the load acts along an axis of a post that stands turned to it, or of a load that slants. */
function turnedTerm({ post: { post } }: Situation, axis: Axis, share: number): Term {
  if (share === 1) return { text: "", inputs: [] };
  const symbol = axis === "x" ? "u" : "v";
  const turned = `${axis === "x" ? "square to" : "along"} the face of ${post.id} that looks to side ${post.corner?.homeId}`;
  const where = isTurned(post) ? turned : axis === "x" ? "along the side" : "square to it";
  const what = `part of the load that comes to ${post.id} ${where}, without its sign; of one that slants, what goes along the side is shared by its posts`;
  return { text: `${symbol} * `, inputs: [given(symbol, what, share, "share", derived("cosine or sine of the angle between them"))] };
}

/** Both axes together; inputs that they share are named once. */
function resultant(reader: Reader, check: FrameCheck, situation: Situation): Term {
  const [x, y] = (["x", "y"] as const).map((axis) => acting(reader, check, situation, { force: "shear", axis })) as [Term, Term];
  const shared = new Set(x.inputs.map(({ symbol }) => symbol));
  return { text: `hypot(${x.text}, ${y.text})`, inputs: [...x.inputs, ...y.inputs.filter(({ symbol }) => !shared.has(symbol))] };
}

/** The posts that are asked for together with one. */
const groupOf = (reader: Reader, id: string): readonly LoadedPost[] =>
  must(
    postGroups(questionOf(reader, id)).find(({ posts }) => posts.some(({ post }) => post.id === id)),
    `group of ${id}`,
  ).posts;

/** Of all bases of a group the one that hands down the greatest shear, under the load that makes it so. */
function shearFoot(reader: Reader, check: FrameCheck, name: string): Situation {
  const id = /^V, at (.+)$/.exec(name)?.[1] ?? check.member;
  const question = questionOf(reader, id);
  const feet = groupOf(reader, id)
    .filter(({ post }) => post.id === id)
    .map((post) => ({ ...post, places: post.places.filter(({ height }) => height === 0) }));
  const situations = check.loads === CABLES_ALONE ? alone(feet) : withLoads(feet, question);
  return must(
    worstOf(situations, ({ shear }) => Math.hypot(shear.x, shear.y)),
    `base of ${id}`,
  );
}

/** Where the lengths below the datum stand, of all posts of the group of one. */
function belowPaths(reader: Reader, postId: string): readonly string[] {
  const slopes = groupOf(reader, postId).map(({ post }) => post.slope !== 0);
  return [...(slopes.includes(false) ? ["job.posts.belowDatum"] : []), ...(slopes.includes(true) ? ["job.frame.onRakes.postBelow"] : [])];
}

/** A part of a check of a post; null where it is none of these. */
export function postPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  const situation = (): Situation => situationOf(reader, check);
  if (name === loadPart) {
    const one = situation();
    return hasLoad(one) ? workingOf(loadOnPost(one), derived("what stands on a length of the top, or one load")) : null;
  }
  if (name.endsWith(", of the cables")) {
    const one = situation();
    return workingOf(ofCables(reader, one.post, { force: "moment", axis: axisOf(name), height: one.place.height }));
  }
  if (name === "M along" || name === "M square")
    return workingOf(acting(reader, check, situation(), { force: "moment", axis: axisOf(name) }));
  if (name === "M") return workingOf(acting(reader, check, situation(), { force: "moment", axis: bentAxis(situation()) }));
  if (/^S( along| square)?$/.test(name)) return modulus(reader, situation(), name === "S" ? bentAxis(situation()) : axisOf(name));
  if (/^V(, at .+)?$/.test(name)) {
    const one = check.id.startsWith("base-") ? shearFoot(reader, check, name) : situation();
    return workingOf(resultant(reader, check, one));
  }
  if (name === "A") return shearArea(reader, situation());
  if (name.startsWith(LIFT)) {
    const id = name.slice(`${LIFT}, at `.length);
    const { sideId } = questionOf(reader, id).posts.find(({ post }) => post.id === id)?.post ?? {};
    return {
      formula: "max(0, 0 - t)",
      inputs: [reader.at("t", `what ${id} stands on under the cables`, `frame.sides.${sideId}.posts.${id}.baseThrust`)],
      origin: derived("a foot that is pressed down is not lifted"),
    };
  }
  if (name.startsWith("force in each of two bolts")) {
    return {
      formula: "M / min(a)",
      inputs: [
        reader.at("M", "moment of the base", `frame.checks.${check.id}.demand`),
        reader.all("a", "length of these posts below the datum: the bolts stand no farther apart", belowPaths(reader, check.member)),
      ],
      origin: derived("a couple"),
    };
  }
  return null;
}

/** The only axis that is bent; the first where none is. */
export const bentAxis = ({ moment }: Situation): Axis => (moment.x > 0 || !(moment.y > 0) ? "x" : "y");

/** Where along its post a check stands: there the post is used most. */
export function heightOf(reader: Reader, [id = ""]: readonly string[]): Working | null {
  const check = must(
    reader.plan.frame.checks.find((one) => one.id === id),
    `frame check ${id}`,
  );
  if (check.height === null) return null;
  if (check.id.startsWith("base-")) {
    const { text, inputs } = nothing("z", "the foot of the post, at the datum", "length");
    return { formula: text, inputs, origin: derived("a base is checked at its own height") };
  }
  if (check.id.startsWith("post-deflection")) {
    return workingOf(topOfGuard(reader), derived("a post that is pushed at its top moves most there"));
  }
  const [what, measure] = measureOf(reader, check);
  const situations = situationsOf(reader, check);
  return {
    formula: "whereMost(m, z)",
    inputs: [
      given("m", `${what}, at each of these heights of ${check.member}`, situations.map(measure), "share", statics),
      given(
        "z",
        "heights at which a post is looked at: its foot, the rails and each course",
        situations.map(({ place }) => place.height),
        "length",
      ),
    ],
    functions: { whereMost },
    origin: from("derived", "the place that is used most decides"),
  };
}

type Measured = readonly [what: string, of: (one: Situation) => number];

function measureOf(reader: Reader, { id, member }: FrameCheck): Measured {
  const posts = questionOf(reader, member);
  const sectionOf = ({ place, post }: Situation) => (place.isBored ? post.net : post.whole);
  if (id.startsWith("movement")) return ["movement by the cables, without its sign", ({ place }) => Math.abs(place.movement)];
  if (id.startsWith("post-ask")) return ["moment of both directions", ({ moment }) => Math.hypot(moment.x, moment.y)];
  if (id.startsWith("post-shear")) {
    return ["shear over the area that takes it", (one) => Math.hypot(one.shear.x, one.shear.y) / sectionOf(one).area_mm2];
  }
  const free = { length: posts.top, bends: "cantilever, load at the tip" } as const;
  return [
    "bending stress over what is allowed, both directions added",
    (one) => {
      const strength = must(posts.strength(one.load?.duration ?? posts.guard.permanent) ?? undefined, "strength of the posts");
      const section = sectionOf(one);
      const share = (axis: Axis): number => one.moment[axis] / (section[axis].modulus_mm3 * bendingLimit(strength, axis, free).value);
      return share("x") + share("y");
    },
  ];
}
