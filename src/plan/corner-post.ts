// How does one post make a corner: where does it stand, and where does its bore begin and end?
import type { Job } from "../job/job.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { SAME_rad } from "../units/tolerance.ts";
import type { Vertical } from "./plan.ts";
import { SET_OFF } from "./set-off.ts";

/**
 * A square post bored from the middle of one face to the middle of another, so that each mouth of the bore turns the cable half-way; or one
 * on whose two faces, or behind which, the runs of its sides end.
 */
export interface CornerPost {
  /** Whether the cables pass it; else those of either side end on the face that looks to them, or on the one beyond. */
  readonly isPassed: boolean;
  /** The cables of either side go through it to the face beyond, in bores that cross at two heights. */
  readonly isSetOff: boolean;
  /** The side that ends at it. */
  readonly homeId: string;
  /** The side that begins at it. */
  readonly nextIndex: number;
  readonly nextId: string;
  /** Its middle as seen square to that side, from the side's start; left of the start where negative. */
  readonly nextStation: Mm;
  /** Of the corner, positive to the right. */
  readonly turn: Radian;
  /** Which faces the bore joins: straight through, or on the mitre to the face beside. Ends stand on two faces beside each other. */
  readonly faces: "opposite" | "adjacent";
  /** From the corner point to each mouth of the bore, or to the face on which a run ends, along the cable. */
  readonly setback: Mm;
  /** From the corner point to its middle, on the bisector, positive to the inside of the turn. */
  readonly inset: Mm;
  /** Along the bore from mouth to mouth, or right through to the face beyond; between the middles of the two faces on which runs end. */
  readonly chord: Mm;
  /** Of the post from square to either of its sides. */
  readonly twist: Radian;
}

const QUARTER_rad = Math.PI / 4;

/**
 * A post of width w at a turn t. Straight through: chord w, middle on the chord. On the mitre: chord w / sqrt 2 between the middles of two
 * faces that meet, the middle w / (2 sqrt 2) outside of it. Both mouths lie on the lines of their sides, so setback = chord / (2 cos(t/2)).
 */
export function cornerShape(
  turn: Radian,
  width: Mm,
  straight_max: Radian,
): Pick<CornerPost, "faces" | "setback" | "inset" | "chord" | "twist"> {
  const half = Math.abs(turn) / 2;
  const isStraight = 2 * half <= straight_max + SAME_rad;
  const chord = isStraight ? width : width * Math.SQRT1_2;
  const setback = chord / (2 * Math.cos(half));
  // At a right angle the middle is the corner point itself, but for the rounding of the arithmetic.
  const inset = roundTo(setback * Math.sin(half) - (isStraight ? 0 : (width * Math.SQRT1_2) / 2), 9);
  return { faces: isStraight ? "opposite" : "adjacent", setback, inset, chord, twist: isStraight ? half : half - QUARTER_rad };
}

/** Whether this side ends at a corner of one post. */
export const endsOnOnePost = ({ sides }: Job, index: number): boolean => {
  const side = sides[index];
  return side !== undefined && side.corner !== "two posts" && side.turn !== null && side.interrupted === null;
};

/** How the post at the end of this side stands; null where two posts make the corner, or there is none. */
export function cornerPostAt(job: Job, index: number): CornerPost | null {
  const [side, next] = [job.sides[index], job.sides[index + 1]];
  if (!endsOnOnePost(job, index) || side?.turn == null || next === undefined) return null;
  const isPassed = side.corner === "one post";
  const isSetOff = side.corner === SET_OFF;
  const { along } = job.posts.section;
  const mouths = cornerShape(side.turn, along, isPassed ? job.limits.straightBoreTurn_max.value : 0);
  const shape = isSetOff ? { ...mouths, chord: along } : mouths;
  const nextStation = shape.inset * Math.sin(Math.abs(side.turn) / 2);
  return { homeId: side.id, nextIndex: index + 1, nextId: next.id, nextStation, turn: side.turn, isPassed, isSetOff, ...shape };
}

/** Station of its middle on the side that ends at it. */
export const ownStation = (sideLength: Mm, { nextStation }: CornerPost): Mm => sideLength - nextStation;

/** Its middle off the line of either side, positive away from the deck. */
export const lineOffset = ({ turn, inset }: CornerPost): Mm => -Math.sign(turn) * inset * Math.cos(turn / 2);

/** Direction of the post beside a side of this direction that ends at it. */
export const postDirection = (direction: Radian, { turn, twist }: CornerPost): Radian => direction - Math.sign(turn) * twist;

/** From its middle to the mouth on each of its sides, as seen from above. */
export function mouthDirections({ direction, corner }: Pick<Vertical, "direction" | "corner">): {
  readonly left: Radian;
  readonly right: Radian;
} {
  const left = direction + Math.PI;
  if (corner === undefined || corner.faces === "opposite") return { left, right: direction };
  return { left, right: direction - (Math.sign(corner.turn) * Math.PI) / 2 };
}

/** Whether it stands on a side: at a corner of one post, on both. */
export const standsOn = ({ sideIndex, corner }: Pick<Vertical, "sideIndex" | "corner">, index: number): boolean =>
  sideIndex === index || corner?.nextIndex === index;

/** A post or spacer as it stands on one of its sides. */
export function seenFrom(vertical: Vertical, index: number): Vertical {
  const { corner, sideIndex } = vertical;
  if (corner === undefined || sideIndex === index) return vertical;
  return { ...vertical, sideIndex: corner.nextIndex, sideId: corner.nextId, station: corner.nextStation };
}

/** The posts of a side from left to right; one post that makes a corner stands on both its sides. */
export const postsOn = (index: number, verticals: readonly Vertical[]): readonly Vertical[] =>
  membersOn(index, verticals).filter(({ kind }) => kind === "post");

/** What its rails rest on: its posts, and the piers at its ends. */
export const supportsOn = (index: number, verticals: readonly Vertical[]): readonly Vertical[] =>
  membersOn(index, verticals).filter(({ kind }) => kind !== "spacer");

/** Posts and spacers of a side, and the piers at its ends. */
export const membersOn = (index: number, verticals: readonly Vertical[]): readonly Vertical[] =>
  verticals.filter((vertical) => standsOn(vertical, index)).map((vertical) => seenFrom(vertical, index));

/** Where the cable leaves it into the bay to its right, in stations of its side (as seen from there). */
export const rightMouth = ({ station, along, sideIndex, corner }: Vertical): Mm =>
  corner !== undefined && corner.nextIndex === sideIndex ? corner.setback : station + along / 2;

/** Where the cable comes in from the bay to its left, in stations of its side (as seen from there). */
export const leftMouth = ({ station, along, sideIndex, corner }: Vertical): Mm =>
  corner !== undefined && corner.nextIndex !== sideIndex ? station + corner.nextStation - corner.setback : station - along / 2;

/** Of a bore off square to its face: from the middle of one face to that of the face beside it. */
export const boreSkew = ({ corner }: Pick<Vertical, "corner">): Radian => (isMitred(corner) ? QUARTER_rad : 0);

/** Whether the runs of both its sides end on its two faces. */
export const endsOnFaces = (corner: CornerPost): boolean => !corner.isPassed && !corner.isSetOff;

/** Whether it is bored from a face to the one beside it. */
export const isMitred = (corner: CornerPost | undefined): boolean => corner?.isPassed === true && corner.faces === "adjacent";

/** From the middle of a bore that is not set off to the nearest edge of its post: on the mitre, to the arris that it cuts off. */
export const besideBore = ({ across, core, corner }: Pick<Vertical, "across" | "core" | "corner">): Mm =>
  isMitred(corner) ? (across * Math.SQRT1_2) / 2 : (core?.across ?? across) / 2;
