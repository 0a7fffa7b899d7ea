// How does a quantity look on paper? Plain ASCII, rounded once from the exact value, in a stated direction.
import type { Celsius, Cents, Megapascal, Mm, Newton, Radian } from "./quantity.ts";
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
export const POUND_N = 4.4482216152605;
/** Standard gravity, exact by definition. */
export const GRAVITY_mPerS2 = 9.80665;

/** 824 -> `32-7/16"` */
export function inches(value: Mm, options: InchOptions = {}): string {
  const { sign, whole, fraction } = inchParts(value, options);
  return `${sign}${joined(whole, fraction.text, "-")}"`;
}

/** 3822.7 -> `12'-6 1/2"`; below one foot inches alone. */
export function feetInches(value: Mm, options: InchOptions = {}): string {
  const { sign, whole, fraction } = inchParts(value, options);
  const feet = Math.floor(whole / 12);
  if (feet === 0) return `${sign}${joined(whole, fraction.text, "-")}"`;
  const rest = whole - 12 * feet;
  return `${sign}${feet}'-${fraction.numerator === 0 ? rest : `${rest} ${fraction.text}`}"`;
}

/** Bits and screws are sold in thirty-seconds of an inch, small ones in sixty-fourths: a size given in these is printed so. */
export const drillStep = (value: Mm): number => {
  const halves = (value / 25.4) * 64;
  const whole = Math.round(halves);
  return Math.abs(halves - whole) < 1e-6 && whole % 2 === 1 ? 1 / 64 : 1 / 32;
};

/** 836.2 -> `836 mm` */
export const millimetres = (value: Mm, options: DecimalOptions = {}): string => `${decimal(value, options)} mm`;

/** 824 -> `32-7/16" (824 mm)`, or `824 mm (32-7/16")` where mm come first. */
export function length(value: Mm, options: LengthOptions): string {
  const { units, both = true } = options;
  const first = lengthIn(units, value, options);
  return both ? `${first} (${lengthIn(units === "inch" ? "mm" : "inch", value, options)})` : first;
}

function lengthIn(units: "inch" | "mm", value: Mm, options: LengthOptions): string {
  if (units === "mm") return millimetres(value, options);
  return options.style === "feet" ? feetInches(value, options) : inches(value, options);
}

/** 1334.47 -> `300 lbf (1.33 kN)`, or `1330 N (300 lbf)` where newtons come first. */
export function force(value: Newton, units: "inch" | "mm", { both = true, rounding = "nearest" }: ForceOptions = {}): string {
  const [print, other] = units === "inch" ? ([poundsForce, newtonsBehind] as const) : ([newtonsFirst, poundsForce] as const);
  const first = print(value, rounding);
  if (!both) return first;
  // Printed as it is, it has no direction to round in: its other unit would differ from sheet to sheet.
  const isExact = print(value, "down") === print(value, "up");
  return `${first} (${other(value, isExact ? "nearest" : rounding)})`;
}

/** From here on a force is printed in kN: earlier where newtons stand in parentheses. */
const KILO_FROM_N = { inch: 1000, mm: 10_000 } as const;

function poundsForce(value: Newton, rounding: Rounding): string {
  const pounds = value / POUND_N;
  return `${decimalText(pounds, poundDecimals(pounds), rounding)} lbf`;
}

const newtonsFirst = (value: Newton, rounding: Rounding): string => newtons(value, rounding, KILO_FROM_N.mm);
const newtonsBehind = (value: Newton, rounding: Rounding): string => newtons(value, rounding, KILO_FROM_N.inch);

const poundDecimals = (pounds: number): number => (Math.abs(pounds) < 10 ? 1 : 0);

/** The force that stands on paper: 1017 N, rounded down, is read as 1010 N. */
export function forceAsPrinted(value: Newton, units: "inch" | "mm", rounding: Rounding): Newton {
  if (units === "mm") return toFigures(value, { rounding, figures: FORCE_FIGURES });
  const pounds = value / POUND_N;
  return roundBy(pounds, 10 ** -poundDecimals(pounds), rounding) * POUND_N;
}

const newtons = (value: Newton, rounding: Rounding, kiloFrom: Newton): string =>
  Math.abs(value) < kiloFrom ? `${significant(value, rounding)} N` : `${significant(value / 1000, rounding)} kN`;

export interface ForceOptions extends PrintOptions {
  /** The other system in parentheses; default true. */
  readonly both?: boolean;
}

const PSI_MPa = POUND_N / (INCH_mm * INCH_mm);
const INCH_POUND_Nmm = POUND_N * INCH_mm;
const NEWTON_METRE_Nmm = 1000;

export interface SizeOptions extends PrintOptions {
  /** The other system in parentheses; default true. */
  readonly both?: boolean;
  /** Significant figures; default 3. */
  readonly figures?: number;
}

type Sizes = Readonly<Record<"inch" | "mm", { readonly size: number; readonly unit: string }>>;

/** In the first unit, and the other behind it. */
function sized(value: number, sizes: Sizes, units: "inch" | "mm", { both = true, rounding = "nearest", figures = 3 }: SizeOptions): string {
  const print = ({ size, unit }: Sizes["mm"]): string => `${significant(value / size, rounding, figures)} ${unit}`;
  return both ? `${print(sizes[units])} (${print(sizes[units === "inch" ? "mm" : "inch"])})` : print(sizes[units]);
}

const stressSizes: Sizes = { inch: { size: PSI_MPa, unit: "psi" }, mm: { size: 1, unit: "MPa" } };
const momentSizes: Sizes = { inch: { size: INCH_POUND_Nmm, unit: "in-lbf" }, mm: { size: NEWTON_METRE_Nmm, unit: "N m" } };
const areaSizes: Sizes = { inch: { size: INCH_mm ** 2, unit: "sq in" }, mm: { size: 1, unit: "mm2" } };
const modulusSizes: Sizes = { inch: { size: INCH_mm ** 3, unit: "cu in" }, mm: { size: 1, unit: "mm3" } };
const turnSizes: Sizes = { inch: { size: INCH_POUND_Nmm, unit: "in-lbf/rad" }, mm: { size: NEWTON_METRE_Nmm, unit: "N m/rad" } };
const lineLoadSizes: Sizes = { inch: { size: POUND_N / (12 * INCH_mm), unit: "lbf/ft" }, mm: { size: 1, unit: "N/mm" } };

/** 3.96 -> `574 psi (3.96 MPa)`; a modulus of elasticity too. */
export const stress = (value: Megapascal, units: "inch" | "mm", options: SizeOptions = {}): string =>
  sized(value, stressSizes, units, options);

export interface MomentOptions extends SizeOptions {
  /** In N mm, to be divided by a section modulus in mm3; default N m. */
  readonly small?: boolean;
}

const smallMomentSizes: Sizes = { ...momentSizes, mm: { size: 1, unit: "N mm" } };

/** 216826 N mm -> `1920 in-lbf (217 N m)` */
export const moment = (value_Nmm: number, units: "inch" | "mm", { small = false, ...options }: MomentOptions = {}): string =>
  sized(value_Nmm, small ? smallMomentSizes : momentSizes, units, options);

/** Of a section: 7903 mm2 -> `12.3 sq in (7900 mm2)` */
export const sectionArea = (value_mm2: number, units: "inch" | "mm", options: SizeOptions = {}): string =>
  sized(value_mm2, areaSizes, units, options);

/** Of a section: 117099 mm3 -> `7.15 cu in (117000 mm3)` */
export const sectionModulus = (value_mm3: number, units: "inch" | "mm", options: SizeOptions = {}): string =>
  sized(value_mm3, modulusSizes, units, options);

/** Moment that turns a post's base: 25e6 N mm per radian -> `221000 in-lbf/rad (25000 N m/rad)` */
export const turnStiffness = (value_NmmPerRad: number, units: "inch" | "mm", options: SizeOptions = {}): string =>
  sized(value_NmmPerRad, turnSizes, units, options);

/** 0.73 -> `50 lbf/ft (0.73 N/mm)` */
export const lineLoad = (value_NPerMm: number, units: "inch" | "mm", options: SizeOptions = {}): string =>
  sized(value_NPerMm, lineLoadSizes, units, options);

/** 0.7854 -> `45 deg` */
export const angleDegrees = (value: Radian, { decimals = 1, rounding = "nearest" }: DecimalOptions = {}): string =>
  `${decimalText((value * 180) / Math.PI, decimals, rounding)} deg`;

/** 20 -> `68 deg F (20 deg C)`, or `20 deg C` where degrees Celsius stand alone. */
export function temperature(value: Celsius, units: "inch" | "mm", { both = true, rounding = "nearest" }: ForceOptions = {}): string {
  const fahrenheit = `${decimalText(value * 1.8 + 32, 0, rounding)} deg F`;
  const celsius = `${decimalText(value, 0, rounding)} deg C`;
  const [first, other] = units === "inch" ? [fahrenheit, celsius] : [celsius, fahrenheit];
  return both ? `${first} (${other})` : first;
}

/** 53.6 -> `53.6 Hz` */
export const hertz = (value_Hz: number, { decimals = 1, rounding = "nearest" }: DecimalOptions = {}): string =>
  `${decimalText(value_Hz, decimals, rounding)} Hz`;

/** 0.3 -> `30 %` */
export const percent = (share: number, options: DecimalOptions = {}): string => `${decimal(share * 100, options)} %`;

/** 1250 -> `12.50`: the job's own money, so no sign of any country. */
export const money = (cents: Cents): string => (roundBy(cents, 1, "nearest") / 100).toFixed(2);

/** 11 -> `11` */
export const count = (value: number, options: PrintOptions = {}): string => decimal(value, options);

/** A plain decimal number without trailing zeros, exponent or minus zero. */
export const decimal = (value: number, { decimals = 0, rounding = "nearest" }: DecimalOptions = {}): string =>
  decimalText(value, decimals, rounding);

/** Steps of 1, 0.1 and so on, each by its number of decimals. */
const decimalSteps: readonly number[] = [0, 1, 2, 3, 4, 5, 6].map((decimals) => 10 ** -decimals);
/** Below this a number with at most so many decimals is written by the engine itself as we want it. */
const PLAIN_below = 1e9;

export function decimalText(value: number, decimals: number, rounding: Rounding): string {
  const step = decimalSteps[decimals];
  const rounded = roundBy(value, step ?? 10 ** -decimals, rounding);
  if (step !== undefined && Math.abs(rounded) < PLAIN_below) return `${rounded}`;
  const text = rounded.toFixed(decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** Three significant figures: a force is not known any better. */
const FORCE_FIGURES = 3;

export function significant(value: number, rounding: Rounding, figures = FORCE_FIGURES): string {
  return decimalText(toFigures(value, { rounding, figures }), Math.max(0, placesOf(value, figures)), "nearest");
}

const toFigures = (value: number, { rounding, figures }: { readonly rounding: Rounding; readonly figures: number }): number =>
  roundBy(value, 10 ** -placesOf(value, figures), rounding);

/** Decimals that so many figures leave. Thousandths are the end: a smaller force is none. */
const placesOf = (value: number, figures: number): number => Math.min(figures, figures - 1 - Math.floor(Math.log10(Math.abs(value))));

interface Fraction {
  readonly numerator: number;
  readonly denominator: number;
  /** "7/16", or nothing. */
  readonly text: string;
}

/** The marks of a tape from 0/64 to 63/64, in lowest terms. */
const fractions: readonly Fraction[] = Array.from({ length: 64 }, (_, count) => {
  let [numerator, denominator] = [count, 64];
  while (numerator !== 0 && numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  return { numerator, denominator, text: numerator === 0 ? "" : `${numerator}/${denominator}` };
});

interface InchParts {
  readonly sign: string;
  readonly whole: number;
  readonly fraction: Fraction;
}

function inchParts(value: Mm, { step = 1 / 16, rounding = "nearest" }: InchOptions): InchParts {
  const perInch = 1 / step;
  const steps = countSteps(value / INCH_mm, { step, rounding });
  const size = Math.abs(steps);
  const whole = Math.floor(size / perInch);
  const fraction = fractions[((size - whole * perInch) * 64) / perInch];
  if (fraction === undefined || perInch < 1 || 64 % perInch !== 0) throw new RangeError(`a tape has no marks at ${step} in`);
  return { sign: steps < 0 ? "-" : "", whole, fraction };
}

function joined(whole: number, fraction: string, between: string): string {
  if (fraction === "") return `${whole}`;
  return whole === 0 ? fraction : `${whole}${between}${fraction}`;
}

/** 131.76 -> `five and three sixteenths inches`: what a screen reader says of a drawing. */
export function spokenLength(value: Mm, { units, style = "tape", ...options }: LengthOptions): string {
  if (units === "mm") return `${decimal(value, options)} millimetres`;
  const { sign, whole, fraction } = inchParts(value, options);
  const feet = style === "feet" ? Math.floor(whole / 12) : 0;
  const rest = whole - 12 * feet;
  const parts = sign === "" ? [] : ["minus"];
  if (feet > 0) parts.push(spoken(feet), feet === 1 ? "foot" : "feet");
  if (rest > 0 || fraction.numerator > 0 || feet === 0) parts.push(spokenInches(rest, fraction));
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

function spokenInches(whole: number, { numerator, denominator }: Fraction): string {
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
