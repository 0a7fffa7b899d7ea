// How much of the section of a post or spacer is left for a check, and how does that follow from its sizes and its bores?
import { mitreLoss } from "../mechanics/bore-cuts.ts";
import type { Cut, Section } from "../mechanics/section.ts";
import { sectionOfPost } from "../plan/as-found.ts";
import { boreCutsOf, boresOfWorstCourse, builtOf, mitredBore } from "../plan/frame-check-net.ts";
import type { Situation } from "../plan/frame-check-post.ts";
import type { LoadedSpacer } from "../plan/frame-check-spacer.ts";
import type { Axis, Strength } from "../plan/frame-check-strength.ts";
import { spacerMember } from "../plan/frame-members.ts";
import { framedOf, questionOf, sectionPath } from "./framed.ts";
import { derived, given, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

/** A place of an upright as its section is looked at there. */
interface Sectioned {
  readonly id: string;
  readonly name: "post" | "spacer";
  readonly whole: Section;
  readonly isTube: boolean;
  /** Where its sizes stand. */
  readonly path: string;
  /** What the bores of a course take out; none where it is not bored. */
  readonly cuts: readonly Cut[];
  readonly mitre: readonly [Input, Input, Input] | null;
}

function postSection(reader: Reader, situation: Situation): Sectioned {
  const { plan } = reader;
  const { post, place } = situation;
  const { id } = post.post;
  const section = sectionOfPost(plan.job, id);
  const mitre = place.isBored ? mitreInputs(reader, situation) : null;
  const bores = place.isBored && mitre === null ? (boresOfWorstCourse(plan).get(id) ?? []) : [];
  return {
    id,
    name: "post",
    whole: post.whole,
    isTube: section.wall !== null,
    path: sectionPath(reader, id),
    cuts: boreCutsOf(post.whole, bores, builtOf(section, post.post)),
    mitre,
  };
}

function spacerSection({ plan }: Reader, { spacer }: LoadedSpacer): Sectioned {
  const { section } = plan.job.spacers;
  const whole = spacerMember(plan.job).section;
  const cuts = boreCutsOf(whole, boresOfWorstCourse(plan).get(spacer.id) ?? [], section);
  return { id: spacer.id, name: "spacer", whole, isTube: section.wall !== null, path: "job.spacers.section", cuts, mitre: null };
}

/** What a bore on the mitre takes, counted from the corner that it cuts off; null where none is. */
function mitreInputs(reader: Reader, { post }: Situation): readonly [Input, Input, Input] | null {
  const { plan } = reader;
  const section = sectionOfPost(plan.job, post.post.id);
  const bore = mitredBore(boresOfWorstCourse(plan).get(post.post.id) ?? [], builtOf(section, post.post));
  if (bore === null) return null;
  const { area_mm2, first_mm3, second_mm4 } = mitreLoss(post.whole.x.size, bore);
  const origin = derived("section through the axis of the bore, along the diagonal from the corner that it cuts off");
  return [
    given("q", "area that the bore on the mitre takes out", area_mm2, "area", origin),
    given("f", "its first moment about that corner", first_mm3, "section modulus", origin),
    given("s", "its second moment about that corner", second_mm4, "second moment", origin),
  ];
}

/** What the bores take from the section: area and place of each rectangle along an axis, and its second moment about itself. */
function cutInputs({ cuts, name }: Sectioned, axis: Axis): readonly [Input, Input, Input] {
  const seen = cuts.map((cut) =>
    axis === "x" ? { size: cut.x, across: cut.y, at: cut.atX } : { size: cut.y, across: cut.x, at: cut.atY },
  );
  const origin = derived("section through the axis of the bores of a course");
  const of = (symbol: string, what: string, values: readonly number[], kind: "area" | "length"): Input =>
    given(symbol, what, values, kind, origin);
  return [
    of(
      "q",
      "area of each rectangle that the bores take out",
      seen.map(({ size, across }) => size * across),
      "area",
    ),
    of(
      "p",
      `its distance from the middle of the ${name}`,
      seen.map(({ at }) => at),
      "length",
    ),
    of(
      "j",
      "its size along the bending",
      seen.map(({ size }) => size),
      "length",
    ),
  ];
}

function sizesOf(reader: Reader, { path, name }: Sectioned, axis: Axis): readonly [Input, Input] {
  const [own, other] = axis === "x" ? (["along", "across"] as const) : (["across", "along"] as const);
  const words = { along: `${name} along the side`, across: `${name} square to the side` };
  return [reader.at("d", words[own], `${path}.${own}`), reader.at("c", words[other], `${path}.${other}`)];
}

export const modulus = (reader: Reader, situation: Situation, axis: Axis): Working =>
  modulusOf(reader, postSection(reader, situation), axis);

/** Of a spacer, square to its side. */
export const spacerModulus = (reader: Reader, spacer: LoadedSpacer): Working => modulusOf(reader, spacerSection(reader, spacer), "y");

function modulusOf(reader: Reader, sectioned: Sectioned, axis: Axis): Working {
  const { whole: section, isTube, mitre } = sectioned;
  const [depth, across] = sizesOf(reader, sectioned, axis);
  const inertia = given(
    "I",
    "second moment of the whole tube, its corners round: outer radius two design walls",
    section[axis].inertia_mm4,
    "second moment",
    derived("composite section"),
  );
  const area = given("A", "area of the whole tube", section.area_mm2, "area", derived("composite section"));
  if (mitre === null && sectioned.cuts.length === 0) {
    return isTube
      ? { formula: "2 * I / d", inputs: [inertia, depth], origin: derived("tube") }
      : { formula: "c * d ^ 2 / 6", inputs: [depth, across], origin: derived("rectangle") };
  }
  const [I, A] = isTube ? ["I", "A"] : ["c * d ^ 3 / 12", "c * d"];
  const whole = isTube ? [inertia, area, depth] : [depth, across];
  if (mitre !== null) {
    const arm = `((${A} * d / 2 ^ 0.5 - f) / (${A} - q))`;
    return {
      formula: `2 ^ 0.5 * (${I} + ${A} * d ^ 2 / 2 - s - (${A} - q) * ${arm} ^ 2) / ${arm}`,
      inputs: [...whole, ...mitre],
      origin: derived(
        "bending about the axes of symmetry of what the bore leaves; for the sum of both moments at the corner that it cuts off",
      ),
    };
  }
  return {
    formula: `(${I} - inertia(q, j, p) - dot(q, p) ^ 2 / (${A} - sum(q))) / (d / 2 + abs(dot(q, p)) / (${A} - sum(q)))`,
    inputs: [...whole, ...cutInputs(sectioned, axis)],
    functions: {
      inertia: {
        means: "sum of q (j^2 / 12 + p^2) over the rectangles",
        of: (q, j, p) => {
          const [own, size, place] = [q, j, p].map((list) => [list ?? []].flat()) as [number[], number[], number[]];
          return own.reduce((sum, one, nth) => sum + one * ((size[nth] ?? 0) ** 2 / 12 + (place[nth] ?? 0) ** 2), 0);
        },
      },
    },
    origin: derived("composite section and parallel axes; the far fibre counts in full"),
  };
}

export function shearArea(reader: Reader, situation: Situation): Working {
  const { shear, post } = situation;
  const axis: Axis = shear.x >= shear.y ? "x" : "y";
  return areaOf(reader, postSection(reader, situation), { axis, strength: questionOf(reader, post.post.id).strength("permanent") });
}

/** Of a spacer, square to its side. */
export const spacerShearArea = (reader: Reader, spacer: LoadedSpacer): Working =>
  areaOf(reader, spacerSection(reader, spacer), { axis: "y", strength: framedOf(reader).spacers?.strength("permanent") ?? null });

function areaOf(
  reader: Reader,
  sectioned: Sectioned,
  { axis, strength }: { readonly axis: Axis; readonly strength: Strength | null },
): Working {
  const [depth, across] = sizesOf(reader, sectioned, axis);
  if (strength?.kind === "metal" && strength.wall !== null) {
    return {
      formula: "2 * d * t",
      inputs: [depth, given("t", "design wall of the tube", strength.wall, "length", derived("made to the thin side of its tolerance"))],
      origin: derived("the two walls that lie along the force"),
    };
  }
  const [areas] = sectioned.mitre ?? (sectioned.cuts.length > 0 ? cutInputs(sectioned, axis) : []);
  const net = areas === undefined ? "d * c" : "(d * c - sum(q))";
  const inputs = [depth, across, ...(areas === undefined ? [] : [areas])];
  return {
    formula: strength?.kind === "metal" ? `2 / 3 * ${net}` : net,
    inputs,
    origin: derived(`section of ${sectioned.id} through the bores of a course`),
  };
}
