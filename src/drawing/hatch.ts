// How is cut material or ground shown? Evenly spaced slanted lines inside an outline, holes left out.
import type { Point } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import type { Line } from "./shape.ts";

export interface HatchOptions {
  /** Closed outlines; a point is hatched when it lies inside an odd number of them. */
  readonly outlines: readonly (readonly Point[])[];
  readonly spacing: Mm;
  /** Direction of the lines, counter-clockwise as the reader sees it. */
  readonly angle: Radian;
}

/** Lines at places counted from the paper's origin, so that neighbouring areas match. */
export function hatch({ outlines, spacing, angle }: HatchOptions): readonly Line[] {
  const step = { x: Math.cos(angle), y: -Math.sin(angle) };
  const across = { x: -step.y, y: step.x };
  const offset = (point: Point): Mm => point.x * across.x + point.y * across.y;
  const along = (point: Point): Mm => point.x * step.x + point.y * step.y;
  const offsets = outlines.flat().map(offset);
  const [low, high] = [Math.min(...offsets), Math.max(...offsets)];
  const lines: Line[] = [];
  for (let at = roundUp(low, spacing); at < high; at += spacing) {
    const cuts = outlines.flatMap((outline) => crossings(outline, at, { offset, along })).sort((a, b) => a - b);
    for (let index = 0; index + 1 < cuts.length; index += 2) {
      const [from = 0, to = 0] = [cuts[index], cuts[index + 1]];
      const point = (s: Mm): Point => ({ x: step.x * s + across.x * at, y: step.y * s + across.y * at });
      if (to - from > 0.05) lines.push([point(from), point(to)]);
    }
  }
  return lines;
}

/** Where the line at `at` passes through an outline, along itself; an end point counts for one of its two edges only. */
function crossings(
  outline: readonly Point[],
  at: Mm,
  { offset, along }: { readonly offset: (point: Point) => Mm; readonly along: (point: Point) => Mm },
): readonly Mm[] {
  return outline.flatMap((from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from;
    const [a, b] = [offset(from) - at, offset(to) - at];
    if (a < 0 === b < 0) return [];
    return [along(from) + ((along(to) - along(from)) * a) / (a - b)];
  });
}
