// How does a guard really stand: what is in the way of its bores, and what interrupts it? Types of the Job.

import type { Cited } from "../sources/cited.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import type { Access, GuardEnd, Section } from "./job.ts";

/** Bolts, brackets and the like: no bore may meet them. */
export interface Hardware {
  readonly what: string;
  /** Marks of the posts on which it sits; null: on every post. */
  readonly posts: readonly string[] | null;
  /** Heights above the datum. */
  readonly from: Mm;
  readonly to: Mm;
}

/** What stands between the right-hand end of one side and the start of the next: no cable passes, and each has an end of the guard. */
export interface Interruption {
  readonly what: "gate" | "column" | "house corner" | "open";
  /** Along the line of the side before it, from its right-hand end. */
  readonly width: Mm;
  /** Square to that line, positive away from the deck. */
  readonly out: Mm;
  /** How the side before it ends and the side behind it starts. */
  readonly end: GuardEnd;
  readonly start: GuardEnd;
}

/** A post that is not like the others, or whose back is reached otherwise. */
export interface PostAsFound {
  /** P3: its mark on the plan. */
  readonly post: string;
  readonly access: Access | null;
  /** In words, for the crew: "planter". */
  readonly behind: string | null;
  readonly section: Section | null;
  /**
   * Its middle stands this much further away from the deck (negative: nearer to it), and this much further to the right (negative: to the
   * left), as seen by somebody on the deck who looks out, at a height above the datum.
   */
  readonly leans: { readonly out: Mm; readonly right: Mm; readonly over: Mm } | null;
}

/** A hollow cover round every post: boards, vinyl or composite. It carries nothing; the section of the posts is the wood inside it. */
export interface Sleeve {
  readonly material: "wood" | "vinyl" | "composite";
  /** Outside. */
  readonly along: Mm;
  readonly across: Mm;
  readonly wall: Mm;
  readonly name: string;
  /** So much wider than the washer is the hole through which nut or collar bears on the wood inside. */
  readonly washerClearance: Cited<Mm>;
  /** So much wider than the bore are the holes in the sleeve through which the cable goes. */
  readonly boreClearance: Cited<Mm>;
}

/** How all posts stand, and which of them are not like the others. */
export interface Standing {
  /** What sits in or on the posts where a bore might go. */
  readonly hardware: readonly Hardware[];
  /** From the edge of a bore, or of the washer at an end, to hardware. */
  readonly hardwareClearance: Cited<Mm>;
  /** Laminated posts have design values of their own, which stand in no table here. */
  readonly built: "solid" | "laminated" | "sleeved";
  /** null but for sleeved posts. */
  readonly sleeve: Sleeve | null;
  /** On the deck, or on the fascia: then the post goes on below the datum and bends there too. */
  readonly mount: "deck" | "fascia";
  /** Posts that are not like the others. */
  readonly asFound: readonly PostAsFound[];
}

/** How far one post may turn the cables, and what counts as a corner of a run. */
export interface CornerLimits {
  /** Largest turn of a corner of one post. */
  readonly onePostTurn_max: Cited<Radian>;
  /** Up to this turn such a post stands on the bisector and is bored from face to opposite face; above, from face to adjacent face. */
  readonly straightBoreTurn_max: Cited<Radian>;
  /** A turn up to this counts among the corners of a run by its share of a right angle. */
  readonly smallTurn_max: Cited<Radian>;
  /** Wood left between two bores that cross at two heights in one corner post. */
  readonly betweenBores_min: Cited<Mm>;
}
