// How are lines, polygons and circles put on paper, each with the paper it takes?
import type { Point } from "../geometry/vector.ts";
import type { Mm } from "../units/quantity.ts";
import { type Box, boxOf, grow, type Quad, unite } from "./box.ts";
import { type Element, element, writeNumber } from "./element.ts";
import { type PenName, penWidth, strokeOf } from "./pen.ts";

/** Something drawn: its element, the paper it takes, and the outlines of its texts. */
export interface Part {
  readonly element: Element;
  readonly box: Box;
  readonly texts: readonly Quad[];
}

export type Line = readonly Point[];

/** Open lines of one pen as a single path. */
export function strokes(pen: PenName, lines: readonly Line[]): Part {
  let d = "";
  for (const line of lines)
    line.forEach((point, index) => {
      d += `${index === 0 ? "M" : "L"}${place(point)}`;
    });
  return {
    element: element("path", { d, fill: "none", ...strokeOf(pen) }),
    box: grow(boxOf(lines.flat()), penWidth(pen) / 2),
    texts: [],
  };
}

/** A closed shape; white covers what was drawn before it. */
export function polygon(points: readonly Point[], { pen, fill }: { readonly pen: PenName | null; readonly fill: "white" | "black" }): Part {
  const d = `${points.map((point, index) => `${index === 0 ? "M" : "L"}${place(point)}`).join("")}Z`;
  return {
    element: element("path", { d, fill: fill === "white" ? "#fff" : "#000", ...(pen === null ? {} : strokeOf(pen)) }),
    box: grow(boxOf(points), pen === null ? 0 : penWidth(pen) / 2),
    texts: [],
  };
}

export function circle(centre: Point, radius: Mm, { pen, fill }: { readonly pen: PenName; readonly fill: "white" | "black" }): Part {
  const reach = radius + penWidth(pen) / 2;
  return {
    element: element("circle", { cx: centre.x, cy: centre.y, r: radius, fill: fill === "white" ? "#fff" : "#000", ...strokeOf(pen) }),
    box: { left: centre.x - reach, top: centre.y - reach, right: centre.x + reach, bottom: centre.y + reach },
    texts: [],
  };
}

/** Several parts as one. */
export const group = (parts: readonly Part[]): Part => ({
  element: element("g", {}, ...parts.map((part) => part.element)),
  box: unite(parts.map((part) => part.box)),
  texts: parts.flatMap((part) => part.texts),
});

/** A filled arrowhead with its tip at `tip`, pointing along the unit step `toward`. */
export function arrowhead(tip: Point, toward: Point, length: Mm = 2.4): Part {
  const half = length * 0.3;
  const back = { x: tip.x - toward.x * length, y: tip.y - toward.y * length };
  return polygon(
    [tip, { x: back.x - toward.y * half, y: back.y + toward.x * half }, { x: back.x + toward.y * half, y: back.y - toward.x * half }],
    { pen: null, fill: "black" },
  );
}

/** A point reached from `from` by going `by` along the unit step `step`. */
export const go = (from: Point, step: Point, by: Mm): Point => ({ x: from.x + step.x * by, y: from.y + step.y * by });

const place = (point: Point): string => `${writeNumber(point.x)} ${writeNumber(point.y)}`;
