// How does one tile of a full-size strip look: its cut edges, its folds, what joins it to its neighbours, and whose it is?
import { type View, viewOf } from "../../drawing/paper.ts";
import { arrowhead, ellipse, group, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, MARK_mm, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Mm } from "../../units/quantity.ts";
import { countSteps } from "../../units/round.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import type { Tile } from "./tiles.ts";

/** What every tile of a strip shares. */
export interface StripLook {
  readonly id: string;
  /** Width of the face; where it is wider than the paper only its middle is shown. */
  readonly width: Mm;
  /** From the middle line to the cut edge at each side. */
  readonly half: Mm;
  /** Part of `half` at each edge that holds words about the strip. */
  readonly margin: Mm;
  /** What its lower edge stands on: "the datum (top of the decking)". */
  readonly standsOn: Text;
  /** Whose tile it is, in the margins: on the left, on the right. */
  readonly about: readonly [left: readonly Text[], right: readonly Text[]];
  /** Between the holes, large. */
  readonly big: readonly Text[];
  /** Heights that hold something; the large words stand in the widest gap between them. */
  readonly kept: readonly { readonly low: Mm; readonly high: Mm }[];
  readonly show: Show;
  /** What is marked on the strip between two heights. */
  readonly marks: (view: View, tile: Tile) => readonly Part[];
}

/** Paper above the upper line of a tile, to lie under the next one. */
export const LAP_mm = 9;

/** A tile whose lower line has its middle at `at`. */
export function tileParts(look: StripLook, tile: Tile, at: Point): Part {
  const view = viewOf({ ratio: 1, model: { x: 0, y: tile.from }, paper: at });
  return group([
    ...edges(look, tile, view),
    ...look.marks(view, tile),
    ...joints(look, tile, view),
    ...margins(look, tile, view),
    ...bigWords(look, tile, view),
  ]);
}

const isLast = ({ number, count }: Tile): boolean => number === count;
const endOf = (tile: Tile): Mm => tile.to + (isLast(tile) ? 0 : LAP_mm);

/** Cut edges, folds along the edges of the face, the middle line. */
function edges({ half, width }: StripLook, tile: Tile, view: View): readonly Part[] {
  const end = endOf(tile);
  const upright = (x: Mm): readonly Point[] => [view.point({ x, y: tile.from }), view.point({ x, y: end })];
  const level = (y: Mm): readonly Point[] => [view.point({ x: -half, y }), view.point({ x: half, y })];
  return [
    strokes("edge", [upright(-half), upright(half), level(end)]),
    strokes("outline", [level(tile.from)]),
    ...(width / 2 < half ? [strokes("hidden", [upright(-width / 2), upright(width / 2)])] : []),
    strokes("centre", [upright(0)]),
  ];
}

const CROSS_mm = 4;

const lineWords = (tile: Text): Text => `cut here: ${tile} above datum`;

/** How far above the lower line of a tile its own words reach, with a little air; `tile` is its name and height. */
export const lineWordsHeight = (tile: Text, { room }: { readonly room: Mm }): Mm =>
  LINE_AIR_mm + wrap(lineWords(tile), room).length * lineHeight();

const LINE_AIR_mm = 2;

/** The line where the next tile lies, its height, and crosses that meet their other halves. */
function joints({ half, margin, show, standsOn, id }: StripLook, tile: Tile, view: View): readonly Part[] {
  const crossAt = (y: Mm): readonly Part[] =>
    [-1, 1].flatMap((side) => {
      const { x, y: down } = view.point({ x: side * (half - margin / 2), y });
      const arms = [
        [
          { x: x - CROSS_mm, y: down },
          { x: x + CROSS_mm, y: down },
        ],
        [
          { x, y: down - CROSS_mm },
          { x, y: down + CROSS_mm },
        ],
      ];
      return [strokes("thin", arms), ellipse({ x, y: down }, { across: 2.2, up: 2.2, pen: "thin", fill: "none" })];
    });
  const middle = { anchor: "middle", ground: true } as const;
  const room = 2 * (half - margin);
  const foot =
    tile.number === 1 ? `cut here; this edge stands on ${standsOn}` : lineWords(`${id}-${tile.number}, ${show.tapeBoth(tile.from)}`);
  const footLines = wrap(foot, room);
  const lower = view.point({ x: 0, y: tile.from });
  const upper = view.point({ x: 0, y: tile.to });
  const next = `lay ${id}-${tile.number + 1} on this line: ${show.tape(tile.to)}`;
  return [
    ...footLines.map((line, index) =>
      label(line, { x: lower.x, y: lower.y - 2.4 - (footLines.length - 1 - index) * lineHeight() }, middle),
    ),
    ...(tile.number > 1 ? crossAt(tile.from) : []),
    ...(isLast(tile)
      ? []
      : [
          strokes("edge", [[view.point({ x: -half, y: tile.to }), view.point({ x: half, y: tile.to })]]),
          ...crossAt(tile.to),
          ...wrap(next, room).map((line, index, all) =>
            label(line, { x: upper.x, y: upper.y - 2.4 - (all.length - 1 - index) * lineHeight() }, middle),
          ),
        ]),
  ];
}

/** Words along both edges, read from the right; clear of the crosses. */
function margins({ half, margin, about }: StripLook, tile: Tile, view: View): readonly Part[] {
  const length = tile.to - tile.from - 2 * CROSS_mm - 4;
  const [left, right] = about;
  const column = (texts: readonly Text[], side: -1 | 1): readonly Part[] => {
    const lines = texts.flatMap((text, index) =>
      wrap(text, length, { weight: index === 0 ? 700 : 400 }).map((line) => ({ line, first: index === 0 })),
    );
    const gap = Math.min(lineHeight(), (margin - 1) / Math.max(1, lines.length));
    const outer = side < 0 ? -half + 0.6 : half - 0.6 - lines.length * gap;
    return lines.map(({ line, first }, index) =>
      label(line, view.point({ x: outer + (index + 0.5) * gap, y: tile.from + CROSS_mm + 2 }), {
        angle: Math.PI / 2,
        weight: first ? 700 : 400,
      }),
    );
  };
  return [...column(left, -1), ...column(right, 1)];
}

const ARROW_mm = 13;

/** The arrow that points up, and the strip's name, in the widest gap between holes. */
function bigWords(look: StripLook, tile: Tile, view: View): readonly Part[] {
  const { kept, half, margin, big } = look;
  const gap = widestGap([...kept.filter(({ low, high }) => high > tile.from && low < tile.to)], tile);
  const middle = view.point({ x: 0, y: (gap.low + gap.high) / 2 });
  const room = 2 * (half - margin) - 2;
  const lines = big.flatMap((text) => wrap(text, room - 8, { size: MARK_mm, weight: 700 }));
  const step = lineHeight(MARK_mm);
  const fitting = lines.slice(0, Math.max(0, countSteps(gap.high - gap.low, { step, rounding: "down" })));
  const left = middle.x - room / 2 + 3;
  const arrow =
    gap.high - gap.low < ARROW_mm
      ? []
      : [
          strokes("heavy", [
            [
              { x: left, y: middle.y + ARROW_mm / 2 },
              { x: left, y: middle.y - ARROW_mm / 2 + 3 },
            ],
          ]),
          arrowhead({ x: left, y: middle.y - ARROW_mm / 2 }, { x: 0, y: -1 }, 4.5),
        ];
  return [
    ...arrow,
    ...fitting.map((line, index) =>
      label(line, { x: left + 4, y: middle.y + (index - (fitting.length - 1) / 2) * step }, { size: MARK_mm, weight: 700, ground: true }),
    ),
  ];
}

/** Room at the lines of a tile that their own words take. */
const LINE_WORDS_mm = 8;

function widestGap(kept: StripLook["kept"], tile: Tile): { readonly low: Mm; readonly high: Mm } {
  const ordered = kept.toSorted((a, b) => a.low - b.low);
  let widest = { low: 0, high: Number.NEGATIVE_INFINITY };
  let low = tile.from + LINE_WORDS_mm;
  for (const { low: high, high: next } of [...ordered, { low: tile.to - 2, high: tile.to }]) {
    if (high - low > widest.high - widest.low) widest = { low, high };
    low = Math.max(low, next);
  }
  return widest;
}
