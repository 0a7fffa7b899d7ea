// What is a pier of concrete or masonry at the end of a guard, and the anchors in it that hold the cables? Types of the Job.
import type { Cited } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";

export type PierMaterial = "concrete" | "brick" | "block" | "stone";

/** One for each cable, as its maker's instructions for this pier say: nothing of it is worked out here. */
export interface Anchor {
  readonly kind: "adhesive" | "expansion" | "screw";
  readonly hole: Cited<Mm>;
  /** Of the hole, from the face of the pier: embedment, and what the maker adds for dust. */
  readonly depth: Cited<Mm>;
  /** From the face of the pier to the middle of the eye. */
  readonly standOut: Cited<Mm>;
  /** Across the flange or washer that lies on the face. */
  readonly flange: Cited<Mm>;
  /** Working load in tension, of one anchor among its neighbours in this pier; null: not known. */
  readonly rated: Cited<Newton> | null;
  /** Least distances that its maker or an engineer states, from its middle to the next anchor and to an edge; null: not known. */
  readonly edge_min: Cited<Mm> | null;
  readonly spacing_min: Cited<Mm> | null;
}

export interface Pier {
  readonly of: PierMaterial;
  /** Size along the side and square to it. */
  readonly along: Mm;
  readonly across: Mm;
  /** Of its top above the datum. */
  readonly height: Mm;
  readonly anchor: Anchor;
}
