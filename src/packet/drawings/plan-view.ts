// How does the guard lie, seen from above: sides, posts, runs, bends, walls and north?

import { boxOf, type Quad, quadAlong } from "../../drawing/box.ts";
import { dimension, type Ordinate, ordinateDepth, ordinateSize, runningDimensions } from "../../drawing/dimension.ts";
import { chooseScale, type Room, type Scale, type View, viewOf } from "../../drawing/paper.ts";
import { boxOfParts, circle, go, group, hatched, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { label, readable, textLines } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import { restOf } from "../../plan/pier.ts";
import type { Plan, SidePlan } from "../../plan/plan.ts";
import { outsideOf } from "../../plan/sleeve.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { unique } from "../sheets/kit.ts";
import { sidesWord, slopedSides } from "../sheets/slopes.ts";
import type { Show } from "../show-number.ts";
import { finishDrawing, footer, showOf } from "./kit.ts";
import { deckCandidates } from "./plan-deck.ts";
import {
  type FaceSign,
  footprint,
  framesOf,
  labelFace,
  lostAtEnds,
  offsetCorners,
  type SideFrame,
  spot,
  stretchesBetweenEnds,
} from "./plan-frame.ts";
import { northArrow, planKey, SHARED_RING_mm } from "./plan-key.ts";
import { inTurn, pullWords, runNames, runStrips, stripOffset } from "./plan-runs.ts";
import { wallLines, wallMarks } from "./plan-walls.ts";

/** The dimension line of a side lies this far outside the labels of its posts. */
const OVERALL_mm = 3;
/** On the face of the runs it lies this far outside their lines, and so outside their words. */
const OTHER_FACE_mm = 8;
/** Height that the words below a drawing take on its sheet. */
const CAPTION_mm = 9;
/** Least height of the labels, the key and the scale bar. */
const FOOT_mm = 40;
/** Below this a guard is drawn whether it fits or not. */
const SMALLEST_ratio = 1 / 384;

export function planView(plan: Plan, box: Room): Drawing {
  const outline = boxOf(plan.sides.flatMap(({ from, to }) => [from, to]));
  let parts: readonly Part[] = [];
  chooseScale(plan.job.units, (scale) => {
    // A scale at which not even the outline fits needs no trial, but for the last one.
    const room = { width: (outline.right - outline.left) * scale.ratio, height: (outline.bottom - outline.top) * scale.ratio };
    if ((room.width > box.width || room.height > box.height - CAPTION_mm - FOOT_mm) && scale.ratio > SMALLEST_ratio) return false;
    parts = draw(plan, scale, box);
    const { left, right, top, bottom } = boxOfParts(parts);
    return right - left <= box.width - 1.2 && bottom - top <= box.height - CAPTION_mm;
  });
  return finishDrawing({ id: "plan-view", title: "The guard seen from above", description: describe(plan), parts });
}

function draw(plan: Plan, scale: Scale, box: Room): readonly Part[] {
  const view = viewOf({ ratio: scale.ratio, model: { x: 0, y: 0 }, paper: { x: 0, y: 0 } });
  const show = showOf(plan);
  const frames = framesOf(plan, view);
  const face = labelFace(plan);
  const other: FaceSign = face === 1 ? -1 : 1;
  const strips = runStrips(plan, frames, scale.ratio, other);
  const ordinates = frames.map(({ side }) => ordinatesOf(plan, side, scale.ratio, show));
  const start = (Math.max(outsideOf(plan.job).across, plan.job.frame.topRail.width) / 2) * scale.ratio + 0.6;
  const deepest = Math.max(...ordinates.map((own) => ordinateDepth({ ordinates: own, start, lay: "outward" })));
  const labelled = frames.map((frame, index) =>
    sideLabels(plan, frame, { all: ordinates[index] ?? [], start, deepest, face, ratio: scale.ratio, show }),
  );
  const sides = labelled.flatMap(({ parts }) => parts);
  const bare = [...structure(plan, frames, view), ...strips.parts, ...sides];
  const names = runNames(
    plan,
    strips,
    bare.flatMap(({ texts }) => texts),
  );
  const fixed = [...bare, ...names];
  const guard = frames.map(({ from, to }) => quadAlong(from, to, (plan.job.frame.topRail.width / 2) * scale.ratio + 0.5));
  const own = [...wallLines(plan, frames), ...labelled.flatMap(({ lines }) => lines)];
  const lines = [
    ...own,
    ...strips.lines,
    ...frames.map(({ from, to }) => quadAlong(from, to, Math.max(3, stripOffset(plan, scale.ratio) - 2))),
  ];
  const taken = (parts: readonly Part[]): readonly Quad[] => [...parts.flatMap(({ texts }) => texts), ...lines];
  const corners = inTurn(cornerLabels(plan, frames, show), taken(fixed));
  const deck = inTurn([deckCandidates(plan, frames)], taken([...fixed, ...corners]));
  const marked = [...fixed, ...corners, ...deck];
  const pulls = pullWords(plan, strips, [...marked.flatMap(({ texts }) => texts), ...own, ...strips.lines, ...guard]);
  const drawn = [...marked, ...pulls];
  const area = boxOfParts(drawn);
  const { bearing } = plan.job;
  const key = planKey(plan, { x: area.left, y: area.bottom + 3 }, box.width - 1.2 - (bearing === null ? 0 : 26));
  const north = bearing === null ? [] : [northArrow({ x: area.left + box.width - 14, y: area.bottom + 15 }, bearing)];
  const keyed = [...drawn, key];
  const notes = [
    `Lengths run along the line of the bores${plan.rakes.length === 0 ? "" : `, level: on ${sidesWord(slopedSides(plan))} not along the slope`}.`,
    "Stations are to the middle of each post and spacer, from the left-hand start of its side.",
    ...(labelled.some(({ unmarked }) => unmarked) ? ["Spacers not marked: see the elevations."] : []),
  ];
  const room = { width: box.width - (bearing === null ? 0 : 28), height: box.height };
  return [...keyed, ...north, footer(keyed, { scale, units: plan.job.units, notes, room })];
}

function structure(plan: Plan, frames: readonly SideFrame[], view: View): readonly Part[] {
  const half = (plan.job.frame.topRail.width / 2) * view.ratio;
  const rail = (own: readonly [SideFrame, ...SideFrame[]]): Part => {
    const [first, last] = [own[0], own.at(-1) ?? own[0]];
    const edge = (v: Mm): readonly Point[] => [
      spot(first, first.side.startsAt * view.ratio, v),
      ...offsetCorners(own, v),
      spot(last, last.side.endsAt * view.ratio, v),
    ];
    return polygon([...edge(half), ...edge(-half).toReversed()], { pen: "thin", fill: "white" });
  };
  return [
    ...wallMarks(plan, frames),
    ...stretchesBetweenEnds(frames).map(rail),
    ...sharedRings(plan, view),
    ...plan.verticals.flatMap((vertical) => [
      polygon(footprint(vertical, view), { pen: vertical.kind === "post" ? "outline" : "edge", fill: "white" }),
      ...(vertical.core === undefined ? [] : [polygon(footprint({ ...vertical, ...vertical.core }, view), { pen: "thin", fill: "white" })]),
    ]),
    ...plan.verticals
      .filter(({ kind }) => kind === "pier")
      .flatMap((pier) => [1, -1].map((way) => hatched({ outlines: [footprint(pier, view)], spacing: 1.4, angle: (way * Math.PI) / 4 }))),
    strokes(
      "edge",
      plan.runs.map((run) => run.path.map(view.point)),
    ),
  ];
}

/** A ring around each post on which two runs end: seen at every scale. */
const sharedRings = (plan: Plan, view: View): readonly Part[] =>
  plan.verticals
    .filter(({ role }) => role === "shared")
    .map(({ centre, along, across }) => {
      const radius = Math.max(SHARED_RING_mm, (Math.hypot(along, across) / 2) * view.ratio + 0.7);
      return circle(view.point(centre), radius, { pen: "edge", fill: "white" });
    });

interface LabelOptions {
  readonly all: readonly Ordinate[];
  /** Where lines to labels begin, and the depth of the deepest labels of all sides. */
  readonly start: Mm;
  readonly deepest: Mm;
  readonly face: FaceSign;
  readonly ratio: number;
  readonly show: Show;
}

/** Marks and running dimensions of the posts and spacers, and the length of the side beyond them. */
function sideLabels(
  plan: Plan,
  frame: SideFrame,
  { all, start, deepest, face, ratio, show }: LabelOptions,
): { readonly parts: readonly Part[]; readonly lines: readonly Quad[]; readonly unmarked: boolean } {
  const posts = all.filter(({ minor }) => minor === undefined);
  const outward = { x: frame.outward.x * face, y: frame.outward.y * face };
  const lost = lostAtEnds(plan, frame.side, face, deepest + OVERALL_mm);
  const options = (ordinates: readonly Ordinate[], lay: "along" | "outward") => ({
    origin: frame.from,
    along: frame.along,
    outward,
    ordinates,
    start,
    lay,
    depth: ordinateDepth({ ordinates, start, lay }),
    from: lost.start + 0.5,
    to: frame.length - lost.end - 0.5,
  });
  const level = Math.abs(frame.along.x) > Math.SQRT1_2;
  // Spacers keep their marks where their stations have no room, and lose them last.
  const short = all.map((ordinate) => (ordinate.minor === undefined ? ordinate : { ...ordinate, value: "" }));
  const choices = [...(level ? [options(all, "along"), options(short, "along")] : []), options(all, "outward"), options(posts, "outward")];
  const fits = ({ ordinates, lay, from, to }: (typeof choices)[number]): boolean =>
    ordinates.reduce((sum, ordinate) => sum + ordinateSize(ordinate, lay), 0) <= to - from;
  const chosen = choices.find(fits) ?? options(posts, "outward");
  const overall = overallLength(plan, frame, { face, depth: chosen.depth, middle: (chosen.from + chosen.to) / 2, ratio }, show);
  return { parts: [runningDimensions(chosen), overall.part], lines: overall.lines, unmarked: chosen.ordinates.length < all.length };
}

interface OverallPlace {
  readonly ratio: number;
  readonly face: FaceSign;
  readonly depth: Mm;
  /** Middle of the labels, along the side. */
  readonly middle: Mm;
}

/** The length of a side: beyond its labels, or on the other face, whichever has no side folding over it; else in words only. */
function overallLength(
  plan: Plan,
  frame: SideFrame,
  { face, depth, middle, ratio }: OverallPlace,
  show: Show,
): { readonly part: Part; readonly lines: readonly Quad[] } {
  const text = `side ${frame.side.id}: ${show.feet(frame.side.length)}`;
  const open = (sign: FaceSign): boolean => {
    const { start, end } = lostAtEnds(plan, frame.side, sign, 1);
    return start === 0 && end === 0;
  };
  const other: FaceSign = face === 1 ? -1 : 1;
  const v = open(face) ? face * (depth + OVERALL_mm) : open(other) ? other * (stripOffset(plan, ratio) + OTHER_FACE_mm) : null;
  if (v === null) {
    const { angle } = readable(frame.along);
    return { part: label(text, spot(frame, middle, face * (depth + OVERALL_mm)), { anchor: "middle", angle }), lines: [] };
  }
  const [a, b] = [spot(frame, 0, v), spot(frame, frame.length, v)];
  return {
    part: dimension({ from: frame.from, to: frame.to, offset: -v, text }),
    lines: [quadAlong(frame.from, a, 0.8), quadAlong(a, b, 0.8), quadAlong(b, frame.to, 0.8)],
  };
}

const ordinatesOf = (plan: Plan, side: SidePlan, ratio: number, show: Show): readonly Ordinate[] =>
  plan.verticals
    .filter((vertical) => vertical.sideIndex === side.index)
    .map((vertical) => ({ ...vertical, station: restOf(vertical) }))
    .map(({ id, kind, station }) => ({
      at: station * ratio,
      mark: id,
      value: show.feet(station),
      ...(kind === "spacer" ? { minor: true as const } : {}),
    }));

/** At each corner: how far the guard turns, and by how much each of its two posts bends the cable. */
function cornerLabels(plan: Plan, frames: readonly SideFrame[], show: Show): readonly Iterable<Part>[] {
  return frames.slice(1).flatMap((frame, index) => {
    const before = frames[index] ?? frame;
    const { turn } = before.side;
    if (turn === null) return [];
    const posts = [
      plan.verticals.findLast(({ sideId, kind }) => sideId === before.side.id && kind === "post"),
      plan.verticals.find(({ sideId }) => sideId === frame.side.id),
    ];
    const bends = plan.runs.flatMap((run) => run.bends).filter(({ postId }) => posts.some((post) => post?.id === postId));
    const isStraight = turn === 0 && before.side.slope !== frame.side.slope;
    const words = [
      isStraight ? "slope changes" : `turn ${show.angle(Math.abs(turn))}`,
      ...unique(
        bends.map(
          ({ postId, angle }) => `bend ${show.angle(angle)} at ${posts[0]?.corner === undefined ? postId : `each mouth in ${postId}`}`,
        ),
      ),
    ];
    const sum = { x: before.outward.x + frame.outward.x, y: before.outward.y + frame.outward.y };
    const size = Math.hypot(sum.x, sum.y) || 1;
    const away = { x: sum.x / size, y: sum.y / size };
    const sign = turn >= 0 ? 1 : -1;
    return [alongDiagonal(words, frame.from, { x: away.x * sign, y: away.y * sign })];
  });
}

/** Further and further from the corner, first on the side on which nothing folds, then on the other. */
function* alongDiagonal(words: readonly Text[], corner: Point, away: Point): Iterable<Part> {
  for (let step = 0; step < 16; step++)
    for (const by of [8 + 3 * step, -(8 + 3 * step)])
      yield cornerWords(words, { corner, at: go(corner, away, by), toRight: away.x * by >= 0 });
}

interface CornerWords {
  readonly corner: Point;
  readonly at: Point;
  readonly toRight: boolean;
}

function cornerWords(words: readonly Text[], { corner, at, toRight }: CornerWords): Part {
  const near = { x: at.x + (toRight ? -0.8 : 0.8), y: at.y };
  return group([strokes("thin", [[corner, near]]), ...textLines(words, at, { anchor: toRight ? "start" : "end" })]);
}

function describe(plan: Plan): Text {
  const show = showOf(plan);
  const sides = plan.sides.map((side) => {
    const between = plan.job.sides[side.index]?.interrupted;
    if (between != null) return `side ${side.id}, ${show.feet(side.length)}, then ${between.what} of ${show.feet(between.width)}`;
    const turn =
      side.turn === null
        ? ""
        : side.turn === 0
          ? ", then straight on at another slope"
          : `, then a turn of ${show.angle(Math.abs(side.turn))} to the ${side.turn < 0 ? "left" : "right"}`;
    const slope = side.slope === 0 ? "" : ` level, ${side.slope > 0 ? "up" : "down"} at ${show.angle(Math.abs(side.slope))}`;
    return `side ${side.id}, ${show.feet(side.length)}${slope}${turn}`;
  });
  const runs = plan.runs.map((run) => {
    const pulled = [run.left, run.right].filter(({ pulls }) => pulls).map(({ postId }) => postId);
    return `run ${run.id} from ${run.left.postId} (${run.left.kind} end) to ${run.right.postId} (${run.right.kind} end), tightened at ${pulled.join(" and ")}`;
  });
  return `The guard from above, from left to right for somebody inside who looks out: ${sides.join("; ")}. Runs: ${runs.join("; ")}. The tables of this sheet give the station of every post and spacer.`;
}
