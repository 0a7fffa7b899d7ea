// How does a figure that its source prints in inches, feet or pounds become an inside quantity? Once, and exactly.
import type { Celsius, Megapascal, Mm, Newton } from "../units/quantity.ts";

const FORCE_N_PER_LBF = 4.4482216152605;
const MM_PER_FOOT = 304.8;
const MM_PER_INCH = 25.4;

/**
 * Length of a figure printed in inches, by whole 64ths with a single rounding: mm = 64 in * 254 / 640.
 *
 * @param figure_in - as printed [in]
 * @returns the same length [mm]
 * @throws never
 * Source: unit-constants, inch
 */
export const inches = (figure_in: number): Mm => (figure_in * 64 * 254) / 640;

/**
 * Length of a figure printed in feet: mm = 12 * 64 ft * 254 / 640.
 *
 * @param figure_ft - as printed [ft]
 * @returns the same length [mm]
 * @throws never
 * Source: unit-constants, foot
 */
export const feet = (figure_ft: number): Mm => inches(figure_ft * 12);

/**
 * Force of a figure printed in pounds: N = lbf * 4.4482216152605.
 *
 * @param figure_lbf - as printed [lbf]
 * @returns the same force [N]
 * @throws never
 * Source: unit-constants, lbf
 */
export const poundsForce = (figure_lbf: number): Newton => figure_lbf * FORCE_N_PER_LBF;

/**
 * Line load of a figure printed in pounds per foot.
 *
 * @param figure_lbfPerFt - as printed [lbf/ft]
 * @returns the same load [N/mm]
 * @throws never
 * Source: unit-constants, lbf and foot
 */
export const poundsPerFoot = (figure_lbfPerFt: number): number => (figure_lbfPerFt * FORCE_N_PER_LBF) / MM_PER_FOOT;

/**
 * Stress of a figure printed in thousands of pounds per square inch.
 *
 * @param figure_ksi - as printed [ksi]
 * @returns the same stress [MPa]
 * @throws never
 * Source: unit-constants, psi
 */
export const ksi = (figure_ksi: number): Megapascal => (figure_ksi * 1000 * FORCE_N_PER_LBF) / (MM_PER_INCH * MM_PER_INCH);

/**
 * Temperature of a figure printed in degrees Fahrenheit: degC = (degF - 32) * 5 / 9.
 *
 * @param figure_F - as printed [degF]
 * @returns the same temperature [degC]
 * @throws never
 * Source: derived, water freezes at 32 degF and boils at 212 degF
 */
export const fahrenheit = (figure_F: number): Celsius => ((figure_F - 32) * 5) / 9;
