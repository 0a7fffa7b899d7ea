// How is one hole marked on a full-size template: its edge, its middle, and what is bored there?
import type { View } from "../../drawing/paper.ts";
import { ellipse, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, MARK_mm, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Face } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { halfHeight, isOffMiddle, type TemplateHole } from "./faces.ts";
import type { Tile } from "./tiles.ts";

/** Lines through the middle reach this far beyond the hole's edge. */
const BEYOND_mm = 4;
/** Words begin this far from the hole's edge. */
const WORDS_mm = 5;

export interface HoleRoom {
  readonly view: View;
  readonly show: Show;
  /** From the middle of the face to where its words should end. */
  readonly half: Mm;
  /** The face that is looked at: it says on which hand the deck is. */
  readonly face: Face;
}

/** Room above and below the middle of a hole that its words take. */
export const holeReach = (hole: TemplateHole): Mm => Math.max(halfHeight(hole) + BEYOND_mm, 3 * lineHeight());

/** Room below the middle of a hole that its words take. */
export const wordsReach = (hole: TemplateHole, room: Omit<HoleRoom, "view">): Mm => BORED_mm + boredLines(hole, room).length * lineHeight();

export function holeParts(hole: TemplateHole, { view, show, half, face }: HoleRoom): readonly Part[] {
  const { here, angle, diameter, counterbore } = hole;
  const middle = view.point({ x: here.right, y: here.height });
  const across = (counterbore?.diameter ?? diameter) / 2;
  const up = halfHeight(hole);
  const edges = [
    ellipse(middle, { across, up, pen: "edge", fill: "none" }),
    ...(counterbore === null
      ? []
      : [ellipse(middle, { across: diameter / 2, up: diameter / 2 / Math.cos(angle), pen: "thin", fill: "none" })]),
  ];
  return [
    ...edges,
    strokes("thin", cross(middle, { across: across + BEYOND_mm, up: up + BEYOND_mm })),
    ...words(hole, { middle, across, half, show, face }),
  ];
}

const cross = ({ x, y }: Point, { across, up }: { readonly across: Mm; readonly up: Mm }): readonly (readonly Point[])[] => [
  [
    { x: x - across, y },
    { x: x + across, y },
  ],
  [
    { x, y: y - up },
    { x, y: y + up },
  ],
];

/** Where a slanted bore comes out at the back, on the tile that holds the place: it may be another than that of the hole. */
export function exitParts({ there, angle }: TemplateHole, { view, tile }: { readonly view: View; readonly tile: Tile }): readonly Part[] {
  const isHere = there.height - SALTIRE_mm >= tile.from && there.height + SALTIRE_mm <= tile.to;
  return angle === 0 || !isHere ? [] : [strokes("thin", saltire(view.point({ x: there.right, y: there.height })))];
}

const SALTIRE_mm = 1.6;

/** Where a slanted bore comes out at the back, seen through the upright. */
const saltire = ({ x, y }: Point): readonly (readonly Point[])[] => [
  [
    { x: x - SALTIRE_mm, y: y - SALTIRE_mm },
    { x: x + SALTIRE_mm, y: y + SALTIRE_mm },
  ],
  [
    { x: x - SALTIRE_mm, y: y + SALTIRE_mm },
    { x: x + SALTIRE_mm, y: y - SALTIRE_mm },
  ],
];

interface WordsRoom extends Omit<HoleRoom, "view"> {
  readonly middle: Point;
  readonly across: Mm;
}

/** From the middle of a hole down to the first line that says what is bored. */
const BORED_mm = 2.4;

/** In the middle of a face the course stands on the left and the height on the right; beside it all stands on the outer side. */
function words(hole: TemplateHole, { middle, across, half, show, face }: WordsRoom): readonly Part[] {
  const { here, course } = hole;
  const name = String(course).padStart(2, "0");
  const isMiddle = !isOffMiddle(hole);
  const side = !isMiddle && here.right < 0 ? -1 : 1;
  const start = { x: middle.x + side * (across + WORDS_mm), y: middle.y };
  const anchor = side < 0 ? "end" : "start";
  const lines = [isMiddle ? "" : `${name} `, show.tape(here.height)];
  const size = lineHeight(MARK_mm);
  const bored = boredLines(hole, { half, show, face });
  return [
    ...(isMiddle
      ? [label(name, { x: middle.x - across - WORDS_mm, y: middle.y - size / 2 - 0.4 }, { size: MARK_mm, weight: 700, anchor: "end" })]
      : []),
    label(lines.join(""), { x: start.x, y: start.y - size / 2 - 0.4 }, { size: MARK_mm, weight: 700, anchor }),
    ...bored.map((text, index) => label(text, { x: start.x, y: start.y + BORED_mm + index * lineHeight() }, { anchor })),
  ];
}

function boredLines(hole: TemplateHole, { half, show, face }: Omit<HoleRoom, "view">): readonly Text[] {
  const { here, diameter, counterbore } = hole;
  const room = half - Math.abs(here.right) - (counterbore?.diameter ?? diameter) / 2 - WORDS_mm;
  return [...boredWords(hole, show), ...offsetWords(hole, { show, face })].flatMap((text) => wrap(text, room));
}

/** "1/16" to the deck's side" of the middle line: whoever looks at the left face has the deck on the right hand. */
function offsetWords(hole: TemplateHole, { show, face }: Pick<HoleRoom, "show" | "face">): readonly Text[] {
  const { right } = hole.here;
  if (!isOffMiddle(hole)) return [];
  return [`${show.tape(Math.abs(right))} ${right > 0 === (face === "left") ? "to the deck's side" : "away from the deck"}`];
}

function boredWords({ diameter, counterbore, here, there, angle }: TemplateHole, show: Show): readonly Text[] {
  const bored =
    counterbore === null
      ? `bore ${show.diameterOne(diameter)}`
      : `counterbore ${show.diameterOne(counterbore.diameter)} x ${show.tape(counterbore.depth)}`;
  if (angle === 0) return [bored];
  const rise = there.height - here.height;
  return [`${bored}, ${show.angle(Math.abs(angle))}`, `out ${show.tape(Math.abs(rise))} ${rise < 0 ? "lower" : "higher"}`];
}
