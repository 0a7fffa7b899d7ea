// What does a job say of its wood, its post bases, its weather and of what was measured on it? Types of the Job.
import type { Cited } from "../sources/cited.ts";
import type { WoodGrade, WoodSpecies } from "../tables/timber-strength.ts";
import type { Celsius, Mm, Newton } from "../units/quantity.ts";

/** What the strength and stiffness of a piece of lumber are read from. */
export interface Wood {
  readonly species: WoodSpecies;
  readonly grade: WoodGrade;
  /** Cut by knives for its preservative. */
  readonly incised: boolean;
}

/** How a post stands on the structure below it. */
export type PostBase =
  | { readonly kind: "fixed" }
  /** Rotational stiffness of its fastening [N mm/rad]. */
  | { readonly kind: "spring"; readonly stiffness_NmmPerRad: number }
  /** A pull at a height moved the post there by so much: its own bending and the turn of its base together. */
  | { readonly kind: "measured"; readonly pull: Newton; readonly height: Mm; readonly movement: Mm };

/** What the feet of the posts stand on. */
export type FloorMaterial = "wood" | "concrete" | "steel" | "stainless" | "aluminium";

/** Warmth and moisture between which the guard stands. */
export interface Site {
  /** At which the design tension holds. */
  readonly reference: Cited<Celsius>;
  readonly coldest: Cited<Celsius>;
  readonly warmest: Cited<Celsius>;
  /** Moisture of the posts when the cables are fitted, and after they have dried [%]. */
  readonly moistureAtFitting_percent: Cited<number>;
  readonly moistureInService_percent: Cited<number>;
  /** Wood stays wet for long: outdoors without a roof. */
  readonly wet: Cited<boolean>;
  /** null: taken to grow with warmth as the posts do. */
  readonly floor: Cited<FloorMaterial> | null;
  /** From the fitting to the next visit. */
  readonly nextVisit_months: Cited<number>;
}

/** What was measured on the first cable that was tightened, to replace the strand's stiffness. */
export interface TurnsMeasured {
  /** R1-05: run and course; every other cable was slack. */
  readonly cable: string;
  readonly turns: number;
  readonly from: GaugeOrPitch;
  readonly to: GaugeOrPitch;
}

/** A tension as it was read: by a gauge, or by the pitch of a plucked span. */
export type GaugeOrPitch =
  | { readonly kind: "gauge"; readonly force: Newton }
  | { readonly kind: "pitch"; readonly pitch_Hz: number; readonly span: Mm };

export interface Calibration {
  readonly turns: TurnsMeasured | null;
}

/** A printer that does not keep the size: what the rulers of 150 mm on its pages measure. */
export interface Printer {
  readonly name: string;
  readonly across: Mm;
  readonly up: Mm;
}
