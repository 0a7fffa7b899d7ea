// What does the whole guard look like from above the deck? A picture to recognise it by, its marks in place; nothing is measured on it.
import { boxOf, grow, type Quad, quadOf } from "../../drawing/box.ts";
import { hatchLines } from "../../drawing/hatch.ts";
import { type Room, viewOf } from "../../drawing/paper.ts";
import { boxOfParts, coveredStrokes, type Part, polygon } from "../../drawing/shape.ts";
import { firstClear, label } from "../../drawing/text.ts";
import type { Point3 } from "../../geometry/space.ts";
import { add, along, dot, length, type Point, scale, subtract } from "../../geometry/vector.ts";
import type { Bay, Plan, PlanPoint, SidePlan, Vertical } from "../../plan/plan.ts";
import { bottomRailReaches, type Reach, topRailReach } from "../../plan/rails.ts";
import { courseHeight } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { finishDrawing, footer, verticalOf } from "./kit.ts";
import { gapBelowOn, openingOn } from "./raked.ts";
import { type Eye, eyeOf, prism, seen } from "./solids.ts";

/** Of a wall as much as shows that one is there. */
const WALL = { half: 260, above: 200 } as const;
const LABEL_ROOM_mm = 8;

/** Something that is drawn at once; what lies deeper is drawn first, so that what is nearer covers it. */
interface Piece {
  readonly depth: number;
  readonly draw: (at: (point: Point3) => Point) => readonly Part[];
}

export function overview(plan: Plan, box: Room): Drawing {
  const eye = eyeOf(plan);
  const pieces = [...plan.sides.flatMap((side) => piecesOf(plan, side, eye)), ...plan.verticals.map((one) => uprightPiece(plan, one, eye))];
  const flat = (point: Point3): Point => seen(eye, point);
  const size = boxOfParts(pieces.flatMap(({ draw }) => draw((point) => ({ ...flat(point), y: -flat(point).y }))));
  const ratio = Math.min(
    (box.width - 2 * LABEL_ROOM_mm) / (size.right - size.left),
    (box.height - 2 * LABEL_ROOM_mm) / (size.bottom - size.top),
    LARGEST_ratio,
  );
  const view = viewOf({ ratio, model: { x: size.left, y: -size.bottom }, paper: { x: LABEL_ROOM_mm, y: 0 } });
  const at = (point: Point3): Point => view.point(flat(point));
  const drawn = [...pieces].sort((one, other) => other.depth - one.depth).flatMap(({ draw }) => draw(at));
  const parts = [...drawn, ...marks(plan, at)];
  const notes = ["A picture, not to scale: measure nothing on it. Stations and heights: the plan above and the elevations."];
  return finishDrawing({
    id: "overview",
    title: "The whole guard, seen from above its walking surface",
    description: describe(plan),
    parts: [...parts, footer(parts, { scale: null, units: plan.job.units, notes, room: box })],
  });
}

/** Of a short guard the picture is no larger than this. */
const LARGEST_ratio = 1 / 22;

const lifted = ({ x, y }: PlanPoint, z: Mm): Point3 => ({ x, y, z });

/** A place on the line of a side, and the walking surface there. */
function onSide(side: SidePlan, station: Mm): Point3 {
  const rise = (side.datum_to - side.datum_from) * (station / side.length);
  return lifted(along(side.from, side.direction, station), side.datum_from + rise);
}

function piecesOf(plan: Plan, side: SidePlan, eye: Eye): readonly Piece[] {
  const { bottom, top, guardHeight } = openingOn(plan, side);
  const { topRail, bottomRail } = plan.job.frame;
  const uprights = plan.verticals.filter(({ sideIndex }) => sideIndex === side.index).map(({ station }) => station);
  const over = cutAt(topRailReach(side), uprights);
  const under = bottomRail === null ? [] : bottomRailReaches(side, plan.verticals);
  return [
    floorPiece(side, eye),
    ...wallPieces(plan, side, eye),
    ...over.map((reach, index) => {
      const ends = { from: index === 0 && side.begins !== null, to: index === over.length - 1 && side.ends !== null };
      return railPiece({ side, reach, ends, width: topRail.width, low: top, high: guardHeight }, eye, "over");
    }),
    ...under.map((reach) => {
      const ends = { from: true, to: true };
      return railPiece({ side, reach, ends, width: bottomRail?.width ?? 0, low: gapBelowOn(plan, side), high: bottom }, eye, "between");
    }),
    ...plan.bays.filter(({ sideId }) => sideId === side.id).map((bay) => cablePiece(plan, side, bay, eye)),
  ];
}

/** Pieces from upright to upright: a long one would lie before and behind the same post. */
function cutAt({ from, to }: Reach, stations: readonly Mm[]): readonly Reach[] {
  const ends = [from, ...stations.filter((one) => one > from && one < to), to];
  return ends.slice(1).map((end, index) => ({ from: ends[index] ?? from, to: end }));
}

/** The edge of what people walk on. It lies under all else. */
const floorPiece = (side: SidePlan, eye: Eye): Piece => {
  const [from, to] = [onSide(side, side.startsAt), onSide(side, side.endsAt)];
  return {
    depth: Math.max(dot(eye.into, from), dot(eye.into, to)) + FAR,
    draw: (at) => [coveredStrokes("heavy", [[at(from), at(to)]])],
  };
};

const FAR: Mm = 1e5;

/** A piece of wall where a side ends at one. */
function wallPieces({ job }: Plan, side: SidePlan, eye: Eye): readonly Piece[] {
  const outward = side.direction + Math.PI / 2;
  const wall = (end: SidePlan["begins"], station: Mm): readonly Piece[] => {
    if (end?.kind !== "wall") return [];
    const foot = onSide(side, station);
    const high = job.frame.clearOpening + WALL.above;
    const corner = (off: Mm, z: Mm): Point3 => lifted(along(foot, outward, off), foot.z + z);
    const corners = [corner(-WALL.half, 0), corner(WALL.half, 0), corner(WALL.half, high), corner(-WALL.half, high)];
    return [
      {
        // Behind all uprights, even where it stands before them: it must not hide an end post.
        depth: dot(eye.into, foot) + FAR / 2,
        draw: (at) => {
          const points = corners.map(at);
          return [
            polygon(points, { pen: "edge", fill: "white" }),
            coveredStrokes("thin", hatchLines({ outlines: [points], spacing: 1.4, angle: Math.PI / 4 })),
          ];
        },
      },
    ];
  };
  return [...wall(side.begins, side.startsAt), ...wall(side.ends, side.endsAt)];
}

interface RailShape {
  readonly side: SidePlan;
  readonly reach: Reach;
  /** Where the rail itself ends, not only the piece that is drawn. */
  readonly ends: { readonly from: boolean; readonly to: boolean };
  readonly width: Mm;
  readonly low: Mm;
  readonly high: Mm;
}

function railPiece({ side, reach, ends, width, low, high }: RailShape, eye: Eye, place: "over" | "between"): Piece {
  const outward = side.direction + Math.PI / 2;
  const [from, to] = [onSide(side, reach.from), onSide(side, reach.to)];
  const corner = (end: Point3, off: Mm): Point3 => lifted(along(end, outward, off), end.z);
  const ring = [corner(from, -width / 2), corner(to, -width / 2), corner(to, width / 2), corner(from, width / 2)];
  const depths = [dot(eye.into, from), dot(eye.into, to)];
  // A rail that lies over its posts is drawn after both of them.
  const depth = place === "over" ? Math.min(...depths) - OVER : (depths[0] ?? 0) / 2 + (depths[1] ?? 0) / 2;
  // Of the four edges of its ring those to and from its ends are drawn where it ends.
  const drawnEdges = [true, ends.to, true, ends.from];
  return { depth, draw: (at) => prism({ ring, low, high, drawnEdges }, eye, at, place === "over" ? "outline" : "edge") };
}

/** Half of the thickest post: nearer than its middle, and its top. */
const OVER: Mm = 120;

function uprightPiece(plan: Plan, vertical: Vertical, eye: Eye): Piece {
  const side = plan.sides[vertical.sideIndex];
  if (side === undefined) throw new RangeError(`${vertical.id} stands on no side`);
  const { bottom, top, guardHeight } = openingOn(plan, side);
  const { centre, direction } = vertical;
  const ring = (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([u, v]) => {
    const edge = along(centre, direction, (u * vertical.along) / 2);
    return lifted(along(edge, direction + Math.PI / 2, (v * vertical.across) / 2), vertical.datum);
  });
  const reach = { low: vertical.kind === "spacer" ? bottom : 0, high: vertical.kind === "pier" ? guardHeight + WALL.above / 2 : top };
  return {
    depth: dot(eye.into, centre),
    draw: (at) => prism({ ring, ...reach }, eye, at, vertical.kind === "spacer" ? "thin" : "edge"),
  };
}

/** The cables of a bay, from face to face. */
function cablePiece(plan: Plan, side: SidePlan, bay: Bay, eye: Eye): Piece {
  const [left, right] = [verticalOf(plan, bay.leftId), verticalOf(plan, bay.rightId)];
  const strung = plan.runs.some(({ bayIds }) => bayIds.includes(bay.id));
  const way = subtract(right.centre, left.centre);
  const step = scale(way, 1 / length(way));
  const place = (one: Vertical, off: Mm, height: Mm): Point3 => lifted(add(one.centre, scale(step, off)), one.datum + height);
  return {
    depth: (dot(eye.into, left.centre) + dot(eye.into, right.centre)) / 2,
    draw: (at) =>
      strung
        ? [
            coveredStrokes(
              "thin",
              plan.courses.map((course) => {
                const height = courseHeight(course, side);
                return [at(place(left, left.along / 2, height)), at(place(right, -right.along / 2, height))];
              }),
            ),
          ]
        : [],
  };
}

/** Two marks that stand nearer read as one. */
const APART_mm = 1.2;

/** Posts that hold or turn cables by their marks, sides by their names. */
function marks(plan: Plan, at: (point: Point3) => Point): readonly Part[] {
  const made: Part[] = [];
  const taken = (): readonly Quad[] => made.flatMap(({ texts }) => texts.map((quad) => quadOf(grow(boxOf(quad), APART_mm))));
  for (const one of plan.verticals.filter(({ role }) => role !== "line" && role !== "spacer")) {
    const side = plan.sides[one.sideIndex];
    if (side === undefined) continue;
    const top = at(lifted(one.centre, one.datum + openingOn(plan, side).guardHeight));
    made.push(firstClear(ways(top, -3.4, one.id), taken()));
  }
  for (const side of plan.sides) {
    const foot = at(onSide(side, (side.startsAt + side.endsAt) / 2));
    made.push(firstClear(ways(foot, 3.8, `side ${side.id}`), taken()));
  }
  return made;
}

/** Above or below its place first, then farther off and to its sides. */
function* ways(place: Point, down: Mm, text: Text): Generator<Part> {
  for (const factor of [1, 2.2, 3.4, 4.6])
    for (const aside of [0, 5, -5, 10, -10])
      yield label(text, { x: place.x + aside, y: place.y + down * factor }, { weight: 700, anchor: "middle", ground: true });
}

const describe = ({ sides, verticals, courses }: Plan): Text => {
  const posts = verticals.filter(({ kind }) => kind === "post").length;
  const spacers = verticals.filter(({ kind }) => kind === "spacer").length;
  return `${sides.length === 1 ? "Side" : "Sides"} ${sides.map(({ id }) => id).join(", ")} with ${posts} posts, ${spacers} ${spacers === 1 ? "spacer" : "spacers"} and ${courses.length} courses of cable. Marks and stations stand in the table of posts and spacers.`;
};
