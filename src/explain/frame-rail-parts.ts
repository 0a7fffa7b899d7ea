// How does a number that went into the check of a rail follow from the cables, the code's load and the bay?
import { railEndMoments } from "../plan/frame-check-loads.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import type { Vertical } from "../plan/plan.ts";
import { framedOf, groupOfSide, loadOn, nothing, type RailSituation, railSituationOf, superposed, type Term } from "./framed.ts";
import { stationPath } from "./mouths.ts";
import { derived, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

const statics = derived("superposition; a beam on two supports");

const workingOf = ({ text, inputs }: Term, origin = statics): Working => ({ formula: text, inputs, origin });

/** Between the middles of the posts, along the slope of the side. */
function bayLength({ at, plan }: Reader, { bay: { sideId, leftId, rightId } }: RailSituation): Term {
  const [left, right] = [leftId, rightId].map((id) =>
    must(
      plan.verticals.find((one) => one.id === id),
      `post ${id}`,
    ),
  ) as [Vertical, Vertical];
  const index = plan.sides.findIndex(({ id }) => id === sideId);
  const { slope } = left;
  return {
    text: slope === 0 ? "(x2 - x1)" : "((x2 - x1) / cos(sl))",
    inputs: [
      left.kind === "pier"
        ? at("x1", `face of ${leftId}`, `sides.${sideId}.startsAt`)
        : at("x1", `station of ${leftId}`, stationPath(left, index)),
      right.kind === "pier"
        ? at("x2", `face of ${rightId}`, `sides.${sideId}.endsAt`)
        : at("x2", `station of ${rightId}`, `verticals.${rightId}.station`),
      ...(slope === 0 ? [] : [at("sl", "slope of the side", `verticals.${leftId}.slope`)]),
    ],
  };
}

const railKey = ({ rail }: RailSituation): "topRail" | "bottomRail" => (rail.rail === "top rail" ? "topRail" : "bottomRail");

/** Number of the bay among those of the frame of its side. */
function placeOf(reader: Reader, { bay }: RailSituation): { readonly side: number; readonly bay: number } {
  const { sides } = groupOfSide(reader, bay.sideId);
  const side = sides.findIndex((one) => one.side.id === bay.sideId);
  const place = must(sides[side], `side ${bay.sideId}`).posts.findIndex(({ id }) => id === bay.leftId);
  return { side, bay: place };
}

/** Of the cables; nothing where they pull the rail. */
function thrust(reader: Reader, one: RailSituation): Term {
  if (one.bay.thrust === 0) return nothing("z", "the cables do not press this rail: they pull it, or leave it alone", "force");
  const place = placeOf(reader, one);
  const key = railKey(one);
  return superposed(reader, groupOfSide(reader, one.bay.sideId), {
    symbol: "f",
    what: `compression of the ${one.rail.rail} from ${one.bay.leftId} to ${one.bay.rightId}`,
    kind: "share",
    read: (sides) => sides[place.side]?.state[key === "topRail" ? "topRailThrust" : "bottomRailThrust"][place.bay] ?? 0,
  });
}

/** What stiff joints bring into the ends of the rail: of the end that is bent most. */
function endMoment(reader: Reader, one: RailSituation): Term {
  if (one.bay.endMoment === 0) return nothing("z", "the joints of this rail turn freely, or no cable turns them", "moment");
  const { side, bay } = placeOf(reader, one);
  const of = { rail: railKey(one), bay } as const;
  const group = groupOfSide(reader, one.bay.sideId);
  const term = (end: number): Term =>
    superposed(reader, group, {
      symbol: "k",
      what: `moment at an end of the ${one.rail.rail} from ${one.bay.leftId} to ${one.bay.rightId}`,
      kind: "length",
      read: (sides) => {
        const own = must(sides[side], `side ${one.bay.sideId}`);
        return railEndMoments(own.frame, own.state, of)[end] ?? 0;
      },
    });
  const first = must(framedOf(reader).units(group)[0]?.[side], `side ${one.bay.sideId}`);
  const ends = railEndMoments(first.frame, first.state, of).map((_, end) => term(end));
  const sizeOf = ({ inputs }: Term): number => {
    const [factor, high, added] = inputs.map(({ value }) => [value].flat());
    return Math.abs((factor ?? []).reduce((sum, each, nth) => sum + each * ((high?.[nth] ?? 0) + (added?.[nth] ?? 0)), 0));
  };
  const worst = ends.reduce((most, each) => (sizeOf(each) > sizeOf(most) ? each : most));
  return { ...worst, text: `abs(${worst.text})` };
}

/** The load of the code in the middle of the bay, or even on it. */
function midSpan(reader: Reader, one: RailSituation & { readonly load: NonNullable<RailSituation["load"]> }): Term {
  const length = bayLength(reader, one);
  const load = loadOn({ load: one.load, length, sharing: 1 });
  return {
    text: `${load.text} * ${length.text} / ${one.load.isLine ? 8 : 4}`,
    inputs: one.load.isLine ? load.inputs : [...load.inputs, ...length.inputs],
  };
}

const sum = (one: Term, other: Term): Term => ({ text: `${one.text} + ${other.text}`, inputs: [...one.inputs, ...other.inputs] });

const isLoaded = (one: RailSituation): one is RailSituation & { readonly load: NonNullable<RailSituation["load"]> } => one.load !== null;

function moment(reader: Reader, one: RailSituation, axis: "level" | "upright"): Working {
  const push = axis === "level" ? "square" : "upright";
  if (axis === "level") {
    if (isLoaded(one) && one.push === push) return workingOf(midSpan(reader, one));
    return workingOf(nothing("z", "nothing bends this rail out of the guard", "moment"));
  }
  const ends = endMoment(reader, one);
  return workingOf(isLoaded(one) && one.push === push ? sum(ends, midSpan(reader, one)) : ends);
}

function force(reader: Reader, one: RailSituation): Working {
  const cables = thrust(reader, one);
  if (!isLoaded(one) || one.push !== "along the rail") return workingOf(cables);
  return workingOf(sum(cables, loadOn({ load: one.load, length: bayLength(reader, one), sharing: 1 })));
}

/** Level x, upright y. */
const sizesOf = ({ at }: Reader, one: RailSituation): readonly [x: Input, y: Input] => {
  const path = `job.frame.${railKey(one)}`;
  return [at("b", `width of the ${one.rail.rail}`, `${path}.width`), at("d", `depth of the ${one.rail.rail}`, `${path}.depth`)];
};

function sectionNumber(reader: Reader, one: RailSituation, of: "A" | "S level" | "S upright"): Working {
  const [width, depth] = sizesOf(reader, one);
  const { section } = one.rail;
  const isTube = reader.plan.job.frame[railKey(one)]?.wall !== null;
  if (of === "A") {
    return isTube
      ? {
          formula: "b * d - (b - 2 * t) * (d - 2 * t) - (4 - pi) * ((2 * t) ^ 2 - t ^ 2)",
          inputs: [
            width,
            depth,
            given("t", "design wall", wallOf(reader, one), "length", derived("made to the thin side of its tolerance")),
          ],
          origin: derived("tube with corners of two design walls outside and one inside"),
        }
      : { formula: "b * d", inputs: [width, depth], origin: derived("rectangle") };
  }
  const [own, other, axis] = of === "S level" ? ([width, depth, "x"] as const) : ([depth, width, "y"] as const);
  if (!isTube) return { formula: `${other.symbol} * ${own.symbol} ^ 2 / 6`, inputs: [own, other], origin: derived("rectangle") };
  const what = "second moment of the tube, its corners round: outer radius two design walls";
  return {
    formula: `2 * I / ${own.symbol}`,
    inputs: [given("I", what, section[axis].inertia_mm4, "second moment", derived("composite section")), own],
    origin: derived("tube"),
  };
}

function wallOf(reader: Reader, one: RailSituation): number {
  const strength = one.rail.strength(framedOf(reader).guard.permanent);
  return strength?.kind === "metal" ? (strength.wall ?? 0) : 0;
}

/** A part of a check of a rail; null where it is none of these. */
export function railPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  const one = railSituationOf(reader, check);
  switch (name) {
    case "M level":
      return moment(reader, one, "level");
    case "M upright":
      return moment(reader, one, "upright");
    case "M":
      return moment(reader, one, one.push === "square" ? "level" : "upright");
    case "S":
      return sectionNumber(reader, one, one.push === "square" ? "S level" : "S upright");
    case "A":
    case "S level":
    case "S upright":
      return sectionNumber(reader, one, name);
    case "P":
      return check.id.includes("-deflection-") ? deflecting(reader, one) : force(reader, one);
    case "w L":
      return deflecting(reader, one);
    case "L":
    case "le":
      return workingOf(bayLength(reader, one), derived("between the middles of the posts"));
    case "d":
      return { formula: "min(b, d)", inputs: sizesOf(reader, one), origin: derived("the thinner way buckles first") };
    default:
      return null;
  }
}

function deflecting(reader: Reader, one: RailSituation): Working | null {
  if (!isLoaded(one)) return null;
  return workingOf(loadOn({ load: one.load, length: bayLength(reader, one), sharing: 1 }), derived("what stands on a bay"));
}
