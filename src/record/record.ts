// How does what was built compare with what was planned? Types: the record beside the plan, as plain data.
import type { Mm, Newton } from "../units/quantity.ts";
import type { AsBuilt } from "./as-built.ts";

interface Found {
  /** Of the bore or cable, or the upright where a gap is. */
  readonly mark: string;
  /** Place in the list of deviations where somebody accepted it, from 0; null where nobody did. */
  readonly deviation: number | null;
}

/** A bore that lies elsewhere by more than a step of the tape. */
export interface BoreDifference extends Found {
  readonly kind: "bore";
  /** On a slope, the face that it was measured on. */
  readonly face: "left" | "right" | null;
  readonly planned: Mm;
  readonly built: Mm;
}

/** Bores that leave a wider gap at an upright than any that is planned of its kind: between two cables, for which the tension was chosen, or beside a rail. */
export interface GapDifference extends Found {
  readonly kind: "gap";
  /** As the plan names them: "course 4", "top rail". */
  readonly below: string;
  readonly above: string;
  /** The widest clear gap that is planned on this side between two cables, or beside a rail the widest of all. */
  readonly planned: Mm;
  readonly built: Mm;
  /** Whether the sphere of the rules goes through before any cable moves. */
  readonly isOpen: boolean;
}

/** A reading outside of what the sheets allow: the limits are rounded as they are printed. */
export interface ReadingDifference extends Found {
  readonly kind: "last reading" | "proof";
  /** The post where it was read, or the bay. */
  readonly where: string;
  readonly low: Newton;
  readonly high: Newton;
  readonly built: Newton;
}

export type Difference = BoreDifference | GapDifference | ReadingDifference;

export interface Count {
  readonly written: number;
  readonly planned: number;
}

export interface Comparison {
  readonly asBuilt: AsBuilt;
  readonly differences: readonly Difference[];
  /** How much is written down of what the plan asks for. */
  readonly counts: { readonly bores: Count; readonly lastReadings: Count; readonly proofs: Count };
}
