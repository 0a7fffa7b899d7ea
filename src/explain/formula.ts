// What does a written formula come to, and how does it look with its numbers put in?
import { roundDown, roundNearest, roundUp } from "../units/round.ts";

/** A number, or a list of numbers for sum, max, min, mean, dot and above. */
export type Value = number | readonly number[];

export type FunctionOf = (...values: readonly Value[]) => number;

const numberOf = (value: Value | undefined): number => {
  if (typeof value !== "number") throw new RangeError("a list stands where a number is meant");
  return value;
};

const listOf = (values: readonly Value[]): readonly number[] => values.flat();

const one =
  (of: (value: number) => number): FunctionOf =>
  (value) =>
    of(numberOf(value));

const two =
  (of: (first: number, second: number) => number): FunctionOf =>
  (first, second) =>
    of(numberOf(first), numberOf(second));

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** up, down and nearest bring a number to a step; above is the least of a list that is greater than a number. */
const known: Readonly<Record<string, FunctionOf>> = {
  max: (...values) => Math.max(...listOf(values)),
  min: (...values) => Math.min(...listOf(values)),
  sum: (...values) => sum(listOf(values)),
  mean: (...values) => sum(listOf(values)) / listOf(values).length,
  dot: (first, second) => {
    const [left, right] = [listOf(first === undefined ? [] : [first]), listOf(second === undefined ? [] : [second])];
    if (left.length !== right.length) throw new RangeError("dot takes two lists of one length");
    return sum(left.map((value, index) => value * (right[index] ?? 0)));
  },
  above: (list, value) => Math.min(...listOf(list === undefined ? [] : [list]).filter((each) => each > numberOf(value))),
  up: two(roundUp),
  down: two(roundDown),
  nearest: two(roundNearest),
  hypot: two(Math.hypot),
  atan2: two(Math.atan2),
  sqrt: one(Math.sqrt),
  exp: one(Math.exp),
  sin: one(Math.sin),
  cos: one(Math.cos),
  tan: one(Math.tan),
  abs: one(Math.abs),
};

const TOKEN = /\s*(?:(\d+(?:\.\d+)?(?:e-?\d+)?)|([A-Za-z]\w*)|([-+*/^(),]))/y;

interface Token {
  readonly kind: "number" | "name" | "mark";
  readonly text: string;
}

function tokensOf(formula: string): readonly Token[] {
  const tokens: Token[] = [];
  const read = new RegExp(TOKEN);
  while (read.lastIndex < formula.length) {
    const from = read.lastIndex;
    const match = read.exec(formula);
    if (match === null) throw new RangeError(`"${formula.slice(from)}" is no formula`);
    const [, number, name, mark] = match;
    tokens.push(
      number !== undefined
        ? { kind: "number", text: number }
        : name !== undefined
          ? { kind: "name", text: name }
          : { kind: "mark", text: mark ?? "" },
    );
  }
  return tokens;
}

/** The value of a formula: + - * / ^, brackets, numbers, symbols and functions; pi is known. */
export function evaluate(formula: string, terms: ReadonlyMap<string, Value>, functions: Readonly<Record<string, FunctionOf>> = {}): number {
  const tokens = tokensOf(formula);
  let place = 0;
  const next = (): Token => tokens[place] ?? { kind: "mark", text: "" };
  const takes = (mark: string): boolean => {
    if (next().kind !== "mark" || next().text !== mark) return false;
    place += 1;
    return true;
  };
  const expect = (mark: string): void => {
    if (!takes(mark)) throw new RangeError(`"${formula}" lacks "${mark}"`);
  };
  const sumOf = (): Value => {
    let value = product();
    for (;;) {
      if (takes("+")) value = numberOf(value) + numberOf(product());
      else if (takes("-")) value = numberOf(value) - numberOf(product());
      else return value;
    }
  };
  const product = (): Value => {
    let value = power();
    for (;;) {
      if (takes("*")) value = numberOf(value) * numberOf(power());
      else if (takes("/")) value = numberOf(value) / numberOf(power());
      else return value;
    }
  };
  const power = (): Value => {
    if (takes("-")) return 0 - numberOf(power());
    const base = primary();
    return takes("^") ? numberOf(base) ** numberOf(power()) : base;
  };
  const primary = (): Value => {
    if (takes("(")) {
      const value = sumOf();
      expect(")");
      return value;
    }
    const token = next();
    place += 1;
    if (token.kind === "number") return Number(token.text);
    if (token.kind === "mark") throw new RangeError(`"${formula}" ends too early or holds a stray "${token.text}"`);
    return takes("(") ? call(token.text) : symbol(token.text);
  };
  const symbol = (name: string): Value => {
    const value = name === "pi" ? Math.PI : terms.get(name);
    if (value === undefined) throw new RangeError(`"${name}" of "${formula}" is no input`);
    return value;
  };
  const call = (name: string): number => {
    const values: Value[] = [];
    if (!takes(")")) {
      do values.push(sumOf());
      while (takes(","));
      expect(")");
    }
    const of = functions[name] ?? known[name];
    if (of === undefined) throw new RangeError(`"${name}" of "${formula}" is no function`);
    return of(...values);
  };
  const value = numberOf(sumOf());
  if (place < tokens.length) throw new RangeError(`"${formula}" goes on after its end`);
  return value;
}

/** The formula with each symbol replaced by the text of its number. */
export const withNumbers = (formula: string, textOf: (symbol: string) => string | undefined): string =>
  formula.replace(/\b[A-Za-z]\w*(?!\w*\()/g, (name) => textOf(name) ?? name);
