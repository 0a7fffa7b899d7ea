// Where do labels go so that they keep clear of each other?
import type { Point } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";
import { group, type Line, type Part, strokes } from "./shape.ts";
import { label, lineHeight, SMALLEST_mm, type TextStyle } from "./text.ts";

export interface Wish {
  /** Where the middle of the label would like to be. */
  readonly at: Mm;
  /** How much of the line it takes. */
  readonly size: Mm;
}

/** A row of labels that touch each other and move as one. */
interface Block {
  readonly count: number;
  readonly size: Mm;
  /** Sum over the labels of where each would like the block to begin. */
  readonly wishes: Mm;
}

/**
 * Places of labels along a line, in the order of their wishes: as near to the wishes as is possible (least squares)
 * without any overlap, and between `from` and `to` if there is room.
 */
export function spread(wishes: readonly Wish[], { from, to }: { readonly from?: Mm; readonly to?: Mm } = {}): readonly Mm[] {
  const order = wishes.map((_, index) => index).sort((a, b) => (wishes[a]?.at ?? 0) - (wishes[b]?.at ?? 0) || a - b);
  const total = wishes.reduce((sum, wish) => sum + wish.size, 0);
  const low = from ?? Number.NEGATIVE_INFINITY;
  const high = Math.max(to ?? Number.POSITIVE_INFINITY, low + total);
  const startOf = (block: Block): Mm => Math.min(Math.max(block.wishes / block.count, low), high - block.size);
  const blocks: Block[] = [];
  for (const index of order) {
    const wish = wishes[index];
    if (wish === undefined) continue;
    let block: Block = { count: 1, size: wish.size, wishes: wish.at - wish.size / 2 };
    for (let before = blocks.at(-1); before !== undefined && startOf(before) + before.size > startOf(block); before = blocks.at(-1)) {
      blocks.pop();
      block = {
        count: before.count + block.count,
        size: before.size + block.size,
        wishes: before.wishes + block.wishes - block.count * before.size,
      };
    }
    blocks.push(block);
  }
  const places: Mm[] = wishes.map(() => 0);
  const queue = [...order];
  for (const block of blocks) {
    let at = startOf(block);
    for (const index of queue.splice(0, block.count)) {
      const size = wishes[index]?.size ?? 0;
      places[index] = at + size / 2;
      at += size;
    }
  }
  return places;
}

export interface Callout {
  /** What the label points at. */
  readonly target: Point;
  readonly lines: readonly string[];
  readonly weight?: 400 | 700;
}

export interface Column {
  readonly x: Mm;
  readonly side: "left" | "right";
  readonly from?: Mm;
  readonly to?: Mm;
}

/** From each target to its label in a column. */
export function calloutLines(callouts: readonly Callout[], column: Column): readonly Line[] {
  const wishes = callouts.map(({ target, lines }) => ({ at: target.y, size: lines.length * lineHeight() + 1 }));
  const places = spread(wishes, column);
  const sign = column.side === "right" ? 1 : -1;
  return callouts.map(({ target }, index) => {
    const y = places[index] ?? target.y;
    return [target, { x: column.x - sign * 3, y }, { x: column.x - sign * 0.8, y }];
  });
}

/** A column of labels beside a drawing, each with a line to its target; lines end in a dot. */
export function calloutColumn(callouts: readonly Callout[], column: Column): Part {
  const pitch = lineHeight();
  const leaders = calloutLines(callouts, column);
  const style: TextStyle = { size: SMALLEST_mm, anchor: column.side === "right" ? "start" : "end" };
  return group(
    callouts.flatMap(({ target, lines, weight = 400 }, index) => {
      const leader = leaders[index] ?? [];
      const first = (leader.at(-1)?.y ?? target.y) - ((lines.length - 1) * pitch) / 2;
      return [
        strokes("thin", [leader]),
        targetDot(target),
        ...lines.map((line, row) => label(line, { x: column.x, y: first + row * pitch }, { ...style, weight })),
      ];
    }),
  );
}

/** Where a line to a name ends. */
export const targetDot = ({ x, y }: Point): Part =>
  strokes("heavy", [
    [
      { x: x - 0.35, y },
      { x: x + 0.35, y },
    ],
  ]);
