// How is a detail put on paper: its picture, its labels on both sides, its scale?
import { quadAlong } from "../../drawing/box.ts";
import { type Callout, type Column, calloutColumn, calloutLines } from "../../drawing/leader.ts";
import { chooseScale, type Room, type Scale } from "../../drawing/paper.ts";
import { scaleBar } from "../../drawing/ruler.ts";
import { boxOfParts, type Part } from "../../drawing/shape.ts";
import { firstClear, label, lineHeight, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { finishDrawing } from "./kit.ts";

export interface Note {
  readonly target: Point;
  readonly text: Text;
}

export interface Picture {
  readonly parts: readonly Part[];
  /** Each may be drawn in several ways: the first is taken on whose text no line to a label lies. */
  readonly loose?: readonly (readonly Part[])[];
  readonly left: readonly Note[];
  readonly right: readonly Note[];
}

export interface Detail {
  readonly id: string;
  readonly title: Text;
  readonly description: Text;
  /** What is said about this detail alone. */
  readonly notes: readonly Text[];
  /** What the picture takes at least, in mm of the model: a scale at which this has no room is not tried. */
  readonly size: Room;
  readonly draw: (scale: Scale) => Picture;
}

/** Room for labels on each side. The scale bar stands under those at the left. */
const COLUMN_mm = 44;
const GAP_mm = 5;
/** Greatest height of the picture: three details and their table fit one page. */
const HEIGHT_mm = 62;
const BAR_mm = 8.9;

/** Half of the strip that a line to a label takes: a text on it cannot be read. */
const LEADER_mm = 0.4;

const allParts = ({ parts, loose = [] }: Picture): readonly Part[] => [...parts, ...loose.flat()];

/** At the largest scale at which picture and labels fit side by side. */
export function composeDetail(plan: Plan, box: Room, detail: Detail): Drawing {
  const { id, title, description, notes, size, draw } = detail;
  const width = box.width - 2 * (COLUMN_mm + GAP_mm) - 1.2;
  let picture: Picture = { parts: [], left: [], right: [] };
  const scale = chooseScale(plan.job.units, (one) => {
    if (size.width * one.ratio > width || size.height * one.ratio > HEIGHT_mm) return false;
    picture = draw(one);
    const { left, right, top, bottom } = boxOfParts(allParts(picture));
    return right - left <= width && bottom - top <= HEIGHT_mm;
  });
  const frame = boxOfParts(allParts(picture));
  const calloutsOf = (side: "left" | "right"): readonly Callout[] =>
    picture[side].map(({ target, text }): Callout => ({ target, lines: wrap(text, COLUMN_mm) }));
  const columnOf = (side: "left" | "right"): Column => ({
    side,
    x: side === "left" ? frame.left - GAP_mm : frame.right + GAP_mm,
    from: frame.top,
  });
  const column = (side: "left" | "right"): readonly Part[] =>
    picture[side].length === 0 ? [] : [calloutColumn(calloutsOf(side), columnOf(side))];
  const leaders = (["left", "right"] as const)
    .flatMap((side) => calloutLines(calloutsOf(side), columnOf(side)))
    .flatMap((line) => line.slice(1).map((to, index) => quadAlong(line[index] ?? to, to, LEADER_mm)));
  const settled = [...picture.parts, ...(picture.loose ?? []).map((ways) => firstClear(ways, leaders))];
  const left = column("left");
  const under = left.length === 0 ? frame.top : boxOfParts(left).bottom + 2;
  const barTop = Math.max(under, frame.bottom - BAR_mm);
  const right = column("right");
  const below = boxOfParts([...settled, ...right]).bottom + 2.5;
  const lines = notes.flatMap((note) => wrap(note, width + COLUMN_mm));
  return finishDrawing({
    id,
    title,
    description,
    parts: [
      ...settled,
      ...left,
      ...right,
      scaleBar({ x: frame.left - GAP_mm - COLUMN_mm, y: barTop }, { scale, units: plan.job.units }),
      ...lines.map((line, index) => label(line, { x: frame.left, y: below + index * lineHeight() })),
    ],
  });
}

/** A frame on paper about a point of the model. */
export const placeAt =
  (ratio: number, middle: Mm = 0) =>
  (x: Mm, y: Mm): Point => ({ x: (middle + x) * ratio, y: -y * ratio });
