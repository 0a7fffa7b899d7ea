// Which pieces of lumber or tube are cut, and from which stock lengths?
import type { Job, Rail } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { cutStock } from "../stock/cut.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { Bay, SidePlan, Vertical } from "./plan.ts";
import type { CutBar, CutPiece, CutPlan } from "./purchase.ts";

export interface Lumber {
  readonly cuts: readonly CutPiece[];
  readonly cutPlans: readonly CutPlan[];
}

interface Framing {
  readonly sides: readonly SidePlan[];
  readonly verticals: readonly Vertical[];
  readonly bays: readonly Bay[];
  readonly opening: { readonly bottom: Mm; readonly top: Mm };
}

export function cutLumber(framing: Framing, job: Job): Outcome<Lumber> {
  const cuts = [...postPieces(framing, job), ...railPieces(framing, job), ...spacerPieces(framing, job)];
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
  const result = cutStock({
    pieces: pieces.map(({ mark, length: pieceLength, count }) => ({ mark, length: pieceLength, count })),
    stock: job.stock.lumberLengths.value.map((stockLength) => ({ length: stockLength, cost: stockLength })),
    kerf: job.stock.kerf.value,
    endTrim: job.stock.endTrim.value,
    objective: "length",
  });
  if ("tooLong" in result) {
    const piece = pieces.find((one) => one.mark === result.tooLong);
    const tape = { units: job.units, style: "feet" } as const;
    const problem: Problem = {
      severity: "error",
      path: ["stock", "lengths"],
      what: `${piece?.use ?? "a piece"} ${result.tooLong} of ${length(piece?.length ?? 0, tape)} is longer than every stock length of ${sectionName}`,
      fix: "give a longer stock length under stock: lengths, or change the frame",
    };
    return { value: undefined, problems: [problem] };
  }
  const bars: readonly CutBar[] = result.bars.map((bar) => ({ sectionName, ...bar }));
  return {
    value: { sectionName, bars, bought: result.bought, used: result.used, bought_bound: result.bound, proven: result.proven },
    problems: [],
  };
}

function postPieces({ verticals, opening }: Framing, job: Job): readonly CutPiece[] {
  const posts = verticals.filter((vertical) => vertical.kind === "post");
  if (job.posts.existing) return [];
  const { name, material } = job.posts.section;
  return [{ mark: "PO", use: "post", sectionName: name, material, length: job.posts.belowDatum + opening.top, count: posts.length }];
}

/** The top rail lies over the posts and is joined over a post; the bottom rail goes between posts. */
function railPieces(framing: Framing, job: Job): readonly CutPiece[] {
  const { topRail, bottomRail } = job.frame;
  const usable = Math.max(...job.stock.lumberLengths.value) - 2 * job.stock.endTrim.value;
  const top = framing.sides.flatMap((side) => topRailLengths(side, framing.verticals, usable));
  const pieces = numbered("TR", "top rail", topRail, top);
  if (bottomRail === null) return pieces;
  const bottom = framing.sides.flatMap((side) => bottomRailLengths(side, framing.verticals));
  return [...pieces, ...numbered("BR", "bottom rail", bottomRail, bottom)];
}

/** From the outer face of the first post of a side to that of its last, or to a corner point, cut at post centres where stock is too short. */
function topRailLengths(side: SidePlan, verticals: readonly Vertical[], usable: Mm): readonly Mm[] {
  const posts = verticals.filter((vertical) => vertical.kind === "post" && vertical.sideIndex === side.index);
  const start = side.index === 0 ? side.startsAt : -(posts[0]?.across ?? 0) / 2;
  const end = side.turn === null ? side.endsAt : side.length + (posts.at(-1)?.across ?? 0) / 2;
  const lengths: Mm[] = [];
  let from = start;
  while (end - from > usable + SAME_mm) {
    const joint = posts
      .map((post) => post.station)
      .filter((station) => station > from + SAME_mm && station - from <= usable + SAME_mm)
      .at(-1);
    if (joint === undefined) break;
    lengths.push(joint - from);
    from = joint;
  }
  return [...lengths, end - from];
}

function bottomRailLengths(side: SidePlan, verticals: readonly Vertical[]): readonly Mm[] {
  const posts = verticals.filter((vertical) => vertical.kind === "post" && vertical.sideIndex === side.index);
  return posts
    .slice(1)
    .map((post, index) => post.station - post.along / 2 - ((posts[index]?.station ?? 0) + (posts[index]?.along ?? 0) / 2));
}

/** Equal lengths share a mark. */
function numbered(prefix: string, use: string, rail: Rail, lengths: readonly Mm[]): readonly CutPiece[] {
  const groups: { length: Mm; count: number }[] = [];
  for (const one of lengths) {
    const group = groups.find((other) => Math.abs(other.length - one) < SAME_mm);
    if (group === undefined) groups.push({ length: one, count: 1 });
    else group.count += 1;
  }
  const { name, material } = rail;
  return groups.map(({ length: pieceLength, count }, index) => {
    return { mark: `${prefix}${index + 1}`, use, sectionName: name, material, length: pieceLength, count };
  });
}

function spacerPieces({ verticals, opening }: Framing, job: Job): readonly CutPiece[] {
  const count = verticals.filter((vertical) => vertical.kind === "spacer").length;
  const { name, material } = job.spacers.section;
  const height = opening.top - opening.bottom;
  return count === 0 ? [] : [{ mark: "SP", use: "spacer", sectionName: name, material, length: height, count }];
}
