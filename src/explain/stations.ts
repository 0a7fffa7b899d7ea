// Why does a post or a spacer stand where it stands?
import { membersOn, postsOn } from "../plan/corner-post.ts";
import type { Plan, SidePlan, Vertical } from "../plan/plan.ts";
import { chooseCuts, cutsOf, mayPull } from "../plan/splits.ts";
import { firstStations } from "../plan/verticals.ts";
import { heldWidth, leftEndOf, rightEndOf, stationPath } from "./mouths.ts";
import { flushWith, pierStation } from "./pier-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const rounding = "to the nearest mark of the tape: this is set out";

function stationOf(reader: Reader, [id]: readonly string[]): Working {
  const { plan, at } = reader;
  const own = must(
    plan.verticals.find((one) => one.id === id),
    `post or spacer ${id}`,
  );
  const side = must(plan.sides[own.sideIndex], `side ${own.sideId}`);
  if (own.kind === "spacer") return spacerStation(reader, own);
  if (own.kind === "pier") return pierStation(reader, own);
  const posts = postsOn(own.sideIndex, plan.verticals);
  const place = posts.findIndex(({ id: one }) => one === id);
  if ((plan.job.sides[side.index]?.stations ?? null) !== null) {
    return {
      formula: "x",
      inputs: [at("x", "station of the post that stands already", `job.sides.${side.id}.stations[${place}]`)],
      origin: from("job", "guard: sides: stations"),
    };
  }
  if (own.corner !== undefined) {
    return {
      formula: "L - x",
      inputs: [
        at("L", `length of side ${side.id}`, `sides.${side.id}.length`),
        at("x", "its middle from the start of the next side: both sides are alike to it", `verticals.${id}.corner.nextStation`),
      ],
      origin: from("derived", "plan geometry of a corner of one post"),
    };
  }
  const width = at("w", "post along the side", `${outsidePath(plan)}.along`);
  const origin = from("derived", "the outermost posts stand with their faces at the ends of the side");
  if (place === 0 && side.begins?.kind !== "pier")
    return { formula: "f + w / 2", inputs: [at("f", "outer face of the first post", `sides.${side.id}.startsAt`), width], origin };
  if (place === posts.length - 1 && side.ends?.kind !== "pier")
    return { formula: "f - w / 2", inputs: [at("f", "outer face of the last post", `sides.${side.id}.endsAt`), width], origin };
  return own.role === "pair" ? pairStation(reader, { own, side, posts }) : lineStation(reader, { own, side, posts });
}

interface OnSide {
  readonly own: Vertical;
  readonly side: SidePlan;
  readonly posts: readonly Vertical[];
}

/** Between the two nearest posts that are fixed: ends, corners and pairs. */
function lineStation(reader: Reader, { own, posts, side }: OnSide): Working {
  const { at } = reader;
  const place = posts.findIndex(({ id }) => id === own.id);
  const [begins, ends] = [side.begins?.kind === "pier", side.ends?.kind === "pier"];
  const isFixed = (post: Vertical, index: number): boolean =>
    (index === 0 && !begins) || (index === posts.length - 1 && !ends) || post.role === "pair";
  const left = posts.findLastIndex((post, index) => index < place && isFixed(post, index));
  const right = posts.findIndex((post, index) => index > place && isFixed(post, index));
  const [first, last] = [posts[left], posts[right]];
  const low =
    first === undefined
      ? flushWith(reader, side, "first", "x1")
      : { term: "x1", inputs: [at("x1", `station of ${first.id}, which is fixed`, stationPath(first, own.sideIndex))] };
  const high =
    last === undefined
      ? flushWith(reader, side, "last", "x2")
      : { term: "x2", inputs: [at("x2", `station of ${last.id}, which is fixed`, `verticals.${last.id}.station`)] };
  return {
    formula: `nearest(${low.term} + (${high.term} - ${low.term}) * i / up((${high.term} - ${low.term}) / m, 1), s)`,
    inputs: [
      ...low.inputs,
      ...high.inputs.filter(({ symbol }) => low.inputs.every((one) => one.symbol !== symbol)),
      given("i", `number of the post after ${first?.id ?? "the pier"}`, place - left, "count"),
      at("m", "largest spacing of posts, centre to centre", "job.posts.spacing_max"),
      at("s", "step of the tape", "job.limits.tapeStep"),
    ],
    origin: from("derived", "fewest even bays that keep the largest spacing"),
    rounding,
  };
}

/** Two posts where one run ends and the next begins, either side of the place where the guard is cut. */
function pairStation(reader: Reader, { own, side, posts }: OnSide): Working {
  const pairs = posts.filter(({ role }) => role === "pair");
  const place = pairs.indexOf(own);
  const { at, plan } = reader;
  const gap = at("g", "clear distance between the two posts", "job.posts.pairGap");
  const width = at("w", "post along the side", `${outsidePath(plan)}.along`);
  if (place % 2 === 1) {
    const mate = must(pairs[place - 1], "pair");
    return {
      formula: "x1 + g + w",
      inputs: [at("x1", `station of ${mate.id}, the other post of the pair`, `verticals.${mate.id}.station`), gap, width],
      origin: from("derived", "two posts, a gap apart"),
    };
  }
  const cut = must(splitsOf(reader, side)[place / 2], "cut");
  return {
    formula: "nearest(c - (g + w) / 2, s)",
    inputs: [
      given("c", "place where the guard is cut: fewest runs, then fewest posts, then the shortest longest run", cut, "length"),
      gap,
      width,
      at("s", "step of the tape", "job.limits.tapeStep"),
    ],
    origin: from("derived", "two posts, a gap apart"),
    rounding,
  };
}

/** Stations at which a side is cut. */
function splitsOf({ plan }: Reader, side: SidePlan): readonly number[] {
  const { job, sides } = plan;
  const { supply } = job;
  const longest = supply.kind === "ready" ? Math.max(...supply.lengths.value) : supply.spoolLength - supply.allowance.value;
  const all = cutsOf(sides, firstStations(sides, job), job);
  const cuts = chooseCuts(all, job, longest, mayPull(all, sides)) ?? [];
  return cuts.filter(({ kind, sideIndex }) => kind === "line" && sideIndex === side.index).map(({ station }) => station);
}

/** Evenly in the clear between two posts. */
function spacerStation(reader: Reader, own: Vertical): Working {
  const { plan, at } = reader;
  const members = membersOn(own.sideIndex, plan.verticals);
  const place = members.findIndex(({ id }) => id === own.id);
  const left = members.findLastIndex(({ kind }, index) => kind !== "spacer" && index < place);
  const right = members.findIndex(({ kind }, index) => kind !== "spacer" && index > place);
  const [first, last] = [must(members[left], "post"), must(members[right], "post")];
  const [low, high] = [leftEndOf(reader, first, own.sideId, heldWidth), rightEndOf(reader, last, heldWidth)];
  return {
    formula: `nearest(${low.term} + ((${high.term} - ${low.term} - n * a) / (n + 1)) * i + a * (i - 0.5), s)`,
    inputs: [
      ...low.inputs,
      ...high.inputs,
      at("a", "spacer along the side", `verticals.${own.id}.along`),
      given("n", "spacers in this bay: the fewest that keep the longest free length", right - left - 1, "count"),
      given("i", "number of this one from the left", place - left, "count"),
      at("s", "step of the tape", "job.limits.tapeStep"),
    ],
    origin: from("derived", "even free lengths"),
    rounding,
  };
}

/** Of what the posts measure outside. */
export const outsidePath = ({ job }: Plan): string => (job.posts.sleeve === null ? "job.posts.section" : "job.posts.sleeve");

export const verticalNamed = ({ plan }: Reader, id: string | undefined): Vertical =>
  must(
    plan.verticals.find((one) => one.id === id),
    `post or spacer ${id}`,
  );

function centreOf(reader: Reader, id: string | undefined, axis: "x" | "y"): Working {
  const { sideId, corner } = verticalNamed(reader, id);
  if (corner !== undefined) {
    const [along, inward] = axis === "x" ? ["cos(a)", "cos(a - sign * pi / 2 - t / 2)"] : ["sin(a)", "sin(a - sign * pi / 2 - t / 2)"];
    return {
      formula: `x0 + L * ${along} + i * ${inward}`,
      inputs: [
        reader.at("x0", `start of side ${sideId}`, `sides.${sideId}.from.${axis}`),
        reader.at("L", `length of side ${sideId}`, `sides.${sideId}.length`),
        reader.at("a", "direction of the side", `sides.${sideId}.direction`),
        reader.at("i", "from the corner point to the middle of the post, to the inside of the turn", `verticals.${id}.corner.inset`),
        reader.at("t", "turn of the corner", `verticals.${id}.corner.turn`),
        given("sign", "1 for a turn to the right, -1 to the left", Math.sign(corner.turn), "count"),
      ],
      origin: derived("plan geometry of a corner of one post"),
    };
  }
  return {
    formula: axis === "x" ? "x0 + s * cos(t)" : "x0 + s * sin(t)",
    inputs: [
      reader.at("x0", `start of side ${sideId}`, `sides.${sideId}.from.${axis}`),
      reader.at("s", "station", `verticals.${id}.station`),
      reader.at("t", "direction of the side", `sides.${sideId}.direction`),
    ],
    origin: derived("plan geometry"),
  };
}

export const verticalRules: readonly Rule[] = [
  rule("verticals.*.station", "Station of the middle of {} from the left-hand start of its side", stationOf),
  rule("verticals.*.centre.x", "Middle of {} seen from above, to the right", (reader, [id]) => centreOf(reader, id, "x")),
  rule("verticals.*.centre.y", "Middle of {} seen from above, away from the reader", (reader, [id]) => centreOf(reader, id, "y")),
];
