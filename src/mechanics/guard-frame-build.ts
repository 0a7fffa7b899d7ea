// Which nodes and members make the frame of one side of a guard, and what pulls on it?
import type { AxialStiffness, Megapascal, Mm, Newton, Radian } from "../units/quantity.ts";
import { type FrameMember, type LaidMember, layMember } from "./frame-member.ts";
import type { Frame, FrameNode, Hold, LoadCase } from "./frame-model.ts";
import { pick } from "./frame-pick.ts";

export interface GuardPost {
  /** Along the side. */
  readonly station: Mm;
  /** Its base above a level that all posts share; heights are counted from the base. 0 where left out. */
  readonly foot?: Mm;
  readonly E: Megapascal;
  /** Area [mm2] and second moment [mm4] against bending in the plane of the side. */
  readonly A: number;
  readonly I: number;
  /** Shear modulus times shear area; left out, shear does not deform the post. */
  readonly GA?: Newton;
  /** Rotational stiffness of the base [N mm/rad], or fixed. The base never slides or sinks. */
  readonly base: Hold;
  /** What holds the top along the side besides the rail: a wall, or a spring [N/mm]. */
  readonly top?: Hold;
}

export interface GuardRail {
  /** "rigid" does not give along its axis. */
  readonly EA: AxialStiffness | "rigid";
  /** Bending stiffness in the plane of the side [N mm2]; 0 for bars from post to post, hinged at both ends. */
  readonly EI: number;
  readonly joint: "pinned" | "rigid";
}

/** A cable by the numbers of the posts on which it is anchored. */
export interface GuardCable {
  readonly left: number;
  readonly right: number;
  readonly height: Mm;
  /** Above level, from left to right, where it leaves its left anchor and where it reaches its right one; 0 where left out. */
  readonly slope_left?: Radian;
  readonly slope_right?: Radian;
  /** What its bends push along the side, towards greater stations, per unit of its tension. */
  readonly pushes?: readonly GuardPush[];
}

/** Along the side, level, and upwards. */
export interface GuardPush {
  readonly post: number;
  readonly height: Mm;
  readonly factor: number;
  readonly factor_up?: number;
}

export interface GuardFrameInput {
  /** From left to right; those that no rail joins are left out. */
  readonly posts: readonly GuardPost[];
  /** Of the top rail's axis over the bases; without a rail, of the tops of the posts. */
  readonly height: Mm;
  /** Runs over the posts without a joint. */
  readonly topRail: GuardRail | null;
  /** Pieces from post to post, but for the bays, by the number of the post on their left, in which none stands. */
  readonly bottomRail: (GuardRail & { readonly height: Mm; readonly openBays?: readonly number[] }) | null;
  /** Stations of blocks that carry the bottom rail between posts. */
  readonly blocks?: readonly Mm[];
  readonly cables: readonly GuardCable[];
  /** Further unit loads along the side, towards greater stations: the reaction of a bend, of another run, the load on a guard's top. */
  readonly loads?: readonly { readonly post: number; readonly height: Mm }[];
}

/** The frame of one side and where its parts are in it. */
export interface BuiltFrame {
  readonly frame: Frame;
  /** Its members in their places. */
  readonly laid: readonly LaidMember[];
  /** For each post, its base and top among the nodes and its pieces among the members, from below. */
  readonly posts: readonly {
    readonly base: number;
    readonly top: number;
    readonly pieces: readonly { readonly member: number; readonly from: Mm; readonly to: Mm }[];
  }[];
  /** For each bay, the pieces of the rail among the members. */
  readonly topRail: readonly (readonly number[])[];
  readonly bottomRail: readonly (readonly number[])[];
}

/**
 * Parts of a pull of 1 at an anchor of a cable: level and upwards.
 *
 * @param slope - of the cable above level there; nothing for a level one [rad]
 * @returns cosine and sine [ratio]
 * @throws never
 * Source: derived, right triangle
 */
export const partsOf = (slope: Radian = 0): { readonly cos: number; readonly sin: number } => ({
  cos: Math.cos(slope),
  sin: Math.sin(slope),
});

/** How much stiffer than the posts a rail is that does not give: it gives some millionths of what they do, and doubles still tell both. */
const RIGID_ratio = 1e7;

/**
 * The plane frame of one side, level or on a slope: plumb posts on their bases, top rail continuous over the posts (pinned: shares the movement of a post's top but
 * not its rotation; rigid: shares both), bottom rail in pieces from post to post where its bays are not open, blocks as props of it that
 * stand still.
 *
 * @param input - posts [mm, MPa, mm2, mm4, N, N mm/rad], height [mm], rails [N, N mm2], blocks [mm]
 * @returns nodes [mm] and members [N, N mm2], and where the parts are among them [count]
 * @throws RangeError when posts do not rise from left to right, the bottom rail lies outside the posts or a block stands off it
 * Source: derived, model of one side; docstring of each part
 */
export function buildFrame(input: GuardFrameInput): BuiltFrame {
  checkPlaces(input);
  const nodes: FrameNode[] = [];
  const members: FrameMember[] = [];
  const node = (one: FrameNode): number => nodes.push(one) - 1;
  const member = (one: FrameMember): number => members.push(one) - 1;
  const { topRail, bottomRail, height } = input;
  const posts = input.posts.map((post) => {
    const { station: x, foot = 0, E, A, I, GA, base: hold, top: prop } = post;
    const base = node({ x, y: foot, support: { x: "fixed", y: "fixed", rotation: hold } });
    const middle = bottomRail === null ? null : node({ x, y: foot + bottomRail.height });
    const top = node({ x, y: foot + height, ...(prop === undefined ? {} : { support: { x: prop } }) });
    const stiffness = { EA: E * A, EI: E * I, GA };
    const upper = { ...stiffness, to: top, hingedTo: topRail?.joint === "pinned" };
    if (bottomRail === null || middle === null)
      return { base, top, middle, pieces: [{ member: member({ ...upper, from: base }), from: 0, to: height }] };
    const pieces = [
      { member: member({ ...stiffness, from: base, to: middle }), from: 0, to: bottomRail.height },
      { member: member({ ...upper, from: middle }), from: bottomRail.height, to: height },
    ];
    return { base, top, middle, pieces };
  });
  const bays = posts.slice(1).map((right, index) => ({ left: pick(posts, index), right }));
  const topPieces = bays.map(({ left, right }) => {
    if (topRail === null) return [];
    return [member({ from: left.top, to: right.top, EA: axial(topRail, input), EI: topRail.EI, ...bar(topRail) })];
  });
  const bottomPieces = bays.map(({ left, right }, bay) => {
    if (bottomRail === null || left.middle === null || right.middle === null || isOpen(bottomRail, bay)) return [];
    const [start, finish] = [pick(nodes, left.middle), pick(nodes, right.middle)];
    const [from, to] = [start.x, finish.x];
    const heightAt = (x: Mm): Mm => start.y + ((finish.y - start.y) * (x - from)) / (to - from);
    const props = [...new Set(input.blocks)].filter((at) => at > from && at < to).sort((one, other) => one - other);
    const on = props.map((x) => node({ x, y: heightAt(x), support: { y: "fixed" } }));
    const along = [left.middle, ...on, right.middle];
    return along.slice(1).map((end, index) => {
      const [atPost, toPost] = [index === 0, index === on.length].map((ends) => ends && bottomRail.joint === "pinned");
      const hinges = bottomRail.EI === 0 ? bar(bottomRail) : { hingedFrom: atPost === true, hingedTo: toPost === true };
      return member({ from: pick(along, index), to: end, EA: axial(bottomRail, input), EI: bottomRail.EI, ...hinges });
    });
  });
  const laid = members.map((one) => layMember(one, { from: pick(nodes, one.from), to: pick(nodes, one.to) }));
  return { frame: { nodes, members }, laid, posts, topRail: topPieces, bottomRail: bottomPieces };
}

const isOpen = ({ openBays = [] }: Pick<NonNullable<GuardFrameInput["bottomRail"]>, "openBays">, bay: number): boolean =>
  openBays.includes(bay);

/** A rail without bending stiffness is a row of bars. */
const bar = ({ EI }: GuardRail): { readonly hingedFrom: boolean; readonly hingedTo: boolean } => ({
  hingedFrom: EI === 0,
  hingedTo: EI === 0,
});

function axial({ EA }: GuardRail, { posts, height }: GuardFrameInput): AxialStiffness {
  if (EA !== "rigid") return EA;
  const [first, last] = [pick(posts, 0).station, pick(posts, posts.length - 1).station];
  const stiffest = Math.max(...posts.map(({ E, I }) => (E * I) / height ** 3));
  return RIGID_ratio * stiffest * (last - first);
}

function checkPlaces({ posts, height, bottomRail, blocks = [] }: GuardFrameInput): void {
  for (const [index, post] of posts.slice(1).entries()) {
    if (!(post.station > pick(posts, index).station))
      throw new RangeError(`post ${index + 1} does not stand to the right of post ${index}`);
  }
  if (bottomRail !== null && !(bottomRail.height > 0 && bottomRail.height < height)) {
    throw new RangeError(`the bottom rail at ${bottomRail.height} mm is not between the bases and ${height} mm`);
  }
  for (const at of blocks) {
    const bay = posts.findLastIndex(({ station }) => station < at);
    const stands = bottomRail !== null && bay >= 0 && bay < posts.length - 1 && !isOpen(bottomRail, bay);
    if (!stands || posts.some(({ station }) => station === at))
      throw new RangeError(`the block at ${at} mm stands under no piece of a bottom rail`);
  }
}

/**
 * Member and distance from its first node of a place on a post.
 *
 * @param built - the frame of the side [mm]
 * @param post - number of the post [count]
 * @param height - over the base [mm]
 * @returns member [count] and distance [mm]
 * @throws RangeError when there is no such post or the height lies off it
 * Source: derived, look-up
 */
export function placeOn(built: BuiltFrame, post: number, height: Mm): { readonly member: number; readonly at: Mm } {
  const { pieces } = pick(built.posts, post, "post");
  const piece = pieces.find(({ to }) => height <= to);
  if (piece === undefined || !(height >= 0)) throw new RangeError(`height ${height} mm is not on post ${post}`);
  // On a slope the difference of two heights may end a rounding short of the height itself.
  const { from, to } = pick(built.frame.members, piece.member);
  const length = pick(built.frame.nodes, to).y - pick(built.frame.nodes, from).y;
  return { member: piece.member, at: Math.min(height - piece.from, length) };
}

/**
 * Unit load cases of a side, in the order of its flexibilities: each cable pulling its two posts together with 1 N, each further load
 * with 1 N towards greater stations, the deck longer by 1 mm in 1 mm (bases apart, along the slope), the rails longer by 1 mm in 1 mm.
 *
 * @param built - the frame of the side [mm]
 * @param input - stations of its posts [mm], heights of cables [mm] and of further loads [mm]
 * @returns load cases [N, mm, ratio]
 * @throws RangeError when a cable or load names no post, runs from right to left or lies off its post
 * Source: derived, unit loads
 */
export function unitCases(built: BuiltFrame, input: GuardFrameInput): readonly LoadCase[] {
  const { posts, cables, loads = [] } = input;
  const up = (share: number): { readonly y?: number } => (share === 0 ? {} : { y: share });
  const pulls = cables.map(({ left, right, height, slope_left, slope_right, pushes: own = [] }) => {
    if (!(left < right)) throw new RangeError(`a cable runs from post ${left} to post ${right}: not from left to right`);
    const [away, towards] = [partsOf(slope_left), partsOf(slope_right)];
    return {
      onMembers: [
        { ...placeOn(built, left, height), x: away.cos, ...up(away.sin) },
        { ...placeOn(built, right, height), x: -towards.cos, ...up(-towards.sin) },
        ...own.map((push) => ({ ...placeOn(built, push.post, push.height), x: push.factor, ...up(push.factor_up ?? 0) })),
      ],
    };
  });
  const pushes = loads.map(({ post, height }) => ({ onMembers: [{ ...placeOn(built, post, height), x: 1 }] }));
  const { station, foot: level = 0 } = pick(posts, 0, "post");
  const settlements = posts.flatMap((post, index) => {
    const x = post.station - station;
    const { base, top } = pick(built.posts, index);
    // What holds a top stands on the same deck.
    return post.top === "fixed"
      ? [
          { node: base, x, ...up((post.foot ?? 0) - level) },
          { node: top, x },
        ]
      : [{ node: base, x, ...up((post.foot ?? 0) - level) }];
  });
  const deck = { settlements };
  const rails = { strains: [...built.topRail, ...built.bottomRail].flat().map((member) => ({ member, strain: 1 })) };
  return [...pulls, ...pushes, deck, rails];
}
