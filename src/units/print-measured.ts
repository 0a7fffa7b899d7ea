// How does what somebody measures, weighs or counts by look on paper?
import { decimal, decimalText, GRAVITY_mPerS2, POUND_N, significant } from "./print.ts";
import type { Celsius, Newton } from "./quantity.ts";

/** A reading of a gauge as somebody wrote it down, the number alone: 349.6 lbf -> `349.6` */
export const reading = (value: Newton, units: "inch" | "mm"): string =>
  decimal(units === "inch" ? value / POUND_N : value, { decimals: 1 });

/** What a weight shows on a scale, which reads a mass: 44.48 -> `10 lb` or `4.54 kg`. */
export const onScale = (weight: Newton, units: "inch" | "mm"): string =>
  units === "inch" ? `${decimalText(weight / POUND_N, 1, "nearest")} lb` : `${significant(weight / GRAVITY_mPerS2, "nearest")} kg`;

/** From one temperature to another, as a table of temperatures goes on: 7.5 -> `13.5 deg F`, or `7.5 deg C`. */
export const temperatureStep = (value: Celsius, units: "inch" | "mm"): string =>
  units === "inch" ? `${decimalText(value * 1.8, 1, "nearest")} deg F` : `${decimalText(value, 1, "nearest")} deg C`;
