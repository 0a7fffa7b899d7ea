// What bends, shears and moves each post and presses on each rail, all cables at the top of their band on their hardest day?
import type { Job } from "../job/job.ts";
import { lonePost } from "../mechanics/coupling.ts";
import { alongPost, type PostState, type SideState } from "../mechanics/guard-frame.ts";
import type { NetSection, Section } from "../mechanics/section.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import { alongSlope } from "./corner-path.ts";
import { postsOn, supportsOn } from "./corner-post.ts";
import { inOwnAxes, type Pushed, withoutSign } from "./frame-check-axes.ts";
import { boresOfWorstCourse, builtOf, netOf } from "./frame-check-net.ts";
import type { Axis } from "./frame-check-strength.ts";
import { isSquare } from "./frame-corners.ts";
import { baseStiffness, postMember } from "./frame-members.ts";
import type { FrameGroup, SideFrame } from "./frames.ts";
import { stateOf } from "./movement.ts";
import { restOf } from "./pier.ts";
import type { Bore, Plan, SidePlan, Vertical } from "./plan.ts";
import { courseHeight, levelsOf } from "./set-off.ts";

export interface CheckInput extends Pick<Plan, "verticals" | "bores" | "sides" | "courses" | "opening" | "rakes" | "runs" | "climate"> {
  readonly groups: readonly FrameGroup[];
  readonly job: Job;
}

/** A height of a post with what the cables do there, without sign: x along its side, y square to it; of a post that stands turned, along its own axes. */
export interface PostPlace {
  readonly height: Mm;
  readonly isBored: boolean;
  readonly moment: Readonly<Record<Axis, number>>;
  readonly shear: Readonly<Record<Axis, Newton>>;
  /** Along the side; one post at a corner also moves along the other side, which counts where it is more. */
  readonly movement: Mm;
  readonly isAround: boolean;
}

export interface LoadedPost extends Pushed {
  readonly places: readonly PostPlace[];
  readonly whole: Section;
  /** At its bores, the same at every course. */
  readonly net: NetSection;
  /** Length of top rail whose load goes into this post, along the slope where its side slopes. */
  readonly tributary: Mm;
  /** What the cables pull its foot up with; 0 where they press it down. */
  readonly lift: Newton;
}

/** A rail between two posts. */
export interface LoadedBay {
  readonly sideId: string;
  readonly leftId: string;
  readonly rightId: string;
  /** Between the middles of its posts. */
  readonly length: Mm;
  /** Compression; 0 where the cables pull the rail. */
  readonly thrust: Newton;
  /** Greatest moment that stiff joints bring into its ends [N mm]. */
  readonly endMoment: number;
}

export interface FrameLoads {
  readonly posts: readonly LoadedPost[];
  readonly topRail: readonly LoadedBay[];
  readonly bottomRail: readonly LoadedBay[];
}

export function loadsOf(input: CheckInput): FrameLoads {
  const bores = boresOfWorstCourse(input);
  const sides = input.groups.flatMap((group) => sidesUnder(group, highPulls(group, input)));
  return {
    posts: sides.flatMap((side) => postsOf(side, bores, input)),
    topRail: sides.flatMap(({ frame, state }) => baysOf(frame, state, "topRail")),
    bottomRail: sides.flatMap(({ frame, state }) => baysOf(frame, state, "bottomRail")),
  };
}

/** The sides of a group under some pulls at the nuts of its cables, each with the others. */
export function sidesUnder(group: FrameGroup, pulls: readonly Newton[]): readonly SideUnder[] {
  const stated = group.sides.map((frame) => ({ frame, state: stateOf(frame, pulls), group, pulls }));
  return stated.map((one) => ({ ...one, neighbours: stated.filter(({ frame }) => frame.guard !== one.frame.guard) }));
}

/** Every cable at the top of its band, with what the hardest day adds. */
export const highPulls = (group: FrameGroup, { runs, climate }: Pick<CheckInput, "runs" | "climate">): readonly Newton[] =>
  group.runs.flatMap(({ id }) => {
    const high = runs.find((run) => run.id === id)?.tension.high ?? 0;
    const added = climate.find(({ runId }) => runId === id)?.hardest.each ?? [];
    return group.courses.map((_, course) => high + (added[course] ?? 0));
  });

interface Stated {
  readonly frame: SideFrame;
  readonly state: SideState;
  readonly group: FrameGroup;
  readonly pulls: readonly Newton[];
}

export interface SideUnder extends Stated {
  readonly neighbours: readonly Stated[];
}

function postsOf(side: SideUnder, bores: ReadonlyMap<string, readonly Bore[]>, input: CheckInput): readonly LoadedPost[] {
  const { job, courses } = input;
  const { frame } = side;
  const { guard } = frame;
  const joints = [0, ...(guard.input.bottomRail === null ? [] : [guard.input.bottomRail.height]), guard.input.height];
  const own = postsOn(frame.side.index, frame.posts);
  return own.flatMap((post, nth): readonly LoadedPost[] => {
    // One post at a corner is looked at once, on the side that ends at it.
    if (post.corner?.nextIndex === frame.side.index) return [];
    const section = sectionOfPost(job, post.id);
    const whole = postMember(job, section).section;
    const forces = forcesIn(post, side, job);
    const place =
      (isBored: boolean) =>
      (height: Mm): PostPlace => {
        const { along, across, around } = forces(height);
        const moment = inOwnAxes({ x: along.moment, y: across.moment }, post);
        const shear = inOwnAxes({ x: along.shear, y: across.shear }, post);
        const isAround = Math.abs(around) > Math.abs(along.movement);
        const movement = isAround ? around : along.movement;
        return { height, isBored, moment: withoutSign(moment), shear: withoutSign(shear), movement, isAround };
      };
    const cut = bores.get(post.id) ?? [];
    // A corner post behind which the runs of both its sides end is bored at the heights of both.
    const heights = courses.flatMap((course) => (post.corner?.isSetOff === true ? levelsOf(course) : [courseHeight(course, frame.side)]));
    const loaded: LoadedPost = {
      post,
      places: [...joints.map(place(false)), ...heights.map(place(cut.length > 0))],
      whole,
      net: netOf(whole, cut, builtOf(section, post)),
      tributary: tributaryOf(own, nth, frame.side) + aroundCorner(post, side),
      lift: Math.max(0, 0 - (side.state.baseThrust[frame.posts.indexOf(post)] ?? 0)),
      sharing: own.length,
      sharingNext: postsOn(post.corner?.nextIndex ?? frame.side.index, input.verticals).length,
    };
    return [loaded];
  });
}

/** What a post of a side takes at a height, with its sign: along the side and square to it. */
export function forcesIn(
  post: Vertical,
  side: SideUnder,
  job: Job,
): (height: Mm) => { readonly along: PostState; readonly across: Across; readonly around: Mm } {
  const { guard, posts } = side.frame;
  const along = alongPost(
    guard,
    side.state,
    posts.findIndex(({ id }) => id === post.id),
  );
  const square = squareTo(post, side, job);
  const around = movementAround(post, side);
  return (height) => ({ along: along(height), across: square(height), around: around(height) });
}

/** How far one post at a corner moves along the other side. */
function movementAround({ id, corner }: Vertical, { neighbours }: SideUnder): (height: Mm) => Mm {
  const host = neighbours.find(({ frame }) => frame.posts.some((post) => post.id === id));
  if (corner === undefined || host === undefined) return () => 0;
  const { guard, posts } = host.frame;
  const along = alongPost(
    guard,
    host.state,
    posts.findIndex((post) => post.id === id),
  );
  return (height) => along(Math.min(height, guard.input.height)).movement;
}

/**
 * Half of each bay beside it; an end post also what lies beyond it. A load per length stands along the top rail, so it is measured along
 * the slope (ASCE 7-16, 4.5.1.1, from memory: "along the handrail or top rail").
 */
function tributaryOf(own: readonly Vertical[], nth: number, { length, slope }: SidePlan): Mm {
  const station = own[nth]?.station ?? 0;
  const [before, after] = [own[nth - 1]?.station, own[nth + 1]?.station];
  const level =
    (before === undefined ? station : (station - before) / 2) + (after === undefined ? length - station : (after - station) / 2);
  return alongSlope(level, slope);
}

/** One post at a corner also bears half of the first bay of the other side. */
function aroundCorner({ id }: Vertical, { frame, neighbours }: SideUnder): Mm {
  const host = neighbours.find(({ frame: { posts } }) => posts.some((post) => post.id === id && post.corner !== undefined));
  if (host === undefined) return 0;
  const own = postsOn(host.frame.side.index, host.frame.posts);
  const nth = own.findIndex((post) => post.id === id);
  return nth < 0 || frame.side.index === host.frame.side.index ? 0 : tributaryOf(own, nth, host.frame.side);
}

interface Across {
  readonly moment: number;
  readonly shear: Newton;
}

const STRAIGHT = (): Across => ({ moment: 0, shear: 0 });

/** What the turn of the cables does to a post square to its side. */
function squareTo(post: Vertical, { frame, group, pulls, neighbours }: SideUnder, job: Job): (height: Mm) => Across {
  const host = neighbours.find(({ frame: { posts } }) => posts.some(({ id }) => id === post.id));
  if (host === undefined) return STRAIGHT;
  // At a right angle the neighbour's plane is the plane square to this side, and the post stands in its frame.
  if (isSquare(host.frame.side.direction - frame.side.direction)) {
    const guest = host.frame.posts.findIndex(({ id }) => id === post.id);
    const along = alongPost(host.frame.guard, host.state, guest);
    // The rail of a side that slopes lies a little lower or higher than its neighbour's.
    return (height) => along(Math.min(height, host.frame.guard.input.height));
  }
  const count = group.courses.length;
  const pushes = group.courses.map((_, course) =>
    group.runs.reduce((sum, run, index) => {
      const turn = run.bends.filter(({ postId }) => postId === post.id).reduce((angle, bend) => angle + bend.angle, 0);
      const cable = index * count + course;
      const share = Math.max(0, ...(frame.terms.get(cable) ?? []).map((piece) => piece.share));
      return sum + share * (pulls[cable] ?? 0) * Math.sin(turn);
    }, 0),
  );
  return heldAtTop(frame, pushes, group, { job, post });
}

/** A post whose top the rails hold, which meet there, pushed square to its side at every course. */
function heldAtTop(
  frame: SideFrame,
  pushes: readonly Newton[],
  { courses }: FrameGroup,
  { job, post }: { readonly job: Job; readonly post: Vertical },
): (height: Mm) => Across {
  const { section, modulus, shearShare } = postMember(job, sectionOfPost(job, post.id));
  const heights = courses.map((course) => courseHeight(course, frame.side));
  const { baseMoment, baseShear } = lonePost({
    post: {
      station: 0,
      E: modulus.value,
      A: section.area_mm2,
      I: section.y.inertia_mm4,
      ...(shearShare === 0 ? {} : { GA: shearShare * modulus.value * section.area_mm2 }),
      base: baseStiffness(job).value,
      top: "fixed",
    },
    height: frame.guard.input.height,
    heights,
  });
  const sum = (of: readonly number[]): number => pushes.reduce((total, push, course) => total + push * (of[course] ?? 0), 0);
  const [foot, shear] = [sum(baseMoment), sum(baseShear)];
  return (height) => {
    const below = pushes.map((push, course) => ({ push, at: heights[course] ?? 0 })).filter(({ at }) => at < height);
    return {
      moment: below.reduce((moment, { push, at }) => moment + push * (height - at), foot - shear * height),
      shear: below.reduce((rest, { push }) => rest - push, shear),
    };
  };
}

/** Moments at both ends of each piece of the rail in a bay between posts, which stiff joints bring into it, with their sign [N mm]. */
export const railEndMoments = (
  { guard }: SideFrame,
  { response }: SideState,
  { rail, bay }: { readonly rail: "topRail" | "bottomRail"; readonly bay: number },
): readonly number[] =>
  (guard.built[rail][bay] ?? []).flatMap((member) => [2, 5].map((place) => response.memberForces[member]?.[place] ?? 0));

function baysOf(frame: SideFrame, state: SideState, rail: "topRail" | "bottomRail"): readonly LoadedBay[] {
  const { posts, guard, side } = frame;
  const own = supportsOn(side.index, posts);
  const thrusts = rail === "topRail" ? state.topRailThrust : state.bottomRailThrust;
  // Less than the dust of the solution is no thrust, and no moment.
  const most = Math.max(...thrusts.map((one) => Math.abs(one)));
  return thrusts.flatMap((thrust, bay): readonly LoadedBay[] => {
    const [left, right] = [posts[bay], posts[bay + 1]].map((post) => own.find(({ id }) => id === post?.id));
    if (left === undefined || right === undefined) return [];
    const endMoment = Math.max(...railEndMoments(frame, state, { rail, bay }).map((moment) => Math.abs(moment)));
    return [
      {
        sideId: side.id,
        leftId: left.id,
        rightId: right.id,
        length: alongSlope(restOf(right) - restOf(left), side.slope),
        thrust: thrust > DUST_share * most ? thrust : 0,
        endMoment: endMoment > DUST_share * most * guard.input.height ? endMoment : 0,
      },
    ];
  });
}

const DUST_share = 1e-6;
