// How is cut material or ground shown? Evenly spaced slanted lines inside an outline, holes left out.
import type { Point } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import type { HatchArea, Line } from "./shape.ts";

/** Shorter pieces are dust. */
const SHORTEST_mm = 0.05;

/** Lines at places counted from the paper's origin, so that neighbouring areas match. */
export function hatchLines({ outlines, spacing, angle }: HatchArea): readonly Line[] {
  const [stepX, stepY] = [Math.cos(angle), -Math.sin(angle)];
  // Each corner as its distance across the lines and along them.
  const turned = outlines.map((outline) =>
    outline.map(({ x, y }): Turned => ({ across: y * stepX - x * stepY, along: x * stepX + y * stepY })),
  );
  const { low, high } = rangeOf(turned);
  const lines: Line[] = [];
  for (let at = roundUp(low, spacing); at < high; at += spacing) {
    const cuts = crossings(turned, at);
    const point = (along: Mm): Point => ({ x: stepX * along - stepY * at, y: stepY * along + stepX * at });
    for (let index = 0; index + 1 < cuts.length; index += 2) {
      const from = cuts[index] ?? 0;
      const to = cuts[index + 1] ?? 0;
      if (to - from > SHORTEST_mm) lines.push([point(from), point(to)]);
    }
  }
  return lines;
}

interface Turned {
  readonly across: Mm;
  readonly along: Mm;
}

function rangeOf(outlines: readonly (readonly Turned[])[]): { readonly low: Mm; readonly high: Mm } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const outline of outlines) {
    for (const { across } of outline) {
      if (across < low) low = across;
      if (across > high) high = across;
    }
  }
  return { low, high };
}

/** Where the line at `at` passes through the outlines, in order; an end point counts for one of its two edges only. */
function crossings(outlines: readonly (readonly Turned[])[], at: Mm): readonly Mm[] {
  const found: Mm[] = [];
  for (const outline of outlines) {
    let from = outline.at(-1);
    for (const to of outline) {
      if (from !== undefined && from.across < at !== to.across < at)
        putInOrder(found, from.along + ((to.along - from.along) * (at - from.across)) / (to.across - from.across));
      from = to;
    }
  }
  return found;
}

/** Most lines are crossed twice: sorting each list would cost more than all the rest. */
function putInOrder(list: Mm[], value: Mm): void {
  let place = list.length;
  for (; place > 0 && (list[place - 1] as Mm) > value; place--) list[place] = list[place - 1] as Mm;
  list[place] = value;
}
