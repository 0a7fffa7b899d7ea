// Why does a post or a spacer stand where it stands?
import type { SidePlan, Vertical } from "../plan/plan.ts";
import { chooseCuts, cutsOf } from "../plan/splits.ts";
import { firstStations } from "../plan/verticals.ts";
import { from, given, must, type Reader } from "./reader.ts";
import type { Working } from "./trace.ts";

const rounding = "to the nearest mark of the tape: this is set out";

export function stationOf(reader: Reader, [id]: readonly string[]): Working {
  const { plan, at } = reader;
  const own = must(
    plan.verticals.find((one) => one.id === id),
    `post or spacer ${id}`,
  );
  const side = must(plan.sides[own.sideIndex], `side ${own.sideId}`);
  if (own.kind === "spacer") return spacerStation(reader, own);
  const posts = plan.verticals.filter((one) => one.kind === "post" && one.sideIndex === own.sideIndex);
  const place = posts.indexOf(own);
  if ((plan.job.sides[side.index]?.stations ?? null) !== null) {
    return {
      formula: "x",
      inputs: [at("x", "station of the post that stands already", `job.sides.${side.id}.stations[${place}]`)],
      origin: from("job", "guard: sides: stations"),
    };
  }
  const width = at("w", "post along the side", "job.posts.section.along");
  const origin = from("derived", "the outermost posts stand with their faces at the ends of the side");
  if (place === 0)
    return { formula: "f + w / 2", inputs: [at("f", "outer face of the first post", `sides.${side.id}.startsAt`), width], origin };
  if (place === posts.length - 1)
    return { formula: "f - w / 2", inputs: [at("f", "outer face of the last post", `sides.${side.id}.endsAt`), width], origin };
  return own.role === "pair" ? pairStation(reader, { own, side, posts }) : lineStation(reader, { own, side, posts });
}

interface OnSide {
  readonly own: Vertical;
  readonly side: SidePlan;
  readonly posts: readonly Vertical[];
}

/** Between the two nearest posts that are fixed: ends, corners and pairs. */
function lineStation({ at }: Reader, { own, posts }: OnSide): Working {
  const place = posts.indexOf(own);
  const isFixed = (post: Vertical, index: number): boolean => index === 0 || index === posts.length - 1 || post.role === "pair";
  const left = posts.findLastIndex((post, index) => index < place && isFixed(post, index));
  const right = posts.findIndex((post, index) => index > place && isFixed(post, index));
  const [first, last] = [must(posts[left], "post"), must(posts[right], "post")];
  return {
    formula: "nearest(x1 + (x2 - x1) * i / up((x2 - x1) / m, 1), s)",
    inputs: [
      at("x1", `station of ${first.id}, which is fixed`, `verticals.${first.id}.station`),
      at("x2", `station of ${last.id}, which is fixed`, `verticals.${last.id}.station`),
      given("i", `number of the post after ${first.id}`, place - left, "count"),
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
  const { at } = reader;
  const gap = at("g", "clear distance between the two posts", "job.posts.pairGap");
  const width = at("w", "post along the side", "job.posts.section.along");
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
  const cuts = chooseCuts(cutsOf(sides, firstStations(sides, job), job), job, longest) ?? [];
  return cuts.filter(({ kind, sideIndex }) => kind === "line" && sideIndex === side.index).map(({ station }) => station);
}

/** Evenly in the clear between two posts. */
function spacerStation({ plan, at }: Reader, own: Vertical): Working {
  const members = plan.verticals.filter(({ sideIndex }) => sideIndex === own.sideIndex);
  const place = members.indexOf(own);
  const left = members.findLastIndex(({ kind }, index) => kind === "post" && index < place);
  const right = members.findIndex(({ kind }, index) => kind === "post" && index > place);
  const [first, last] = [must(members[left], "post"), must(members[right], "post")];
  return {
    formula: "nearest(x1 + w1 / 2 + ((x2 - w2 / 2 - (x1 + w1 / 2) - n * a) / (n + 1)) * i + a * (i - 0.5), s)",
    inputs: [
      at("x1", `station of ${first.id}`, `verticals.${first.id}.station`),
      at("x2", `station of ${last.id}`, `verticals.${last.id}.station`),
      at("w1", `${first.id} along the side`, `verticals.${first.id}.along`),
      at("w2", `${last.id} along the side`, `verticals.${last.id}.along`),
      at("a", "spacer along the side", `verticals.${own.id}.along`),
      given("n", "spacers in this bay: the fewest that keep the longest free length", right - left - 1, "count"),
      given("i", "number of this one from the left", place - left, "count"),
      at("s", "step of the tape", "job.limits.tapeStep"),
    ],
    origin: from("derived", "even free lengths"),
    rounding,
  };
}
