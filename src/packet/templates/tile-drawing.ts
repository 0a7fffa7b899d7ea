// How does one tile of a full-size strip look: its cut edges, its folds, what joins it to its neighbours, and whose it is?
import { type View, viewOf } from "../../drawing/paper.ts";
import { arrowhead, ellipse, group, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, MARK_mm, SMALLEST_mm, textWidth, wrap } from "../../drawing/text.ts";
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
  /** What its lower edge does: "this edge stands on the datum (top of the decking)". */
  readonly edge: Text;
  /** From what its heights count: "datum". */
  readonly zero: Text;
  /** Slope of the foot of what it is folded round: how far a flap's lower edge climbs for each mm away from the fold; 0 where it is level. */
  readonly flapRise: number;
  /** Under the rulers of each of its pages. */
  readonly notes: readonly Text[];
  /** Whose tile it is, in the margins: on the left, on the right. */
  readonly about: readonly [left: readonly Text[], right: readonly Text[]];
  /** Heights of lines that run across the whole strip, which those words keep clear of. */
  readonly across?: readonly Mm[];
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
const LAP_lines = 2;

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

/** How much higher the lower edge of a flap ends than it begins at the fold; lower where it is negative. */
const flapClimb = ({ half, width, flapRise }: Pick<StripLook, "half" | "width" | "flapRise">): Mm =>
  flapRise * Math.max(0, half - width / 2);

/** Paper below a strip that its flaps take. */
export const flapDrop = (look: Pick<StripLook, "half" | "width" | "flapRise">): Mm => Math.max(0, 0 - flapClimb(look));

/** The same of one tile: only the lowest stands on a foot. */
const climbAt = (look: StripLook, { number }: Tile): Mm => (number === 1 ? flapClimb(look) : 0);

/** Cut edges, folds along the edges of the face, the middle line. */
function edges(look: StripLook, tile: Tile, view: View): readonly Part[] {
  const { half, width } = look;
  const end = endOf(tile);
  const low = tile.from + climbAt(look, tile);
  const fold = Math.min(width / 2, half);
  const upright = (x: Mm, from: Mm): readonly Point[] => [view.point({ x, y: from }), view.point({ x, y: end })];
  const line = (...points: readonly (readonly [x: Mm, y: Mm])[]): readonly Point[] => points.map(([x, y]) => view.point({ x, y }));
  const lower =
    climbAt(look, tile) === 0 ? line([-half, low], [half, low]) : line([-half, low], [-fold, tile.from], [fold, tile.from], [half, low]);
  return [
    strokes("edge", [upright(-half, low), upright(half, low), line([-half, end], [half, end])]),
    strokes("outline", [lower]),
    ...(width / 2 < half ? [strokes("hidden", [upright(-fold, tile.from), upright(fold, tile.from)])] : []),
    strokes("centre", [upright(0, tile.from)]),
  ];
}

const CROSS_mm = 4;

const lineWords = (tile: Text, zero: Text): Text => `cut here: ${tile} above ${zero}`;

/** How far above the lower line of a tile its own words reach, with a little air; `tile` is its name and height. */
export const lineWordsHeight = (tile: Text, { room, zero }: { readonly room: Mm; readonly zero: Text }): Mm =>
  LINE_AIR_mm + wrap(lineWords(tile, zero), room).length * lineHeight();

const LINE_AIR_mm = 2;

/** On the paper that lies under the next tile, in one line or two; a narrow face has room for less of it. */
const lapWords = (tile: Text, height: Text, room: Mm): readonly Text[] => {
  const words = `lay ${tile} on this line: ${height}`;
  const ways = [[words], [`lay ${tile} on this line:`, height], wrap(words, room)];
  return ways.find((lines) => lines.length <= LAP_lines && lines.every((line) => textWidth(line) <= room)) ?? [tile, height];
};

/** The line where the next tile lies, its height, and crosses that meet their other halves. */
function joints({ half, margin, show, edge, zero, id }: StripLook, tile: Tile, view: View): readonly Part[] {
  // Below its lower line a tile is cut off: there stands the upper half of a cross.
  const crossAt = (y: Mm, isWhole: boolean): readonly Part[] =>
    [-1, 1].flatMap((side) => {
      const { x, y: down } = view.point({ x: side * (half - margin / 2), y });
      const arms = [
        [
          { x: x - CROSS_mm, y: down },
          { x: x + CROSS_mm, y: down },
        ],
        [
          { x, y: down - CROSS_mm },
          { x, y: down + (isWhole ? CROSS_mm : 0) },
        ],
      ];
      return [strokes("thin", arms), ...(isWhole ? [ellipse({ x, y: down }, { across: 2.2, up: 2.2, pen: "thin", fill: "none" })] : [])];
    });
  const middle = { anchor: "middle", ground: true } as const;
  const room = 2 * (half - margin);
  const foot = tile.number === 1 ? `cut here; ${edge}` : lineWords(`${id}-${tile.number}, ${show.tapeBoth(tile.from)}`, zero);
  const footLines = wrap(foot, room);
  const lower = view.point({ x: 0, y: tile.from });
  const upper = view.point({ x: 0, y: tile.to });
  const next = lapWords(`${id}-${tile.number + 1}`, show.tape(tile.to), room);
  return [
    ...footLines.map((line, index) =>
      label(line, { x: lower.x, y: lower.y - 2.4 - (footLines.length - 1 - index) * lineHeight() }, middle),
    ),
    ...(tile.number > 1 ? crossAt(tile.from, false) : []),
    ...(isLast(tile)
      ? []
      : [
          strokes("edge", [[view.point({ x: -half, y: tile.to }), view.point({ x: half, y: tile.to })]]),
          ...crossAt(tile.to, true),
          ...next.map((line, index, all) =>
            label(line, { x: upper.x, y: upper.y - 2.4 - (all.length - 1 - index) * lineHeight() }, middle),
          ),
        ]),
  ];
}

const EDGE_AIR_mm = 0.6;
/** Between a fold and the first line beside it on the face. */
const FOLD_AIR_mm = 0.4;

/**
 * How far from the cut edge the middles of so many lines of words lie, the outermost first. Where a flap is narrower than they are, none lies on
 * its fold: what the flap does not hold stands on the face.
 */
export function linePlaces(count: number, { margin, fold }: { readonly margin: Mm; readonly fold: Mm }): readonly Mm[] {
  const step = Math.min(lineHeight(), (margin - 1) / Math.max(1, count));
  const held = fold > 0 ? Math.max(0, countSteps(fold - EDGE_AIR_mm, { step, rounding: "down" })) : count;
  const face = fold > 0 ? fold + FOLD_AIR_mm : fold;
  const inner = Math.min(step, (margin - face) / Math.max(1, count - held));
  return Array.from({ length: count }, (_, nth) => (nth < held ? EDGE_AIR_mm + (nth + 0.5) * step : face + (nth - held + 0.5) * inner));
}

const ACROSS_AIR_mm = 1;

/** The lowest place for words of this length that no line across the strip runs through; the foot where there is none. */
function clearStart(length: Mm, { from, to, lines }: { readonly from: Mm; readonly to: Mm; readonly lines: readonly Mm[] }): Mm {
  const isClear = (low: Mm): boolean =>
    low >= from && low + length <= to && lines.every((line) => line < low - ACROSS_AIR_mm / 2 || line > low + length + ACROSS_AIR_mm / 2);
  return [from, ...lines.map((line) => line + ACROSS_AIR_mm)].find(isClear) ?? from;
}

/** Words along both edges, read from the right; clear of the crosses and of flaps that are cut off. */
function margins(look: StripLook, tile: Tile, view: View): readonly Part[] {
  const { half, margin, about, width } = look;
  const start = CROSS_mm + 2 + Math.max(0, climbAt(look, tile));
  const length = tile.to - tile.from - CROSS_mm - 2 - start;
  const [left, right] = about;
  const column = (texts: readonly Text[], side: -1 | 1): readonly Part[] => {
    const lines = texts.flatMap((text, index) =>
      wrap(text, length, { weight: index === 0 ? 700 : 400 }).map((line) => ({ line, first: index === 0 })),
    );
    const longest = Math.max(0, ...lines.map(({ line, first }) => textWidth(line, { weight: first ? 700 : 400 })));
    const low = clearStart(longest, { from: tile.from + start, to: tile.from + start + length, lines: look.across ?? [] });
    const places = linePlaces(lines.length, { margin, fold: half - width / 2 });
    return lines.map(({ line, first }, index) => {
      const place = places[side < 0 ? index : lines.length - 1 - index] ?? 0;
      return label(line, view.point({ x: side * (half - place), y: low }), {
        angle: Math.PI / 2,
        weight: first ? 700 : 400,
        // Where nothing is folded the lines of the strip go through to its edges; a fold is never broken by words.
        ground: width / 2 >= half,
      });
    });
  };
  return [...column(left, -1), ...column(right, 1)];
}

const ARROW_mm = 13;
/** To the left of the large words, with the air on both sides. */
const ARROW_ROOM_mm = 8;

/** Smaller on a face that has no room for the longest word: no word is broken. */
const bigSize = (big: readonly Text[], room: Mm): Mm =>
  big.flatMap((text) => text.split(" ")).every((word) => textWidth(word, { size: MARK_mm, weight: 700 }) <= room) ? MARK_mm : SMALLEST_mm;

/** The arrow that points up, and the strip's name, in the widest gap between holes. */
function bigWords(look: StripLook, tile: Tile, view: View): readonly Part[] {
  const { kept, half, margin, big } = look;
  const gap = widestGap([...kept.filter(({ low, high }) => high > tile.from && low < tile.to)], tile);
  const middle = view.point({ x: 0, y: (gap.low + gap.high) / 2 });
  const room = 2 * (half - margin) - 2;
  const size = bigSize(big, room - ARROW_ROOM_mm);
  const lines = big.flatMap((text) => wrap(text, room - ARROW_ROOM_mm, { size, weight: 700 }));
  const step = lineHeight(size);
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
      label(line, { x: left + 4, y: middle.y + (index - (fitting.length - 1) / 2) * step }, { size, weight: 700, ground: true }),
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
