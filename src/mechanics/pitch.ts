// At what pitch does a plucked span sound, and what tension does a heard pitch tell?
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import { roundNearest } from "../units/round.ts";
import { risingRoot } from "./solve.ts";
import { bendingStiffness, type StrandConstruction } from "./strand.ts";

const MM_PER_M = 1000;

interface Strung {
  /** Free length between bearing points. */
  readonly span: Mm;
  readonly mass_kgPerM: number;
  /** 1 is the lowest; 1 when left out. */
  readonly mode?: number;
}

/** How a stiff strand ends: free to turn, or held straight. */
export type StringEnds = "pinned" | "clamped";

interface Stiff {
  readonly bendingStiffness_Nmm2: number;
  readonly ends: StringEnds;
}

/**
 * Pitch of a span without bending stiffness: f = (n / 2L) sqrt(T / m).
 *
 * @param string - free length L [mm], tension T [N], mass per length m [kg/m], mode n, 1 when left out [count]
 * @returns frequency of the mode [Hz]
 * @throws RangeError when length or mass is not positive or the tension is negative
 * Valid: ends held, no bending stiffness (see pitchStiff), sag far below the span
 * Source: Mersenne's law of the stretched string
 */
export function pitch({ span, tension, mass_kgPerM, mode = 1 }: Strung & { readonly tension: Newton }): number {
  refuse({ span, mass_kgPerM });
  if (!(tension >= 0)) throw new RangeError(`tension ${tension} N must not be negative`);
  return ((mode * MM_PER_M) / (2 * span)) * Math.sqrt(tension / mass_kgPerM);
}

/**
 * Tension of a span from the pitch it sounds when plucked: T = 4 m L^2 (f / n)^2.
 *
 * @param string - free length L [mm], frequency f of the mode [Hz], mass per length m [kg/m], mode n, 1 when left out [count]
 * @returns tension [N]
 * @throws RangeError when length or mass is not positive or the pitch is negative
 * Valid: ends held, no bending stiffness; a stiff strand holds less than this (see tensionFromPitchStiff)
 * Source: Mersenne's law of the stretched string
 */
export function tensionFromPitch({ span, pitch_Hz, mass_kgPerM, mode = 1 }: Strung & { readonly pitch_Hz: number }): Newton {
  refuse({ span, mass_kgPerM });
  if (!(pitch_Hz >= 0)) throw new RangeError(`pitch ${pitch_Hz} Hz must not be negative`);
  return 4 * mass_kgPerM * ((span / MM_PER_M) * (pitch_Hz / mode)) ** 2;
}

/**
 * Pitch of a span with bending stiffness. Pinned: f = (n / 2L) sqrt(T / m) sqrt(1 + n^2 pi^2 EI / (T L^2)). Clamped: the root
 * b between n pi and (n + 1) pi of 2 a b (1 / cosh a - cos b) + (a^2 - b^2) tanh a sin b = 0 with a^2 = b^2 + T L^2 / EI, and
 * f = (b / 2 pi L) sqrt((EI b^2 / L^2 + T) / m); for a great tension about (1 + 2/xi) times the string, xi = L sqrt(T / EI).
 *
 * @param string - free length L [mm], tension T [N], mass per length m [kg/m], bending stiffness EI [N mm2], ends [word], mode n, 1
 *   when left out [count]
 * @returns frequency of the mode [Hz]
 * @throws RangeError when length or mass is not positive, or tension or bending stiffness is negative
 * Valid: even mass and stiffness, no sag
 * Source: derived, Euler-Bernoulli beam under tension
 */
export function pitchStiff(string: Strung & Stiff & { readonly tension: Newton }): number {
  const { span, tension, mass_kgPerM, bendingStiffness_Nmm2, ends, mode = 1 } = string;
  if (!(bendingStiffness_Nmm2 >= 0)) throw new RangeError(`bending stiffness ${bendingStiffness_Nmm2} N mm2 must not be negative`);
  const plain = pitch(string);
  if (bendingStiffness_Nmm2 === 0) return plain;
  const xi2 = (tension * span ** 2) / bendingStiffness_Nmm2;
  const across = ends === "pinned" ? mode * Math.PI : clampedRoot(xi2, mode);
  const pull = (bendingStiffness_Nmm2 * across ** 2) / span ** 2 + tension;
  return ((across * MM_PER_M) / (2 * Math.PI * span)) * Math.sqrt(pull / mass_kgPerM);
}

/** The wave number of the mode times the span; the equation changes its sign once between n pi and (n + 1) pi. */
function clampedRoot(xi2: number, mode: number): number {
  const sign = mode % 2 === 1 ? -1 : 1;
  const equation = (b: number): number => {
    const a = Math.sqrt(b * b + xi2);
    // Divided by a^2, so that it stays finite for an endlessly limp string.
    const q = b / a;
    return sign * (2 * q * (1 / Math.cosh(a) - Math.cos(b)) + (1 - q * q) * Math.tanh(a) * Math.sin(b));
  };
  return risingRoot({ of: equation, low: mode * Math.PI, high: (mode + 1) * Math.PI });
}

/**
 * Tension of a stiff span from its pitch: the root T of pitchStiff(T) = f.
 *
 * @param string - free length [mm], frequency of the mode [Hz], mass per length [kg/m], bending stiffness [N mm2], ends [word], mode, 1
 *   when left out [count]
 * @returns tension; 0 when the span without tension sounds as high or higher [N]
 * @throws RangeError when length or mass is not positive, or pitch or bending stiffness is negative
 * Valid: as pitchStiff
 * Source: derived, Euler-Bernoulli beam under tension
 */
export function tensionFromPitchStiff({ pitch_Hz, ...string }: Strung & Stiff & { readonly pitch_Hz: number }): Newton {
  const high = tensionFromPitch({ ...string, pitch_Hz });
  const above = (tension: Newton): number => pitchStiff({ ...string, tension }) - pitch_Hz;
  return above(0) >= 0 ? 0 : risingRoot({ of: above, low: 0, high: high });
}

/**
 * Bounds of the pitch of a strand whose wires and ends nobody knows exactly: from loose wires on pinned ends to a solid bar with
 * clamped ends; nominal is the geometric mean of the two, the middle of what is not known.
 *
 * @param string - free length [mm], tension [N], mass per length [kg/m], construction [word], outside diameter [mm], modulus on the
 *   metallic area [MPa]
 * @returns lowest, middle and highest pitch of the first mode [Hz]
 * @throws RangeError when a length, mass or diameter is not positive or the tension is negative
 * Valid: as pitchStiff
 * Source: derived, bounds of the bending stiffness of a strand
 */
export function pitchBand(
  string: Omit<Strung, "mode"> & {
    readonly tension: Newton;
    readonly construction: StrandConstruction;
    readonly diameter: Mm;
    readonly modulus: Megapascal;
  },
): { readonly low: number; readonly nominal: number; readonly high: number } {
  const { span, tension, mass_kgPerM } = string;
  const { loose_Nmm2, solid_Nmm2 } = bendingStiffness(string);
  const low = pitchStiff({ span, tension, mass_kgPerM, bendingStiffness_Nmm2: loose_Nmm2, ends: "pinned" });
  const high = pitchStiff({ span, tension, mass_kgPerM, bendingStiffness_Nmm2: solid_Nmm2, ends: "clamped" });
  return { low, nominal: Math.sqrt(low * high), high };
}

const NOTES = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"] as const;
/** Concert pitch: A4, the ninth half-tone above C4, sounds at 440 Hz. */
const A4_Hz = 440;
const A4_INDEX = 9 + 12 * 4;

/**
 * Nearest note of the twelve-tone equal scale: n = 12 log2(f / 440 Hz), 100 cents to a half-tone.
 *
 * @param pitch_Hz - frequency [Hz], > 0
 * @returns name with its octave (A4 is 440 Hz, C4 the C below it) [word] and how far the pitch lies above it, -50 to 50 [cents]
 * @throws RangeError when the pitch is not positive
 * Source: ISO 16 (concert pitch), from memory
 */
export function nearestNote(pitch_Hz: number): { readonly name: string; readonly cents: number } {
  if (!(pitch_Hz > 0 && Number.isFinite(pitch_Hz))) throw new RangeError(`pitch ${pitch_Hz} Hz must be positive`);
  const index = A4_INDEX + 12 * Math.log2(pitch_Hz / A4_Hz);
  const nearest = roundNearest(index, 1);
  const step = ((nearest % 12) + 12) % 12;
  return { name: `${NOTES[step]}${(nearest - step) / 12}`, cents: 100 * (index - nearest) };
}

function refuse({ span, mass_kgPerM }: Strung): void {
  if (!(span > 0)) throw new RangeError(`span ${span} mm must be positive`);
  if (!(mass_kgPerM > 0)) throw new RangeError(`mass ${mass_kgPerM} kg/m must be positive`);
}
