// How are lines, polygons and circles put on paper, each with the paper it takes?
import type { Point } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { type Box, boxOf, boxOfLines, grow, type Quad, unite } from "./box.ts";
import { type PenName, penWidth } from "./pen.ts";

/** What is drawn, as plain data: it is written only when the drawing is finished, so that a trial costs no text. */
export type Mark =
  | { readonly kind: "lines"; readonly pen: PenName; readonly lines: readonly Line[]; readonly covered?: true }
  | { readonly kind: "hatch"; readonly area: HatchArea }
  | { readonly kind: "polygon"; readonly points: readonly Point[]; readonly pen: PenName | null; readonly fill: Fill }
  | { readonly kind: "circle"; readonly centre: Point; readonly radius: Mm; readonly pen: PenName; readonly fill: Fill }
  | {
      readonly kind: "ellipse";
      readonly centre: Point;
      readonly across: Mm;
      readonly up: Mm;
      readonly pen: PenName;
      readonly fill: Fill | "none";
    }
  /** The line that is measured on the printed sheet. */
  | { readonly kind: "calibration"; readonly from: Point; readonly to: Point }
  | { readonly kind: "words"; readonly words: Words }
  | { readonly kind: "group"; readonly parts: readonly Part[] };

export type Fill = "white" | "black";
export type Line = readonly Point[];

export interface HatchArea {
  /** Closed outlines; a point is hatched when it lies inside an odd number of them. */
  readonly outlines: readonly (readonly Point[])[];
  readonly spacing: Mm;
  /** Direction of the lines, counter-clockwise as the reader sees it. */
  readonly angle: Radian;
}

export interface Words {
  readonly text: string;
  /** The middle of the capitals, at the start, middle or end. */
  readonly at: Point;
  readonly size: Mm;
  readonly weight: 400 | 700;
  readonly anchor: "start" | "middle" | "end";
  readonly angle: Radian;
  /** White behind the text: how far it begins to the left of `at`, how wide it is, and how high from the top of the text; null for none. */
  readonly ground: { readonly left: Mm; readonly width: Mm; readonly height: Mm } | null;
}

/** Something drawn: the paper it takes, and the outlines of its texts. */
export interface Part {
  readonly mark: Mark;
  readonly box: Box;
  readonly texts: readonly Quad[];
}

const noTexts: readonly Quad[] = [];

/** Open lines of one pen. */
export function strokes(pen: PenName, lines: readonly Line[]): Part {
  return { mark: { kind: "lines", pen, lines }, box: grow(boxOfLines(lines), penWidth(pen) / 2), texts: noTexts };
}

/** Lines that are covered by shapes that come after them, as they cover those before; others are drawn over all shapes. */
export const coveredStrokes = (pen: PenName, lines: readonly Line[]): Part => ({
  ...strokes(pen, lines),
  mark: { kind: "lines", pen, lines, covered: true },
});

/** Slanted thin lines inside outlines. */
export const hatched = (area: HatchArea): Part => ({
  mark: { kind: "hatch", area },
  box: grow(boxOfLines(area.outlines), penWidth("thin") / 2),
  texts: noTexts,
});

/** A closed shape; white covers what was drawn before it. */
export const polygon = (points: readonly Point[], { pen, fill }: { readonly pen: PenName | null; readonly fill: Fill }): Part => ({
  mark: { kind: "polygon", points, pen, fill },
  box: pen === null ? boxOf(points) : grow(boxOf(points), penWidth(pen) / 2),
  texts: noTexts,
});

export const circle = (centre: Point, radius: Mm, { pen, fill }: { readonly pen: PenName; readonly fill: Fill }): Part => ({
  mark: { kind: "circle", centre, radius, pen, fill },
  box: grow({ left: centre.x, top: centre.y, right: centre.x, bottom: centre.y }, radius + penWidth(pen) / 2),
  texts: noTexts,
});

/** An upright ellipse by its two half axes; `none` shows what lies under it. */
export const ellipse = (
  centre: Point,
  { across, up, pen, fill }: { readonly across: Mm; readonly up: Mm; readonly pen: PenName; readonly fill: Fill | "none" },
): Part => {
  const half = penWidth(pen) / 2;
  const box = { left: centre.x - across, top: centre.y - up, right: centre.x + across, bottom: centre.y + up };
  return { mark: { kind: "ellipse", centre, across, up, pen, fill }, box: grow(box, half), texts: noTexts };
};

/** Several parts as one. */
export function group(parts: readonly Part[]): Part {
  const texts: Quad[] = [];
  for (const part of parts) for (const quad of part.texts) texts.push(quad);
  return { mark: { kind: "group", parts }, box: boxOfParts(parts), texts };
}

/** The paper that several parts take together. */
export const boxOfParts = (parts: readonly Part[]): Box => unite(parts);

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
