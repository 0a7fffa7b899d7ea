// Which posts and spacers stand where, and which bays lie between them?
import { along as pointAlong } from "../geometry/vector.ts";
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { withoutDust } from "../units/round.ts";
import { leanOf } from "./as-found.ts";
import { alongSlope, jointOf, jointPath } from "./corner-path.ts";
import { type CornerPost, cornerPostAt, lineOffset, ownStation, postDirection, seenFrom } from "./corner-post.ts";
import { meetOnPairs } from "./face-end.ts";
import { isPier, pierVertical } from "./pier.ts";
import type { Bay, RunEnd, SidePlan, Vertical, VerticalRole } from "./plan.ts";
import { coreOf, leftHold, outsideOf, outsideOfPost, recessOf, rightHold } from "./sleeve.ts";
import type { Cut, StationsOfSide } from "./splits.ts";
import { type PostStation, placePosts, placeSpacers } from "./stations.ts";

export interface Verticals {
  readonly verticals: readonly Vertical[];
  readonly bays: readonly Bay[];
}

/** Post stations of each side before anybody knows where the runs are cut. */
export function firstStations(sides: readonly SidePlan[], job: Job): readonly StationsOfSide[] {
  return sides.map((side) => {
    const given = job.sides[side.index]?.stations ?? null;
    if (given !== null) return { stations: given, pairs: false };
    return { stations: autoPosts(side, job, []).map((post) => post.station), pairs: meetOnPairs(job) };
  });
}

function autoPosts(side: SidePlan, job: Job, splits: readonly Mm[]): readonly PostStation[] {
  const along = outsideOf(job).along;
  // At a pier the posts are spread as if one stood in it, its face flush with the pier's.
  const [first, last] = [isPier(side.begins) ? -along / 2 : along / 2, isPier(side.ends) ? -along / 2 : along / 2];
  const placed = placePosts({
    first: side.startsAt + first,
    last: side.endsAt - last,
    splits,
    along,
    pairGap: job.posts.pairGap.value,
    spacing_max: job.posts.spacing_max.value,
    step: job.limits.tapeStep.value,
  });
  return placed.filter(({ station }) => station > side.startsAt && station < side.endsAt);
}

/** Names every vertical from left to right and lists the bays between them. */
export function placeVerticals(sides: readonly SidePlan[], cuts: readonly Cut[], job: Job): Verticals {
  const verticals: Vertical[] = [];
  const bays: Bay[] = [];
  const counters = { post: 0, spacer: 0, pier: 0 };
  for (const side of sides) {
    // One post that makes the corner stands on both sides: it is named on the side that ends at it.
    const shared = verticals.at(-1)?.corner?.nextIndex === side.index ? verticals.at(-1) : undefined;
    const place = (station: Mm): ReturnType<typeof placeOf> => placeOf(side, station);
    const posts = [
      ...pierVertical(side, "begins", place, counters),
      ...postsOfSide(side, cuts, job).map((post, index) =>
        index === 0 && shared !== undefined ? seenFrom(shared, side.index) : toVertical(post, side, job, counters),
      ),
      ...pierVertical(side, "ends", place, counters),
    ];
    const members: Vertical[] = [];
    const firsts = firstsOfPairs(posts);
    posts.forEach((post, index) => {
      const before = posts[index - 1];
      if (before !== undefined && !firsts.has(before.id)) members.push(...spacersBetween(before, post, side, job, counters));
      members.push(post);
    });
    bays.push(...(shared === undefined ? cornerBay(sides, verticals, members) : []), ...baysOfSide(side, members, firsts));
    verticals.push(...(shared === undefined ? members : members.slice(1)));
  }
  return { verticals, bays };
}

/** The left post of each pair on a side: between two pairs stands a bay like any other, even where no line post does. */
const firstsOfPairs = (posts: readonly Vertical[]): ReadonlySet<string> =>
  new Set(posts.filter(({ role }) => role === "pair").flatMap(({ id }, index) => (index % 2 === 0 ? [id] : [])));

interface RolePost {
  readonly station: Mm;
  readonly role: Exclude<VerticalRole, "spacer" | "shared" | "pier">;
  readonly isLast: boolean;
}

function postsOfSide(side: SidePlan, cuts: readonly Cut[], job: Job): readonly RolePost[] {
  const given = job.sides[side.index]?.stations ?? null;
  const splits = cuts.filter((cut) => cut.kind === "line" && cut.sideIndex === side.index).map((cut) => cut.station);
  const pairs = given === null && meetOnPairs(job);
  const posts: readonly PostStation[] =
    given?.map((station) => ({ station, role: "line" as const })) ?? autoPosts(side, job, pairs ? splits : []);
  return posts.map((post, index) => {
    const isFirst = index === 0;
    const isLast = index === posts.length - 1;
    const { station } = post;
    if (post.role === "pair") return { station, isLast, role: "pair" };
    const [begins, ends] = [isFirst ? side.begins : undefined, isLast ? side.ends : undefined];
    if (begins?.kind === "post" || begins?.kind === "wall" || ends?.kind === "post" || ends?.kind === "wall")
      return { station, isLast, role: "end" };
    return { station, isLast, role: begins === null || ends === null ? jointRole(side, begins === null, job) : "line" };
  });
}

/** Straight on only the slope changes: a change of slope is no corner. */
const jointRole = ({ index }: SidePlan, isFirst: boolean, job: Job): "corner" | "transition" =>
  job.sides[isFirst ? index - 1 : index]?.turn === 0 ? "transition" : "corner";

function toVertical(post: RolePost, side: SidePlan, job: Job, counters: { post: number }): Vertical {
  counters.post += 1;
  const id = `P${counters.post}`;
  const outside = outsideOfPost(job, id);
  const corner = post.isLast ? cornerPostAt(job, side.index) : null;
  return {
    id,
    kind: "post",
    role: post.role,
    sideIndex: side.index,
    sideId: side.id,
    station: post.station,
    ...placeOf(side, post.station),
    direction: side.direction,
    along: outside.along,
    across: outside.across,
    sectionName: outside.name,
    ...coreOf(job, id),
    lean: leanOf(job, id),
    ...(corner === null ? {} : astride(side, corner)),
  };
}

/** One post that makes a corner stands off the line of its sides and turned between them. */
function astride(side: SidePlan, corner: CornerPost): Pick<Vertical, "station" | "centre" | "direction" | "corner"> {
  const station = ownStation(side.length, corner);
  const onLine = pointAlong(side.from, side.direction, station);
  const centre = pointAlong(onLine, side.direction + Math.PI / 2, lineOffset(corner));
  return { station, centre, direction: postDirection(side.direction, corner), corner };
}

/** Where a vertical stands, and the walking surface under it. */
const placeOf = (side: SidePlan, station: Mm): Pick<Vertical, "centre" | "datum" | "slope"> => ({
  centre: pointAlong(side.from, side.direction, station),
  datum: side.slope === 0 ? side.datum_from : side.datum_from + station * Math.tan(side.slope),
  slope: side.slope,
});

function spacersBetween(left: Vertical, right: Vertical, side: SidePlan, job: Job, counters: { spacer: number }): readonly Vertical[] {
  const section = job.spacers.section;
  const stations = placeSpacers({
    from: rightHold(left),
    to: leftHold(right),
    along: section.along,
    free_max: job.spacers.free_max.value,
    step: job.limits.tapeStep.value,
  });
  return stations.map((station) => {
    counters.spacer += 1;
    return {
      id: `S${counters.spacer}`,
      kind: "spacer",
      role: "spacer",
      sideIndex: side.index,
      sideId: side.id,
      station,
      ...placeOf(side, station),
      direction: side.direction,
      along: section.along,
      across: section.across,
      sectionName: section.name,
      lean: 0,
    };
  });
}

function baysOfSide(side: SidePlan, members: readonly Vertical[], firsts: ReadonlySet<string>): readonly Bay[] {
  return members.slice(1).map((right, index): Bay => {
    const left = members[index] ?? right;
    return {
      id: `${side.id}${index + 1}`,
      kind: firsts.has(left.id) ? "pair gap" : "bay",
      sideId: side.id,
      leftId: left.id,
      rightId: right.id,
      free: withoutDust(alongSlope(leftHold(right) - rightHold(left), side.slope)),
    };
  });
}

/** The bay across the corner between the last side laid out and this one. */
function cornerBay(sides: readonly SidePlan[], before: readonly Vertical[], members: readonly Vertical[]): readonly Bay[] {
  const left = before.at(-1);
  const right = members[0];
  if (left === undefined || right === undefined) return [];
  const side = sides[left.sideIndex];
  if (side?.ends !== null) return [];
  const { chord } = jointPath({
    setback_left: (side?.length ?? 0) - left.station - left.along / 2 + recessOf(left),
    setback_right: leftHold(right),
    ...jointOf(side, sides[right.sideIndex]),
  });
  return [
    {
      id: `${left.sideId}/${right.sideId}`,
      kind: "corner",
      sideId: left.sideId,
      leftId: left.id,
      rightId: right.id,
      free: withoutDust(chord),
    },
  ];
}

/** A post on which one run ends and the next begins is no line post: it holds cables. At a corner it stays the corner's. */
export function withSharedPosts(
  verticals: readonly Vertical[],
  runs: readonly { readonly left: RunEnd; readonly right: RunEnd }[],
): readonly Vertical[] {
  const shared = new Set(runs.slice(1).flatMap((run, index) => (runs[index]?.right.postId === run.left.postId ? [run.left.postId] : [])));
  if (shared.size === 0) return verticals;
  return verticals.map((vertical) =>
    shared.has(vertical.id) && vertical.corner === undefined ? { ...vertical, role: "shared" } : vertical,
  );
}
