// How do the cables of two sides end on one corner post?
import { dimensionWays } from "../../drawing/dimension.ts";
import { circle, hatched, polygon, strokes } from "../../drawing/shape.ts";
import { along, type Point } from "../../geometry/vector.ts";
import { faceOf, goesThroughOneWall } from "../../plan/face-end.ts";
import type { Bore, Plan, SidePlan } from "../../plan/plan.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import type { Detail, Note, Picture } from "./detail-compose.ts";
import { fittingNotes } from "./detail-end.ts";
import type { EndCase } from "./detail-end-cases.ts";
import { endFitting, endHoles } from "./detail-ends.ts";
import { reachBefore } from "./detail-face.ts";
import { type OnePost, onePostsOf, placesOf } from "./detail-one-post.ts";
import { type EndDrawn, reachBehind, sectionOf } from "./detail-parts.ts";
import { type Place, rectangle } from "./detail-place.ts";
import { showOf } from "./kit.ts";

/** `left` ends the run of the side before the corner, `right` begins that of the side behind it. */
export function cornerEndsDetail(plan: Plan, left: EndCase, right: EndCase): Detail {
  const show = showOf(plan);
  const one = onePostsOf(plan).find(({ post }) => post.id === left.post.id);
  if (one === undefined) throw new RangeError(`${left.post.id} makes no corner`);
  const { post, corner, before, after } = one;
  const reach = corner.setback + Math.max(reachBefore(plan, left.end), reachBefore(plan, right.end));
  const side = reach + post.along / 2 + Math.max(reachBehind(left.end), reachBehind(right.end));
  const how = corner.isSetOff
    ? `The bores cross inside at two heights, ${show.tape(plan.setOff?.by ?? 0)} apart.`
    : "Both holes are at the same height, square to each other, and must not meet.";
  return {
    id: `detail-corner-${before.id.toLowerCase()}-${after.id.toLowerCase()}`,
    title: `Runs ${left.run.id} and ${right.run.id} end ${corner.isSetOff ? "behind" : "on"} corner post ${post.id}`,
    description: `Corner ${before.id}/${after.id} (${post.id}) from above: the sides turn ${show.angle(Math.abs(corner.turn))}, and no cable passes. For ${left.run.id}: ${holeText(plan, left.bore, before)}. For ${right.run.id}: ${holeText(plan, right.bore, after)}. ${how}`,
    notes: [
      `The ${floorWord(plan.job)} is ${corner.turn >= 0 ? "on the inside" : "on the outside"} of this corner.`,
      ...(corner.isSetOff ? [`Broken lines: the bores of ${right.run.id}, at other heights.`] : []),
    ],
    size: { width: side, height: side },
    draw: (scale) => draw(plan, { one, left, right }, scale.ratio),
  };
}

interface Ends {
  readonly one: OnePost;
  readonly left: EndCase;
  readonly right: EndCase;
}

/** Off the post on paper, where its dimensions stand. */
const CLEAR_mm = 5;

function draw(plan: Plan, { one, left, right }: Ends, ratio: number): Picture {
  const { post, corner, before, after } = one;
  const show = showOf(plan);
  const paper = ({ x, y }: Point): Point => ({ x: x * ratio, y: 0 - y * ratio });
  const { middle, mouths, left: leftMouth, right: rightMouth } = placesOf(one);
  /** About the middle of the post, x in this direction. */
  const placeIn =
    (direction: Radian): Place =>
    (x, y) =>
      paper(along(along(middle, direction, x), direction + Math.PI / 2, y));
  // Both look from the face on which their run ends along its cable.
  const [ofLeft, ofRight] = [placeIn(mouths.left + Math.PI), placeIn(mouths.right)];
  const square = (half: Mm) => rectangle(ofLeft, { left: -half, right: half, low: -half, high: half });
  const outline = square(post.along / 2);
  const { wall } = sectionOf(plan, post);
  const hollow = wall === null ? [] : [square(post.along / 2 - wall)];
  const holesOf = ({ end, bore }: EndCase, place: Place) =>
    endHoles(end, post, bore).map(({ from, to, diameter }) =>
      rectangle(place, { left: from, right: to, low: -diameter / 2, high: diameter / 2 }),
    );
  const [first, second] = [holesOf(left, ofLeft), holesOf(right, ofRight)];
  // Bores at another height are not cut.
  const [holes, hidden] = corner.isSetOff ? [first, second] : [[...first, ...second], []];
  const [a, b] = [endFitting(plan, left.end, post, ofLeft, left.bore), endFitting(plan, right.end, post, ofRight, right.bore)];
  // Outside of the turn, clear of the post.
  const side = corner.turn >= 0 ? 1 : -1;
  const point = { x: 0, y: 0 };
  const away = (at: Point, { direction }: SidePlan): Point => paper(along(at, direction + (side * Math.PI) / 2, post.along / 2));
  const text = show.tape(corner.setback);
  return {
    parts: [
      polygon(outline, { pen: "outline", fill: "white" }),
      ...[...hollow, ...holes].map((shape) => polygon(shape, { pen: "edge", fill: "white" })),
      hatched({ outlines: [outline, ...hollow, ...holes], spacing: wall === null ? 3 : 1.2, angle: Math.PI / 4 }),
      ...(hidden.length === 0
        ? []
        : [
            strokes(
              "hidden",
              hidden.map(([from, to, beyond, start]) => [from, to, beyond, start, from].flatMap((at) => at ?? [])),
            ),
          ]),
      ...a.parts,
      ...b.parts,
      strokes("centre", corner.isSetOff ? [] : [[paper(leftMouth), paper(point), paper(rightMouth)]]),
      circle(paper(point), 0.7, { pen: "edge", fill: "white" }),
    ],
    loose: [
      dimensionWays({ from: away(leftMouth, before), to: away(point, before), offset: -side * CLEAR_mm, text, beyond: "from" }),
      dimensionWays({ from: away(point, after), to: away(rightMouth, after), offset: -side * CLEAR_mm, text, beyond: "to" }),
    ],
    left: [
      {
        target: paper(along(middle, mouths.right + Math.PI, post.along * 0.36)),
        text: `post ${post.id}, ${post.sectionName}: holds both runs`,
      },
      ...holeNotes(plan, { one: left, side: before, drawn: a }, show),
    ],
    right: [{ target: paper(point), text: pointText(plan, one, show) }, ...holeNotes(plan, { one: right, side: after, drawn: b }, show)],
  };
}

/** Wood or metal between the two holes, where the post is no tube. */
function pointText(plan: Plan, { post, corner }: OnePost, show: Show): Text {
  const turn = `corner point: turn ${show.angle(Math.abs(corner.turn))}`;
  if (corner.isSetOff) return turn;
  const left = plan.checks.find(({ id }) => id === `face-between-${post.id}`)?.demand?.value;
  if (left === undefined) return turn;
  const between = faceOf(plan.job).fastening.kind === "lag screw" ? "wood left between the two screws" : "metal left between the two holes";
  return left > 0 ? `${turn}; ${between} ${show.tapeDown(left)}` : `${turn}; THE TWO HOLES MEET`;
}

const holeText = (plan: Plan, bore: Bore, { id }: SidePlan): Text => {
  const show = showOf(plan);
  const [size, place] = [show.diameterOne(bore.diameter), `the middle of the face towards side ${id}`];
  if (goesThroughOneWall(bore, plan.job)) return `hole ${size} through one wall alone, in ${place}`;
  if (bore.through) return `bore ${show.fine(bore.diameter)} right through from ${place}`;
  return `blind hole ${size}, ${show.fine(bore.drilledLength)} deep from ${place}`;
};

interface DrawnEnd {
  readonly one: EndCase;
  /** The side that its face looks to. */
  readonly side: SidePlan;
  readonly drawn: EndDrawn;
}

const holeNotes = (plan: Plan, { one, side, drawn: { points } }: DrawnEnd, show: Show): readonly Note[] => [
  { target: points.bore, text: `${one.run.id}: ${holeText(plan, one.bore, side)}` },
  ...fittingNotes(plan, one, points, show).map((note) => ({ ...note, text: `${one.run.id}: ${note.text}` })),
];
