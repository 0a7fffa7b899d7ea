// Does a written formula come to what it says, in the usual order of operations?
import { describe, expect, test } from "vitest";
import { evaluate, withNumbers } from "../../src/explain/formula.ts";

const terms = new Map<string, number | readonly number[]>([
  ["a", 3],
  ["b", 4],
  ["l", [1, 2, 5]],
  ["m", [2, 0, 1]],
]);
const value = (formula: string): number => evaluate(formula, terms);

describe("evaluate", () => {
  test.each([
    ["1 + 2 * 3", 7],
    ["(1 + 2) * 3", 9],
    ["10 - 4 - 3", 3],
    ["12 / 4 / 3", 1],
    ["2 ^ 3 ^ 2", 512],
    ["-a ^ 2", -9],
    ["2 * -a", -6],
    ["1e-3 * 1.5", 0.0015],
    ["hypot(a, b)", 5],
    ["a * pi", 3 * Math.PI],
    ["atan2(0 - 1, 0)", -Math.PI / 2],
    ["sqrt(b) + exp(0) + sin(0) + cos(0) + tan(0) + abs(-a)", 7],
    ["max(a, l)", 5],
    ["min(l) + sum(l) + mean(l)", 1 + 8 + 8 / 3],
    ["dot(l, m)", 7],
    ["above(l, a)", 5],
    ["up(a, 2) + down(a, 2) + nearest(b + 0.9, 2)", 4 + 2 + 4],
  ])("%s is %d", (formula, expected) => expect(value(formula)).toBeCloseTo(expected, 12));

  test("a function that is handed in counts before a known one", () => {
    expect(evaluate("max(a, b)", terms, { max: () => 1 })).toBe(1);
  });

  test.each([
    ["a +", /ends too early/],
    ["a b", /goes on after its end/],
    ["(a", /lacks "\)"/],
    ["a ? b", /is no formula/],
    ["c + 1", /"c" of "c \+ 1" is no input/],
    ["cube(a)", /"cube" .* is no function/],
    ["l + 1", /a list stands where a number is meant/],
    ["dot(l, a)", /two lists of one length/],
  ])("%s is refused", (formula, reason) => expect(() => value(formula)).toThrow(reason));
});

describe("withNumbers", () => {
  test("symbols become numbers, functions and numbers stay: max(max * 1e-3, up(a, s))", () => {
    const numbers: Readonly<Record<string, string>> = { max: "7", a: "3", s: "2", e: "never" };
    expect(withNumbers("max(max * 1e-3, up(a, s)) + pi", (symbol) => numbers[symbol])).toBe("max(7 * 1e-3, up(3, 2)) + pi");
  });
});
