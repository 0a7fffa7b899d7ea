// Of which straight pieces is each cable on a line of sides made, and how hard does each piece draw its two posts together?
import type { Job } from "../job/job.ts";
import { leastBetween } from "../mechanics/corner.ts";
import type { GuardCable } from "../mechanics/guard-frame-build.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { standsOn } from "./corner-post.ts";
import type { Kink, TurnedCorner } from "./frame-corners.ts";
import type { Leg } from "./frame-legs.ts";
import { profileOf } from "./friction.ts";
import type { Bay, SidePlan, Vertical } from "./plan.ts";

/** What one piece of a cable does on one line of sides per unit pull at its nut. */
export interface SideTerm {
  /** Number among the cables of the line's frame. */
  readonly cable: number;
  /** Tension there as a share of the pull at the nut: friction takes some at each bend. */
  readonly share: number;
}

/** All in one line of sides. */
interface OnLine {
  readonly sides: readonly SidePlan[];
  readonly own: readonly Vertical[];
  readonly legs: readonly Leg[];
  readonly corners: readonly TurnedCorner[];
  readonly kinks: readonly Kink[];
  /** Those of the frame: at corners with the neighbours' posts. */
  readonly posts: readonly Vertical[];
}

/** Places are among the posts of the line. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly slope: Radian;
  readonly share: number;
}

interface LaidCables {
  readonly cables: readonly GuardCable[];
  /** For each cable of the group, by its number in the group, its pieces. */
  readonly terms: ReadonlyMap<number, readonly SideTerm[]>;
}

/** The cables of a line, leg by leg and piece by piece, each at every course from the lowest; rails push where they meet, at `height`. */
export function layCables(
  line: OnLine,
  { heights, height }: { readonly heights: readonly Mm[]; readonly height: Mm },
  job: Job,
): LaidCables {
  const cables: GuardCable[] = [];
  const terms = new Map<number, SideTerm[]>();
  for (const leg of line.legs) {
    for (const piece of piecesOf(leg, line, job)) {
      for (const [course, at] of heights.entries()) {
        const number = leg.index * heights.length + course;
        terms.set(number, [...(terms.get(number) ?? []), { cable: cables.length, share: piece.share }]);
        cables.push({ ...anchored(piece, at, line), pushes: pushesOf(leg, piece, { at, height }, line) });
      }
    }
  }
  return { cables, terms };
}

/** Straight from bend to bend: along each side, and between the two posts where the slope changes. */
function piecesOf(leg: Leg, { sides, own, kinks }: OnLine, job: Job): readonly Piece[] {
  const unit = profileOf(leg.run, 1, job);
  const shareOf = (isOn: (bay: Bay) => boolean): number => {
    const shares = leg.run.spans.flatMap(({ bay, from, to }) => (isOn(bay) ? [leastBetween(unit, from, to)] : []));
    return shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length);
  };
  const along = sides.flatMap((side): readonly Piece[] => {
    const places = own.flatMap((post, place) => (standsOn(post, side.index) && place >= leg.from && place <= leg.to ? [place] : []));
    const [from, to] = [places[0], places.at(-1)];
    if (from === undefined || to === undefined) return [];
    return [{ from, to, slope: side.slope, share: shareOf(({ kind, sideId }) => kind !== "corner" && sideId === side.id) }];
  });
  const between = kinks.flatMap(({ left, right, slope }): readonly Piece[] => {
    const [from, to] = [own.indexOf(left), own.indexOf(right)];
    if (from < leg.from || to > leg.to) return [];
    return [{ from, to, slope, share: shareOf(({ kind, leftId }) => kind === "corner" && leftId === left.id) }];
  });
  return [...along, ...between].filter(({ from, to }) => from < to).sort((one, other) => one.from - other.from);
}

function anchored({ from, to, slope }: Piece, at: Mm, { own, posts }: OnLine): GuardCable {
  const place = (nth: number): number => posts.findIndex(({ id }) => id === own[nth]?.id);
  return { left: place(from), right: place(to), height: at, ...(slope === 0 ? {} : { slope_left: slope, slope_right: slope }) };
}

/** Where the piece goes on round a corner: on the corner post and the neighbour's post at its own height, and through the neighbour's rail. */
function pushesOf(
  leg: Leg,
  { from, to }: Piece,
  { at, height }: { readonly at: Mm; readonly height: Mm },
  { own, posts, corners }: OnLine,
): NonNullable<GuardCable["pushes"]> {
  const turned = corners.filter(({ legs, corner }) => {
    const place = own.indexOf(corner);
    return legs.includes(leg) && (place === leg.from ? from === place : to === place);
  });
  return turned.flatMap(({ corner, guest, cosines: [atCorner, atGuest, throughRail], ups: [upCorner, upGuest] }) => [
    { post: posts.indexOf(corner), height: at, factor: atCorner, factor_up: upCorner },
    { post: posts.indexOf(guest), height: at, factor: atGuest, factor_up: upGuest },
    { post: posts.indexOf(guest), height, factor: throughRail },
  ]);
}
