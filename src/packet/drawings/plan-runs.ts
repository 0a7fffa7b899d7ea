// How do the runs lie beside the guard, with what end at each end, and from where are they tightened?
import { type Quad, quadAlong } from "../../drawing/box.ts";
import { arrowhead, circle, go, group, type Line, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { firstClear, label, MARK_mm, type TextStyle } from "../../drawing/text.ts";
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
  /** Lines and signs of the ends. */
  readonly parts: readonly Part[];
  readonly lines: readonly Quad[];
  /** One line for each run. */
  readonly own: readonly Line[];
}

/** Each run as a line of its own beside the guard, on the face that carries no labels. */
export function runStrips(plan: Plan, frames: readonly SideFrame[], ratio: number, face: FaceSign): RunStrips {
  const strips = plan.runs.map((run) => strip(plan, run, frames, ratio, face));
  return {
    parts: strips.flatMap(({ parts }) => parts),
    lines: strips.flatMap(({ line }) => line.slice(1).map((to, index) => quadAlong(line[index] ?? to, to, 0.6))),
    own: strips.map(({ line }) => line),
  };
}

/** The name of each run on its line, clear of all that stands there already. */
export const runNames = (plan: Plan, { own }: RunStrips, taken: readonly Quad[]): readonly Part[] =>
  inTurn(
    plan.runs.map((run, index) => namesOn(run, own[index] ?? [])),
    taken,
  );

/** "pull" beside the arrow at each end that pulls. */
export const pullWords = (plan: Plan, { own }: RunStrips, taken: readonly Quad[]): readonly Part[] =>
  inTurn(
    plan.runs.flatMap((run, index) => {
      const line = own[index] ?? [];
      return [
        ...(run.left.pulls ? [besideArrow(line[0], line[1])] : []),
        ...(run.right.pulls ? [besideArrow(line.at(-1), line.at(-2))] : []),
      ];
    }),
    taken,
  );

/** One of each list of candidates, clear of all before it. */
export function inTurn(lists: readonly Iterable<Part>[], before: readonly Quad[]): readonly Part[] {
  const taken = [...before];
  return lists.map((candidates) => {
    const chosen = firstClear(candidates, taken);
    taken.push(...chosen.texts);
    return chosen;
  });
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

/** The run's name on the longest piece of its line, in the middle if it can be; else further and further from it, then on the others. */
function* namesOn(run: Run, line: Line): Iterable<Part> {
  const pieces = line.slice(1).map((to, index) => ({ from: line[index] ?? to, to }));
  const longestFirst = pieces.toSorted((a, b) => lengthOf(b) - lengthOf(a));
  for (const { from, to } of longestFirst)
    for (const share of NAME_shares) {
      const at = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
      yield label(run.id, at, { size: MARK_mm, weight: 700, anchor: "middle", ground: true });
    }
  const [longest] = longestFirst;
  if (longest !== undefined) yield* ledOff(run.id, longest, { size: MARK_mm, weight: 700 });
}

/** Where two sides lie so near each other that nothing is free beside them: off the line, with a line that leads to it. */
function* ledOff(text: string, { from, to }: { readonly from: Point; readonly to: Point }, style: TextStyle): Iterable<Part> {
  const along = stepTo(from, to);
  const across = { x: -along.y, y: along.x };
  for (let off = 12; off <= 60; off += 4)
    for (const share of NAME_shares)
      for (const side of [off, -off]) {
        const foot = go(from, along, share * lengthOf({ from, to }));
        const at = go(foot, across, side);
        yield group([
          strokes("thin", [[foot, go(foot, across, side - Math.sign(side) * LED_mm)]]),
          label(text, at, { ...style, anchor: "middle" }),
        ]);
      }
}

/** "pull" is led off from so far along its run at most. */
const LED_along_mm = 20;
/** A leader ends so far from the middle of its word. */
const LED_mm = 3.5;

/** From the middle of a line outward. */
const NAME_shares = [0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74, 0.2, 0.8, 0.14, 0.86];

const lengthOf = ({ from, to }: { readonly from: Point; readonly to: Point }): Mm => Math.hypot(to.x - from.x, to.y - from.y);

/** "pull" beside the arrow, further inside the run or off it where something is in the way. */
function* besideArrow(at: Point | undefined, next: Point | undefined): Iterable<Part> {
  if (at === undefined || next === undefined) throw new RangeError("a run without two ends");
  const inward = stepTo(at, next);
  const across = { x: -inward.y, y: inward.x };
  for (const off of [3, 4.5, 6.5, 9, 12])
    for (const by of [4, 7, 10, 14, 18, 23, 28])
      for (const side of [off, -off]) yield label("pull", go(go(at, inward, by), across, side), { anchor: "middle" });
  yield* ledOff("pull", { from: at, to: go(at, inward, Math.min(LED_along_mm, lengthOf({ from: at, to: next }))) }, {});
}
