// How large is a sheet, which part of it may be drawn on, and how does a model come onto it?
import type { Point } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";

export type PaperName = "letter" | "a4";
export type Orientation = "portrait" | "landscape";

export interface Room {
  readonly width: Mm;
  readonly height: Mm;
}

/** Upright: Letter is 8-1/2 x 11 in, A4 is 210 x 297 mm. */
export const papers: Readonly<Record<PaperName, Room>> = { letter: { width: 215.9, height: 279.4 }, a4: { width: 210, height: 297 } };

/** The left margin takes the binding; the top and bottom ones hold the title block. */
export const margins_mm = { left: 15, right: 11, top: 16, bottom: 26 } as const;

/** What is left of a sheet between its margins. */
export function contentBox({ paper, orientation }: { readonly paper: PaperName; readonly orientation: Orientation }): Room {
  const { width, height } = papers[paper];
  const [across, down] = orientation === "portrait" ? [width, height] : [height, width];
  const { left, right, top, bottom } = margins_mm;
  return { width: roundTo(across - left - right, 3), height: roundTo(down - top - bottom, 3) };
}

export interface Scale {
  /** Paper mm for each mm of the model. */
  readonly ratio: number;
  /** As written on the drawing: `3/8" = 1'-0"` or `1:25`. */
  readonly name: string;
}

const inchScales: readonly Scale[] = (
  [
    [2, "6"],
    [4, "3"],
    [8, "1-1/2"],
    [12, "1"],
    [16, "3/4"],
    [24, "1/2"],
    [32, "3/8"],
    [48, "1/4"],
    [96, "1/8"],
    [192, "1/16"],
    [384, "1/32"],
  ] as const
).map(([denominator, inches]) => ({ ratio: 1 / denominator, name: `${inches}" = 1'-0"` }));

const metricScales: readonly Scale[] = [2, 5, 10, 20, 25, 50, 100, 200, 500].map((denominator) => ({
  ratio: 1 / denominator,
  name: `1:${denominator}`,
}));

/** Plain drafting scales, largest first. */
export const scalesOf = (units: "inch" | "mm"): readonly Scale[] => (units === "inch" ? inchScales : metricScales);

/** The largest plain drafting scale that satisfies `fits`, or the smallest there is. */
export function chooseScale(units: "inch" | "mm", fits: (scale: Scale) => boolean): Scale {
  const scales = scalesOf(units);
  const chosen = scales.find(fits) ?? scales.at(-1);
  if (chosen === undefined) throw new RangeError("no scales");
  return chosen;
}

/** From the model (y up) to paper (y down): the only place where y changes its sign. */
export interface View {
  readonly ratio: number;
  readonly point: (point: Point) => Point;
  /** A unit step on paper that points where a direction of the model points. */
  readonly step: (direction: Radian) => Point;
}

export const viewOf = ({ ratio, model, paper }: { readonly ratio: number; readonly model: Point; readonly paper: Point }): View => ({
  ratio,
  point: ({ x, y }) => ({ x: paper.x + (x - model.x) * ratio, y: paper.y - (y - model.y) * ratio }),
  step: (direction) => ({ x: Math.cos(direction), y: -Math.sin(direction) }),
});
