// How does one cable lie from bearing face to bearing face: its members, bends, lengths and spans?
import { along as pointAlong } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { alongSlope, climbTo, jointOf, jointPath } from "./corner-path.ts";
import { mouthDirections } from "./corner-post.ts";
import { isOnFace } from "./face-end.ts";
import { freeAt, longestLevel, standingAt } from "./lean-along.ts";
import type { Bay, Bend, Face, PathPoint, RunEnd, Vertical } from "./plan.ts";
import type { Layout } from "./runs.ts";
import { leftHold, recessOf } from "./sleeve.ts";

/** A span with its place along the cable. */
export interface SpanLine {
  readonly bay: Bay;
  readonly from: Mm;
  readonly to: Mm;
}

export interface RunLine {
  readonly members: readonly Vertical[];
  readonly spans: readonly SpanLine[];
  readonly bends: readonly Bend[];
  readonly path: readonly PathPoint[];
  readonly pathLength: Mm;
  readonly outsideLength: Mm;
}

/** Of a cable that is longest at one course, as its end posts lean along their sides: laid there; else at the height of the stations. */
export function layRun(options: { readonly left: RunEnd; readonly right: RunEnd; readonly layout: Layout }): RunLine {
  const { left, right, layout } = options;
  const from = layout.verticals.findIndex((vertical) => vertical.id === left.postId);
  const to = layout.verticals.findIndex((vertical) => vertical.id === right.postId);
  const members = layout.verticals.slice(from, to + 1);
  const level = longestLevel(members[0], members.at(-1));
  const spans: SpanLine[] = [];
  const bends: Bend[] = [];
  // An end on the face stands on the face that the cable comes to: there the cable is not in its post.
  const path: PathPoint[] = [
    facePoint(standingAt(members[0], level), isOnFace(left) ? "right" : "left", left.offset, bearingDepth(left, members[0])),
  ];
  // Distance along the cable; 0 is the left-hand bearing face.
  let at: Mm = 0;
  members.slice(1).forEach((member, index) => {
    const before = members[index] ?? member;
    at += index === 0 && isOnFace(left) ? 0 : heldIn(before);
    // The bore of one post that makes a corner turns the cable at both its mouths.
    const turned = before.corner?.isPassed === true ? Math.abs(before.corner.turn) / 2 : 0;
    if (turned !== 0) {
      bends.push({ postId: before.id, angle: turned, at: at - throughPost(before) }, { postId: before.id, angle: turned, at });
      path.push(facePoint(before, "left", 0), facePoint(before, "right", 0));
    }
    const bay = layout.bays.find((one) => one.leftId === before.id && one.rightId === member.id);
    if (bay === undefined) throw new RangeError(`no bay between ${before.id} and ${member.id}`);
    const shift = (index === members.length - 2 ? right.offset : 0) - (index === 0 ? left.offset : 0);
    const free = freeAt(bay, before, member, level);
    const reach = Math.hypot(free, shift);
    const [leaving, entering] = anglesAt({ ...bay, free }, shift, before, member, layout);
    if (leaving !== 0) bends.push({ postId: before.id, angle: leaving, at });
    if (entering !== 0) bends.push({ postId: member.id, angle: entering, at: at + reach });
    if (leaving !== 0 || entering !== 0) {
      path.push(facePoint(standingAt(before, level), "right", index === 0 ? left.offset : 0, recessOf(before)));
      path.push(facePoint(standingAt(member, level), "left", index === members.length - 2 ? right.offset : 0, recessOf(member)));
    }
    spans.push({ bay, from: at, to: at + reach });
    at += reach;
  });
  const last = members.at(-1);
  path.push(facePoint(standingAt(last, level), isOnFace(right) ? "left" : "right", right.offset, bearingDepth(right, last)));
  at += last === undefined || isOnFace(right) ? 0 : heldIn(last);
  // Nuts and collars bear on the outer faces of the end posts, in a sleeve on the wood inside it; bevelled washers stand on them.
  return { members, spans, bends, path, pathLength: at, outsideLength: at + left.seat + right.seat };
}

/** Changes of direction at the two ends of a span, as sizes: at a corner, or where the end bores stand off the middle. */
function anglesAt(bay: Bay, shift: Mm, before: Vertical, member: Vertical, layout: Layout): readonly [Radian, Radian] {
  if (bay.kind === "corner") {
    const side = layout.sides[before.sideIndex];
    const { angle_left, angle_right } = jointPath({
      setback_left: (side?.length ?? 0) - before.station - before.along / 2 + recessOf(before),
      setback_right: leftHold(member),
      ...jointOf(side, layout.sides[member.sideIndex]),
    });
    return [angle_left, angle_right];
  }
  const angle = Math.abs(Math.atan2(shift, bay.free));
  return [angle, angle];
}

/** Length of the cable between the faces of a post or spacer. */
export const throughPost = ({ along, slope, corner }: Pick<Vertical, "along" | "slope" | "corner">): Mm =>
  corner?.chord ?? alongSlope(along, slope);

/** The part of it in which the cable lies in wood: between its sleeve's walls it touches nothing. */
const heldIn = (member: Vertical): Mm => throughPost(member) - 2 * recessOf(member);

/** How far inside the face of its post an end bears. */
const bearingDepth = (end: RunEnd, post: Vertical | undefined): Mm => (post === undefined || isOnFace(end) ? 0 : recessOf(post));

/** A point on a face of a vertical, or as deep inside it; offset is positive away from the deck. */
function facePoint(vertical: Vertical | undefined, face: Face, offset: Mm, depth: Mm = 0): PathPoint {
  if (vertical === undefined) throw new RangeError("a run without a post");
  if (vertical.corner?.isSetOff === true) {
    // Beyond the face that its own side looks at.
    const mouths = mouthDirections(vertical);
    return { ...pointAlong(vertical.centre, mouths[face === "left" ? "right" : "left"], -vertical.along / 2), z: vertical.datum };
  }
  if (vertical.corner !== undefined) {
    return { ...pointAlong(vertical.centre, mouthDirections(vertical)[face], vertical.along / 2), z: vertical.datum };
  }
  const sign = face === "left" ? -1 : 1;
  const { direction } = vertical;
  const onAxis = pointAlong(vertical.centre, direction, sign * (vertical.along / 2 - depth));
  return { ...pointAlong(onAxis, direction + Math.PI / 2, offset), z: vertical.datum + climbTo(face, vertical) };
}
