// What do solutions made outside this program give for the same cable? Cases with their own tolerances.
// Made with numpy and scipy and, independently, with CalculiX 2.20 or a second formulation; the two ways agree to 1e-6 or better where
// they model the same thing. Quantities carry their unit; `meta.how_to_feed` in the file says what is left out of the model.
import { readFileSync } from "node:fs";
import { expect } from "vitest";
import type { FrameCaseInput, FrameCaseOutput } from "../../src/mechanics/cases/frame-case.ts";

interface Length {
  readonly mm: number;
}
interface Force {
  readonly N: number;
}
interface Frequency {
  readonly Hz: number;
}

interface Case<In, Out> {
  readonly id: string;
  readonly in: In;
  readonly out: Out;
  readonly tolerance: Readonly<Record<string, string>>;
}

export type LateralCase = Case<
  {
    readonly span: Length;
    readonly spans_m: number;
    readonly supports: "slide" | "clamped";
    readonly run: Length;
    readonly T0: Force;
    readonly P: Force;
    readonly EA: Force;
  },
  { readonly deflection: Length; readonly tension: Force; readonly tension_rise: Force; readonly small_load_formula_over_true: number }
>;

interface SphereIn {
  readonly spacing_centres: Length;
  readonly cable_d: Length;
  readonly span: Length;
  readonly position_fraction_of_span: number;
  readonly EA: Force;
  readonly run_length_sharing_tension: Length;
  readonly sphere_D: Length;
}

export type SphereCase = Case<
  SphereIn & { readonly T0: Force },
  {
    readonly peak_push_force: Force;
    readonly peak_force_point_contact: Force;
    readonly peak_force_linear_formula: Force;
    readonly sphere_centre_short_of_cable_plane_at_peak: Length;
    readonly cable_tension_at_peak: Force;
    readonly cable_tension_when_centre_is_in_plane: Force;
    readonly work_to_pass: { readonly "N.mm": number };
  }
>;

export type SphereInverseCase = Case<SphereIn & { readonly required_peak_force: Force }, { readonly T0_needed: Force }>;

export interface PulledRun {
  readonly segment_tension: { readonly N: readonly number[] };
  readonly elongation_total: Length;
  /** Numbers of the segments that tie for the least, from 1. */
  readonly least_segment: readonly number[];
  readonly least_tension: Force;
  readonly least_over_pull: number;
}

export type CapstanCase = Case<
  {
    readonly run: Length;
    readonly bends_from_A: readonly { readonly at: Length; readonly angle_deg: number }[];
    readonly mu: number;
    readonly pull: Force;
    readonly EA: Force;
  },
  {
    readonly pulled_from_A: PulledRun;
    readonly pulled_from_B: PulledRun;
    readonly pulled_from_A_then_B: PulledRun & {
      readonly drawn_in_at_A: Length;
      readonly drawn_in_at_B: Length;
      readonly segments_raised_by_second_pull: readonly number[];
    };
  }
>;

interface StringIn {
  readonly span: Length;
  readonly mass_per_length: { readonly "kg/m": number };
  readonly EI: { readonly "N.mm^2": number };
  readonly ends: "pinned" | "clamped";
}

export type PitchCase = Case<
  StringIn & { readonly T: Force },
  { readonly f1: Frequency; readonly f2: Frequency; readonly f1_string_formula: Frequency }
>;

export type HeardCase = Case<
  StringIn & { readonly mode: number; readonly frequency: Frequency },
  { readonly T: Force; readonly T_string_formula: Force }
>;

interface Forces {
  readonly N: readonly number[];
}

export interface OrderOutput {
  /** Cables from 1, the lowest. */
  readonly order: readonly number[];
  readonly tension_after_one_pass: Forces;
  readonly slack_after_one_pass: readonly number[];
  readonly first_cable_left_with: number;
  readonly least_over_target: number;
  readonly mean_over_target: number;
  readonly passes_to_5pct: number;
  readonly passes_to_10pct: number;
  readonly least_over_target_by_pass: readonly number[];
  readonly one_pass_step_targets_by_cable: Forces;
  readonly largest_step_target_over_target: number;
  readonly second_pass_step_targets_by_cable: Forces;
  readonly largest_second_pass_target_over_target: number;
}

export type FrameCase = Case<
  FrameCaseInput,
  FrameCaseOutput & {
    readonly orders: Readonly<Record<string, OrderOutput>>;
    readonly model_sensitivity: {
      readonly shear_flexible_posts_change_one_pass_tension_over_target: number;
      readonly E_over_G: number;
      readonly leaving_out_intermediate_posts_changes_one_pass_tension_over_target?: number;
      readonly leaving_out_intermediate_posts_changes_F_over_max_F?: number;
      readonly leaving_out_intermediate_posts_changes_base_moment?: number;
    };
  }
>;

interface PerKelvin {
  readonly "1/K": number;
}

interface ClimateIn {
  readonly cable_alpha: PerKelvin;
  readonly dT: { readonly K: number };
  readonly post_shrinkage_each: Length;
  readonly share_of_shrinkage_moving_each_anchor: number;
}

interface ClimateOut {
  readonly anchor_closing_before_cables_react: { readonly mm: readonly number[] };
  readonly tension: Forces;
  readonly change: Forces;
  /** From 1, the lowest. */
  readonly slack_cables: readonly number[];
  readonly rigid_frame_change: Forces;
  readonly linear_minus_exact_over_T0: number;
}

/** One cable between anchors that give way by a stated flexibility. */
export type LoneClimateCase = Case<
  ClimateIn & {
    readonly L: Length;
    readonly T0: Force;
    readonly EA: Force;
    readonly frame_alpha: PerKelvin;
    readonly frame_closing_flexibility: { readonly "mm/N": number };
  },
  ClimateOut
>;

/** All cables of a frame that is stated as in the frame cases. */
export type FrameClimateCase = Case<
  ClimateIn & {
    readonly T0: Forces;
    readonly deck_alpha: PerKelvin;
    readonly rail_alpha: PerKelvin;
    readonly frame_inputs: FrameCaseInput;
  },
  ClimateOut
>;

interface ReferenceFile {
  readonly family1_frame_and_sequence: readonly FrameCase[];
  readonly family5_temperature_shrinkage: readonly (LoneClimateCase | FrameClimateCase)[];
  readonly family2_lateral_load: readonly LateralCase[];
  readonly family3_sphere: readonly (SphereCase | SphereInverseCase)[];
  readonly family4_capstan: readonly CapstanCase[];
  readonly family6_vibration: readonly (PitchCase | HeardCase)[];
}

const file: ReferenceFile = JSON.parse(readFileSync(new URL("reference-cases.json", import.meta.url), "utf8"));

export const frameCases = file.family1_frame_and_sequence;
export const loneClimateCases = file.family5_temperature_shrinkage.filter((one): one is LoneClimateCase => "L" in one.in);
export const frameClimateCases = file.family5_temperature_shrinkage.filter((one): one is FrameClimateCase => "frame_inputs" in one.in);
export const lateralCases = file.family2_lateral_load;
export const sphereCases = file.family3_sphere.filter((one): one is SphereCase => "T0" in one.in);
export const sphereInverseCases = file.family3_sphere.filter((one): one is SphereInverseCase => "required_peak_force" in one.in);
export const capstanCases = file.family4_capstan;
export const pitchCases = file.family6_vibration.filter((one): one is PitchCase => "T" in one.in);
export const heardCases = file.family6_vibration.filter((one): one is HeardCase => "frequency" in one.in);

/** The share that a tolerance like "0.2 %" or "0.5 % against ..." of a case allows. */
export function shareOf(one: { readonly id: string; readonly tolerance: Readonly<Record<string, string>> }, name: string): number {
  const printed = one.tolerance[name] ?? "";
  const share = /^([\d.]+) %/.exec(printed)?.[1];
  if (share === undefined) throw new RangeError(`${one.id} states no share for "${name}"`);
  return Number(share) / 100;
}

/** Softly expects two values to agree within a share of the reference. */
export function expectWithin(options: {
  readonly computed: number;
  readonly reference: number;
  readonly share: number;
  readonly what: string;
}): void {
  const { computed, reference, share, what } = options;
  expect.soft(Math.abs(computed - reference), `${what}: ${computed} against ${reference}`).toBeLessThanOrEqual(share * Math.abs(reference));
}
