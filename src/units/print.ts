// How does a quantity look on paper? Plain ASCII, rounded once from the exact value, in a stated direction.
import type { Cents, Mm, Newton, Radian } from "./quantity.ts";
import { countSteps, type Rounding, roundBy } from "./round.ts";

export interface PrintOptions {
  /** Default: nearest. What is bought goes up, what must fit goes down. */
  readonly rounding?: Rounding;
}

export interface InchOptions extends PrintOptions {
  /** Smallest fraction of an inch, one of 1/2 ... 1/64; default 1/16. */
  readonly step?: number;
}

export interface DecimalOptions extends PrintOptions {
  readonly decimals?: number;
}

export interface LengthOptions extends InchOptions, DecimalOptions {
  readonly units: "inch" | "mm";
  /** tape: 32-7/16"; feet: 12'-6 1/2". Default: tape. */
  readonly style?: "tape" | "feet";
  /** The other system in parentheses; default true. */
  readonly both?: boolean;
}

const INCH_mm = 25.4;
const POUND_N = 4.4482216152605;

/** 824 -> `32-7/16"` */
export function inches(value: Mm, options: InchOptions = {}): string {
  const { sign, whole, fraction } = sixteenths(value, options);
  return `${sign}${joined(whole, fraction, "-")}"`;
}

/** 3822.7 -> `12'-6 1/2"`; below one foot inches alone. */
export function feetInches(value: Mm, options: InchOptions = {}): string {
  const { sign, whole, fraction } = sixteenths(value, options);
  const feet = Math.floor(whole / 12);
  if (feet === 0) return `${sign}${joined(whole, fraction, "-")}"`;
  const rest = whole - 12 * feet;
  return `${sign}${feet}'-${fraction === "" ? rest : `${rest} ${fraction}`}"`;
}

/** 836.2 -> `836 mm` */
export const millimetres = (value: Mm, options: DecimalOptions = {}): string => `${decimal(value, options)} mm`;

/** 824 -> `32-7/16" (824 mm)`, or `824 mm (32-7/16")` where mm come first. */
export function length(value: Mm, options: LengthOptions): string {
  const imperial = options.style === "feet" ? feetInches(value, options) : inches(value, options);
  const metric = millimetres(value, options);
  const [first, second] = options.units === "inch" ? [imperial, metric] : [metric, imperial];
  return options.both === false ? first : `${first} (${second})`;
}

/** 1334.47 -> `300 lbf (1.33 kN)`, or `1330 N (300 lbf)` where newtons come first. */
export function force(value: Newton, units: "inch" | "mm", { both = true, rounding = "nearest" }: ForceOptions = {}): string {
  const pounds = value / POUND_N;
  const imperial = `${decimal(pounds, { rounding, decimals: Math.abs(pounds) < 10 ? 1 : 0 })} lbf`;
  const kiloFrom = units === "inch" ? 1000 : 10_000;
  const metric = Math.abs(value) < kiloFrom ? `${significant(value, rounding)} N` : `${significant(value / 1000, rounding)} kN`;
  const [first, second] = units === "inch" ? [imperial, metric] : [metric, imperial];
  return both ? `${first} (${second})` : first;
}

export interface ForceOptions extends PrintOptions {
  /** The other system in parentheses; default true. */
  readonly both?: boolean;
}

/** 0.7854 -> `45 deg` */
export const angleDegrees = (value: Radian, options: DecimalOptions = {}): string =>
  `${decimal((value * 180) / Math.PI, { decimals: 1, ...options })} deg`;

/** 53.6 -> `53.6 Hz` */
export const hertz = (value_Hz: number, options: DecimalOptions = {}): string => `${decimal(value_Hz, { decimals: 1, ...options })} Hz`;

/** 0.3 -> `30 %` */
export const percent = (share: number, options: DecimalOptions = {}): string => `${decimal(share * 100, options)} %`;

/** 1250 -> `12.50`: the job's own money, so no sign of any country. */
export const money = (cents: Cents): string => (roundBy(cents, 1, "nearest") / 100).toFixed(2);

/** 11 -> `11` */
export const count = (value: number, options: PrintOptions = {}): string => decimal(value, options);

/** A plain decimal number without trailing zeros, exponent or minus zero. */
export function decimal(value: number, { decimals = 0, rounding = "nearest" }: DecimalOptions = {}): string {
  const text = roundBy(value, 10 ** -decimals, rounding).toFixed(decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** Three significant figures: a force is not known any better. */
function significant(value: number, rounding: Rounding): string {
  const size = Math.abs(value);
  if (size === 0) return "0";
  // Thousandths are the end: a smaller force is none.
  const places = Math.min(3, 2 - Math.floor(Math.log10(size)));
  const step = 10 ** -places;
  return decimal(roundBy(value, step, rounding), { decimals: Math.max(0, places) });
}

interface InchParts {
  readonly sign: string;
  readonly whole: number;
  /** "7/16", or nothing. */
  readonly fraction: string;
  readonly numerator: number;
  readonly denominator: number;
}

function sixteenths(value: Mm, { step = 1 / 16, rounding = "nearest" }: InchOptions): InchParts {
  const perInch = 1 / step;
  if (![1, 2, 4, 8, 16, 32, 64].includes(perInch)) throw new RangeError(`a tape has no marks at ${step} in`);
  const steps = countSteps(value / INCH_mm, { step, rounding });
  const size = Math.abs(steps);
  const whole = Math.floor(size / perInch);
  let [numerator, denominator] = [size - whole * perInch, perInch];
  while (numerator !== 0 && numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  const fraction = numerator === 0 ? "" : `${numerator}/${denominator}`;
  return { sign: steps < 0 ? "-" : "", whole, fraction, numerator, denominator };
}

function joined(whole: number, fraction: string, between: string): string {
  if (fraction === "") return `${whole}`;
  return whole === 0 ? fraction : `${whole}${between}${fraction}`;
}

/** 131.76 -> `five and three sixteenths inches`: what a screen reader says of a drawing. */
export function spokenLength(value: Mm, { units, style = "tape", ...options }: LengthOptions): string {
  if (units === "mm") return `${decimal(value, options)} millimetres`;
  const { sign, whole, numerator, denominator } = sixteenths(value, options);
  const feet = style === "feet" ? Math.floor(whole / 12) : 0;
  const rest = whole - 12 * feet;
  const parts = sign === "" ? [] : ["minus"];
  if (feet > 0) parts.push(spoken(feet), feet === 1 ? "foot" : "feet");
  if (rest > 0 || numerator > 0 || feet === 0) parts.push(spokenInches(rest, numerator, denominator));
  return parts.join(" ");
}

const partNames: Readonly<Record<number, string>> = {
  2: "half",
  4: "quarter",
  8: "eighth",
  16: "sixteenth",
  32: "thirty-second",
  64: "sixty-fourth",
};

function spokenInches(whole: number, numerator: number, denominator: number): string {
  if (numerator === 0) return `${spoken(whole)} ${whole === 1 ? "inch" : "inches"}`;
  const part = `${spoken(numerator)} ${partNames[denominator] ?? ""}${numerator === 1 ? "" : "s"}`;
  return whole === 0 ? `${part} ${numerator === 1 ? "inch" : "of an inch"}` : `${spoken(whole)} and ${part} inches`;
}

const small =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/** Words up to 999; digits above, which screen readers say well. */
function spoken(value: number): string {
  if (value < 20) return small[value] ?? "";
  if (value >= 1000) return `${value}`;
  const hundreds = Math.floor(value / 100);
  const rest = value % 100;
  const parts = hundreds > 0 ? [`${small[hundreds]} hundred`] : [];
  if (rest >= 20) parts.push(rest % 10 === 0 ? (tens[rest / 10] ?? "") : `${tens[Math.floor(rest / 10)]}-${small[rest % 10]}`);
  else if (rest > 0) parts.push(small[rest] ?? "");
  return parts.join(" ");
}
