// What bounds and interrupts the guard as seen from above: walls, columns, gates?
import type { Quad } from "../../drawing/box.ts";
import { quadAlong } from "../../drawing/box.ts";
import { group, hatched, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { label, readable, textWidth } from "../../drawing/text.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { againstOf } from "../guard-ends.ts";
import type { Text } from "../packet.ts";
import { showOf } from "./kit.ts";
import { type SideFrame, spot } from "./plan-frame.ts";

const WALL_mm = 4.6;
const WALL_REACH_mm = 16;
/** The word stands in the half of the wall towards the deck. */
const WALL_WORD_mm = 9;

interface WallPlace {
  readonly frame: SideFrame;
  readonly u: Mm;
  readonly toward: 1 | -1;
  readonly word: Text;
}

/** A side that begins or ends at a wall; a column is drawn by itself. */
const wallsOf = (plan: Plan, frames: readonly SideFrame[]): readonly WallPlace[] =>
  frames.flatMap((frame): readonly WallPlace[] => {
    const { begins, ends, index } = frame.side;
    const wordOf = (at: number): Text => {
      const width = plan.job.sides[at]?.interrupted?.width;
      const against = againstOf(plan, at);
      return against === "wall" || width === undefined ? "WALL" : `${against.toUpperCase()} ${showOf(plan).feet(width)}`;
    };
    const isColumn = (at: number): boolean => plan.job.sides[at]?.interrupted?.what === "column";
    return [
      ...(begins?.kind === "wall" && !isColumn(index - 1) ? [{ frame, u: 0, toward: -1 as const, word: wordOf(index - 1) }] : []),
      ...(ends?.kind === "wall" && !isColumn(index) ? [{ frame, u: frame.length, toward: 1 as const, word: wordOf(index) }] : []),
    ];
  });

/** Half of a column on paper, square to the guard, and where its word stands towards the deck. */
const COLUMN_mm = 4;
const COLUMN_WORD_mm = 13;

/** A gate by its name in the middle of it, a column hatched with its name beside it; walls say the rest. */
function openingMark(plan: Plan, frame: SideFrame): readonly Part[] {
  const between = plan.job.sides[frame.side.index]?.interrupted;
  if (between == null || between.what === "open" || between.what === "house corner") return [];
  const reach = (between.width / frame.side.length) * frame.length;
  const words = `${between.what.toUpperCase()} ${showOf(plan).feet(between.width)}`;
  const middle = frame.length + reach / 2;
  if (between.what === "gate") {
    return [label(words, spot(frame, middle, 0), { anchor: "middle", angle: readable(frame.along).angle, ground: true })];
  }
  const corners = [
    spot(frame, frame.length, COLUMN_mm),
    spot(frame, frame.length + reach, COLUMN_mm),
    spot(frame, frame.length + reach, -COLUMN_mm),
    spot(frame, frame.length, -COLUMN_mm),
  ];
  return [
    polygon(corners, { pen: "outline", fill: "white" }),
    hatched({ outlines: [corners], spacing: 1.4, angle: Math.PI / 4 }),
    label(words, spot(frame, middle, -COLUMN_WORD_mm), { anchor: "middle", angle: readable(frame.outward).angle, ground: true }),
  ];
}

/** Where walls stand, as obstacles for words. */
export const wallLines = (plan: Plan, frames: readonly SideFrame[]): readonly Quad[] =>
  wallsOf(plan, frames).map(({ frame, u }) => quadAlong(spot(frame, u, WALL_REACH_mm), spot(frame, u, -WALL_REACH_mm), WALL_mm));

function wall(frame: SideFrame, u: Mm, toward: 1 | -1, word: Text): Part {
  const outline = [
    spot(frame, u, WALL_REACH_mm),
    spot(frame, u, -WALL_REACH_mm),
    spot(frame, u + toward * WALL_mm, -WALL_REACH_mm),
    spot(frame, u + toward * WALL_mm, WALL_REACH_mm),
  ];
  const { angle } = readable(frame.outward);
  return group([
    hatched({ outlines: [outline], spacing: 1.4, angle: Math.PI / 4 }),
    strokes("outline", [outline.slice(0, 2)]),
    label(word, spot(frame, u + (toward * WALL_mm) / 2, -Math.min(WALL_WORD_mm, WALL_REACH_mm - textWidth(word) / 2)), {
      anchor: "middle",
      angle,
      ground: true,
    }),
  ]);
}

/** All of it, for the drawing. */
export const wallMarks = (plan: Plan, frames: readonly SideFrame[]): readonly Part[] => [
  ...wallsOf(plan, frames).map(({ frame, u, toward, word }) => wall(frame, u, toward, word)),
  ...frames.flatMap((frame) => openingMark(plan, frame)),
];
