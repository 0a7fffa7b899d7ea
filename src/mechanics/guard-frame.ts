// By how much does each cable of a side draw the anchors of every other together, and what does it do to posts and rails?
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import { alongMember, type PlaceState, solveFrame } from "./frame.ts";
import type { FrameResponse, LoadCase } from "./frame-model.ts";
import { pick } from "./frame-pick.ts";
import { superpose } from "./frame-sum.ts";
import { type BuiltFrame, buildFrame, type GuardFrameInput, partsOf, placeOn, unitCases } from "./guard-frame-build.ts";
import { topOf } from "./solve.ts";

/** What one side does under some load. Along the side, towards greater stations is positive. */
export interface SideState {
  readonly load: LoadCase;
  readonly response: FrameResponse;
  /** Of each cable, by how much its anchors come together. */
  readonly closing: readonly Mm[];
  /** Movement of each cable's anchors, of each further load's place, of each post's top. */
  readonly anchor_left: readonly Mm[];
  readonly anchor_right: readonly Mm[];
  readonly loaded: readonly Mm[];
  readonly top: readonly Mm[];
  /** Of each post: moment that bends it towards greater stations [N mm], horizontal force that it hands down, thrust that it stands on. */
  readonly baseMoment: readonly number[];
  readonly baseShear: readonly Newton[];
  readonly baseThrust: readonly Newton[];
  /** Of each bay, compression positive, 0 where no piece of the rail stands; empty without a rail. */
  readonly topRailThrust: readonly Newton[];
  readonly bottomRailThrust: readonly Newton[];
}

export interface GuardFrame {
  readonly input: GuardFrameInput;
  readonly built: BuiltFrame;
  /** F: closing of cable i (row) per unit pull of cable j (column) [mm/N]. */
  readonly flexibility: readonly (readonly number[])[];
  /** Closing of cable i (row) per unit of further load j (column) [mm/N]. */
  readonly closingPerLoad: readonly (readonly number[])[];
  /** All that 1 N of each cable does, 1 N of each further load, and a strain of 1 of the deck or of all rails. */
  readonly perPull: readonly SideState[];
  readonly perLoad: readonly SideState[];
  readonly perDeckStrain: SideState;
  readonly perRailStrain: SideState;
}

/**
 * The frame of one side, solved once for a unit pull of each cable and each further load: F_ij = x(left anchor of i) - x(right anchor of i)
 * when cable j pulls with 1 N, and where its bends push along the side, that movement too. Whatever the tensions are, its answer is the sum of these times the tensions. The plane of the side alone: a
 * corner post stands in the frames of both sides, and its two planes do not disturb each other when its section has the same axes.
 *
 * @param input - posts [mm, MPa, mm2, mm4, N, N mm/rad], rails [N, N mm2], blocks, cables and loads [mm]
 * @returns flexibility [mm/N] and the answer to each unit load [mm, N, N mm]
 * @throws RangeError when places are off the posts, the frame can move freely or its forces do not balance
 * Source: derived, unit loads by direct stiffness; reference-frame
 */
export function guardFrame(input: GuardFrameInput): GuardFrame {
  const built = buildFrame(input);
  const cases = unitCases(built, input);
  const responses = solveFrame(built.frame, cases);
  const states = cases.map((load, index) => describe(input, built, { load, response: pick(responses, index) }));
  const [n, m] = [input.cables.length, cases.length - 2];
  const [perPull, perLoad] = [states.slice(0, n), states.slice(n, m)];
  const rows = (columns: readonly SideState[]): readonly (readonly number[])[] =>
    input.cables.map((_, row) => columns.map(({ closing }) => pick(closing, row)));
  return {
    input,
    built,
    flexibility: rows(perPull),
    closingPerLoad: rows(perLoad),
    perPull,
    perLoad,
    perDeckStrain: pick(states, m),
    perRailStrain: pick(states, m + 1),
  };
}

/**
 * What a side does under given tensions, further loads and strains: the sum of its unit answers times these.
 *
 * @param guard - the solved side [mm/N]
 * @param under - tension of each cable [N], size of each further load [N], strain of the deck and of the rails [ratio]
 * @returns movements [mm], base forces [N, N mm] and thrust of the rails [N]
 * @throws RangeError when there are not as many tensions as cables or sizes as further loads
 * Source: derived, superposition
 */
export function sideState(
  guard: GuardFrame,
  under: {
    readonly tensions: readonly Newton[];
    readonly loads?: readonly Newton[];
    readonly deckStrain?: number;
    readonly railStrain?: number;
  },
): SideState {
  const { tensions, loads = guard.perLoad.map(() => 0), deckStrain = 0, railStrain = 0 } = under;
  if (tensions.length !== guard.perPull.length) throw new RangeError(`${tensions.length} tensions for ${guard.perPull.length} cables`);
  if (loads.length !== guard.perLoad.length) throw new RangeError(`${loads.length} sizes for ${guard.perLoad.length} loads`);
  const units = [...guard.perPull, ...guard.perLoad, guard.perDeckStrain, guard.perRailStrain];
  const factors = [...tensions, ...loads, deckStrain, railStrain];
  const parts = units.map(({ load, response }, index) => ({ load, response, factor: pick(factors, index) }));
  return describe(guard.input, guard.built, superpose(parts));
}

/** A place on a post under a load of the side. */
export interface PostState {
  /** Along the side, towards greater stations. */
  readonly movement: Mm;
  /** Positive where the post leans towards greater stations. */
  readonly lean: Radian;
  /** Moment that bends the post towards greater stations [N mm]. */
  readonly moment: number;
  /** Force that the part above hands down, towards greater stations; at a point load, as just below it. */
  readonly shear: Newton;
  readonly thrust: Newton;
}

/**
 * Movement and forces along a post, exact under the loads that act on it.
 *
 * @param guard - the solved side [mm/N]
 * @param state - what it does under some load [mm, N, N mm]
 * @param post - number of the post [count]
 * @returns of a height over the base [mm], the movement [mm], lean [rad], moment [N mm], shear and thrust [N]; a height off the post is
 *   refused
 * @throws RangeError when there is no such post
 * Source: derived, method of initial parameters
 */
export function alongPost(guard: GuardFrame, state: SideState, post: number): (height: Mm) => PostState {
  const at = heightReader(guard.built, state);
  return (height) => {
    const { x, rotation, moment, shear, tension } = at(post, height);
    return { movement: x, lean: 0 - rotation, moment: 0 - moment, shear, thrust: 0 - tension };
  };
}

/**
 * The largest movement of a post to one side and its height: of each stretch between loads and rails the top of the curve.
 *
 * @param guard - the solved side [mm/N]
 * @param state - what it does under some load [mm, N, N mm]
 * @param options - number of the post [count], towards greater stations +1 or lesser -1 [sign]
 * @returns movement to that side [mm] and height over the base [mm]
 * @throws RangeError when there is no such post
 * Source: derived, golden section search on the exact curve
 */
export function largestMovement(
  guard: GuardFrame,
  state: SideState,
  { post, towards }: { readonly post: number; readonly towards: 1 | -1 },
): { readonly movement: Mm; readonly height: Mm } {
  const along = alongPost(guard, state, post);
  const { pieces } = pick(guard.built.posts, post, "post");
  const loads = state.load.onMembers ?? [];
  const marks = pieces.flatMap(({ member, from, to }) => [
    from,
    ...loads.flatMap((load) => (load.member === member ? [from + load.at] : [])),
    to,
  ]);
  const heights = [...new Set(marks)].sort((one, other) => one - other);
  const of = (height: Mm): Mm => towards * along(height).movement;
  const tops = heights.slice(1).map((high, index) => topOf({ of, low: pick(heights, index), high }));
  const height = tops.reduce((best, one) => (of(one) > of(best) ? one : best), 0);
  // Nothing to the other side is not printed as minus nothing.
  return { movement: 0 + of(height), height };
}

/** Reads places of posts, each member laid once. */
function heightReader(
  built: BuiltFrame,
  { load, response }: Pick<SideState, "load" | "response">,
): (post: number, height: Mm) => PlaceState {
  const readers: ((at: Mm) => PlaceState)[] = [];
  return (post, height) => {
    const { member, at } = placeOn(built, post, height);
    const reader = readers[member] ?? alongMember({ frame: built.frame, load, response }, member, built.laid[member]);
    readers[member] = reader;
    return reader(at);
  };
}

/** Reads what a side is asked for out of the answer of its frame. */
function describe(input: GuardFrameInput, built: BuiltFrame, solved: Pick<SideState, "load" | "response">): SideState {
  const { response } = solved;
  const at = heightReader(built, solved);
  const movement = (post: number, height: Mm): Mm => at(post, height).x;
  /** Along a cable that leaves its anchor at a slope. */
  const drawn = (post: number, height: Mm, slope: Radian | undefined): Mm => {
    const [place, { cos, sin }] = [at(post, height), partsOf(slope)];
    return cos * place.x + sin * place.y;
  };
  const anchor_left = input.cables.map(({ left, height }) => movement(left, height));
  const anchor_right = input.cables.map(({ right, height }) => movement(right, height));
  const bases = built.posts.map(({ base }) => pick(response.reactions, base));
  const feet = built.posts.map(({ pieces }) => pick(response.memberForces, pick(pieces, 0).member));
  const thrusts = (rail: readonly (readonly number[])[]): readonly Newton[] => {
    if (rail.every((pieces) => pieces.length === 0)) return [];
    return rail.map(([first]) => (first === undefined ? 0 : pick(pick(response.memberForces, first), 0)));
  };
  return {
    load: solved.load,
    response,
    closing: input.cables.map(({ pushes = [], left, right, height: own, slope_left, slope_right }, cable) => {
      const isLevel = (slope_left ?? 0) === 0 && (slope_right ?? 0) === 0;
      let sum = isLevel
        ? (anchor_left[cable] as Mm) - (anchor_right[cable] as Mm)
        : drawn(left, own, slope_left) - drawn(right, own, slope_right);
      for (const { post, height, factor, factor_up = 0 } of pushes) {
        sum += factor * movement(post, height);
        if (factor_up !== 0) sum += factor_up * at(post, height).y;
      }
      return sum;
    }),
    anchor_left,
    anchor_right,
    loaded: (input.loads ?? []).map(({ post, height }) => movement(post, height)),
    top: built.posts.map(({ top }) => pick(response.nodes, top).x),
    baseMoment: feet.map((forces) => pick(forces, 2)),
    baseShear: bases.map(({ x }) => 0 - x),
    baseThrust: bases.map(({ y }) => y),
    topRailThrust: thrusts(built.topRail),
    bottomRailThrust: thrusts(built.bottomRail),
  };
}
