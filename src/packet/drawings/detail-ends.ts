// Which signs show one end of a run: a stud or a gripping fitting behind its post, or an eye on its face?
import type { Plan, RunEnd, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { blindHole, faceFitting } from "./detail-face.ts";
import { type EndBore, type EndDrawn, gripEnd, signOf, studEnd } from "./detail-parts.ts";
import type { Hole, Place } from "./detail-place.ts";

export function endFitting(plan: Plan, end: RunEnd, vertical: Vertical, place: Place, bore: EndBore): EndDrawn {
  switch (end.kind) {
    case "stud":
      return studEnd(plan, end, vertical, place, bore);
    case "grip":
      return gripEnd(plan, end, vertical, place, bore);
    case "face":
    case "anchor":
      return faceFitting(plan, end, vertical, place, bore);
  }
}

/** The bore of an end without overlaps: the counterbore, and the rest of the bore. */
export function endHoles({ offset, ...end }: RunEnd, vertical: Vertical, bore: EndBore): readonly Hole[] {
  if (!bore.through) return [blindHole({ ...end, offset }, vertical, bore)];
  const { diameter, counterbore, tilt = 0 } = bore;
  const sign = signOf(end);
  const half = vertical.along / 2;
  const between = (a: Mm, b: Mm): Omit<Hole, "diameter"> => ({ from: Math.min(a, b), to: Math.max(a, b), offset, tilt });
  if (counterbore === null) return [{ ...between(-half, half), diameter }];
  const floor = sign * (half / Math.cos(tilt) - counterbore.depth);
  return [
    { ...between(-sign * half, floor), floor, diameter },
    { ...between(floor, sign * half), floor, diameter: counterbore.diameter },
  ];
}
