// Which pieces of lumber or tube are cut, and from which stock lengths?
import type { Job, Rail } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { cutStock } from "../stock/cut.ts";
import { angleDegrees, length } from "../units/print.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { alongSlope } from "./corner-path.ts";
import { supportsOn } from "./corner-post.ts";
import { type Mitre, mitreWords } from "./mitres.ts";
import type { Bay, SidePlan, Vertical } from "./plan.ts";
import type { CutBar, CutPiece, CutPlan } from "./purchase.ts";
import { bottomRailReaches, topRailReach } from "./rails.ts";
import type { Opening, RakePlan } from "./rake-plan.ts";

export interface Lumber {
  readonly cuts: readonly CutPiece[];
  readonly cutPlans: readonly CutPlan[];
}

interface Framing {
  readonly sides: readonly SidePlan[];
  readonly verticals: readonly Vertical[];
  readonly bays: readonly Bay[];
  readonly opening: Opening;
  readonly rakes: readonly RakePlan[];
}

export function cutLumber(framing: Framing, job: Job): Outcome<Lumber> {
  const cuts = [...postPieces(framing, job), ...sleevePieces(framing, job), ...railPieces(framing, job), ...spacerPieces(framing, job)];
  const problems: Problem[] = [];
  const cutPlans: CutPlan[] = [];
  for (const sectionName of new Set(cuts.map((piece) => piece.sectionName))) {
    const pieces = cuts.filter((piece) => piece.sectionName === sectionName);
    const outcome = planCuts(sectionName, pieces, job);
    problems.push(...outcome.problems);
    if (outcome.value !== undefined) cutPlans.push(outcome.value);
  }
  return { value: { cuts, cutPlans }, problems };
}

function planCuts(sectionName: string, pieces: readonly CutPiece[], job: Job): Outcome<CutPlan> {
  const [stock, key, block] = isOfPosts(pieces)
    ? [job.stock.postLengths, "post lengths", "posts"]
    : [job.stock.lumberLengths, "lengths", "frame"];
  const result = cutStock({
    pieces: pieces.map(({ mark, length: pieceLength, count }) => ({ mark, length: pieceLength, count })),
    stock: stock.value.map((stockLength) => ({ length: stockLength, cost: stockLength })),
    kerf: job.stock.kerf.value,
    endTrim: job.stock.endTrim.value,
    objective: "length",
  });
  if ("tooLong" in result) {
    const piece = pieces.find((one) => one.mark === result.tooLong);
    const problem: Problem = {
      severity: "error",
      path: stock.source === "job" ? ["stock", key] : [block],
      what: `${piece?.use ?? "a piece"} ${result.tooLong} of ${length(piece?.length ?? 0, { units: job.units, style: "feet" })} is longer than every stock length of ${sectionName}`,
      fix: `give a longer stock length under stock: ${key}, or change the frame`,
    };
    return { value: undefined, problems: [problem] };
  }
  const bars: readonly CutBar[] = result.bars.map((bar) => ({ sectionName, ...bar }));
  return {
    value: { sectionName, bars, bought: result.bought, used: result.used, bought_bound: result.bound, proven: result.proven },
    problems: [],
  };
}

/** A section that posts are cut from comes in the lengths of posts. */
const isOfPosts = (pieces: readonly CutPiece[]): boolean => pieces.some(({ mark }) => mark.startsWith("PO") || mark === "SL");

/** A post on a rake stands plumb and is cut at the top along the slope: its length is that of its long edge. */
function postPieces({ sides, verticals, opening, rakes }: Framing, job: Job): readonly CutPiece[] {
  if (job.posts.existing) return [];
  const { name, material, along } = job.posts.section;
  const common = { sectionName: name, material };
  const countOn = (is: (side: SidePlan) => boolean): number =>
    verticals.filter(({ kind, sideIndex }) => kind === "post" && is(sides[sideIndex] ?? NO_SIDE)).length;
  const level = countOn(({ slope }) => slope === 0);
  const post = { mark: "PO", use: "post", ...common, length: job.posts.belowDatum + opening.top, cutAngle: 0, count: level };
  const raked = rakes.map((rake): CutPiece => {
    const slope = Math.abs(rake.slope);
    const longEdge = job.frame.onRakes.postBelow.value + rake.opening.top + (along * Math.tan(slope)) / 2;
    const count = countOn(({ id }) => id === rake.sideId);
    return {
      mark: `PO-${rake.sideId}`,
      use: `post, top cut ${angleDegrees(slope)} off square, along the slope: length of its long edge, the short one ${length(along * Math.tan(slope), { units: job.units, both: false })} less`,
      ...common,
      length: longEdge,
      cutAngle: slope,
      count,
    };
  });
  return [...(level > 0 ? [post] : []), ...raked];
}

/** A sleeve stands on the datum and ends under the top rail; new ones only. */
function sleevePieces({ verticals, opening }: Framing, { posts: { sleeve, existing } }: Job): readonly CutPiece[] {
  if (sleeve === null || existing) return [];
  const use = sleeve.material === "wood" ? "sleeve round a post, made up of four boards: a hollow box" : "sleeve round a post";
  const count = verticals.filter(({ core }) => core !== undefined).length;
  return [{ mark: "SL", use, sectionName: sleeve.name, material: sleeve.material, length: opening.top, cutAngle: 0, count }];
}

const NO_SIDE = { id: "", slope: 0 } as SidePlan;

/** The top rail lies over the posts and is joined over a post; the bottom rail goes between posts. */
function railPieces(framing: Framing, job: Job): readonly CutPiece[] {
  return railGroups(framing, job).map(({ mark, rail: { name, material }, parts }) => {
    const { length: railLength, cutAngle, use } = parts[0];
    return { mark, sectionName: name, material, count: parts.length, length: railLength, cutAngle, use };
  });
}

/** One part of a rail, between two posts or past them to an end of its side. */
export interface RailPart {
  /** From long point to long point. */
  readonly length: Mm;
  readonly cutAngle: Radian;
  readonly use: string;
  readonly sideId: string;
  /** Post over which it ends or at which it stops; null where it goes to the end of its side, or to the mitre there. */
  readonly fromId: string | null;
  readonly toId: string | null;
}

/** Equal parts, which share a mark. */
export interface RailGroup {
  readonly mark: string;
  readonly rail: Rail;
  readonly parts: readonly [RailPart, ...RailPart[]];
}

/** The parts of all rails, equal ones together. */
export function railGroups(framing: Framing, job: Job): readonly RailGroup[] {
  const { topRail, bottomRail } = job.frame;
  const top = grouped(
    "TR",
    topRail,
    framing.sides.flatMap((side) => topRailParts(side, framing, job)),
  );
  if (bottomRail === null) return top;
  return [
    ...top,
    ...grouped(
      "BR",
      bottomRail,
      framing.sides.flatMap((side) => bottomRailParts(side, bottomRail, framing, job)),
    ),
  ];
}

/** From end post to corner, mitred there: the long point lies half the rail's width beyond the corner point, by the turn. */
function topRailParts(side: SidePlan, framing: Framing, job: Job): readonly RailPart[] {
  const before = side.begins === null ? (framing.sides[side.index - 1]?.turn ?? null) : null;
  const overhang = (turn: number | null): Mm => (job.frame.topRail.width / 2) * Math.tan(Math.abs(turn ?? 0) / 2);
  const reach = topRailReach(side);
  const start = reach.from - overhang(before);
  const end = reach.to + overhang(side.turn);
  const posts = supportsOn(side.index, framing.verticals);
  const { depth } = job.frame.topRail;
  const places = [start, ...posts.slice(1, -1).map((post) => post.station), end];
  const usable = stockUsable(job).map((length) => length - plumbExtra(depth, side.slope));
  const joints = chooseJoints(
    places.map((place) => alongSlope(place, side.slope)),
    usable,
  );
  const level = side.slope === 0 ? joints : joints.map((joint) => joint * Math.cos(side.slope));
  const postAt = (nth: number): string | null =>
    nth === 0 || nth === level.length - 1
      ? null
      : (posts.find(({ station }) => Math.abs(station - (level[nth] ?? 0)) < SAME_mm)?.id ?? null);
  return level.slice(1).map((to, index) => {
    const from = level[index] ?? to;
    const mitres = [
      ...(index === 0 && before !== null && before !== 0 ? [{ end: "left", turn: before } as const] : []),
      ...(index === level.length - 2 && side.turn !== null && side.turn !== 0 ? [{ end: "right", turn: side.turn } as const] : []),
    ];
    const part = railPart({ name: "top rail", level: to - from, depth, mitres, slope: side.slope, units: job.units });
    return { ...part, sideId: side.id, fromId: postAt(index), toId: postAt(index + 1) };
  });
}

/** By how much the long points of two plumb cuts lie farther apart than its edges are long. */
const plumbExtra = (depth: Mm, slope: Radian): Mm => depth * Math.tan(Math.abs(slope));

/** A parallelogram: its length is from tip to tip along it, the tips on opposite edges, and each edge is shorter. */
const parallelWords = (slope: Radian, shorter: Mm, units: Job["units"]): string =>
  `both ends cut ${angleDegrees(Math.abs(slope))} off square, parallel; each edge ${length(shorter, { units, both: false })} shorter`;

/** A piece between two plumb cuts: along a slope it is longer, and its long points lie farther apart still. */
function railPart({
  name,
  level,
  depth,
  mitres,
  slope,
  units,
}: {
  readonly units: Job["units"];
  readonly name: string;
  readonly level: Mm;
  readonly depth: Mm;
  readonly mitres: readonly Mitre[];
  readonly slope: Radian;
}): Pick<RailPart, "length" | "cutAngle" | "use"> {
  const raked = slope === 0 ? "" : `, ${parallelWords(slope, plumbExtra(depth, slope), units)}: plumb where it lies`;
  const mitred = mitreWords(mitres);
  // A mitre at the end of a raked rail leans two ways.
  const compound = slope !== 0 && mitres.length > 0 ? " (a compound cut: fit it at the corner)" : "";
  return {
    length: slope === 0 ? level : alongSlope(level, slope) + plumbExtra(depth, slope),
    cutAngle: Math.abs(slope),
    use: `${name}${raked}${mitred}${compound}`,
  };
}

/** What each stock length yields when its two ends are trimmed, in rising order. */
const stockUsable = (job: Job): readonly Mm[] =>
  [...job.stock.lumberLengths.value].sort((a, b) => a - b).map((stockLength) => stockLength - 2 * job.stock.endTrim.value);

/** Joints among the places given, first and last included: fewest pieces, then the least stock bought if each piece is cut alone. */
function chooseJoints(places: readonly Mm[], usable: readonly Mm[]): readonly Mm[] {
  const longest = usable.at(-1) ?? 0;
  const best: { readonly pieces: number; readonly bought: Mm; readonly from: number }[] = [{ pieces: 0, bought: 0, from: -1 }];
  for (let to = 1; to < places.length; to++) {
    // A piece that no stock gives is kept as it is: the cut plan then says so.
    let found = { pieces: Number.POSITIVE_INFINITY, bought: Number.POSITIVE_INFINITY, from: to - 1 };
    for (let from = 0; from < to; from++) {
      const piece = (places[to] ?? 0) - (places[from] ?? 0);
      const bought =
        usable.find((one) => one >= piece - SAME_mm) ?? (from === to - 1 ? Math.max(piece, longest) : Number.POSITIVE_INFINITY);
      const before = best[from] ?? found;
      const sum = { pieces: before.pieces + 1, bought: before.bought + bought, from };
      const isBetter = sum.pieces < found.pieces || (sum.pieces === found.pieces && sum.bought < found.bought - SAME_mm);
      if (Number.isFinite(sum.bought) && isBetter) found = sum;
    }
    best.push(found);
  }
  const joints: Mm[] = [];
  for (let at = places.length - 1; at >= 0; at = best[at]?.from ?? -1) joints.unshift(places[at] ?? 0);
  return joints;
}

const bottomRailParts = (side: SidePlan, { depth, width }: Rail, { verticals }: Framing, { units }: Job): readonly RailPart[] =>
  bottomRailReaches(side, verticals).map(({ from, to, fromId, toId }) => {
    // Against a post that stands turned between two sides its end is cut along the post's face.
    const mitres = [...turnedEnd("left", fromId, verticals), ...turnedEnd("right", toId, verticals)];
    const level = to - from + mitres.reduce((sum, { turn }) => sum + (width / 2) * Math.tan(Math.abs(turn) / 2), 0);
    return { ...railPart({ name: "bottom rail", level, depth, mitres, slope: side.slope, units }), sideId: side.id, fromId, toId };
  });

/** An end that stands against one turned post at a corner. */
function turnedEnd(end: Mitre["end"], postId: string, verticals: readonly Vertical[]): readonly Mitre[] {
  const corner = verticals.find(({ id }) => id === postId)?.corner;
  return corner === undefined || corner.twist === 0 ? [] : [{ end, turn: 2 * Math.sign(corner.turn) * corner.twist }];
}

/** Half a sixteenth of an inch: two parts whose lengths the tape cannot tell apart are one part, cut to the standing frame. */
const EQUAL_mm = 0.8;

/** Equal parts share a mark. */
function grouped(prefix: string, rail: Rail, parts: readonly RailPart[]): readonly RailGroup[] {
  const groups: [RailPart, ...RailPart[]][] = [];
  for (const part of parts) {
    const group = groups.find(([first]) => Math.abs(first.length - part.length) < EQUAL_mm && first.use === part.use);
    if (group === undefined) groups.push([part]);
    else group.push(part);
  }
  return groups.map((own, index) => ({ mark: `${prefix}${index + 1}`, rail, parts: own }));
}

function spacerPieces({ sides, verticals, opening, rakes }: Framing, job: Job): readonly CutPiece[] {
  const { name, material, along } = job.spacers.section;
  const common = { sectionName: name, material };
  const countOn = (is: (side: SidePlan) => boolean): number =>
    verticals.filter(({ kind, sideIndex }) => kind === "spacer" && is(sides[sideIndex] ?? NO_SIDE)).length;
  const level = {
    mark: "SP",
    use: "spacer",
    ...common,
    length: opening.top - opening.bottom,
    cutAngle: 0,
    count: countOn(({ slope }) => slope === 0),
  };
  const raked = rakes.map(({ sideId, slope, opening: own }): CutPiece => {
    const extra = along * Math.tan(Math.abs(slope));
    const count = countOn(({ id }) => id === sideId);
    return {
      mark: `SP-${sideId}`,
      use: `spacer, ${parallelWords(slope, extra, job.units)}: along the slope where it stands`,
      ...common,
      length: own.top - own.bottom + extra,
      cutAngle: Math.abs(slope),
      count,
    };
  });
  return [level, ...raked].filter(({ count }) => count > 0);
}
