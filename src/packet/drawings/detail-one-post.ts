// Which corners are made with one post, and how does a cable turn one?
import { dimensionWays } from "../../drawing/dimension.ts";
import type { Room } from "../../drawing/paper.ts";
import { arrowhead, circle, go, group, hatched, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { along, type Point, subtract } from "../../geometry/vector.ts";
import { besideBore, type CornerPost, mouthDirections } from "../../plan/corner-post.ts";
import type { Bore, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import type { Detail, Picture } from "./detail-compose.ts";
import { CABLE_mm } from "./detail-parts.ts";
import { showOf } from "./kit.ts";

export interface OnePost {
  readonly post: Vertical;
  readonly corner: CornerPost;
  readonly before: SidePlan;
  readonly after: SidePlan;
  readonly bore: Bore;
}

export const onePostsOf = (plan: Plan): readonly OnePost[] =>
  plan.verticals.flatMap((post): readonly OnePost[] => {
    const { corner } = post;
    const bore = plan.bores.find(({ verticalId }) => verticalId === post.id);
    const [before, after] = [plan.sides[post.sideIndex], plan.sides[corner?.nextIndex ?? -1]];
    return corner === undefined || bore === undefined || before === undefined || after === undefined
      ? []
      : [{ post, corner, before, after, bore }];
  });

/** Corners with the same turn share one drawing. */
export const onePostKey = (plan: Plan, { corner }: OnePost): string => showOf(plan).angle(corner.turn);

export function onePostDetail(plan: Plan, corners: readonly [OnePost, ...OnePost[]]): Detail {
  const [first, ...others] = corners;
  const { post, corner, before } = first;
  const show = showOf(plan);
  const name = (one: OnePost): Text => `${one.before.id}/${one.after.id} (${one.post.id})`;
  const half = show.angle(Math.abs(corner.turn) / 2);
  const same = others.length === 0 ? "" : `Drawn for ${name(first)}; the same at ${others.map(name).join(", ")}. `;
  return {
    id: `detail-corner-${before.id.toLowerCase()}-${first.after.id.toLowerCase()}`,
    title: `Corner of one post, ${corners.map((one) => `${one.before.id}/${one.after.id}`).join(", ")}`,
    description: `Corner ${name(first)} from above: the sides turn ${show.angle(Math.abs(corner.turn))}. The bore of ${post.id} runs from the middle of the face towards side ${before.id} to that towards side ${first.after.id}, ${show.tape(corner.chord)} long; the cable bends ${half} at each of its mouths, which stand ${show.tape(corner.setback)} from the corner point.`,
    notes: [`${same}The ${floorWord(plan.job)} is ${corner.turn >= 0 ? "on the inside" : "on the outside"} of this corner.`],
    size: sizeOf(first),
    draw: (scale) => draw(plan, first, scale.ratio),
  };
}

function sizeOf({ post, corner }: OnePost): Room {
  const turn = Math.abs(corner.turn);
  const reach = corner.setback + CABLE_mm;
  return { width: reach + Math.max(post.along / 2, Math.cos(turn) * reach), height: Math.max(post.along, Math.sin(turn) * reach) };
}

/** Where its parts lie from the corner point, in the model. */
interface Places {
  readonly middle: Point;
  readonly left: Point;
  readonly right: Point;
  readonly mouths: { readonly left: Radian; readonly right: Radian };
}

export function placesOf({ post, before }: OnePost): Places {
  const middle = subtract(post.centre, before.to);
  const mouths = mouthDirections(post);
  return { middle, mouths, left: along(middle, mouths.left, post.along / 2), right: along(middle, mouths.right, post.along / 2) };
}

const QUARTER_rad = Math.PI / 2;

const footprint = ({ direction, along: size }: Vertical, middle: Point): readonly Point[] =>
  [1, 3, 5, 7].map((eighth) => along(middle, direction + (eighth * Math.PI) / 4, size * Math.SQRT1_2));

/** Its four corners on the two faces: both edges are parallel to its axis. */
function boreOutline({ bore }: OnePost, { left, right, mouths }: Places): readonly Point[] {
  const axis = Math.atan2(right.y - left.y, right.x - left.x);
  const half = bore.diameter / 2 / Math.cos(bore.skew);
  const on = (mouth: Point, face: Radian, side: 1 | -1): Point => {
    const along_face = face + QUARTER_rad;
    const sign = Math.cos(along_face - axis - QUARTER_rad) >= 0 ? side : -side;
    return along(mouth, along_face, sign * half);
  };
  return [on(left, mouths.left, 1), on(right, mouths.right, 1), on(right, mouths.right, -1), on(left, mouths.left, -1)];
}

/** Off the post, and the size of the arrow that shows which way to drill, on paper. */
const CLEAR_mm = 5;
const DRILL_OFF_mm = 2.8;
const DRILL_mm = 8;

function draw(plan: Plan, one: OnePost, ratio: number): Picture {
  const { post, corner, before, after, bore } = one;
  const show = showOf(plan);
  const paper = ({ x, y }: Point): Point => ({ x: x * ratio, y: 0 - y * ratio });
  const places = placesOf(one);
  const { middle, left, right } = places;
  const point = { x: 0, y: 0 };
  const post_outline = footprint(post, middle).map(paper);
  const hole = boreOutline(one, places).map(paper);
  const side = corner.turn >= 0 ? 1 : -1;
  // Outside of the turn, clear of the post.
  const clear = post.along * Math.SQRT1_2;
  const away = (at: Point, { direction }: SidePlan): Point => paper(along(at, direction + side * QUARTER_rad, clear));
  const dimensions = [
    dimensionWays({
      from: away(left, before),
      to: away(point, before),
      offset: -side * CLEAR_mm,
      text: show.tape(corner.setback),
      beyond: "from",
    }),
    dimensionWays({
      from: away(point, after),
      to: away(right, after),
      offset: -side * CLEAR_mm,
      text: show.tape(corner.setback),
      beyond: "to",
    }),
  ];
  const cable = [along(left, before.direction, -CABLE_mm), left, right, along(right, after.direction, CABLE_mm)].map(paper);
  const drill = drillSign(paper(left), paper(right), side);
  const beside = besideBore(post) - bore.diameter / 2;
  const half = show.angle(Math.abs(corner.turn) / 2);
  const across = (to: number): Point => ({
    x: middle.x + to * (middle.x - (left.x + right.x) / 2),
    y: middle.y + to * (middle.y - (left.y + right.y) / 2),
  });
  const inner = bore.skew === 0 ? along(middle, post.direction + side * QUARTER_rad, post.along * 0.3) : across(0.4);
  return {
    parts: [
      polygon(post_outline, { pen: "outline", fill: "white" }),
      polygon(hole, { pen: "edge", fill: "white" }),
      hatched({ outlines: [post_outline, hole], spacing: 3, angle: Math.PI / 4 }),
      strokes("centre", [[paper(left), point, paper(right)]]),
      strokes("heavy", [cable]),
      circle(point, 0.7, { pen: "edge", fill: "white" }),
      drill.part,
    ],
    loose: dimensions,
    left: [
      {
        target: paper(inner),
        text: `${post.id}, ${post.sectionName}, ${standsText(corner, before, show)}: bore ${show.fine(bore.diameter)}, ${show.tape(corner.chord)} long`,
      },
      {
        target: drill.tail,
        text: `drill this way, from the middle of the face towards side ${before.id}, ${bore.skew === 0 ? "square to it" : `${show.angle(bore.skew)} off square`}`,
      },
    ],
    right: [
      { target: point, text: `corner point: turn ${show.angle(Math.abs(corner.turn))}` },
      {
        target: paper(right),
        text: `bend ${half} at each mouth${bore.bushing ? `, each with a bushing${plan.job.fittings.bushing.tubeWall === null ? "" : " in the mouth of a tube right through"}` : ""}; comes out in the middle of the face towards side ${after.id}`,
      },
      ...(bore.skew === 0
        ? []
        : [
            {
              target: paper(along(middle, arrisDirection(places), post.along * 0.52)),
              text: `wood left between bore and edge ${show.tapeDown(beside)}`,
            },
          ]),
    ],
  };
}

/** To the edge of the post that a bore on the mitre cuts off. */
const arrisDirection = ({ mouths }: Places): Radian =>
  Math.atan2(Math.sin(mouths.left) + Math.sin(mouths.right), Math.cos(mouths.left) + Math.cos(mouths.right));

const standsText = ({ twist }: CornerPost, { id }: SidePlan, show: ReturnType<typeof showOf>): Text =>
  twist === 0
    ? "stands square to both sides"
    : `stands turned ${show.angle(Math.abs(twist))} from square to side ${id}, half-way between both sides`;

/** An arrow beside the bore's axis, onto the face that the bit goes in. */
function drillSign(from: Point, to: Point, side: 1 | -1): { readonly part: Part; readonly tail: Point } {
  const length: Mm = Math.hypot(to.x - from.x, to.y - from.y);
  const step = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const off = { x: step.y * side, y: -step.x * side };
  const tip = go(go(from, off, DRILL_OFF_mm), step, -1.2);
  const tail = go(tip, step, -DRILL_mm);
  return { part: group([strokes("cable", [[tail, go(tip, step, -2)]]), arrowhead(tip, step, 2.8)]), tail };
}
