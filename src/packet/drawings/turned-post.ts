// How wide is an upright seen from its side, and which of its faces are seen, where it stands turned between two sides?
import type { SidePlan, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { leftFace, rightFace } from "./kit.ts";

/** In stations of the side that it is seen from. */
export interface Outline {
  readonly left: Mm;
  readonly right: Mm;
  /** Of a post that stands turned: its edge nearest to the deck, and on which hand of it the face lies that the cable goes in. */
  readonly turned: { readonly edge: Mm; readonly mouth: "left" | "right" } | null;
}

/**
 * A post of width w that stands turned by r, counter-clockwise from above: w (cos r + sin |r|) wide, and its edge nearest to the deck lies
 * w (cos r - sin |r|) / 2 from its middle, to the left where r is positive: of the two faces that are seen the left one is then the narrow one.
 */
export function outlineOf(vertical: Vertical, { direction }: SidePlan): Outline {
  const { corner, station, along, across } = vertical;
  if (corner === undefined || corner.twist === 0) return { left: leftFace(vertical), right: rightFace(vertical), turned: null };
  const turn = vertical.direction - direction;
  const [long, short] = [(along / 2) * Math.cos(turn), (across / 2) * Math.abs(Math.sin(turn))];
  const hand = turn > 0 ? -1 : 1;
  return {
    left: station - long - short,
    right: station + long + short,
    turned: { edge: station + hand * (long - short), mouth: hand < 0 ? "left" : "right" },
  };
}

/** How far a cable is seen: to its mouth, or to the edge of a turned post whose face looks away from the deck. */
export function seenTo(vertical: Vertical, side: SidePlan, face: "left" | "right"): Mm {
  const mouth = face === "left" ? leftFace(vertical) : rightFace(vertical);
  const { turned, [face]: edge } = outlineOf(vertical, side);
  return turned === null || turned.mouth === face ? mouth : edge;
}
