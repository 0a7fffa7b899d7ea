// Where on the plan is the deck named?
import { grow, quadOf } from "../../drawing/box.ts";
import type { Part } from "../../drawing/shape.ts";
import { label } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { floorWord } from "../wording.ts";
import { type SideFrame, spot } from "./plan-frame.ts";

/** Room around the word, so that it stands by itself. */
const DECK_ROOM_mm = 2.5;
const DECK_SIZE_mm = 5;
/** How the deck is searched for a place: in steps, along and across. */
const DECK_STEP_mm = 3;

/** In the middle of a deck with corners around it, else inside the longest side; never behind a wall unless all else is. */
export function* deckCandidates(plan: Plan, frames: readonly SideFrame[]): Iterable<Part> {
  const enclosed = plan.job.sides.every(({ turn }) => (turn ?? 0) >= 0) && frames.length > 1;
  const longest = frames.reduce((best, frame) => (frame.length > best.length ? frame : best));
  const beside = Array.from({ length: 30 }, (_, step) => spot(longest, longest.length / 2, -(12 + 2 * step)));
  let found = false;
  for (const at of [...(enclosed ? aroundMiddle(frames) : []), ...beside]) {
    const word = wordAt(plan, at);
    const corners = word.texts[0] ?? [at];
    if (!corners.every((corner) => isOnDeck(frames, corner, enclosed))) continue;
    found = true;
    yield word;
  }
  if (!found) for (const at of beside) yield wordAt(plan, at);
}

function wordAt({ job }: Plan, at: Point): Part {
  const word = label(floorWord(job).toUpperCase(), at, { size: DECK_SIZE_mm, weight: 700, anchor: "middle" });
  return { ...word, texts: [quadOf(grow(word.box, DECK_ROOM_mm))] };
}

/** Places near the middle of the corner points first. */
function aroundMiddle(frames: readonly SideFrame[]): readonly Point[] {
  const points = [...frames.map(({ from }) => from), ...frames.slice(-1).map(({ to }) => to)];
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  const steps = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6];
  const offsets = steps.flatMap((u) => steps.map((v) => ({ u, v }))).sort((a, b) => a.u ** 2 + a.v ** 2 - (b.u ** 2 + b.v ** 2));
  return offsets.map(({ u, v }) => ({ x: x + u * DECK_STEP_mm, y: y + v * DECK_STEP_mm }));
}

/** On the inner side of every side where these enclose a deck, and in front of the walls. */
function isOnDeck(frames: readonly SideFrame[], point: Point, enclosed: boolean): boolean {
  const along = ({ from, along: step }: SideFrame): Mm => (point.x - from.x) * step.x + (point.y - from.y) * step.y;
  const off = ({ from, outward }: SideFrame): Mm => (point.x - from.x) * outward.x + (point.y - from.y) * outward.y;
  return (
    (!enclosed || frames.every((frame) => off(frame) <= 0)) &&
    frames.every(
      (frame) =>
        (frame.side.begins?.kind !== "wall" || along(frame) >= 0) && (frame.side.ends?.kind !== "wall" || along(frame) <= frame.length),
    )
  );
}
