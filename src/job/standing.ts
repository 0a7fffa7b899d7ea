// How does a guard really stand: what is in the way of its bores? Types of the Job.
import type { Mm } from "../units/quantity.ts";

/** Bolts, brackets and the like: no bore may meet them. */
export interface Hardware {
  readonly what: string;
  /** Marks of the posts on which it sits; null: on every post. */
  readonly posts: readonly string[] | null;
  /** Heights above the datum. */
  readonly from: Mm;
  readonly to: Mm;
}
