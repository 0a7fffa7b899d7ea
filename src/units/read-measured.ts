// What did somebody measure beside lengths and forces? Warmth, pitch and the weight of a sample become inside units here.
import { commonSlip, quoted, type Reading, readDecimal, refuse, tidy } from "./notation.ts";
import type { Celsius, Kilogram } from "./quantity.ts";

const WARMTH_EXAMPLES = "68 F or 20 C";

/** `68 F`, `20 C`, `-10 deg C` -> degC */
export function readTemperature(text: string): Reading<Celsius> {
  const plain = tidy(text);
  if (plain === "") return refuse("there is nothing here", `write ${WARMTH_EXAMPLES}`);
  const match = /^(-?)([\d.]+)\s*(?:deg\.?\s*)?([CF])$/i.exec(plain);
  const decimal = readDecimal(match?.[2] ?? "");
  if (match === null || decimal === null) return refuse(`${quoted(text)} is not a temperature`, `write ${WARMTH_EXAMPLES}`);
  const value = ((match[1] === "-" ? -1 : 1) * decimal.digits) / decimal.scale;
  return { value: match[3]?.toUpperCase() === "F" ? ((value - 32) * 5) / 9 : value };
}

/** `47.5 Hz` -> Hz */
export function readPitch(text: string): Reading<number> {
  const plain = tidy(text);
  const slip = commonSlip(plain, "47.5 Hz");
  if (slip !== null) return slip;
  const match = /^([\d.]+)\s*Hz$/i.exec(plain);
  const decimal = readDecimal(match?.[1] ?? "");
  return match === null || decimal === null
    ? refuse(`${quoted(text)} is not a pitch`, "write it in hertz, such as 47.5 Hz")
    : { value: decimal.digits / decimal.scale };
}

const POUND_kg = 0.45359237;
const OUNCE_kg = POUND_kg / 16;
const kilogramsPer: Readonly<Record<string, Kilogram>> = { kg: 1, g: 0.001, lb: POUND_kg, lbs: POUND_kg, oz: OUNCE_kg };

/** `0.35 lb`, `5.6 oz`, `159 g` -> kg */
export function readWeight(text: string): Reading<Kilogram> {
  const plain = tidy(text);
  const slip = commonSlip(plain, "0.35 lb or 159 g");
  if (slip !== null) return slip;
  const match = /^([\d.]+)\s*([a-z]+)$/i.exec(plain);
  const decimal = readDecimal(match?.[1] ?? "");
  const unit = match?.[2]?.toLowerCase() ?? "";
  const each = Object.hasOwn(kilogramsPer, unit) ? kilogramsPer[unit] : undefined;
  return decimal === null || each === undefined
    ? refuse(`${quoted(text)} is not the weight of a sample`, "write it as 0.35 lb, 5.6 oz or 159 g")
    : { value: (decimal.digits * each) / decimal.scale };
}
