// Which frames hold the cables, and how much does each cable take from every other through them?
import type { Job, Rail } from "../job/job.ts";
import { lonePost } from "../mechanics/coupling.ts";
import { type GuardFrame, guardFrame } from "../mechanics/guard-frame.ts";
import type { GuardPost, GuardRail } from "../mechanics/guard-frame-build.ts";
import type { AxialStiffness, Megapascal, Mm } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import { alongSlope } from "./corner-path.ts";
import { standsOn } from "./corner-post.ts";
import { layCables, type SideTerm } from "./frame-cables.ts";
import { cornersOf, isSquare, kinksOf, stationOn, type TurnedCorner } from "./frame-corners.ts";
import { legOf } from "./frame-legs.ts";
import { baseStiffness, type FrameMember, postMember, railMember } from "./frame-members.ts";
import { profileOf } from "./friction.ts";
import type { Course, Plan, SidePlan, Vertical } from "./plan.ts";
import type { RunGeometry } from "./runs.ts";
import { courseHeight } from "./set-off.ts";

export interface SideFrame {
  readonly side: SidePlan;
  /** As in the frame, from left to right: those of the side, and at a corner that a run turns the neighbour's corner post too. */
  readonly posts: readonly Vertical[];
  readonly guard: GuardFrame;
  /** For each cable of the group that lies on this side, by its number in the group, its pieces there. */
  readonly terms: ReadonlyMap<number, readonly SideTerm[]>;
}

/** Cables that share a frame: those of all runs that lie on the same sides, run by run, each from the lowest course. */
export interface FrameGroup {
  readonly runs: readonly RunGeometry[];
  readonly courses: readonly Course[];
  readonly sides: readonly SideFrame[];
  /** Closing between the nuts of cable i when cable j is pulled with 1 N at its nut [mm/N]. */
  readonly flexibility: readonly (readonly number[])[];
  /** Stretch of each cable per unit pull at its nut [mm/N]. */
  readonly cableFlexibility: readonly number[];
  /** Closing of each cable under a strain of 1 of the deck, and of the rails [mm]. */
  readonly perDeckStrain: readonly Mm[];
  readonly perRailStrain: readonly Mm[];
}

export interface Laid extends Pick<Plan, "sides" | "verticals" | "courses" | "opening" | "rakes"> {
  readonly runs: readonly RunGeometry[];
}

/** The frames of the guard, by groups of runs that share a side. */
export function frameGuard(laid: Laid, job: Job): readonly FrameGroup[] {
  return groupsOf(laid.runs).map((runs) => frameGroup(runs, laid, job));
}

/** Runs that lie on a common side or end on one corner post, or are joined by others that do. */
function groupsOf(runs: readonly RunGeometry[]): readonly (readonly RunGeometry[])[] {
  const groups: RunGeometry[][] = [];
  for (const run of runs) {
    const last = groups.at(-1);
    // Runs go from left to right: a run shares a side or a post with the one before it or with none.
    const joined = last?.some(({ sideIds, right }) => right.postId === run.left.postId || sideIds.some((id) => run.sideIds.includes(id)));
    if (joined === true) last?.push(run);
    else groups.push([run]);
  }
  return groups;
}

function frameGroup(runs: readonly RunGeometry[], laid: Laid, job: Job): FrameGroup {
  const sideIds = new Set(runs.flatMap((run) => run.sideIds));
  const count = laid.courses.length;
  const lines = linesOf(laid.sides.filter((side) => sideIds.has(side.id)));
  const framed = lines.map((line) => frameLine(line, runs, laid, job));
  const total = runs.length * count;
  const flexibility = Array.from({ length: total }, () => Array.from({ length: total }, () => 0));
  const strains = { deck: Array.from({ length: total }, () => 0), rail: Array.from({ length: total }, () => 0) };
  for (const { frames, outOfPlane } of framed) {
    // The sides of a line have one frame.
    for (const frame of frames.slice(0, 1)) addSide(frame, flexibility, strains);
    for (const bend of outOfPlane) addBend(bend, count, flexibility);
  }
  return {
    runs,
    courses: laid.courses,
    sides: framed.flatMap(({ frames }) => frames),
    flexibility,
    cableFlexibility: stretchOf({ runs, courses: laid.courses }, job.cable.stiffness.value.nominal, job),
    perDeckStrain: strains.deck,
    perRailStrain: strains.rail,
  };
}

/** Stretch of each cable of a group per unit pull at its nut [mm/N]. */
const stretchOf = ({ runs, courses }: Pick<FrameGroup, "runs" | "courses">, stiffness: AxialStiffness, job: Job): readonly number[] =>
  runs.flatMap((run) => {
    const own = profileOf(run, 1, job).integral_NMm / stiffness;
    return courses.map(() => own);
  });

/** The group with cables of another stiffness. */
export const withCables = (group: FrameGroup, stiffness: AxialStiffness, job: Job): FrameGroup => ({
  ...group,
  cableFlexibility: stretchOf(group, stiffness, job),
});

/** A corner post square to its side, under the push of the cables of one run that bend there. */
interface OutOfPlane {
  readonly index: number;
  /** What of the push is left out of the planes, squared, times the share of the pull there. */
  readonly factor: number;
  readonly flexibility: readonly (readonly number[])[];
}

interface FramedLine {
  /** One for each side, all with the same posts and the same frame. */
  readonly frames: readonly SideFrame[];
  readonly outOfPlane: readonly OutOfPlane[];
}

/**
 * The frame of a side, in its own plane. Where a run turns a corner, the neighbour's corner post stands in this plane too: the rails meet
 * there, and it takes what the turned cable pushes along this side. With t1, t2, t3 the directions of the cable before, between and behind
 * the two posts of a corner, T1, T2, T3 its tensions there by friction, and a the direction of the side, the posts take (T2 t2 - T1 t1) a and
 * (T3 t3 - T2 t2) a. What is left, T3 t3 a, is nothing at a right angle; elsewhere the two sides push against each other through their rails, and the top of the neighbour's post is taken to stand
 * still, as it does between two like sides. One post at a corner is both these posts.
 *
 * Sides in one line whose slope changes have one frame: plumb posts whose bases climb with the walking surface, a top rail that goes on
 * from side to side, cables along each slope, which push up or down on the two posts where it changes. Rails are taken at one plumb height
 * all along, that of the level sides where there are some; on a rake they lie a few millimetres off it.
 *
 * No bottom rail is cut between two posts of two sides (rails.ts), so none stands there in the frame.
 */
function frameLine(sides: readonly SidePlan[], runs: readonly RunGeometry[], laid: Laid, job: Job): FramedLine {
  const [first, last] = [sides[0], sides.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError("a line of no sides");
  const own = laid.verticals.filter((vertical) => vertical.kind !== "spacer" && sides.some(({ index }) => standsOn(vertical, index)));
  const line = { first, last, own, laid };
  const legs = runs.flatMap((run, index) =>
    sides.some(({ id }) => run.sideIds.includes(id)) ? [legOf(run, index, { sides, posts: own }, job)] : [],
  );
  const corners = cornersOf(line, legs);
  const kinks = kinksOf(line);
  const guests = corners.map(({ guest }) => guest).filter((guest) => !own.includes(guest));
  const left = guests.filter(({ sideIndex }) => sideIndex < first.index);
  const posts = [...left, ...own, ...guests.filter(({ sideIndex }) => sideIndex > last.index)];
  const heights = laid.courses.map((course) => courseHeight(course, first));
  const post = postMember(job);
  const { topRail, bottomRail, railJoint } = job.frame;
  const { height, lower } = railAxes(sides, laid, job);
  const { cables, terms } = layCables({ sides, own, legs, corners, kinks, posts }, { heights, height }, job);
  const rail = (one: Rail): GuardRail => ({ ...stiffnessOf(railMember(one, job)), joint: railJoint.value });
  const guard = guardFrame({
    posts: posts.map((one) => {
      const held = corners.some(({ guest, turn }) => guest === one && !isSquare(turn));
      const axis = Math.abs(Math.cos(one.direction - first.direction)) > Math.SQRT1_2 ? "x" : "y";
      return {
        station: stationOn(one, line),
        ...(one.datum === own[0]?.datum ? {} : { foot: one.datum - (own[0]?.datum ?? 0) }),
        ...(one.kind === "pier" ? rigidPost(one) : postStiffness(postMember(job, sectionOfPost(job, one.id)), axis, job)),
        ...(held ? { top: "fixed" as const } : {}),
      };
    }),
    height,
    topRail: rail(topRail),
    bottomRail: bottomRail === null ? null : { ...rail(bottomRail), height: lower, openBays: openBaysOf(posts, laid.sides) },
    cables,
  });
  const frames = sides.map((side) => ({ side, posts, guard, terms }));
  return { frames, outOfPlane: outOfPlaneOf(corners, { post, height, heights }, job) };
}

/** Bays between two posts that stand on no common side: at a corner or where the slope changes. */
const openBaysOf = (posts: readonly Vertical[], sides: readonly SidePlan[]): readonly number[] =>
  posts.slice(1).flatMap((right, bay) => {
    const left = posts[bay] ?? right;
    return sides.some(({ index }) => standsOn(left, index) && standsOn(right, index)) ? [] : [bay];
  });

/** Plumb heights of the rails' axes above the datum: of the level sides, or of the one that slopes least. */
function railAxes(sides: readonly SidePlan[], { opening, rakes }: Laid, job: Job): { readonly height: Mm; readonly lower: Mm } {
  const { topRail, bottomRail, gapBelow, onRakes } = job.frame;
  const side = sides.reduce<SidePlan | undefined>(
    (flattest, one) => (flattest === undefined || Math.abs(one.slope) < Math.abs(flattest.slope) ? one : flattest),
    undefined,
  );
  const slope = side?.slope ?? 0;
  const rake = rakes.find(({ sideId }) => sideId === side?.id);
  return {
    height: (rake?.opening ?? opening).top + alongSlope(topRail.depth, slope) / 2,
    lower: (rake === undefined ? gapBelow : onRakes.gapBelow.value) + alongSlope(bottomRail?.depth ?? 0, slope) / 2,
  };
}

/** Sides that go straight on from one to the next, only the slope changing, are one line. */
function linesOf(sides: readonly SidePlan[]): readonly (readonly SidePlan[])[] {
  const lines: SidePlan[][] = [];
  for (const side of sides) {
    const before = lines.at(-1)?.at(-1);
    if (before?.index === side.index - 1 && before.turn === 0 && before.ends === null) lines.at(-1)?.push(side);
    else lines.push([side]);
  }
  return lines;
}

/** What the planes of the sides leave out: at a corner that hardly turns, the push of the cable square to both. */
function outOfPlaneOf(
  corners: readonly TurnedCorner[],
  { post, height, heights }: { readonly post: FrameMember; readonly height: Mm; readonly heights: readonly Mm[] },
  job: Job,
): readonly OutOfPlane[] {
  // Its top is held by the rails, which meet there.
  const square = { station: 0, ...postStiffness(post, "y", job), top: "fixed" as const };
  return corners.flatMap(({ legs, turn, bend, corner, guest }) => {
    // One post takes both bends: of its push, 2 - 2 cos t squared, the planes of both sides hold (1 - cos t) squared each.
    const factor = corner === guest ? (1 - Math.cos(turn)) * Math.cos(turn) : (Math.sin(bend) * Math.cos(turn)) ** 2;
    if (factor < LEAST_factor) return [];
    const { flexibility } = lonePost({ post: square, height, heights });
    return legs.map((leg) => ({ index: leg.index, factor: leg.share * factor, flexibility }));
  });
}

const LEAST_factor = 1e-6;

const postStiffness = ({ section, modulus, shearShare }: FrameMember, axis: "x" | "y", job: Job): Omit<GuardPost, "station"> => ({
  E: modulus.value,
  A: section.area_mm2,
  I: section[axis].inertia_mm4,
  ...(shearShare === 0 ? {} : { GA: shearShare * modulus.value * section.area_mm2 }),
  base: baseStiffness(job).value,
});

/** Some thirty times as stiff as concrete: a pier does not move under the cables of a guard; whether it stands, an engineer says. */
const RIGID_modulus: Megapascal = 1e6;

const rigidPost = ({ along, across }: Vertical): Omit<GuardPost, "station"> => ({
  E: RIGID_modulus,
  A: along * across,
  I: (across * along ** 3) / 12,
  base: "fixed",
});

/** In the plane of the side a rail bends upright. */
const stiffnessOf = ({ section, modulus }: FrameMember): { readonly EA: number; readonly EI: number } => ({
  EA: modulus.value * section.area_mm2,
  EI: modulus.value * section.y.inertia_mm4,
});

/** Adds what the side's cables close. */
function addSide(
  { guard, terms }: SideFrame,
  flexibility: number[][],
  strains: { readonly deck: number[]; readonly rail: number[] },
): void {
  const { perDeckStrain, perRailStrain } = guard;
  const pieces = [...terms].flatMap(([number, own]) => own.map((piece) => ({ number, ...piece })));
  for (const one of pieces) {
    strains.deck[one.number] = (strains.deck[one.number] ?? 0) + one.part * (perDeckStrain.closing[one.cable] ?? 0);
    strains.rail[one.number] = (strains.rail[one.number] ?? 0) + one.part * (perRailStrain.closing[one.cable] ?? 0);
    const row = flexibility[one.number] ?? [];
    for (const other of pieces) {
      // The geometric mean keeps the matrix symmetric where pieces, or two runs on a side, have different shares.
      const closing = one.part * other.part * Math.sqrt(one.share * other.share) * (guard.flexibility[one.cable]?.[other.cable] ?? 0);
      row[other.number] = (row[other.number] ?? 0) + closing;
    }
  }
}

function addBend({ index, factor, flexibility: own }: OutOfPlane, count: number, flexibility: number[][]): void {
  for (let i = 0; i < count; i++) {
    const row = flexibility[index * count + i] ?? [];
    for (let j = 0; j < count; j++) row[index * count + j] = (row[index * count + j] ?? 0) + factor * (own[i]?.[j] ?? 0);
  }
}
