// How is a detail put on paper: its picture, its labels on both sides, its scale?
import { unite } from "../../drawing/box.ts";
import { type Callout, calloutColumn } from "../../drawing/leader.ts";
import { chooseScale, type Room, type Scale } from "../../drawing/paper.ts";
import type { Part } from "../../drawing/shape.ts";
import { wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { finishDrawing, footer } from "./kit.ts";

export interface Note {
  readonly target: Point;
  readonly text: Text;
}

export interface Picture {
  readonly parts: readonly Part[];
  readonly left: readonly Note[];
  readonly right: readonly Note[];
}

export interface Detail {
  readonly id: string;
  readonly title: Text;
  readonly description: Text;
  readonly notes: readonly Text[];
  readonly draw: (scale: Scale) => Picture;
}

/** Room for labels on each side, and the greatest height of the picture itself. */
const COLUMN_mm = 44;
const GAP_mm = 5;
const HEIGHT_mm = 78;

/** At the largest scale at which picture and labels fit side by side. */
export function composeDetail(plan: Plan, box: Room, { id, title, description, notes, draw }: Detail): Drawing {
  let picture: Picture = { parts: [], left: [], right: [] };
  const scale = chooseScale(plan.job.units, (one) => {
    picture = draw(one);
    const { left, right, top, bottom } = unite(picture.parts.map((part) => part.box));
    const columns = [picture.left, picture.right].filter((list) => list.length > 0).length;
    return right - left <= box.width - columns * (COLUMN_mm + GAP_mm) - 1.2 && bottom - top <= HEIGHT_mm;
  });
  const frame = unite(picture.parts.map((part) => part.box));
  const column = (list: readonly Note[], side: "left" | "right"): readonly Part[] => {
    if (list.length === 0) return [];
    const callouts = list.map(({ target, text }): Callout => ({ target, lines: wrap(text, COLUMN_mm) }));
    return [calloutColumn(callouts, { side, x: side === "left" ? frame.left - GAP_mm : frame.right + GAP_mm, from: frame.top - 4 })];
  };
  const drawn = [...picture.parts, ...column(picture.left, "left"), ...column(picture.right, "right")];
  return finishDrawing({
    id,
    title,
    description,
    parts: [...drawn, footer(drawn, { scale, units: plan.job.units, notes: [...notes, symbolic], room: box })],
  });
}

const symbolic: Text =
  "Cut level at the height of a cable, seen from above. Posts, bores and gaps are to scale; fittings are signs, not shapes.";

/** Straight details lie as on the plan of a first side. */
export const deckBelow: Text = "The deck is below, the outside above.";

/** A frame on paper about a point of the model. */
export const placeAt =
  (ratio: number, middle: Mm = 0) =>
  (x: Mm, y: Mm): Point => ({ x: (middle + x) * ratio, y: -y * ratio });
