// What is known of the bushings where a cable bends?
import type { Cited } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";

export interface Bushing {
  /** Of what sits in the bore, without its rim. */
  readonly length: Cited<Mm>;
  /** In wood: wall of a stainless tube right through the bore, in whose mouths the bushings sit; null without one. */
  readonly tubeWall: Cited<Mm> | null;
  /** What a strand may press on it with where it bends, by its maker; null: not known. */
  readonly rated: Cited<Newton> | null;
}
