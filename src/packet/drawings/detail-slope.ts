// How does a cable pass the two posts where only the slope of the guard changes, or end there?
import { dimension } from "../../drawing/dimension.ts";
import { type Part, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import { climbTo } from "../../plan/corner-path.ts";
import type { Bay, Bore, Plan, Vertical } from "../../plan/plan.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import { slopeChanges } from "../joints.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { type Detail, type Note, type Picture, placeAt } from "./detail-compose.ts";
import { bendsAt, boreOf } from "./detail-corner.ts";
import { endFitting, endHoles } from "./detail-ends.ts";
import { CABLE_mm, cutMember, reachBehind } from "./detail-parts.ts";
import { bushings, bushingText } from "./detail-pass.ts";
import { type Place, tiltedPlace } from "./detail-place.ts";
import { showOf, verticalOf } from "./kit.ts";

export interface SlopeChange {
  readonly bay: Bay;
  readonly left: Vertical;
  readonly right: Vertical;
}

export const slopeChangesOf = (plan: Plan): readonly SlopeChange[] =>
  slopeChanges(plan).map((bay) => ({ bay, left: verticalOf(plan, bay.leftId), right: verticalOf(plan, bay.rightId) }));

/** What must be the same for two changes of slope to share one drawing. */
export const slopeChangeKey = (plan: Plan, { left, right }: SlopeChange): string =>
  JSON.stringify([left, right].map(({ id, slope, sectionName }) => [slope, sectionName, boreOf(plan, id).kind, bendsAt(plan, id)]));

export function slopeChangeDetail(plan: Plan, changes: readonly [SlopeChange, ...SlopeChange[]]): Detail {
  const [change] = changes;
  const { bay, left, right } = change;
  const show = showOf(plan);
  const names = changes.map(({ bay: { id } }) => id).join(", ");
  return {
    id: `detail-slope-${bay.id.replace("/", "-").toLowerCase()}`,
    title: `Where the slope changes, ${names}`,
    description: `Plumb cut along the cable through ${left.id} and ${right.id}, seen from the inside. ${words(plan, left, show)}. ${words(plan, right, show)}.`,
    notes: ["Cut plumb along the cable and seen from the inside."],
    size: { width: left.along + right.along + levelBetween(change) + 2 * CABLE_mm, height: heightOf(plan, left) },
    draw: (scale) => draw(plan, change, scale.ratio, show),
  };
}

/** Between the faces of the two posts, level. */
const levelBetween = ({ bay, left, right }: SlopeChange): Mm =>
  Math.sqrt(Math.max(0, bay.free ** 2 - (entryOf(right, "left") - entryOf(left, "right")) ** 2));

/** Height of the line of the cable on a face of a post, above the datum at the guard's start. */
const entryOf = (post: Vertical, face: "left" | "right"): Mm => post.datum + climbTo(face, post);

/** As much of a post as its bore and its fitting need. */
function heightOf(plan: Plan, { id, along, across, slope }: Vertical): Mm {
  const end = endAt(plan, id);
  const reach = along / 2 / Math.cos(slope) + (end === undefined ? 0 : reachBehind(end));
  return Math.max(across, 2 * reach * Math.sin(Math.abs(slope)) + across / 2);
}

const endAt = ({ runs }: Plan, postId: string) => runs.flatMap((run) => [run.left, run.right]).find((end) => end.postId === postId);

function draw(plan: Plan, change: SlopeChange, ratio: number, show: Show): Picture {
  const { left, right } = change;
  const between = levelBetween(change);
  const middle = left.along / 2 + between + right.along / 2;
  const base = placeAt(ratio);
  const places: readonly (readonly [Vertical, Place, 1 | -1])[] = [
    [left, base, 1],
    [right, (x, y) => base(middle + x, right.datum - left.datum + y), -1],
  ];
  const low = Math.max(...places.map(([post, place]) => place(0, -heightOf(plan, post) / 2).y));
  const across = (from: Mm, to: Mm, text: Text): Part =>
    dimension({ from: { x: base(from, 0).x, y: low }, to: { x: base(to, 0).x, y: low }, offset: 5, text, beyond: "from" });
  const [a, b] = places.map(([post, place]): Note => ({ target: place(0, heightOf(plan, post) * 0.36), text: words(plan, post, show) }));
  return {
    parts: [
      ...places.flatMap(([post, place, toward]) => member(plan, post, place, toward)),
      ...(endAt(plan, left.id) === undefined ? [cable(places)] : []),
      across(left.along / 2, left.along / 2 + between, show.tape(between)),
    ],
    left: a === undefined ? [] : [a],
    right: b === undefined ? [] : [b],
  };
}

/** Through both posts along their bores, straight from one to the other. */
function cable(places: readonly (readonly [Vertical, Place, 1 | -1])[]): Part {
  const points = places.flatMap(([post, place, toward]): readonly Point[] => {
    const turned = tiltedPlace(place, post.slope);
    const half = post.along / 2 / Math.cos(post.slope);
    return [turned(-half - (toward === 1 ? CABLE_mm : 0), 0), turned(half + (toward === 1 ? 0 : CABLE_mm), 0)];
  });
  return strokes("heavy", [points]);
}

/** A post with its bore at its slope, and what is in it: bushings, or the end of a run. */
function member(plan: Plan, post: Vertical, place: Place, toward: 1 | -1): readonly Part[] {
  const bore = boreOf(plan, post.id);
  const drawn = { ...post, across: heightOf(plan, post) };
  const tilted = { ...bore, tilt: bore.angle };
  const end = endAt(plan, post.id);
  if (end !== undefined)
    return [...cutMember(plan, drawn, place, endHoles(end, post, tilted), "plumb"), ...endFitting(plan, end, post, place, tilted).parts];
  const half = post.along / 2;
  const hole = { from: -half, to: half, offset: 0, diameter: bore.diameter, tilt: bore.angle };
  const along = { ...post, along: post.along / Math.cos(bore.angle) };
  return [
    ...cutMember(plan, drawn, place, [hole], "plumb"),
    ...(bore.bushing ? bushings(plan, along, bore, tiltedPlace(place, bore.angle), toward) : []),
  ];
}

function words(plan: Plan, post: Vertical, show: Show): Text {
  const bore: Bore = boreOf(plan, post.id);
  const bends = bendsAt(plan, post.id)
    .map((angle: Radian) => `, the cable bends ${show.angle(angle)}`)
    .join("");
  const way = bore.angle === 0 ? "level" : `${show.angle(Math.abs(bore.angle))} off level`;
  return `${post.id}, ${post.sectionName}: bore ${show.fine(bore.diameter)}, ${way}${bushingText(plan, post, bore)}${bends}`;
}
