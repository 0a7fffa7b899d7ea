// How does a stretch of one side look from the deck: deck, rails, posts, spacers, cables, walls?

import type { View } from "../../drawing/paper.ts";
import { hatched, type Line, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { label } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import { membersOn } from "../../plan/corner-post.ts";
import { jointName } from "../../plan/joints.ts";
import { isLeft } from "../../plan/pier.ts";
import type { Bay, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import { bottomRailReaches, type Reach, topRailReach } from "../../plan/rails.ts";
import { courseHeight } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import { againstOf } from "../guard-ends.ts";
import { leftFace, membersOf, rightFace } from "./kit.ts";
import { gapBelowOn, openingOn, rakeOn, slopeBends, stepSphere, steps } from "./raked.ts";
import type { Stretch } from "./stretches.ts";
import { outlineOf, seenTo } from "./turned-post.ts";

/** Paper taken by walls with their word, and by the deck below the datum. */
const WALL_mm = 4.6;
const WORD_AIR_mm = 0.8;
export const DECK_mm = 2.4;

export interface Scene {
  readonly plan: Plan;
  readonly side: SidePlan;
  readonly stretch: Stretch;
  /** x: stations of the side; y: heights above the datum, which climbs on a rake. */
  readonly view: View;
  /** Lengths and heights have scales of their own, at which nothing round is true. */
  readonly stretched?: true;
}

const within = (stretch: Stretch, station: Mm): boolean => station >= stretch.from && station <= stretch.to;

export const verticalsIn = ({ plan, side, stretch }: Pick<Scene, "plan" | "side" | "stretch">): readonly Vertical[] =>
  membersOn(side.index, plan.verticals).filter((vertical) => {
    if (vertical.corner === undefined) return within(stretch, vertical.station);
    return vertical.corner.nextIndex === side.index ? stretch.matchLeft === null : stretch.matchRight === null;
  });

/** Bays of which some part is drawn, corners excepted. */
export const baysIn = ({ plan, side, stretch }: Scene): readonly Bay[] =>
  plan.bays.filter((bay) => {
    if (bay.sideId !== side.id || bay.kind === "corner") return false;
    const { left, right } = membersOf(plan, bay);
    return rightFace(left) < stretch.to && leftFace(right) > stretch.from;
  });

const isSolid = (end: SidePlan["begins"]): boolean => end?.kind === "wall" || end?.kind === "pier";

/** Paper that walls and piers take at the ends of a side. */
export const wallRoom = (side: SidePlan): { readonly left: Mm; readonly right: Mm } => ({
  left: isSolid(side.begins) ? WALL_mm : 0,
  right: isSolid(side.ends) ? WALL_mm : 0,
});

/** The same for one stretch of it. */
export function wallsOf({ side, stretch }: Scene): { readonly left: Mm; readonly right: Mm } {
  const { left, right } = wallRoom(side);
  return { left: stretch.matchLeft === null ? left : 0, right: stretch.matchRight === null ? right : 0 };
}

export const sideScene = (scene: Scene): readonly Part[] => [
  ...deck(scene),
  ...walls(scene),
  ...turnedFaces(scene),
  ...rails(scene),
  ...verticalsIn(scene).flatMap((vertical) => upright(scene, vertical)),
  ...hardware(scene),
  ...cables(scene),
  ...slopeBends(scene, verticalsIn(scene)),
  ...edges(scene),
];

function deck(scene: Scene): readonly Part[] {
  const { stretch, view } = scene;
  const wall = wallsOf(scene);
  const [left, right] = [view.point({ x: stretch.from, y: 0 }), view.point({ x: stretch.to, y: 0 })];
  const outline = [
    { x: left.x - wall.left, y: left.y },
    { x: right.x + wall.right, y: right.y },
    { x: right.x + wall.right, y: right.y + DECK_mm },
    { x: left.x - wall.left, y: left.y + DECK_mm },
  ];
  const band = hatched({ outlines: [outline], spacing: 2.6, angle: Math.PI / 4 });
  const { plan, side } = scene;
  if (rakeOn(plan, side)?.kind !== "stair") return [strokes("heavy", [outline.slice(0, 2)]), band];
  // Heights count from the line of the nosings; the steps lie under it.
  const treads = steps(plan, side, stretch, view);
  return [
    strokes("centre", [outline.slice(0, 2)]),
    ...(treads.length === 0 ? [band] : [...treads, ...(scene.stretched ? [] : stepSphere(scene, verticalsIn(scene)))]),
  ];
}

function walls(scene: Scene): readonly Part[] {
  const { stretch, view, plan, side } = scene;
  const wordAt = (toward: 1 | -1, sideIndex: number): string => {
    const pier = plan.verticals.find((one) => one.kind === "pier" && one.sideId === side.id && isLeft(one) === toward < 0);
    return pier === undefined ? againstOf(plan, sideIndex).toUpperCase() : `${pier.id}: ${pier.sectionName.toUpperCase()}`;
  };
  const wall = (station: Mm, toward: 1 | -1, word: string): readonly Part[] => {
    const { x, y: bottom } = view.point({ x: station, y: 0 });
    const top = view.point({ x: station, y: openingOn(plan, side).guardHeight }).y - 3;
    const middle = { x: x + (toward * WALL_mm) / 2, y: (top + bottom) / 2 };
    const name = label(word, middle, { anchor: "middle", angle: Math.PI / 2 });
    const beyond = x + toward * WALL_mm;
    // The hatch stops above and below the word.
    const band = (from: Mm, to: Mm): readonly Point[] => [
      { x, y: from },
      { x: beyond, y: from },
      { x: beyond, y: to },
      { x, y: to },
    ];
    const bands = [band(top, name.box.top - WORD_AIR_mm), band(name.box.bottom + WORD_AIR_mm, bottom)];
    return [
      strokes("outline", [
        [
          { x, y: top },
          { x, y: bottom },
        ],
      ]),
      hatched({ outlines: bands, spacing: 1.4, angle: Math.PI / 4 }),
      name,
    ];
  };
  return [
    ...(wallsOf(scene).left > 0 ? wall(stretch.from, -1, wordAt(-1, side.index - 1)) : []),
    ...(wallsOf(scene).right > 0 ? wall(stretch.to, 1, wordAt(1, side.index)) : []),
  ];
}

/** Rails as they are cut, so far as the stretch shows them. */
function rails(scene: Scene): readonly Part[] {
  const { plan, side, stretch, view } = scene;
  const { bottom, top, guardHeight } = openingOn(plan, side);
  const rail = ({ from, to }: Reach, low: Mm, high: Mm): readonly Part[] => {
    const seen = { from: Math.max(from, stretch.from), to: Math.min(to, stretch.to) };
    return seen.to > seen.from ? [polygon(rectangle(view, { ...seen, low, high }), { pen: "edge", fill: "white" })] : [];
  };
  const below = plan.job.frame.bottomRail === null ? [] : bottomRailReaches(side, plan.verticals);
  return [...below.flatMap((reach) => rail(reach, gapBelowOn(plan, side), bottom)), ...rail(topRailReach(side), top, guardHeight)];
}

/** Of posts that stand turned, the face beside the front one: rails and cables meet it, and are seen before it. */
function turnedFaces(scene: Scene): readonly Part[] {
  const { plan, side, view } = scene;
  return verticalsIn(scene).flatMap((vertical) => {
    const { left, right, turned } = outlineOf(vertical, side);
    if (turned === null) return [];
    const [from, to] = turned.mouth === "left" ? [left, turned.edge] : [turned.edge, right];
    return [polygon(rectangle(view, { from, to, low: 0, high: openingOn(plan, side).top }), { pen: "outline", fill: "white" })];
  });
}

function upright({ plan, side, view }: Scene, vertical: Vertical): readonly Part[] {
  const isPost = vertical.kind === "post";
  const { bottom, top } = openingOn(plan, side);
  const { left, right, turned } = outlineOf(vertical, side);
  const corners = rectangle(view, {
    from: turned?.mouth === "left" ? turned.edge : left,
    to: turned?.mouth === "right" ? turned.edge : right,
    low: isPost ? 0 : bottom,
    high: top,
  });
  return [
    polygon(corners, { pen: isPost ? "outline" : "edge", fill: "white" }),
    ...(vertical.core === undefined ? [] : [woodInside(view, vertical, { high: top, recess: vertical.core.recess })]),
  ];
}

/** The edges of the wood in a sleeve, hidden. */
const woodInside = (view: Scene["view"], vertical: Vertical, { high, recess }: { readonly high: Mm; readonly recess: Mm }): Part =>
  strokes(
    "hidden",
    [leftFace(vertical) + recess, rightFace(vertical) - recess].map((x) => [view.point({ x, y: 0 }), view.point({ x, y: high })]),
  );

/** Where no bore may come, on the posts that have hardware. */
function hardware(scene: Scene): readonly Part[] {
  const { plan, view } = scene;
  return verticalsIn(scene).flatMap((vertical) =>
    plan.hardware
      .filter(({ postId }) => postId === vertical.id)
      .flatMap(({ from, to }): readonly Part[] => {
        const high = Math.min(to, plan.opening.top);
        if (high <= from) return [];
        const corners = rectangle(view, { from: leftFace(vertical), to: rightFace(vertical), low: from, high });
        return [polygon(corners, { pen: "thin", fill: "white" }), hatched({ outlines: [corners], spacing: 0.9, angle: -Math.PI / 4 })];
      }),
  );
}

/** Cables are seen between the faces of the verticals only. */
function cables(scene: Scene): readonly Part[] {
  const { plan, side, stretch, view } = scene;
  const strung = new Set(plan.runs.flatMap((run) => run.bayIds));
  const lines = baysIn(scene)
    .filter((bay) => strung.has(bay.id))
    .flatMap((bay): readonly Line[] => {
      const { left, right } = membersOf(plan, bay);
      const [from, to] = [Math.max(seenTo(left, side, "right"), stretch.from), Math.min(seenTo(right, side, "left"), stretch.to)];
      return plan.courses.map((course) => {
        const y = courseHeight(course, side);
        return [view.point({ x: from, y }), view.point({ x: to, y })];
      });
    });
  return lines.length === 0 ? [] : [strokes("edge", lines)];
}

/** Paper that the name of a match line or a corner takes beside the end of a stretch. */
export const EDGE_NAME_mm = 4.4;

type Place = Pick<Scene, "plan" | "side" | "stretch">;

/** The same for both ends of a stretch, or what stands beyond it of the one post at a corner; 0 where the guard itself ends. */
export function edgeRoom(place: Place, ratio: number): { readonly left: Mm; readonly right: Mm } {
  const { side, stretch } = place;
  const beyond = (at: "left" | "right"): Mm => {
    const post = onePost(place, at);
    if (post === undefined) return 0;
    const { left, right } = outlineOf(post, side);
    return ratio * (at === "left" ? stretch.from - left : right - stretch.to);
  };
  return {
    left: stretch.matchLeft !== null || side.begins === null ? Math.max(EDGE_NAME_mm, beyond("left")) : 0,
    right: stretch.matchRight !== null || side.ends === null ? Math.max(EDGE_NAME_mm, beyond("right")) : 0,
  };
}

/** The one post that makes the corner at this end of a stretch. */
const onePost = (place: Place, at: "left" | "right"): Vertical | undefined =>
  verticalsIn(place).find(({ corner }) => corner !== undefined && (corner.nextIndex === place.side.index) === (at === "left"));

/** Match lines and corner points at the ends of a stretch. */
function edges(scene: Scene): readonly Part[] {
  const { side, stretch, plan } = scene;
  const before = side.begins === null ? plan.sides[side.index - 1] : undefined;
  const after = side.ends === null ? plan.sides[side.index + 1] : undefined;
  return [
    ...edge(scene, "left", stretch.matchLeft, before === undefined ? null : jointName(plan, `${before.id}/${side.id}`)),
    ...edge(scene, "right", stretch.matchRight, after === undefined ? null : jointName(plan, `${side.id}/${after.id}`)),
  ];
}

/** A line of its own pen, and its name turned beside it, or in the one post that makes the corner. */
function edge(scene: Scene, at: "left" | "right", match: number | null, corner: string | null): readonly Part[] {
  const { plan, side, stretch, view } = scene;
  const name = match === null ? corner : `match line ${match}`;
  if (name === null) return [];
  const station = at === "left" ? stretch.from : stretch.to;
  const { x, y: bottom } = view.point({ x: station, y: 0 });
  const top = view.point({ x: station, y: openingOn(plan, side).guardHeight }).y;
  const line = [
    { x, y: top - 3 },
    { x, y: bottom + DECK_mm },
  ];
  const beside = x + (at === "left" ? -1 : 1) * (EDGE_NAME_mm / 2 + 0.3);
  const place = { x: match === null ? (middleOfOnePost(scene, at) ?? beside) : beside, y: (top + bottom) / 2 };
  return [strokes(match === null ? "centre" : "match", [line]), label(name, place, { anchor: "middle", angle: Math.PI / 2, ground: true })];
}

/** On paper, of the one post that makes the corner there, where it is drawn wide enough for a name. */
function middleOfOnePost(scene: Scene, at: "left" | "right"): Mm | null {
  const { view } = scene;
  const post = onePost(scene, at);
  if (post === undefined) return null;
  const [left, right] = [leftFace(post), rightFace(post)].map((x) => view.point({ x, y: 0 }).x) as [Mm, Mm];
  return right - left < EDGE_NAME_mm ? null : (left + right) / 2;
}

function rectangle(
  view: View,
  { from, to, low, high }: { readonly from: Mm; readonly to: Mm; readonly low: Mm; readonly high: Mm },
): readonly Point[] {
  return [
    { x: from, y: low },
    { x: to, y: low },
    { x: to, y: high },
    { x: from, y: high },
  ].map(view.point);
}
