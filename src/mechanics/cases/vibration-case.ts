// At which pitch does a span sound, or how tight is it, asked and answered in the words of a reference file?
import type { Mm, Newton } from "../../units/quantity.ts";
import { pitch, pitchStiff, tensionFromPitch, tensionFromPitchStiff } from "../pitch.ts";

interface StringInput {
  readonly span: { readonly mm: Mm };
  readonly mass_per_length: { readonly "kg/m": number };
  readonly EI: { readonly "N.mm^2": number };
  readonly ends: "pinned" | "clamped";
}

export type VibrationCaseInput = StringInput &
  ({ readonly T: { readonly N: Newton } } | { readonly mode: number; readonly frequency: { readonly Hz: number } });

type VibrationCaseOutput =
  | { readonly f1: { readonly Hz: number }; readonly f2: { readonly Hz: number }; readonly f1_string_formula: { readonly Hz: number } }
  | { readonly T: { readonly N: Newton }; readonly T_string_formula: { readonly N: Newton } };

/**
 * Family 6, the pitch of a span with bending stiffness, or its tension from a heard mode.
 *
 * @param input - a case's `in` as it stands in its file; its SI keys are read [mm, kg/m, N mm2, N, Hz]
 * @returns first and second mode and the plain string's [Hz], or the tension and the plain string's [N], keyed as the case's `out`
 * @throws RangeError as pitchStiff does
 * Source: reference-vibration, as fed by its notes
 */
export function solveVibrationCase(input: VibrationCaseInput): VibrationCaseOutput {
  const string = {
    span: input.span.mm,
    mass_kgPerM: input.mass_per_length["kg/m"],
    bendingStiffness_Nmm2: input.EI["N.mm^2"],
    ends: input.ends,
  };
  if ("T" in input) {
    const strung = { ...string, tension: input.T.N };
    return {
      f1: { Hz: pitchStiff(strung) },
      f2: { Hz: pitchStiff({ ...strung, mode: 2 }) },
      f1_string_formula: { Hz: pitch(strung) },
    };
  }
  const heard = { ...string, mode: input.mode, pitch_Hz: input.frequency.Hz };
  return { T: { N: tensionFromPitchStiff(heard) }, T_string_formula: { N: tensionFromPitch(heard) } };
}
