// How is a check of the frame printed so that somebody can compute it again: formula, numbers put in, factors of the capacity?
import type { CheckPart, FrameCheck } from "../../plan/frame-plan.ts";
import { isBeyond, ratioText } from "../frame-verdict.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { bold } from "./kit.ts";

interface SizeStyle {
  /** The other system in parentheses. */
  readonly both: boolean;
  readonly rounding?: "up" | "down";
  /** One more where others shall compute with the number. */
  readonly figures?: number;
  /** Moments in the unit of the section's modulus. */
  readonly small?: boolean;
}

/** A number of a check in the units of the job. */
export function sizeText({ value, unit }: Pick<CheckPart, "value" | "unit">, show: Show, style: SizeStyle): Text {
  const { both, rounding } = style;
  switch (unit) {
    case "MPa":
      // A post pulled alike from both sides: what is left is dust of the solver, which rounding up would print as a stress.
      if (rounding === "up" && Math.abs(value) < NONE_MPa) return "none";
      return show.stress(value, style);
    case "N mm":
      return show.moment(value, style);
    case "mm2":
      return show.sectionArea(value, style);
    case "mm3":
      return show.sectionModulus(value, style);
    case "N/mm":
      return show.lineLoad(value, style);
    case "N":
      if (rounding === "down") return both ? show.forceBothDown(value) : show.forceDown(value);
      if (rounding === "up") return both ? show.forceBothUp(value) : show.forceUp(value);
      return both ? show.forceBoth(value) : show.force(value);
    case "mm":
      return both ? show.diameter(value) : show.fine(value);
    case "1":
      return value >= NO_ROOM ? "no room left" : show.decimal(value, SHARE_decimals);
  }
}

/** 0.1 psi. */
const NONE_MPa = 7e-4;
const SHARE_decimals = 3;
/** A term of a member that buckles before it can answer. */
const NO_ROOM = 1e6;
/** Of demands and of capacities, in the table of checks and among the formulas alike. */
export const RESULT_up = { both: true, rounding: "up", figures: 4 } as const;
export const RESULT_down = { both: true, rounding: "down", figures: 4 } as const;
const FIGURES = { both: false, figures: 4, small: true } as const;
const FORCE_up = { ...FIGURES, rounding: "up" } as const;

/** A number that is put in: every force is a load, and rounded up as in the tables; what is computed with stays as near as it can. */
const partText = (part: CheckPart, show: Show): Text => sizeText(part, show, part.unit === "N" ? FORCE_up : FIGURES);

/** Symbols, the same with numbers, the result, its capacity and what that is made of, and their ratio; rounded as in the table of checks. */
export function formulaText(check: FrameCheck, show: Show): Text {
  const { formula, capacity, unit, ratio, verdict } = check;
  const [left = "", right = ""] = formula.split(" <= ");
  const chains = chainTexts(check, right, show);
  const texts = [...workingTexts(left, check, show), ...chains.map(({ text }) => text)];
  if (verdict === "pass" || verdict === "fail") {
    const isSaid = (unit === "1" && capacity === 1) || chains.some(({ isCapacity }) => isCapacity);
    if (!isSaid) texts.push(`limit ${sizeText({ value: capacity, unit }, show, RESULT_down)}`);
    texts.push(`ratio ${bold(ratioText(ratio))}`);
  }
  return `${bold(formula)}: ${texts.join("; ")}.`;
}

/** The left side with numbers put in where each of its symbols is known; else the numbers one by one. */
function workingTexts(left: Text, { parts, demand, unit }: FrameCheck, show: Show): readonly Text[] {
  const expression = left.includes(" = ") ? left.slice(left.indexOf(" = ") + 3) : left;
  const result = unit === "1" && isBeyond(demand) ? "it buckles first" : sizeText({ value: demand, unit }, show, RESULT_up);
  const filled = filledIn(expression, parts, show);
  // Nothing is said by a load that is not there.
  const rest = parts.filter(({ name, value }) => value !== 0 && !(filled?.used.has(name) ?? false));
  const listed = rest.map((part) => `${part.name} = ${partText(part, show)}`).join(", ");
  if (filled !== null) return [`${filled.text} = ${bold(result)}`, ...(listed === "" ? [] : [listed])];
  return [listed === "" ? bold(result) : `${listed}: result ${bold(result)}`];
}

interface Filled {
  readonly text: Text;
  readonly used: ReadonlySet<string>;
}

/** null where a symbol is left over: half a formula with numbers helps nobody. */
function filledIn(expression: Text, parts: readonly CheckPart[], show: Show): Filled | null {
  const byName = new Map(parts.map((part) => [part.name, part]));
  if (byName.size === 0) return null;
  const pattern = patternOf([...byName.keys()]);
  const used = new Set<string>();
  let text = "";
  let from = 0;
  pattern.lastIndex = 0;
  for (let match = pattern.exec(expression); match !== null; match = pattern.exec(expression)) {
    const part = byName.get(match[0]);
    if (part === undefined) return null;
    const before = expression.slice(from, match.index);
    from = match.index + match[0].length;
    if (hasSymbols(before)) return null;
    const number = partText(part, show);
    // 3 V is 3 x V; a power is of the number and its unit.
    text += before.replace(/([\d)]) $/, "$1 x ") + (expression[from] === "^" ? `(${number})` : number);
    used.add(part.name);
  }
  const end = expression.slice(from);
  return used.size === 0 || hasSymbols(end) ? null : { text: text + end, used };
}

const patterns = new Map<string, RegExp>();

/** Finds the symbols as whole words; made once for each set of symbols, and the checks of the program have a few dozen. */
function patternOf(symbols: readonly Text[]): RegExp {
  const names = [...symbols].sort((a, b) => b.length - a.length).map(escaped);
  const text = `(?<![\\w'])(?:${names.join("|")})(?![\\w'])`;
  const known = patterns.get(text) ?? new RegExp(text, "g");
  patterns.set(text, known);
  return known;
}

const escaped = (name: string): string => name.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
const hasSymbols = (text: string): boolean => /[A-Za-z]/.test(text.replaceAll("sqrt", ""));

type Factor = FrameCheck["factors"][number];

/** Reference values are stresses; what multiplies or divides them has no unit. */
const isStress = ({ name }: Pick<Factor, "name">): boolean => /^(F[a-z]|E|stress)/.test(name);

export const factorText = (factor: Factor, show: Show): Text =>
  isStress(factor) ? show.stress(factor.value, { both: false }) : show.decimal(factor.value, SHARE_decimals);

/** A reference value with the factors behind it, up to the next reference value. */
function chainsOf(factors: readonly Factor[]): readonly (readonly Factor[])[] {
  const chains: Factor[][] = [];
  for (const factor of factors) {
    const last = chains.at(-1);
    // "C_fu square" belongs to the second axis: a chain of its own.
    const isOther = / /.test(factor.name) && factor.name.startsWith("C_");
    if (last === undefined || isStress(factor) || (isOther && !/ /.test(last[0]?.name ?? ""))) chains.push([factor]);
    else last.push(factor);
  }
  return chains;
}

interface Chain {
  readonly text: Text;
  readonly isCapacity: boolean;
}

/** Where the chain multiplied gives the capacity, or an allowed stress among the numbers, it is written as a product; else as a list. */
function chainTexts({ factors, parts, capacity, unit }: FrameCheck, right: Text, show: Show): readonly Chain[] {
  const results = [
    ...(unit === "MPa" ? [{ name: right, value: capacity, isCapacity: true }] : []),
    ...parts.filter((part) => part.unit === "MPa").map(({ name, value }) => ({ name, value, isCapacity: false })),
  ];
  return chainsOf(factors).map((chain): Chain => {
    const product = chain.reduce((sum, { value }) => sum * value, 1);
    const made = results.find(({ value }) => Math.abs(value - product) <= SAME_share * product);
    const texts = chain.map((factor) => `${factor.name} ${factorText(factor, show)}`);
    if (made === undefined) return { text: texts.join(", "), isCapacity: false };
    const { name, value, isCapacity } = made;
    return { text: `${name} = ${texts.join(" x ")} = ${bold(show.stress(value, { ...RESULT_down, both: isCapacity }))}`, isCapacity };
  });
}

const SAME_share = 1e-9;
