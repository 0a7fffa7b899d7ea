// How is a post in a sleeve drawn when it is cut: the sleeve's walls, the gap, the wood inside?
import { hatched, type Part, polygon } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Sleeve } from "../../job/standing.ts";
import type { Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { type Hole, outlineOf, type Place, rectangle } from "./detail-place.ts";

const box = (place: Place, along: Mm, across: Mm): readonly Point[] =>
  rectangle(place, { left: -along / 2, right: along / 2, low: -across / 2, high: across / 2 });

/** A level cut. What is bored through the wood is wider in the walls of the sleeve; the gap between them is white. */
export function cutSleeved(
  { along, across, core }: Pick<Vertical, "along" | "across"> & { readonly core: NonNullable<Vertical["core"]> },
  { wall, material, boreClearance }: Sleeve,
  place: Place,
  holes: readonly Hole[],
): readonly Part[] {
  const [outer, inner] = [box(place, along, across), box(place, along - 2 * wall, across - 2 * wall)];
  const wood = box(place, core.along, core.across);
  const within = (hole: Hole, from: Mm, to: Mm, wider: Mm): readonly Hole[] => {
    const [low, high] = [Math.max(hole.from, from), Math.min(hole.to, to)];
    return high - low < SLIVER_mm ? [] : [{ ...hole, from: low, to: high, diameter: hole.diameter + wider }];
  };
  const inWood = holes.flatMap((hole) => within(hole, -core.along / 2, core.along / 2, 0));
  const inWalls = holes.flatMap((hole) => {
    // The washer's hole does not reach into the wood: it is as wide as it is.
    const wider = within(hole, -core.along / 2, core.along / 2, 0).length > 0 ? boreClearance.value : 0;
    return [...within(hole, -along / 2, wall - along / 2, wider), ...within(hole, along / 2 - wall, along / 2, wider)];
  });
  const open = (list: readonly Hole[]): readonly (readonly Point[])[] => list.map((hole) => outlineOf(hole, place));
  return [
    polygon(outer, { pen: "outline", fill: "white" }),
    polygon(inner, { pen: "edge", fill: "white" }),
    ...open(inWalls).map((hole) => polygon(hole, { pen: "edge", fill: "white" })),
    hatched({ outlines: [outer, inner, ...open(inWalls)], spacing: material === "wood" ? 3 : 1.2, angle: -Math.PI / 4 }),
    polygon(wood, { pen: "outline", fill: "white" }),
    ...open(inWood).map((hole) => polygon(hole, { pen: "edge", fill: "white" })),
    hatched({ outlines: [wood, ...open(inWood)], spacing: 3, angle: Math.PI / 4 }),
  ];
}

/** Less than a drawing shows. */
const SLIVER_mm = 0.01;
