// What is each part of a guard called? One of its sides with the names that the sheets use, for those who do it once.
import type { Box } from "../../drawing/box.ts";
import { dimension } from "../../drawing/dimension.ts";
import { type Callout, calloutColumn, spread, targetDot } from "../../drawing/leader.ts";
import type { Room } from "../../drawing/paper.ts";
import { boxOfParts, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, textWidth } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan, RunEnd, SidePlan, Vertical, VerticalRole } from "../../plan/plan.ts";
import { courseHeight } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { endName, roleName } from "../wording.ts";
import { finishDrawing, footer, leftFace, membersOf, rightFace } from "./kit.ts";
import { climbOf, gapBelowOn, openingOn } from "./raked.ts";
import { baysIn, DECK_mm, edgeRoom, type Scene, sideScene, verticalsIn, wallRoom } from "./side-scene.ts";
import { stretchedView } from "./stretched-view.ts";

/** Height of the guard on paper, whatever its scale: room for five names beside it. */
const GUARD_mm = 34;
/** A slope climbs over no more of the paper than this. */
const CLIMB_most_mm = 14;
/** Paper beside the side that a column of names takes. */
const COLUMN_mm = 36;
const AIR_mm = 6;
/** The clear opening is measured so far beside the side. */
const OPENING_mm = 2.2;

export function partsNamed(plan: Plan, box: Room): Drawing {
  const scene = sceneOf(plan, box);
  const guard = sideScene(scene);
  const drawn = [...guard, ...namesAbove(scene), ...namesBeside(scene, boxOfParts(guard)), ...namesBelow(scene)];
  const notes = ["Not to scale. Each word is explained in the table below; your own numbers are on the other sheets."];
  return finishDrawing({
    id: "steps-parts",
    title: `The parts of your guard and their names: side ${scene.side.id}, seen from inside`,
    description: describe(scene),
    parts: [...drawn, footer(drawn, { scale: null, units: plan.job.units, notes, room: box })],
  });
}

/** An end, a post between and a spacer are enough: a longer side is only smaller on paper. */
const KINDS_enough = 3;

/** A level side if there is one, with enough kinds of uprights, and of those the shortest. */
function sideToShow(plan: Plan): SidePlan {
  const kinds = (side: SidePlan): number => {
    const own = new Set(uprightsOn(plan, side).map(({ role }) => role)).size;
    return Math.min(own, KINDS_enough) + (side.slope === 0 ? KINDS_enough : 0);
  };
  const [best] = [...plan.sides].sort((one, other) => kinds(other) - kinds(one) || one.length - other.length);
  if (best === undefined) throw new RangeError("a plan without sides");
  return best;
}

const wholeOf = (side: SidePlan) => ({ from: 0, to: side.length, matchLeft: null, matchRight: null });

const uprightsOn = (plan: Plan, side: SidePlan): readonly Vertical[] => verticalsIn({ plan, side, stretch: wholeOf(side) });

function sceneOf(plan: Plan, box: Room): Scene {
  const side = sideToShow(plan);
  const stretch = wholeOf(side);
  const walls = wallRoom(side);
  const width = box.width - 2 * (COLUMN_mm + AIR_mm) - walls.left - walls.right;
  const rough = width / side.length;
  const beyond = edgeRoom({ plan, side, stretch }, rough);
  const across = (width - beyond.left - beyond.right) / side.length;
  const climb = Math.min(climbOf(side) * across, CLIMB_most_mm);
  const up = GUARD_mm / openingOn(plan, side).guardHeight;
  const tan = (climb / side.length) * Math.sign(side.slope);
  return { plan, side, stretch, view: stretchedView(stretch, { across, up, tan, origin: { x: 0, y: 0 } }), stretched: true };
}

const at = ({ view }: Scene, x: Mm, y: Mm): Point => view.point({ x, y });

/** Uprights by their names, each kind once, in a row above the top rail. */
function namesAbove(scene: Scene): readonly Part[] {
  const { plan, side } = scene;
  const { guardHeight, top, bottom } = openingOn(plan, side);
  const shown = firstOfEach(verticalsIn(scene)).map((vertical) => {
    const target = at(scene, (leftFace(vertical) + rightFace(vertical)) / 2, top - (top - bottom) / 6);
    return { target, name: `${roleName[vertical.role]} ${vertical.id}` };
  });
  const line = Math.min(at(scene, 0, guardHeight).y, at(scene, side.length, guardHeight).y) - 8;
  const places = spread(shown.map(({ target, name }) => ({ at: target.x, size: textWidth(name, { weight: 700 }) + 3 })));
  return shown.flatMap(({ target, name }, index) => {
    const x = places[index] ?? target.x;
    const foot = { x, y: line + lineHeight() / 2 + 0.4 };
    return [
      strokes("thin", [[target, { x: target.x, y: foot.y + 1.6 }, foot]]),
      targetDot(target),
      label(name, { x, y: line }, { weight: 700, anchor: "middle" }),
    ];
  });
}

/** Of each role the first one. */
function firstOfEach(uprights: readonly Vertical[]): readonly Vertical[] {
  const byRole = new Map<VerticalRole, Vertical>();
  for (const upright of uprights) if (!byRole.has(upright.role)) byRole.set(upright.role, upright);
  return [...byRole.values()].sort((one, other) => one.station - other.station);
}

/** Rails, cables and the datum on the left; what holds and pulls the cables at the ends of their run. */
function namesBeside(scene: Scene, box: Box): readonly Part[] {
  const { plan, side } = scene;
  const { bottom, top, guardHeight } = openingOn(plan, side);
  const [bay] = baysIn(scene);
  if (bay === undefined) return [];
  const { left, right } = membersOf(plan, bay);
  const inFirst = (share: number): Mm => rightFace(left) + share * (leftFace(right) - rightFace(left));
  const [low, high] = [plan.courses[0], plan.courses.at(-1)];
  const callout = (share: number, height: Mm, ...lines: readonly Text[]): Callout => ({ target: at(scene, inFirst(share), height), lines });
  const lefts: readonly Callout[] = [
    callout(0.2, (top + guardHeight) / 2, "top rail"),
    ...(high === undefined ? [] : [callout(0.4, courseHeight(high, side), `cable, course ${high.number}`)]),
    ...(low === undefined || low === high ? [] : [callout(0.4, courseHeight(low, side), "cable, course 1")]),
    ...(plan.job.frame.bottomRail === null ? [] : [callout(0.2, (bottom + gapBelowOn(plan, side)) / 2, "bottom rail")]),
    callout(0.1, 0, "datum: heights", "count from here"),
  ];
  return [
    calloutColumn(lefts, { x: box.left - AIR_mm, side: "left" }),
    ...endsOn(scene, box.right),
    dimension({
      from: { x: box.right + OPENING_mm, y: at(scene, side.length, top).y },
      to: { x: box.right + OPENING_mm, y: at(scene, side.length, bottom).y },
      offset: 0,
      text: "clear opening",
    }),
  ];
}

/** Above the bottom of the opening, beside the word in a wall. */
const ENDS_share = 0.2;

/** The ends of runs at the right of this side. */
function endsOn(scene: Scene, edge: Mm): readonly Part[] {
  const { plan, side } = scene;
  const { bottom, top } = openingOn(plan, side);
  const posts = verticalsIn(scene);
  const ends = plan.runs.flatMap(({ id, left, right }) => [
    { id, end: left, face: leftFace },
    { id, end: right, face: rightFace },
  ]);
  const last = ends.flatMap(({ id, end, face }) => {
    const post = posts.find(({ id: postId }) => postId === end.postId);
    return post === undefined
      ? []
      : [{ x: face(post), callout: endCallout(id, end, at(scene, face(post), bottom + ENDS_share * (top - bottom))) }];
  });
  const callouts = last.filter(({ x }) => x > side.length / 2).map(({ callout }) => callout);
  return callouts.length === 0 ? [] : [calloutColumn(callouts, { x: edge + AIR_mm + OPENING_mm + 1, side: "right" })];
}

const endCallout = (runId: string, end: RunEnd, target: Point): Callout => ({
  target,
  lines: [endName[end.kind], `of run ${runId}:`, end.pulls ? "here you pull" : "it only holds"],
});

/** A bay with its span, and the side, below the floor. */
function namesBelow(scene: Scene): readonly Part[] {
  const { plan, side } = scene;
  const bay = baysIn(scene).find(({ kind }) => kind === "bay");
  const below = Math.max(at(scene, 0, 0).y, at(scene, side.length, 0).y) + DECK_mm;
  const line = (from: Mm, to: Mm, row: number, text: Text): Part =>
    dimension({ from: { x: at(scene, from, 0).x, y: below }, to: { x: at(scene, to, 0).x, y: below }, offset: 3 + row * 5, text });
  return [
    ...(bay === undefined
      ? []
      : [line(rightFace(membersOf(plan, bay).left), leftFace(membersOf(plan, bay).right), 0, `bay ${bay.id}: in it, a cable's span`)]),
    line(0, side.length, 1, `side ${side.id}`),
  ];
}

function describe({ plan, side, ...rest }: Scene): Text {
  const uprights = firstOfEach(verticalsIn({ plan, side, ...rest })).map(({ role, id }) => `${roleName[role]} ${id}`);
  return `Named are the ${uprights.join(", ")}; top rail, ${plan.job.frame.bottomRail === null ? "" : "bottom rail, "}the lowest and the highest cable, the datum, the clear opening, a bay, and the side itself.`;
}
