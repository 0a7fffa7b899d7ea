// How is one hole marked on a full-size template: its edge, its middle, which way it goes and where it comes out?
import type { View } from "../../drawing/paper.ts";
import { arrowhead, ellipse, type Part, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Mm } from "../../units/quantity.ts";
import { halfHeight, type TemplateHole } from "./faces.ts";
import { acrossOf, BEYOND_mm, type HoleWords, holeWords, WORDS_mm, type WordsRoom, wordParts } from "./hole-words.ts";
import type { Tile } from "./tiles.ts";

export interface HoleRoom extends WordsRoom {
  readonly view: View;
}

export function holeParts(hole: TemplateHole, { view, ...room }: HoleRoom): readonly Part[] {
  const { here, angle, diameter, sleeveHole, counterbore } = hole;
  const middle = view.point({ x: here.right, y: here.height });
  const across = acrossOf(hole) / 2;
  const up = halfHeight(hole);
  const words = holeWords(hole, room);
  return [
    ellipse(middle, { across, up, pen: "edge", fill: "none" }),
    ...(counterbore === null && sleeveHole === null
      ? []
      : [ellipse(middle, { across: diameter / 2, up: diameter / 2 / Math.cos(angle), pen: "thin", fill: "none" })]),
    strokes("thin", cross(middle, { across: across + BEYOND_mm, up: up + BEYOND_mm })),
    ...wayArrow(hole, middle, words),
    ...wordParts(words, view.point({ x: 0, y: here.height })),
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

const ARROW_mm = 6;

/** Up or down, as the bit goes from this face: left of the hole, below the name of its course where that stands there. */
function wayArrow(hole: TemplateHole, middle: Point, { lay }: HoleWords): readonly Part[] {
  if (hole.angle === 0) return [];
  const toward = hole.angle < 0 ? 1 : -1;
  const x = middle.x - acrossOf(hole) / 2 - (lay === "beside" ? WORDS_mm + 2.4 : BEYOND_mm + 2);
  const centre = middle.y + (lay === "beside" ? 1 + ARROW_mm / 2 : 0);
  const tip = { x, y: centre + (toward * ARROW_mm) / 2 };
  return [
    strokes("edge", [
      [
        { x, y: centre - (toward * ARROW_mm) / 2 },
        { x, y: tip.y - toward },
      ],
    ]),
    arrowhead(tip, { x: 0, y: toward }),
  ];
}

/** Half of a mark where a bore comes out, along either of its strokes' sides. */
const SALTIRE_mm = 1.6;
/** A tile is not cut nearer to such a mark. */
export const EXIT_mm = SALTIRE_mm + 1;

/** Nearer to the middle of the hole a mark could be taken for it: the words alone say by how much the bore comes out elsewhere. */
export const hasExit = ({ here, there }: TemplateHole): boolean => Math.abs(there.height - here.height) >= EXIT_mm;

/** Where a slanted bore comes out at the back, on the tile that holds the place: it may be another than that of the hole. */
export function exitParts(hole: TemplateHole, { view, tile }: { readonly view: View; readonly tile: Tile }): readonly Part[] {
  const { there } = hole;
  const isHere = hasExit(hole) && there.height >= tile.from && there.height < tile.to;
  return isHere ? [strokes("thin", saltire(view.point({ x: there.right, y: there.height })))] : [];
}

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
