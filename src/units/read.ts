// What length, force or mass did somebody write? Feet, inches and pounds become inside units here, exactly.
import { commonSlip, type Decimal, quoted, type Reading, type Refusal, readDecimal, refuse, tidy } from "./notation.ts";
import { feetInches, force, GRAVITY_mPerS2, inches } from "./print.ts";
import type { Mm, Newton } from "./quantity.ts";

const LENGTH_EXAMPLES = "12 ft 6 1/2 in, 5'-6 1/2\", 66-1/2 in, 1676 mm or 1.68 m";

/** `12 ft 6 1/2 in`, `5'-6 1/2"`, `66-1/2 in`, `1676 mm`, `1.68 m` -> mm, with one rounding from the exact value. */
export function readLength(text: string): Reading<Mm> {
  const plain = tidy(text);
  // Nothing is nothing in every unit.
  if (plain === "0") return { value: 0 };
  const slip = commonSlip(plain, "66-1/2 in or 1676 mm");
  if (slip !== null) return slip;
  const groups = groupsOf(plain);
  if ("problem" in groups) return groups;
  const [first, second, third] = groups;
  if (first === undefined) return notUnderstood(text);
  if (second === undefined) return first.unit === "in" ? readImperial(text, null, first) : readSingle(text, first);
  if (third !== undefined || first.unit !== "ft" || second.unit !== "in") {
    return refuse(`${quoted(text)} mixes units that do not go together`, `write feet and inches, or one metric unit: ${LENGTH_EXAMPLES}`);
  }
  return readImperial(text, first, second);
}

type LengthUnit = "ft" | "in" | "mm" | "cm" | "m";

const lengthUnits: Readonly<Record<string, LengthUnit>> = {
  ...{ ft: "ft", foot: "ft", feet: "ft", "'": "ft", in: "in", inch: "in", inches: "in", '"': "in" },
  ...{ mm: "mm", millimetre: "mm", millimetres: "mm", millimeter: "mm", millimeters: "mm" },
  ...{ cm: "cm", centimetre: "cm", centimetres: "cm", centimeter: "cm", centimeters: "cm" },
  ...{ m: "m", metre: "m", metres: "m", meter: "m", meters: "m" },
};

const mmPer: Readonly<Record<"mm" | "cm" | "m", number>> = { mm: 1, cm: 10, m: 1000 };

/** A number, a fraction or both, and the unit behind them. */
interface Group {
  readonly number: string | null;
  readonly fraction: Fraction | null;
  readonly unit: LengthUnit;
}

interface Fraction {
  readonly top: number;
  readonly bottom: number;
  readonly text: string;
}

const TOKEN = /\s*(?:(\d+)\s*\/\s*(\d+)|(\d+(?:\.\d+)?|\.\d+)|(\p{L}+)\.?|(['"])|(-))/uy;

interface Token {
  readonly kind: "fraction" | "number" | "unit" | "dash";
  readonly text: string;
  readonly fraction: Fraction | null;
}

function tokensOf(text: string): readonly Token[] | null {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const match = TOKEN.exec(text);
    if (match === null) return null;
    const [, top, bottom, number, word, mark] = match;
    if (top !== undefined && bottom !== undefined) {
      tokens.push({ kind: "fraction", text: "", fraction: { top: Number(top), bottom: Number(bottom), text: `${top}/${bottom}` } });
    } else if (number !== undefined) tokens.push({ kind: "number", text: number, fraction: null });
    else if (word !== undefined || mark !== undefined)
      tokens.push({ kind: "unit", text: (word ?? mark ?? "").toLowerCase(), fraction: null });
    else tokens.push({ kind: "dash", text: "-", fraction: null });
  }
  return tokens;
}

function groupsOf(text: string): readonly Group[] | Refusal {
  const tokens = tokensOf(text);
  if (tokens === null) return notUnderstood(text);
  const groups: Group[] = [];
  let at = 0;
  while (at < tokens.length) {
    if (groups.length > 0 && tokens[at]?.kind === "dash") at += 1;
    const number = tokens[at]?.kind === "number" ? (tokens[at]?.text ?? null) : null;
    if (number !== null) at += 1;
    if (number !== null && tokens[at]?.kind === "dash" && tokens[at + 1]?.kind === "fraction") at += 1;
    const fraction = tokens[at]?.fraction ?? null;
    if (fraction !== null) at += 1;
    if (number === null && fraction === null) return notUnderstood(text);
    const unit = tokens[at];
    if (unit?.kind !== "unit") return noUnit(text, groups, unit === undefined);
    const known = Object.hasOwn(lengthUnits, unit.text) ? lengthUnits[unit.text] : undefined;
    if (known === undefined) return unknownUnit(unit.text);
    groups.push({ number, fraction, unit: known });
    at += 1;
  }
  return groups;
}

const notUnderstood = (text: string): Refusal => refuse(`${quoted(text)} is not a length`, `write a length such as ${LENGTH_EXAMPLES}`);

function noUnit(text: string, before: readonly Group[], isEnd: boolean): Refusal {
  const plain = tidy(text);
  if (!isEnd)
    return refuse(`${quoted(text)} has two numbers side by side`, twoNumbers(plain) ?? `write a length such as ${LENGTH_EXAMPLES}`);
  if (before.length > 0) {
    const fix =
      before.length === 1 && before[0]?.unit === "ft"
        ? `write ${plain} in, if inches are meant`
        : `write a length such as ${LENGTH_EXAMPLES}`;
    return refuse(`${quoted(text)} has no unit at its end`, fix);
  }
  const fix = plain.includes("/") ? `write ${plain} in, if inches are meant` : `write ${plain} in or ${plain} mm, whichever is meant`;
  return refuse(`${quoted(text)} has no unit`, fix);
}

/** `5-6 1/2 in` and `12 6` are most often feet and inches. */
function twoNumbers(plain: string): string | null {
  const [, feet, inch, part] = /^(\d+)(?: |-| - )(\d|1[01])(?:[ -](\d+\/\d+))?(?: ?(?:in|inch|inches|"))?$/i.exec(plain) ?? [];
  return feet === undefined ? null : `write ${feet} ft ${inch}${part === undefined ? "" : ` ${part}`} in, if feet and inches are meant`;
}

/** Other units by the letters they begin with, and what to write instead. */
const nearUnits: readonly (readonly [begins: string, write: string])[] = [
  ["fee", "ft"],
  ["foo", "ft"],
  ["fts", "ft"],
  ["inc", "in"],
  ["ins", "in"],
  ["yd", "feet: 1 yd is 3 ft"],
  ["yard", "feet: 1 yd is 3 ft"],
  ["mil", "mm"],
  ["cen", "cm"],
  ["met", "m"],
];

function unknownUnit(unit: string): Refusal {
  const near = nearUnits.find(([begins]) => unit.startsWith(begins));
  return refuse(`${quoted(unit)} is no unit of length`, near ? `write ${near[1]}` : "use ft, in, mm, cm or m");
}

const tooManyDigits = (text: string): Refusal =>
  refuse(`${quoted(text)} has more digits than can be measured`, "leave out digits; 1/64 in or 0.1 mm is finer than any tape");

/** One number and one unit: feet, mm, cm or m. */
function readSingle(text: string, { number, fraction, unit }: Group): Reading<Mm> {
  if (unit === "ft" && fraction !== null) {
    return refuse(`${quoted(text)} has a fraction of a foot`, "write the part of a foot in inches, for example 12 ft 6 in");
  }
  if (fraction !== null) return refuse(`${quoted(text)} has a fraction of a metric unit`, "write a decimal, for example 12.5 mm");
  const decimal = readDecimal(number ?? "");
  if (decimal === null) return tooManyDigits(text);
  if (unit === "ft") return fromSixtyFourths(text, decimal.digits * 768, decimal.scale);
  return { value: (decimal.digits * mmPer[unit === "in" ? "mm" : unit]) / decimal.scale };
}

const ZERO: Decimal = { digits: 0, scale: 1 };

/** Inches, with feet before them or not. */
function readImperial(text: string, foot: Group | null, inch: Group): Reading<Mm> {
  if (foot !== null && foot.fraction !== null) return readSingle(text, foot);
  const feet = foot === null ? ZERO : readDecimal(foot.number ?? "");
  const whole = inch.number === null ? ZERO : readDecimal(inch.number);
  if (feet === null || whole === null) return tooManyDigits(text);
  if (feet.scale !== 1)
    return refuse(`${quoted(text)} has a decimal of a foot beside inches`, "write whole feet and then inches, for example 5 ft 6 in");
  const part = inch.fraction === null ? 0 : fractionIn64ths(text, whole, inch.fraction);
  if (typeof part !== "number") return part;
  const scale = whole.scale;
  const inches64 = whole.digits * 64 + part * scale;
  const total = feet.digits * 768 * scale + inches64;
  if (foot !== null && inches64 >= 768 * scale) {
    const sum = fromSixtyFourths(text, total, scale);
    const hint = "value" in sum ? `write ${feetInches(sum.value, { step: 1 / 64 })}, if that is meant` : "write inches below 12";
    return refuse(`${quoted(text)} has 12 inches or more after the feet`, hint);
  }
  return fromSixtyFourths(text, total, scale);
}

function fractionIn64ths(text: string, whole: Decimal, { top, bottom, text: written }: Fraction): number | Refusal {
  if (whole.scale !== 1) {
    const decimal = whole.digits / whole.scale;
    return refuse(
      `${quoted(text)} has a decimal and a fraction`,
      `write ${decimal} in or a whole number with a fraction, for example 66-1/2 in`,
    );
  }
  if (![2, 4, 8, 16, 32, 64].includes(bottom)) {
    return refuse(
      `${written} of an inch is not on a tape`,
      "use halves, quarters, eighths, 16ths, 32nds or 64ths, or write the length in mm",
    );
  }
  if (top >= bottom) {
    const proper = top <= 64_000 ? inches((whole.digits + top / bottom) * 25.4, { step: 1 / 64 }) : '66-1/2"';
    return refuse(`${written} is a whole inch or more`, `write ${proper}, if that is meant`);
  }
  return top * (64 / bottom);
}

/** The one conversion of the house: mm = n * 254 / 640, correctly rounded because both whole numbers are exact. */
function fromSixtyFourths(text: string, count: number, scale: number): Reading<Mm> {
  const top = count * 254;
  if (!Number.isSafeInteger(top)) return tooManyDigits(text);
  return { value: top / (640 * scale) };
}

const FORCE_EXAMPLES = "300 lbf, 1.3 kN or 1300 N";

/** `300 lbf` (people also write lb), `1.3 kN`, `1300 N` -> N */
export function readForce(text: string): Reading<Newton> {
  const pair = numberAndUnit(text, "a force", FORCE_EXAMPLES);
  if ("problem" in pair) return pair;
  const { decimal, unit } = pair;
  const value = decimal.digits / decimal.scale;
  if (["lbf", "lb", "lbs"].includes(unit)) return { value: (decimal.digits * POUND_N) / decimal.scale };
  if (unit === "n") return { value };
  if (unit === "kn") return { value: (decimal.digits * 1000) / decimal.scale };
  if (["kgf", "kg", "kp"].includes(unit)) {
    const weight = force((decimal.digits * GRAVITY_mPerS2) / decimal.scale, "mm", { both: false });
    return refuse(`${quoted(text)} is a mass or an old unit of force`, `write ${weight}, which is the weight of ${value} kg`);
  }
  return refuse(`${quoted(unit)} is no unit of force`, `write a force such as ${FORCE_EXAMPLES}`);
}

const POUND_N = 4.4482216152605;
const POUND_kg = 0.45359237;
const FOOT_mm = 304.8;
const MASS_EXAMPLES = "52 g/m, 0.052 kg/m or 35 lb/1000 ft";

/** `52 g/m`, `0.052 kg/m`, `35 lb/1000 ft` -> kg per metre */
export function readMassPerLength(text: string): Reading<number> {
  const pair = numberAndUnit(text, "a mass per length", MASS_EXAMPLES);
  if ("problem" in pair) return pair;
  const { decimal, unit } = pair;
  if (unit === "g/m") return { value: decimal.digits / (1000 * decimal.scale) };
  if (unit === "kg/m") return { value: decimal.digits / decimal.scale };
  if (unit === "lb/1000ft") return { value: (decimal.digits * POUND_kg) / (FOOT_mm * decimal.scale) };
  if (unit === "lb/100ft") return { value: (decimal.digits * POUND_kg * 10) / (FOOT_mm * decimal.scale) };
  return refuse(`${quoted(unit)} is no mass per length`, `write it as ${MASS_EXAMPLES}`);
}

/** `0.0015 per m`, `0.0005 per ft` -> per mm */
export function readPerLength(text: string): Reading<number> {
  const pair = numberAndUnit(text, "a share per length", "0.0015 per m or 0.0005 per ft");
  if ("problem" in pair) return pair;
  const { decimal, unit } = pair;
  if (["perm", "/m"].includes(unit)) return { value: decimal.digits / (1000 * decimal.scale) };
  if (["perft", "/ft"].includes(unit)) return { value: decimal.digits / (FOOT_mm * decimal.scale) };
  return refuse(`${quoted(unit)} is not per length`, "write it as 0.0015 per m or 0.0005 per ft");
}

function numberAndUnit(text: string, name: string, examples: string): { readonly decimal: Decimal; readonly unit: string } | Refusal {
  const plain = tidy(text);
  const slip = commonSlip(plain, examples);
  if (slip !== null) return slip;
  const [, number = "", unit = ""] = /^([\d.]*)\s*(.*)$/s.exec(plain) ?? [];
  if (unit === "" && number !== "") return refuse(`${quoted(text)} has no unit`, `write ${name} such as ${examples}`);
  const decimal = readDecimal(number);
  if (decimal === null) return refuse(`${quoted(text)} is not ${name}`, `write ${name} such as ${examples}`);
  return { decimal, unit: unit.toLowerCase().replaceAll(" ", "") };
}
