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
  /** What of it lies in the plane of the line: 1, but for the piece between the two posts of a corner. */
  readonly part: number;
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

/** Straight from one post to another, by their places in the frame. */
interface Piece {
  readonly left: number;
  readonly right: number;
  readonly slope: Radian;
  readonly share: number;
  readonly part: number;
  /** What the cable behind a corner pushes there, per unit of this piece; at its height, or at that of the rail. */
  readonly behind: readonly { readonly post: number; readonly isRail: boolean; readonly along: number; readonly up: number }[];
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
    for (const { left, right, slope, share, part, behind } of piecesOf(leg, line, job)) {
      for (const [course, at] of heights.entries()) {
        const number = leg.index * heights.length + course;
        terms.set(number, [...(terms.get(number) ?? []), { cable: cables.length, share, part }]);
        cables.push({
          ...{ left, right, height: at },
          ...(slope === 0 ? {} : { slope_left: slope, slope_right: slope }),
          pushes: behind.map(({ post, isRail, along, up }) => ({ post, height: isRail ? height : at, factor: along, factor_up: up })),
        });
      }
    }
  }
  return { cables, terms };
}

type ShareOf = (isOn: (bay: Bay) => boolean) => number;

/** Straight from bend to bend: along each side, between the two posts where the slope changes, and between the two of a corner. */
function piecesOf(leg: Leg, line: OnLine, job: Job): readonly Piece[] {
  const unit = profileOf(leg.run, 1, job);
  const shareOf: ShareOf = (isOn) => {
    const shares = leg.run.spans.flatMap(({ bay, from, to }) => (isOn(bay) ? [leastBetween(unit, from, to)] : []));
    return shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length);
  };
  const straight = straightPieces(leg, line, shareOf);
  const turned = line.corners.filter(({ legs }) => legs.includes(leg));
  const round = turned.flatMap((corner): readonly Piece[] => (corner.guest === corner.corner ? [] : [roundPiece(corner, line, shareOf)]));
  // One post at a corner has no piece between two: what is behind it pushes where the side's own piece ends.
  const atEnd = turned.filter(({ guest, corner }) => guest === corner);
  return [
    ...straight.map((piece): Piece => {
      const ends = atEnd.filter(({ corner, at }) => line.posts.indexOf(corner) === (at === "left" ? piece.left : piece.right));
      return { ...piece, behind: ends.flatMap((end) => behindOf(end, line, shareOf(isBeyond(end)) / piece.share)) };
    }),
    ...round,
  ];
}

function straightPieces(leg: Leg, { sides, own, kinks, posts }: OnLine, shareOf: ShareOf): readonly Piece[] {
  const place = (post: Vertical | undefined): number => posts.findIndex(({ id }) => id === post?.id);
  const on = own.slice(leg.from, leg.to + 1);
  const along = sides.map((side): Piece => {
    const stand = on.filter((post) => standsOn(post, side.index));
    const share = shareOf(({ kind, sideId }) => kind !== "corner" && sideId === side.id);
    return { left: place(stand[0]), right: place(stand.at(-1)), slope: side.slope, share, part: 1, behind: [] };
  });
  const between = kinks.flatMap(({ left, right, slope }): readonly Piece[] => {
    if (!on.includes(left) || !on.includes(right)) return [];
    const share = shareOf(({ kind, leftId }) => kind === "corner" && leftId === left.id);
    return [{ left: place(left), right: place(right), slope, share, part: 1, behind: [] }];
  });
  return [...along, ...between].filter(({ left, right }) => left < right).sort((one, other) => one.left - other.left);
}

const isBeyond =
  ({ beyondId }: TurnedCorner) =>
  ({ kind, sideId }: Bay): boolean =>
    kind !== "corner" && sideId === beyondId;

/** Between the two posts of a corner: what of it lies in this plane draws them together, and what is behind pushes on the neighbour's. */
function roundPiece(turned: TurnedCorner, line: OnLine, shareOf: ShareOf): Piece {
  const { corner, guest, between } = turned;
  const [left = 0, right = 0] = [corner, guest].map((post) => line.posts.indexOf(post)).sort((one, other) => one - other);
  const ids = [corner.id, guest.id];
  const share = shareOf(({ kind, leftId, rightId }) => kind === "corner" && ids.includes(leftId) && ids.includes(rightId));
  const part = Math.hypot(between.along, between.up);
  return {
    left,
    right,
    slope: Math.atan2(between.up, between.along),
    share,
    part,
    behind: behindOf(turned, line, shareOf(isBeyond(turned)) / (share * part)),
  };
}

/** On the neighbour's post at the height of the cable, and back through the neighbour's rail; nothing along this side at a right angle. */
function behindOf({ guest, at, behind }: TurnedCorner, { posts }: OnLine, ratio: number): Piece["behind"] {
  const sign = at === "left" ? -1 : 1;
  const post = posts.indexOf(guest);
  return [
    { post, isRail: false, along: sign * behind.along * ratio, up: sign * behind.up * ratio },
    { post, isRail: true, along: -sign * behind.along * ratio, up: 0 },
  ];
}
