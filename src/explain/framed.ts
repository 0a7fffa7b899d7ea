// How does an explanation get at what acts on posts and rails: the influence of each cable, and the code's load?
import { inOwnAxes, isTurned } from "../plan/frame-check-axes.ts";
import { type Push, pushNames, type TopLoad } from "../plan/frame-check-guard.ts";
import { forcesIn, type LoadedBay, type LoadedPost, type SideUnder, sidesUnder } from "../plan/frame-check-loads.ts";
import { alone, loadsText, type PostQuestion, type Situation, withLoads } from "../plan/frame-check-post.ts";
import { memberName, type RailQuestion } from "../plan/frame-check-rail.ts";
import { CABLES_ALONE } from "../plan/frame-check-row.ts";
import type { Axis } from "../plan/frame-check-strength.ts";
import { type FrameQuestions, questionsOf } from "../plan/frame-checks.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import type { FrameGroup } from "../plan/frames.ts";
import type { Plan, Vertical } from "../plan/plan.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Input, Kind } from "./trace.ts";

/** The frame as its checks look at it, with each side under 1 N at the nut of each cable. */
export interface Framed extends FrameQuestions {
  readonly groups: readonly FrameGroup[];
  /** One entry a cable of the group. */
  readonly units: (group: FrameGroup) => readonly (readonly SideUnder[])[];
}

/** Made once for each reader. */
const made = new WeakMap<Reader, Framed>();

export function framedOf(reader: Reader): Framed {
  const before = made.get(reader);
  if (before !== undefined) return before;
  const framed = makeFramed(reader.plan, reader.groups());
  made.set(reader, framed);
  return framed;
}

function makeFramed(plan: Plan, groups: readonly FrameGroup[]): Framed {
  const known = new Map<FrameGroup, readonly (readonly SideUnder[])[]>();
  return {
    ...questionsOf({ ...plan, groups }),
    groups,
    units: (group) => {
      const before = known.get(group);
      if (before !== undefined) return before;
      const cables = group.cableFlexibility;
      const units = cables.map((_, own) =>
        sidesUnder(
          group,
          cables.map((__, cable) => (cable === own ? 1 : 0)),
        ),
      );
      known.set(group, units);
      return units;
    },
  };
}

/** A part of a formula with the inputs that it names. */
export interface Term {
  readonly text: string;
  readonly inputs: readonly Input[];
}

/** Nothing acts so. */
export const nothing = (symbol: string, what: string, kind: Kind): Term => ({ text: symbol, inputs: [given(symbol, what, 0, kind)] });

const solver = derived("plane frame by direct stiffness, one unit load after the other");

export interface Influence {
  readonly symbol: string;
  readonly what: string;
  readonly kind: Kind;
  /** What one cable does per newton at its nut. */
  readonly read: (sides: readonly SideUnder[]) => number;
}

/** Sum over the cables of a group: influence times the top of the band and what the hardest day adds. */
export function superposed(reader: Reader, group: FrameGroup, { symbol, what, kind, read }: Influence): Term {
  const units = framedOf(reader).units(group).map(read);
  return {
    text: `dot(${symbol}, h) + dot(${symbol}, g)`,
    inputs: [given(symbol, `${what}, per newton at the nut of each cable on this frame`, units, kind, solver), ...highPulls(reader, group)],
  };
}

const highPulls = ({ all }: Reader, { runs, courses }: FrameGroup): readonly Input[] => [
  all(
    "h",
    "top of the band of each cable on this frame",
    runs.flatMap(({ id }) => courses.map(() => `runs.${id}.tension.high`)),
  ),
  all(
    "g",
    "what the hardest day of the year adds to it",
    runs.flatMap(({ id }) => courses.map((_, nth) => `climate.${id}.hardest.each[${nth}]`)),
  ),
];

export const groupOfSide = (reader: Reader, sideId: string): FrameGroup =>
  must(
    framedOf(reader).groups.find(({ sides }) => sides.some(({ side }) => side.id === sideId)),
    `frame of side ${sideId}`,
  );

export type PostForce = "moment" | "shear" | "movement";

const forceWords: Readonly<Record<PostForce, readonly [what: string, kind: Kind]>> = {
  moment: ["moment", "length"],
  shear: ["shear", "share"],
  movement: ["movement", "flexibility"],
};

/** A post that makes a corner and stands turned bends along its own axes. */
const axisWords = (post: Vertical, axis: Axis): string => {
  if (!isTurned(post)) return axis === "x" ? "along the side" : "square to it";
  return `${axis === "x" ? "square to" : "along"} its own face that looks to side ${post.corner?.homeId}, the parts of both sides together`;
};
const axisSymbols: Readonly<Record<Axis, string>> = { x: "f", y: "k" };

/** What the cables do to a post at a height, without its sign. */
export function ofCables(
  reader: Reader,
  { post, places }: LoadedPost,
  of: { readonly force: PostForce; readonly axis: Axis; readonly height: number },
): Term {
  const { force, axis, height } = of;
  const group = groupOfSide(reader, post.sideId);
  const [word, kind] = forceWords[force];
  const term = superposed(reader, group, {
    symbol: axisSymbols[axis],
    what: `${word} of ${post.id} ${axisWords(post, axis)} at the height of this check`,
    kind,
    read: (sides) => {
      const side = must(
        sides.find(({ frame }) => frame.side.index === post.sideIndex),
        `side ${post.sideId}`,
      );
      const { along, across, around } = forcesIn(post, side, reader.plan.job)(height);
      if (force === "movement" && places.some((place) => place.height === height && place.isAround)) return around;
      if (force === "movement") return axis === "x" ? along.movement : 0;
      return inOwnAxes({ x: along[force], y: across[force] }, post)[axis];
    },
  });
  const turns = [term.inputs[0]?.value ?? []].flat().some((one) => one !== 0);
  const what = `no cable turns at ${post.id}, so none pushes it square to its side`;
  return turns ? { ...term, text: `abs(${term.text})` } : nothing(`${axisSymbols[axis]}0`, what, force === "moment" ? "moment" : "force");
}

/** The load of the code on a length of the top, or all of it. */
export function loadOn({ load, length, sharing }: { readonly load: TopLoad; readonly length: Term; readonly sharing: number }): Term {
  const { source, where } = load.origin;
  if (load.isLine) {
    const line = given("w", "load on the top, per length", load.on(1), "line load", from(source, where));
    return { text: `w * ${length.text}`, inputs: [line, ...length.inputs] };
  }
  const single = given("W", "single load on the top", load.on(1), "force", from(source, where));
  if (sharing === 1) return { text: "W", inputs: [single] };
  return { text: "W / s", inputs: [single, given("s", "posts of the side, which share a push along the rail", sharing, "count")] };
}

/** Height of the top of the guard where it is highest, at which the code's load acts on every post. */
export const topOfGuard = ({ at, all, plan }: Reader): Term => {
  const what = "height of the guard's top, where the code's load acts";
  if (plan.rakes.length === 0) return { text: "H", inputs: [at("H", what, "opening.guardHeight")] };
  const paths = ["opening.guardHeight", ...plan.rakes.map(({ sideId }) => `rakes.${sideId}.opening.guardHeight`)];
  return { text: "max(H)", inputs: [all("H", `${what}: of the level sides and of each rake, plumb`, paths)] };
};

/** The load of a situation that goes into its post. */
export function loadOnPost({ post, load, towards }: Situation & { readonly load: TopLoad }): Term {
  const measured = post.post.slope === 0 ? "" : ", along the slope";
  const what = `length of top rail whose load goes into ${post.post.id}: half of each bay beside it, and what lies beyond an end post${measured}`;
  const length = { text: "b", inputs: [given("b", what, post.tributary, "length", derived("plan geometry"))] };
  return loadOn({ load, length, sharing: towards?.sharing ?? 1 });
}

/** What is asked of a post and of those with its section. */
export const questionOf = (reader: Reader, postId: string): PostQuestion =>
  must(
    framedOf(reader).posts.find(({ posts }) => posts.some(({ post }) => post.id === postId)),
    `post ${postId}`,
  );

/** Where the section of a post stands: with most posts, or with the post as it was found. */
export function sectionPath({ plan }: Reader, postId: string): string {
  const own = plan.job.posts.asFound.findIndex(({ post, section }) => post === postId && section !== null);
  return own < 0 ? "job.posts.section" : `job.posts.asFound[${own}].section`;
}

/** The post that a check names, under the loads that it names, at each of the post's places. */
export function situationsOf(reader: Reader, { member, loads }: Pick<FrameCheck, "member" | "loads">): readonly Situation[] {
  const question = questionOf(reader, member);
  const own = question.posts.filter(({ post }) => post.id === member);
  if (loads === CABLES_ALONE) return alone(own);
  return withLoads(own, question).filter((one) => loadsText(one) === loads);
}

/** Its situation at its own height. */
export const situationOf = (reader: Reader, check: FrameCheck): Situation =>
  must(
    situationsOf(reader, check).find(({ place }) => place.height === check.height),
    `place of frame check ${check.id}`,
  );

/** The bay of a rail that a check names, and the load on it. */
export interface RailSituation {
  readonly rail: RailQuestion;
  readonly bay: LoadedBay;
  readonly load: TopLoad | null;
  readonly push: Push | null;
}

export function railSituationOf(reader: Reader, { id, member, loads }: FrameCheck): RailSituation {
  const { top, bottom, guard } = framedOf(reader);
  const rail = id.startsWith("bottom-rail") ? must(bottom ?? undefined, "bottom rail") : top;
  const bay = must(
    rail.bays.find((one) => memberName(rail.rail, one) === member),
    `bay of ${member}`,
  );
  for (const load of guard.top) {
    for (const push of load.pushes) if (load.text(pushNames[push]) === loads) return { rail, bay, load, push };
  }
  return { rail, bay, load: null, push: null };
}
