// What do solutions made outside this program give for the same cable? Cases with their own tolerances.
// Made with numpy and scipy and, independently, with CalculiX 2.20 or a second formulation; the two ways agree to 1e-6 or better where
// they model the same thing. Quantities carry their unit; `meta.how_to_feed` in the file says what is left out of the model.
import { readFileSync } from "node:fs";
import { expect } from "vitest";

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

interface ReferenceFile {
  readonly family2_lateral_load: readonly LateralCase[];
  readonly family3_sphere: readonly (SphereCase | SphereInverseCase)[];
  readonly family4_capstan: readonly CapstanCase[];
  readonly family6_vibration: readonly (PitchCase | HeardCase)[];
}

const file: ReferenceFile = JSON.parse(readFileSync(new URL("reference-cases.json", import.meta.url), "utf8"));

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
