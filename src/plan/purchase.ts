// What is bought and cut, and with which tools? The part of the Plan that goes to the shop.
import type { Cents, Mm, Radian } from "../units/quantity.ts";

export type OrderGroup = "cable" | "fittings" | "bushings and washers" | "care" | "lumber and tube";

export interface OrderLine {
  readonly group: OrderGroup;
  readonly item: string;
  readonly size: string;
  readonly net: number;
  readonly spare: number;
  readonly quantity: number;
  readonly unit: "piece" | "spool" | "length" | "bottle" | "pair";
  /** Length of one piece where that is what is bought. */
  readonly pieceLength: Mm | null;
  readonly price_cents: Cents | null;
  readonly note: string;
}

export interface CutPiece {
  readonly mark: string;
  readonly use: string;
  readonly sectionName: string;
  readonly material: string;
  /** From long point to long point. */
  readonly length: Mm;
  /** Off square at its ends, as its use says; 0 for a square cut. */
  readonly cutAngle: Radian;
  readonly count: number;
}

export interface CutBar {
  readonly sectionName: string;
  readonly stockLength: Mm;
  readonly pieces: readonly { readonly mark: string; readonly length: Mm }[];
  /** Left over after pieces, kerfs and end trims. */
  readonly offcut: Mm;
}

export interface CutPlan {
  readonly sectionName: string;
  readonly bars: readonly CutBar[];
  readonly bought: Mm;
  readonly used: Mm;
  /** No cutting plan buys less than this. */
  readonly bought_bound: Mm;
  readonly proven: boolean;
}

export interface ToolLine {
  readonly step: string;
  readonly item: string;
  readonly size: string;
  readonly source: "have" | "rent" | "buy";
  readonly note: string;
}

/** A row of the tool list and of the drilling plan: how many holes of one size through one thickness. */
export interface BitUse {
  readonly diameter: Mm;
  readonly deepest: Mm;
  /** Deepest hole plus what the chuck and the start need. */
  readonly bitLength_min: Mm;
  readonly holes: number;
  readonly use: string;
}
