// How is a side drawn with lengths and heights at scales of their own?
import { type View, viewOf } from "../../drawing/paper.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Stretch } from "./stretches.ts";

/** Lengths and heights at different scales: a diagram, not a drawing to scale. */
export function stretchedView(
  stretch: Stretch,
  { across, up, tan, origin }: { readonly across: number; readonly up: number; readonly tan: number; readonly origin: Point },
): View {
  const { point, step } = viewOf({ ratio: 1, model: { x: 0, y: 0 }, paper: origin });
  // The upper end of a row on a slope is not drawn higher than that of a level one.
  const low = tan < 0 ? 0 : tan * (stretch.to - stretch.from);
  return {
    ratio: across,
    point: ({ x, y }) => point({ x: (x - stretch.from) * across, y: y * up + (x - stretch.from) * tan - low }),
    step,
  };
}
