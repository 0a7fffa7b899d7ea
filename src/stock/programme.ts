// Which patterns, how often, buy least? An integer programme over patterns.
import { type Constraint, solve } from "yalps";
import { countSteps, roundDown } from "../units/round.ts";
import type { Cutting, Pattern, Solution } from "./problem.ts";

/** Branches that may be tried: a number and not a time, so that the same job always gives the same plan. */
const BRANCHES_max = 600;
/** A branch costs as much as there are patterns: what all of them together may cost, about 15 ms. */
const BRANCH_COST_max = 10_000;

export type Found =
  | { readonly kind: "better"; readonly solution: Solution; readonly proven: boolean }
  /** There is no plan below the limit. */
  | { readonly kind: "none" }
  /** The budget was used up first. */
  | { readonly kind: "unknown" };

const TOTAL = "total";

function rows(cutting: Cutting, total: Constraint): [string, Constraint][] {
  return [[TOTAL, total], ...cutting.parts.map(({ demand }, index): [string, Constraint] => [`part ${index}`, { min: demand }])];
}

function columns(patterns: readonly Pattern[]): [number, [string, number][]][] {
  return patterns.map(({ counts, bar }, index) => [
    index,
    [[TOTAL, bar.value], ...counts.map((count, part): [string, number] => [`part ${part}`, count]).filter(([, count]) => count > 0)],
  ]);
}

/**
 * The bound of the linear relaxation: patterns may be used in fractions.
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @param patterns - every pattern that is not dominated [count of each part]
 * @returns total that no plan goes below [units], not rounded; 0 when the solver gives up
 * @throws never
 * Source: gilmore-gomory, linear relaxation of the pattern formulation
 */
export function relaxedTotal(cutting: Cutting, patterns: readonly Pattern[]): number {
  const { status, result } = solve({
    direction: "minimize",
    objective: TOTAL,
    constraints: rows(cutting, { min: 0 }),
    variables: columns(patterns),
  });
  return status === "optimal" ? result : 0;
}

/**
 * The cheapest whole numbers of patterns that cut at least what is asked, within two totals.
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @param patterns - the patterns to choose from [count of each part]
 * @param between - totals to search between [units]: a known lower bound, and the greatest total that is worth finding
 * @returns a plan [count of each part], or that there is none, or that the budget of branches was used up
 * @throws never
 * Source: gilmore-gomory, pattern formulation, solved by branch and cut
 */
export function cheapest(
  cutting: Cutting,
  patterns: readonly Pattern[],
  between: { readonly least: number; readonly most: number },
): Found {
  const { status, variables } = solve(
    {
      direction: "minimize",
      objective: TOTAL,
      constraints: rows(cutting, { min: between.least, max: between.most }),
      variables: columns(patterns),
      integers: true,
    },
    { maxIterations: Math.min(BRANCHES_max, roundDown(BRANCH_COST_max / patterns.length, 1)) },
  );
  if (status === "infeasible") return { kind: "none" };
  const solution = variables.flatMap(([index, count]) => {
    const pattern = patterns[index];
    const times = countSteps(count, { step: 1, rounding: "nearest" });
    return pattern === undefined ? [] : Array.from({ length: times }, () => pattern);
  });
  if (solution.length === 0) return { kind: "unknown" };
  return { kind: "better", solution, proven: status === "optimal" };
}
