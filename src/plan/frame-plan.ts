// How does the frame answer to its cables, does it hold, and between which tensions may the cables stand? Types of the Plan.
import type { Cited } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import type { Verdict } from "./plan.ts";

/** A number that went into a check, ready to be put into its formula. */
export interface CheckPart {
  readonly name: string;
  readonly value: number;
  readonly unit: "MPa" | "N" | "N/mm" | "N mm" | "mm" | "mm2" | "mm3" | "1";
}

/** One check of the frame with all that led to it. */
export interface FrameCheck {
  /** post-bending-P1 */
  readonly id: string;
  readonly name: string;
  /** The member: P1, top rail of side A. */
  readonly member: string;
  /** Above the datum; null where the check is of no one place. */
  readonly height: Mm | null;
  /** Loads that act at once. */
  readonly loads: string;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: CheckPart["unit"];
  /** Above 1 fails. */
  readonly ratio: number;
  /** In symbols: fb = M / S <= Fb'. */
  readonly formula: string;
  readonly parts: readonly CheckPart[];
  /** Reference value and factors of the capacity. */
  readonly factors: readonly (Cited<number> & { readonly name: string })[];
  readonly source: SourceId;
  readonly sourceWhere: string;
  readonly verdict: Verdict;
  readonly advice: string;
}

/** A change that makes the frame hold, found by computing the guard again with it. */
export interface Remedy {
  /** What to change, in words: "posts of 6x6 instead of 4x4". */
  readonly change: string;
  /** Highest ratio of the checks that failed before, with the change. */
  readonly ratio: number;
  /** Of each kind of check that failed before, its highest ratio with the change: "post-cables". */
  readonly checks: readonly { readonly kind: string; readonly ratio: number }[];
  /** Key and value for the job file: "posts: size: 6x6". */
  readonly write: string;
}

/** How one post of a side stands when all cables are at their targets. */
export interface PostAnswer {
  readonly postId: string;
  /** Largest movement along the side of the heights of the courses and the rail, towards greater stations positive, and its height. */
  readonly movement: Mm;
  readonly height: Mm;
  readonly top: Mm;
  /** Moment at the base along the side [N mm], force that it hands down. */
  readonly baseMoment_Nmm: number;
  readonly baseShear: Newton;
  /**
   * What it stands on under the cables alone, all at the top of their bands on the day that pulls hardest; negative where they lift it, as
   * at the foot of a stair.
   */
  readonly baseThrust: Newton;
}

export interface SideAnswer {
  readonly sideId: string;
  readonly posts: readonly PostAnswer[];
  /** Greatest compression of the rails, all cables at the top of their bands on the day that pulls hardest. */
  readonly topRailThrust: Newton;
  readonly bottomRailThrust: Newton;
}

/** What bounds the tension from below or from above. */
export interface Bound {
  /** Strand in the passes, strand on the hardest day, movement of posts, washer on wood, bend on wood or bushing, stress in the frame. */
  readonly kind: "passes" | "season" | "movement" | "washer" | "bend" | "face" | "frame";
  readonly name: string;
  readonly tension: Newton;
  readonly source: SourceId;
  readonly where: string;
}

/** Between what the criterion needs and what everything allows: readings at the nut. */
export interface TensionWindow {
  readonly runId: string;
  /** Parts of the least reading, in their order: criterion at the worst span, friction on the way to it, band, weather and settling. */
  readonly needs: readonly { readonly name: string; readonly tension: Newton }[];
  readonly low: Newton;
  readonly allows: readonly Bound[];
  readonly high: Newton;
  readonly target: Newton;
  /** With the least and the greatest stiffness of the strand the settled target would be so. */
  readonly targetBand: { readonly low: Newton; readonly high: Newton };
}

/** Stiffness of a kind of member, adjusted for moisture and incising where it is wood. */
export interface MemberPlan {
  readonly name: string;
  readonly modulus: Cited<Megapascal>;
  /** For buckling; null where there are no design values. */
  readonly modulus_min: Cited<Megapascal> | null;
}

export interface TrialPull {
  readonly pull: Newton;
  readonly height: Mm;
  readonly movement: Mm;
}

export interface FramePlan {
  readonly posts: MemberPlan & { readonly base: Cited<number | "fixed"> };
  readonly topRail: MemberPlan;
  /** null where there are none. */
  readonly spacers: MemberPlan | null;
  /** What a lone post does when it is pulled along its side: to be compared on site. */
  readonly trial: TrialPull;
  readonly sides: readonly SideAnswer[];
  readonly movement_max: Cited<Mm>;
  readonly checks: readonly FrameCheck[];
  /** The cheapest change that makes the frame hold; null where nothing fails or nothing that was tried helps. */
  readonly remedy: Remedy | null;
  readonly windows: readonly TensionWindow[];
}
