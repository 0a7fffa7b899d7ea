// How close must a computed value be to a published one? Half a unit of the last digit that the source prints.
import { expect } from "vitest";

interface Wider {
  readonly within: number;
  readonly because: string;
}

/** Half a unit of the last printed digit: "91.49" -> 0.005, "98e3" -> 500, "153,552,935" -> 0.5. */
export function halfLastDigit(printed: string): number {
  const [mantissa = "", exponent = "0"] = printed.replaceAll(",", "").toLowerCase().split("e");
  const decimals = mantissa.includes(".") ? mantissa.length - mantissa.indexOf(".") - 1 : 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** Softly expects `computed` to agree with the value as the source prints it. */
export function expectAsPrinted(computed: number, printed: string, wider?: Wider): void {
  const value = Number(printed.replaceAll(",", ""));
  const tolerance = wider?.within ?? halfLastDigit(printed);
  // A hair for the binary form of the printed number itself.
  const slack = tolerance * 1e-9 + Math.abs(value) * Number.EPSILON;
  expect
    .soft(Math.abs(computed - value), `${computed} against ${printed} as printed${wider ? ` (${wider.because})` : ""}`)
    .toBeLessThanOrEqual(tolerance + slack);
}
