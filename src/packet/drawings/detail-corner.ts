// How does a cable turn a corner made with two posts?
import { dimensionWays } from "../../drawing/dimension.ts";
import type { Room } from "../../drawing/paper.ts";
import { arrowhead, circle, go, group, type Part, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Bore, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { faceName, floorWord } from "../wording.ts";
import type { Detail, Note, Picture } from "./detail-compose.ts";
import { endFitting, endHoles } from "./detail-ends.ts";
import { CABLE_mm, cutMember } from "./detail-parts.ts";
import { bushings, bushingText } from "./detail-pass.ts";
import type { Place } from "./detail-place.ts";
import { leftFace, rightFace, showOf, verticalOf } from "./kit.ts";

export interface Corner {
  readonly before: SidePlan;
  readonly after: SidePlan;
  readonly left: Vertical;
  readonly right: Vertical;
  readonly free: Mm;
  readonly bayId: string;
}

export const cornersOf = (plan: Plan): readonly Corner[] =>
  plan.bays.flatMap((bay) => {
    if (bay.kind !== "corner") return [];
    const [left, right] = [verticalOf(plan, bay.leftId), verticalOf(plan, bay.rightId)];
    const [before, after] = [plan.sides[left.sideIndex], plan.sides[right.sideIndex]];
    // A change of slope does not show in a level cut: it has a plumb one.
    return before === undefined || after === undefined || before.turn === 0
      ? []
      : [{ before, after, left, right, free: bay.free, bayId: bay.id }];
  });

const setbackLeft = ({ before, left }: Corner): Mm => before.length - rightFace(left);
const setbackRight = ({ right }: Corner): Mm => leftFace(right);

/** Corners with the same turn, setbacks, posts and bores, both passed or both not, share one drawing: one of the other hand has its own. */
export const cornerKey = (plan: Plan, corner: Corner): string => {
  const show = showOf(plan);
  return [
    show.angle(corner.before.turn ?? 0),
    show.tape(setbackLeft(corner)),
    show.tape(setbackRight(corner)),
    passes(plan, corner),
    ...[corner.left, corner.right].flatMap((post) => {
      const { entryFace, diameter } = boreOf(plan, post.id);
      return [post.sectionName, entryFace, diameter];
    }),
  ].join();
};

const passes = (plan: Plan, corner: Corner): boolean => plan.runs.some((run) => run.bayIds.includes(corner.bayId));

export function cornerDetail(plan: Plan, corners: readonly [Corner, ...Corner[]]): Detail {
  const [corner] = corners;
  const show = showOf(plan);
  const { before, after, left, right } = corner;
  const names = corners.map(({ bayId }) => bayId).join(", ");
  const turn = show.angle(Math.abs(before.turn ?? 0));
  const cable = passes(plan, corner)
    ? `The cable bends ${bendsAt(plan, left.id).map(show.angle).join()} at ${left.id} and ${bendsAt(plan, right.id).map(show.angle).join()} at ${right.id}; free length between them ${show.tape(corner.free)}.`
    : "No cable passes: one run ends at each post.";
  return {
    id: `detail-corner-${before.id.toLowerCase()}-${after.id.toLowerCase()}`,
    title: `Corner of two posts, ${names}`,
    description: `Corner ${corner.bayId} from above: the sides turn ${turn}. The faces of ${left.id} and ${right.id} stand ${show.tape(setbackLeft(corner))} and ${show.tape(setbackRight(corner))} from the corner point. ${cable}`,
    notes: [
      `${sameText(corners)}The ${floorWord(plan.job)} is ${(before.turn ?? 0) >= 0 ? "on the inside" : "on the outside"} of this corner.`,
    ],
    size: sizeOf(corner),
    draw: (scale) => draw(plan, corner, scale.ratio, show),
  };
}

function sameText([corner, ...others]: readonly [Corner, ...Corner[]]): Text {
  const name = ({ bayId, left, right }: Corner): Text => `${bayId} (${left.id}, ${right.id})`;
  return others.length === 0 ? "" : `Drawn for ${name(corner)}; the same at ${others.map(name).join(", ")}. `;
}

/** From the ends of the drawn cable to the corner point and on along the next side, as if it turned by a right angle or less. */
function sizeOf(corner: Corner): Room {
  const { before, left, right } = corner;
  const turn = Math.abs(before.turn ?? 0);
  const first = setbackLeft(corner) + left.along + CABLE_mm;
  const second = setbackRight(corner) + right.along + CABLE_mm;
  return { width: first + Math.max(0, Math.cos(turn)) * second, height: Math.sin(turn) * second };
}

export const bendsAt = (plan: Plan, postId: string): readonly number[] =>
  plan.runs
    .flatMap((run) => run.bends)
    .filter((bend) => bend.postId === postId)
    .map(({ angle }) => angle);

/** A place in a post's own directions, with the corner point at the origin of the paper. */
function placeIn(corner: Corner, vertical: Vertical, ratio: number): Place {
  const side = vertical === corner.left ? corner.before : corner.after;
  const along = { x: Math.cos(side.direction), y: -Math.sin(side.direction) };
  const outward = { x: -Math.sin(side.direction), y: -Math.cos(side.direction) };
  const middle = vertical === corner.left ? vertical.station - side.length : vertical.station;
  return (x, y) => go(go({ x: 0, y: 0 }, along, (middle + x) * ratio), outward, y * ratio);
}

function draw(plan: Plan, corner: Corner, ratio: number, show: Show): Picture {
  const { left, right, before } = corner;
  const [placeLeft, placeRight] = [placeIn(corner, left, ratio), placeIn(corner, right, ratio)];
  const passing = passes(plan, corner);
  const point = { x: 0, y: 0 };
  const side = (before.turn ?? 0) >= 0 ? 1 : -1;
  const edge = (place: Place, vertical: Vertical, x: Mm): Point => place(x, (side * vertical.across) / 2);
  const cornerFrom = (place: Place, vertical: Vertical, setback: Mm, sign: 1 | -1): Point =>
    edge(place, vertical, sign * (vertical.along / 2 + setback));
  const dimensions = [
    dimensionWays({
      from: edge(placeLeft, left, left.along / 2),
      to: cornerFrom(placeLeft, left, setbackLeft(corner), 1),
      offset: -side * 5,
      text: show.tape(setbackLeft(corner)),
      beyond: "from",
    }),
    dimensionWays({
      from: cornerFrom(placeRight, right, setbackRight(corner), -1),
      to: edge(placeRight, right, -right.along / 2),
      offset: -side * 5,
      text: show.tape(setbackRight(corner)),
      beyond: "to",
    }),
  ];
  const axes = strokes("centre", [
    [placeLeft(0, 0), point],
    [point, placeRight(0, 0)],
  ]);
  const members = [member(plan, left, placeLeft, 1), member(plan, right, placeRight, -1)];
  const cable = passing
    ? [
        strokes("heavy", [
          [
            placeLeft(-left.along / 2 - CABLE_mm, 0),
            placeLeft(left.along / 2, 0),
            placeRight(-right.along / 2, 0),
            placeRight(right.along / 2 + CABLE_mm, 0),
          ],
        ]),
      ]
    : [];
  const drills = {
    left: drillSign(left, boreOf(plan, left.id), placeLeft, ratio),
    right: drillSign(right, boreOf(plan, right.id), placeRight, ratio),
  };
  const notes = cornerNotes(plan, corner, { placeLeft, placeRight, show, passing });
  const ofLeft = [...notes.left, { target: drills.left.tail, text: drillText(left, boreOf(plan, left.id)) }];
  const ofRight = [...notes.right, { target: drills.right.tail, text: drillText(right, boreOf(plan, right.id)) }];
  return {
    parts: [...members.flat(), axes, ...cable, circle(point, 0.7, { pen: "edge", fill: "white" }), drills.left.part, drills.right.part],
    loose: dimensions,
    // Each word stands on the side of what it points at: seen from above the left post may lie at the right.
    ...(placeLeft(0, 0).x > placeRight(0, 0).x ? { left: ofRight, right: ofLeft } : { left: ofLeft, right: ofRight }),
  };
}

const drillText = ({ id }: Vertical, { entryFace }: Bore): Text => `drill ${id} this way, from its ${faceName[entryFace]}`;

/** The arrow of the drill stands this far off the cable, and is this long. */
const DRILL_OFF_mm = 2.8;
const DRILL_mm = 7;

/** An arrow onto the face that the bit goes in. */
function drillSign(
  vertical: Vertical,
  { entryFace, offset }: Bore,
  place: Place,
  ratio: number,
): { readonly part: Part; readonly tail: Point } {
  const sign = entryFace === "right" ? 1 : -1;
  const y = offset + DRILL_OFF_mm / ratio;
  const half = vertical.along / 2;
  const [tip, tail] = [place(sign * half, y), place(sign * (half + DRILL_mm / ratio), y)];
  const toward = { x: (tip.x - tail.x) / DRILL_mm, y: (tip.y - tail.y) / DRILL_mm };
  return { part: group([strokes("cable", [[tail, go(tip, toward, -2)]]), arrowhead(tip, toward, 2.8)]), tail };
}

interface NoteContext {
  readonly placeLeft: Place;
  readonly placeRight: Place;
  readonly show: Show;
  readonly passing: boolean;
}

function cornerNotes(
  plan: Plan,
  corner: Corner,
  { placeLeft, placeRight, show, passing }: NoteContext,
): { readonly left: readonly Note[]; readonly right: readonly Note[] } {
  const { left, right, before } = corner;
  const words = (vertical: Vertical): Text => {
    const bore = boreOf(plan, vertical.id);
    const bends = bendsAt(plan, vertical.id)
      .map((angle) => `, bend ${show.angle(angle)}`)
      .join("");
    return `${vertical.id}, ${vertical.sectionName}: bore ${show.fine(bore.diameter)}${bushingText(plan, vertical, bore)}${bends}`;
  };
  const [a, b] = [placeLeft(left.along / 2, 0), placeRight(-right.along / 2, 0)];
  const side = (before.turn ?? 0) >= 0 ? 1 : -1;
  return {
    left: [{ target: placeLeft(-left.along * 0.3, side * left.across * 0.3), text: words(left) }],
    right: [
      { target: { x: 0, y: 0 }, text: `corner point, where the lines of the bores cross: turn ${show.angle(Math.abs(before.turn ?? 0))}` },
      ...(passing ? [{ target: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, text: `free length ${show.tape(corner.free)}` }] : []),
      { target: placeRight(right.along * 0.2, side * right.across * 0.3), text: words(right) },
    ],
  };
}

export const boreOf = (plan: Plan, postId: string): Bore => {
  const bore = plan.bores.find((one) => one.verticalId === postId);
  if (bore === undefined) throw new RangeError(`no bore in ${postId}`);
  return bore;
};

/** A corner post with what is in it: a bend with its bushings, or the end of a run. */
function member(plan: Plan, vertical: Vertical, place: Place, towardCorner: 1 | -1): readonly Part[] {
  const bore = boreOf(plan, vertical.id);
  const end = plan.runs.flatMap((run) => [run.left, run.right]).find(({ postId }) => postId === vertical.id);
  if (end !== undefined)
    return [...cutMember(plan, vertical, place, endHoles(end, vertical, bore)), ...endFitting(plan, end, vertical, place, bore).parts];
  const hole = { from: -vertical.along / 2, to: vertical.along / 2, offset: bore.offset, diameter: bore.diameter };
  return [...cutMember(plan, vertical, place, [hole]), ...(bore.bushing ? bushings(plan, vertical, bore, place, towardCorner) : [])];
}
