// Which runs does the guard have, how does each cable lie, and which end pulls?
import type { Access, GuardEnd, Job } from "../job/job.ts";
import type { JobPath, Outcome, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { accessOf } from "./as-found.ts";
import { seenFrom } from "./corner-post.ts";
import { endOffset, seatOf } from "./end-fitting.ts";
import { meetOnFaces, meetOnPairs, mustBeOnFace } from "./face-end.ts";
import { layRun, type RunLine } from "./lay-run.ts";
import type { Bay, EndKind, Face, RunEnd, SidePlan, Vertical } from "./plan.ts";
import { type Level, levelAt } from "./set-off.ts";
import type { Cut } from "./splits.ts";

/** A run before its tension is known. */
export interface RunGeometry extends RunLine, Level {
  readonly id: string;
  readonly left: RunEnd;
  readonly right: RunEnd;
  readonly sideIds: readonly string[];
  readonly why: string;
}

interface Place {
  readonly post: Vertical;
  readonly access: Access;
  readonly offset: Mm;
  /** An end here can only be held on the face. */
  readonly onFace: boolean;
  readonly inPier: boolean;
  /** Where the job file says what reaches it. */
  readonly path: JobPath;
}

export interface Layout {
  readonly sides: readonly SidePlan[];
  readonly verticals: readonly Vertical[];
  readonly bays: readonly Bay[];
}

export function makeRuns(layout: Layout, cuts: readonly Cut[], job: Job): Outcome<readonly RunGeometry[]> {
  const problems: Problem[] = [];
  const runs: RunGeometry[] = [];
  cuts.slice(1).forEach((cut, index) => {
    const start = cuts[index] ?? cut;
    const leftPlace = placeOf(start, "right-hand run", layout.verticals, cuts, job);
    const rightPlace = placeOf(cut, "left-hand run", layout.verticals, cuts, job);
    if (leftPlace === null || rightPlace === null) throw new RangeError("a cut has no post: the layout and the cuts disagree");
    const id = `R${index + 1}`;
    problems.push(...reachProblems(id, leftPlace, rightPlace, job));
    const { left, right } = chooseEnds(leftPlace, rightPlace, layout, job);
    const line = layRun({ left, right, layout });
    const sideIds = [...new Set(line.spans.map(({ bay }) => bay.sideId))];
    runs.push({
      id,
      left,
      right,
      sideIds,
      ...levelAt(
        job,
        layout.sides.findIndex(({ id: side }) => side === sideIds[0]),
      ),
      why: reasonOf(
        [
          { cut: start, place: leftPlace },
          { cut, place: rightPlace },
        ],
        job,
      ),
      ...line,
    });
  });
  return { value: runs, problems };
}

/** The post that a run ends on at a cut, what reaches its back and how far its bores stand off the middle. */
function placeOf(
  cut: Cut,
  which: "left-hand run" | "right-hand run",
  verticals: readonly Vertical[],
  cuts: readonly Cut[],
  job: Job,
): Place | null {
  const posts = verticals.filter((vertical) => vertical.kind !== "spacer");
  const onSide = posts.filter((post) => post.sideIndex === cut.sideIndex);
  const found = (
    post: Vertical | undefined,
    usual: Access,
    offset: Mm,
    at?: { readonly path: JobPath; readonly end: GuardEnd },
  ): Place | null => {
    if (post === undefined) return null;
    const index = job.posts.asFound.findIndex((one) => one.post === post.id && one.access !== null);
    const key = cut.kind === "corner post" ? ["corner"] : [];
    const path = at === undefined ? ["guard", "sides", cut.sideIndex, ...key] : [...at.path, at.end.kind === "wall" ? "gap" : "access"];
    const access = accessOf(job, post.id, usual);
    const inPier = post.kind === "pier";
    const onFace =
      inPier || mustBeOnFace(access, job) || (cut.kind === "corner post" && !isCrossed(post)) || (cut.kind === "line" && meetOnFaces(job));
    return { post, access, offset: onFace ? 0 : offset, onFace, inPier, path: index < 0 ? path : ["posts", "as found", index, "access"] };
  };
  switch (cut.kind) {
    case "start":
      return found(posts[0], job.start.access, 0, { path: ["guard", "start"], end: job.start });
    case "end":
      return found(posts.at(-1), job.end.access, 0, { path: ["guard", "end"], end: job.end });
    case "interruption": {
      const between = job.sides[cut.sideIndex]?.interrupted;
      if (between == null) return null;
      const at = ["guard", "sides", cut.sideIndex, "interrupted"];
      if (which === "left-hand run") return found(onSide.at(-1), between.end.access, 0, { path: [...at, "end"], end: between.end });
      const next = posts.find((post) => post.sideIndex === cut.sideIndex + 1);
      return found(next, between.start.access, 0, { path: [...at, "start"], end: between.start });
    }
    case "corner": {
      const nextSide = posts.find((post) => post.sideIndex === cut.sideIndex + 1);
      return found(which === "left-hand run" ? onSide.at(-1) : nextSide, "hand", 0);
    }
    case "corner post":
      return found(onSide.at(-1), isCrossed(onSide.at(-1)) ? "drill" : "none", 0);
    case "line": {
      const pairs = onSide.filter((post) => post.role === "pair");
      const nth = cuts.filter((other) => other.kind === "line" && other.sideIndex === cut.sideIndex && other.station < cut.station).length;
      if (pairs.length > 0) return found(pairs[2 * nth + (which === "left-hand run" ? 0 : 1)], "hand", 0);
      const post = onSide.find((one) => Math.abs(one.station - cut.station) < SAME_mm);
      const offset = endOffset(job);
      return found(post, "drill", which === "left-hand run" ? -offset : offset);
    }
  }
}

/** Whether bores of two runs cross in a post. */
const isCrossed = (post: Vertical | undefined): boolean => post?.corner?.isSetOff === true;

const reachRank: Readonly<Record<Access, number>> = { none: 0, hand: 1, drill: 2 };

function reachProblems(id: string, left: Place, right: Place, job: Job): readonly Problem[] {
  if (left.onFace && right.onFace) return [noPull(id, left, right)];
  // Of a post in which bores cross it is said with what stands there.
  const shut = [left, right].filter(({ access, onFace, post }) => access === "none" && !onFace && !isCrossed(post));
  if (shut.length === 0) return [];
  const both = shut.length === 2;
  return [
    {
      severity: "error",
      path: shut[0]?.path ?? ["guard"],
      what: both
        ? `run ${id} has no reachable end: nothing fits behind ${left.post.id} nor behind ${right.post.id}`
        : `nothing reaches the back of ${shut[0]?.post.id}, where run ${id} ends`,
      why: "the nut of a stud end and the gripping fitting both go on behind the post, by hand and wrench at least",
      fix: `write access: hand if a hand and a wrench do reach; beside a wall they do where the gap is ${describeGap(job)}. Else hold the end on the face of the post (fittings: face)`,
    },
  ];
}

/** An end on the face only holds. */
const noPull = (id: string, left: Place, right: Place): Problem => ({
  severity: "error",
  path: left.path,
  what: `run ${id} cannot be pulled: it ends on the face of ${left.post.id} and on the face of ${right.post.id}`,
  why: "an end on the face of a post or pier only holds; the nut that pulls goes on behind the post at the other end",
  fix: [left, right].some(({ post }) => post.corner?.isPassed === false)
    ? "let the cables pass a corner post at one of its ends (corner: one post), make that corner with two posts, or make the back of its other post reachable"
    : "make the back of one of the two posts reachable, or let fewer runs meet on one post: longer runs, or ends: through bores",
});

function describeGap(job: Job): string {
  const tape = { units: job.units, style: "tape" } as const;
  return `at least ${length(job.limits.wallGap_min.value, tape)} and at most ${length(job.limits.wallGap_max.value, tape)}`;
}

/**
 * The pulling end is the one that is easier to reach; at a run that turns, the one of the longer span if both are
 * equally easy (the place that NCC 2022, table 11.3.6a note 2 asks for), else the left one. Where bores cross in a corner post only nuts that
 * hold stand behind it, if the other end is as easy to reach.
 */
function chooseEnds(left: Place, right: Place, layout: Layout, job: Job): { readonly left: RunEnd; readonly right: RunEnd } {
  // A run that begins at a corner post lies on the side behind it.
  const first = left.post.corner === undefined ? left.post : seenFrom(left.post, left.post.corner.nextIndex);
  const turns = first.sideIndex !== right.post.sideIndex;
  const bothStuds = job.fittings.holdEnd === "stud";
  const [l, r] = [reachRank[left.access], reachRank[right.access]];
  const onFaces = left.onFace || right.onFace || meetOnFaces(job);
  const longest = longestBayIsRight(first, right.post, layout);
  const crossed = [isCrossed(left.post), isCrossed(right.post)];
  const equal = crossed[0] !== crossed[1] ? crossed[0] === true : turns && longest;
  const pullsRight = left.onFace !== right.onFace ? left.onFace : r !== l ? r > l : equal;
  const end = (place: Place, pulls: boolean, backFace: Face): RunEnd => {
    const { access, offset } = place;
    const common = {
      postId: place.post.id,
      backFace,
      access,
      offset,
      ...(isCrossed(place.post) ? { isCrossed: true as const } : {}),
    } as const;
    if (place.inPier) return { ...common, kind: "anchor", pulls: false, seat: 0 };
    if (place.onFace || (!pulls && meetOnFaces(job))) return { ...common, kind: "face", pulls: false, seat: 0 };
    const kind: EndKind = bothStuds || pulls ? "stud" : "grip";
    return { ...common, kind, pulls: pulls || (bothStuds && turns && !onFaces), seat: seatOf(kind, place.post.slope, job) };
  };
  return { left: end(left, !pullsRight, "left"), right: end(right, pullsRight, "right") };
}

function longestBayIsRight(left: Vertical, right: Vertical, layout: Layout): boolean {
  const longestOn = (sideId: string): Mm =>
    Math.max(0, ...layout.bays.filter((bay) => bay.kind === "bay" && bay.sideId === sideId).map((bay) => bay.free));
  return longestOn(right.sideId) > longestOn(left.sideId) + SAME_mm;
}

function reasonOf(ends: readonly { readonly cut: Cut; readonly place: Place }[], job: Job): string {
  const meets = ({ cut, place }: (typeof ends)[number]): string | null => {
    if (cut.kind === "corner") {
      const isStraight = job.sides[cut.sideIndex]?.turn === 0;
      return `the ${isStraight ? "change of slope" : "corner"}, where each run has a post of its own`;
    }
    if (cut.kind === "corner post") {
      const how = isCrossed(place.post) ? "behind which runs end, their bores set off in height" : "on two faces of which runs end";
      return `the corner post ${place.post.id}, ${how}`;
    }
    if (cut.kind === "line") {
      const onePost = !meetOnPairs(job) || job.sides[cut.sideIndex]?.stations != null;
      if (!onePost) return "a pair of posts, one for each run";
      return place.onFace ? "a post that both runs end on, one on each face" : "a post that both runs end on, their bores set off sideways";
    }
    return null;
  };
  const places = ends.map(meets).filter((place) => place !== null);
  if (places.length === 0) return "one run: its length and bends are within the limits";
  return `cut at ${places.join(" and at ")}: fewest runs that keep the limits of length and bends`;
}

/** Ready lengths: the next step above the outside length; from a spool: outside length and allowance, rounded up. */
export function orderLengthOf(outsideLength: Mm, job: Job): Mm | null {
  if (job.supply.kind === "spool") return roundUp(outsideLength + job.supply.allowance.value, job.units === "inch" ? 25.4 : 10);
  const longer = job.supply.lengths.value.filter((ready) => ready > outsideLength + SAME_mm);
  return longer.length === 0 ? null : Math.min(...longer);
}
