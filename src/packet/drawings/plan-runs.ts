// How do the runs lie beside the guard, with what end at each end, and from where are they tightened?
import { type Quad, quadAlong } from "../../drawing/box.ts";
import { arrowhead, circle, go, group, type Line, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { firstClear, label, MARK_mm } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import { seenFrom } from "../../plan/corner-post.ts";
import type { EndKind, Plan, Run, RunEnd } from "../../plan/plan.ts";
import { outsideOf } from "../../plan/sleeve.ts";
import type { Mm } from "../../units/quantity.ts";
import { verticalOf } from "./kit.ts";
import { type FaceSign, lostAtEnds, offsetCorners, type SideFrame, spot } from "./plan-frame.ts";

/** Distance of the run's line from the line of the bores: clear of posts and rails at every scale. */
export const stripOffset = (plan: Plan, ratio: number): Mm => {
  const { frame } = plan.job;
  return Math.max(6.5, (Math.max(outsideOf(plan.job).across, frame.topRail.width) / 2) * ratio + 3);
};

/** Runs that meet stay this far apart on paper. */
const INSET_mm = 1.7;

export interface RunStrips {
  readonly parts: readonly Part[];
  readonly lines: readonly Quad[];
}

/** Each run as a line of its own beside the guard, on the face that carries no labels. */
export function runStrips(plan: Plan, frames: readonly SideFrame[], ratio: number, face: FaceSign): RunStrips {
  const strips = plan.runs.map((run) => strip(plan, run, frames, ratio, face));
  const guard = frames.map(({ from, to }) => quadAlong(from, to, (plan.job.frame.topRail.width / 2) * ratio + 0.5));
  const lines = strips.flatMap(({ line }) => line.slice(1).map((to, index) => quadAlong(line[index] ?? to, to, 0.6)));
  const names = plan.runs.map((run, index) => runName(run, strips[index]?.line ?? []));
  const fixed = [...strips.flatMap(({ parts }) => parts), ...names];
  const taken = [...fixed.flatMap(({ texts }) => texts), ...lines, ...guard];
  const words = plan.runs.flatMap((run, index) => {
    const line = strips[index]?.line ?? [];
    const pulled = [...(run.left.pulls ? [[line[0], line[1]]] : []), ...(run.right.pulls ? [[line.at(-1), line.at(-2)]] : [])];
    return pulled.map(([at, next]) => {
      const word = pullWord(at, next, taken);
      taken.push(...word.texts);
      return word;
    });
  });
  return { parts: [...fixed, ...words], lines };
}

function strip(
  plan: Plan,
  run: Run,
  frames: readonly SideFrame[],
  ratio: number,
  face: FaceSign,
): { readonly line: Line; readonly parts: readonly Part[] } {
  const own = frames.filter(({ side }) => run.sideIds.includes(side.id));
  const [first, last] = [own[0], own.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError(`run ${run.id} lies on no side`);
  const offset = stripOffset(plan, ratio);
  const lost = (frame: SideFrame): ReturnType<typeof lostAtEnds> => lostAtEnds(plan, frame.side, face, offset);
  // A run may begin on the face of a corner post, whose home is the side before.
  const stationOn = ({ postId }: RunEnd, { side }: SideFrame): Mm => seenFrom(verticalOf(plan, postId), side.index).station;
  const left = Math.max(stationOn(run.left, first) * ratio + INSET_mm, lost(first).start + INSET_mm);
  const right = Math.min(stationOn(run.right, last) * ratio - INSET_mm, last.length - lost(last).end - INSET_mm);
  const line = [spot(first, left, face * offset), ...offsetCorners(own, face * offset), spot(last, right, face * offset)];
  const ends = [endSymbol(run.left, line[0], line[1]), endSymbol(run.right, line.at(-1), line.at(-2))];
  return { line, parts: [strokes("cable", [line]), ...ends] };
}

const stepTo = (from: Point, to: Point): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
};

function endSymbol(end: RunEnd, at: Point | undefined, next: Point | undefined): Part {
  if (at === undefined || next === undefined) throw new RangeError("a run without two ends");
  const outward = stepTo(next, at);
  const arrow = end.pulls ? [arrowhead(go(at, outward, -1.6), outward, 3.6)] : [];
  return group([...arrow, symbolOf(end.kind, at)]);
}

/**
 * A stud end is an open diamond, a grip end a filled circle, an end on the face an open one: none looks like a post. A diamond stands upright
 * on every side: turned with a side at 45 deg it would be a square, the sign of a spacer.
 */
export function symbolOf(kind: EndKind, { x, y }: Point): Part {
  if (kind !== "stud") return circle({ x, y }, 1.1, { pen: "edge", fill: kind === "grip" ? "black" : "white" });
  const corners = [
    { x: x - 1.7, y },
    { x, y: y - 1.7 },
    { x: x + 1.7, y },
    { x, y: y + 1.7 },
  ];
  return polygon(corners, { pen: "edge", fill: "white" });
}

/** The run's name on the longest piece of its line. */
function runName(run: Run, line: Line): Part {
  const pieces = line.slice(1).map((to, index) => ({ from: line[index] ?? to, to }));
  const longest = pieces.reduce(
    (best, piece) => (lengthOf(piece) > lengthOf(best) + 0.01 ? piece : best),
    pieces[0] ?? { from: { x: 0, y: 0 }, to: { x: 0, y: 0 } },
  );
  const middle = { x: (longest.from.x + longest.to.x) / 2, y: (longest.from.y + longest.to.y) / 2 };
  return label(run.id, middle, { size: MARK_mm, weight: 700, anchor: "middle", ground: true });
}

const lengthOf = ({ from, to }: { readonly from: Point; readonly to: Point }): Mm => Math.hypot(to.x - from.x, to.y - from.y);

/** "pull" beside the arrow, further inside the run where something is in the way. */
function pullWord(at: Point | undefined, next: Point | undefined, obstacles: readonly Quad[]): Part {
  if (at === undefined || next === undefined) throw new RangeError("a run without two ends");
  const inward = stepTo(at, next);
  const across = { x: -inward.y, y: inward.x };
  return firstClear(besideLine(at, inward, across), obstacles);
}

function* besideLine(at: Point, inward: Point, across: Point): Iterable<Part> {
  for (const by of [4, 7, 10, 14, 18])
    for (const off of [3, -3, 4.5, -4.5]) yield label("pull", go(go(at, inward, by), across, off), { anchor: "middle" });
}
