// What is the least that any cutting plan must buy? Lower bounds, to print how good an answer is.
import { countSteps } from "../units/round.ts";
import { type Bar, type Cutting, fits, type Part, totalWidth } from "./problem.ts";

/** Longest table of totals that is built; beyond it the bound is left unrounded. */
const TOTALS_max = 200_000;

/**
 * The bound by length: the least total of whole bars whose capacities add up to all widths, and which is not below another bound.
 * The table best[v] = greatest capacity that a total of exactly v buys is filled by best[v] = max over bars (best[v - value] + capacity).
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @param atLeast - another lower bound [units], rounded up to a total that whole bars can have
 * @returns total that no plan goes below [units]
 * @throws never
 * Source: derived; unbounded covering knapsack by dynamic programming
 */
export function leastTotal(cutting: Cutting, atLeast = 0): number {
  const width = totalWidth(cutting.parts);
  if (width <= 0) return 0;
  const perUnit = cutting.bars.reduce((most, bar) => Math.max(most, bar.capacity / bar.value), 0);
  const least = Math.max(atLeast, width / perUnit);
  const most = cutting.bars.reduce((sum, bar) => Math.max(sum, bar.value), 0);
  const from = countSteps(least, { step: 1, rounding: "up" });
  // The most a total can lie above the continuous bound: a bar of every kind more.
  const to = from + most * (cutting.bars.length + 1);
  if (to > TOTALS_max) return from;
  const best = new Float64Array(to + 1).fill(Number.NEGATIVE_INFINITY);
  best[0] = 0;
  for (let total = 1; total <= to; total += 1) {
    for (const bar of cutting.bars) {
      const before = best[total - bar.value];
      if (before !== undefined && before + bar.capacity > (best[total] ?? 0)) best[total] = before + bar.capacity;
    }
    if (total >= from && fits(width, best[total] ?? 0)) return total;
  }
  return from;
}

/**
 * The bound by size, for bars of one capacity C. For every threshold t up to C/2: parts wider than C/2 each need a bar of their own;
 * parts from t to C/2 only find room beside those that leave at least t.
 *
 * @param parts - widths [mm] with their demands
 * @param capacity - of every bar [mm], > 0
 * @returns number of bars that no plan goes below [count]
 * @throws never
 * Source: martello-toth, section 8.3.2, bound L2
 */
export function leastBars(parts: readonly Part[], capacity: number): number {
  const half = capacity / 2;
  let most = countSteps(totalWidth(parts) / capacity, { step: 1, rounding: "up" });
  for (const { width: threshold } of [...parts, { width: 0 }]) {
    if (threshold > half) continue;
    let bars = 0;
    let room = 0;
    let small = 0;
    for (const { width, demand } of parts) {
      if (!fits(width, half)) {
        bars += demand;
        if (fits(threshold, capacity - width)) room += demand * (capacity - width);
      } else if (width >= threshold) small += demand * width;
    }
    most = Math.max(most, bars + countSteps(Math.max(0, small - room) / capacity, { step: 1, rounding: "up" }));
  }
  return most;
}

/**
 * The better of the two bounds without any pattern: cheap, and often equal to the first plan that is found.
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @returns total that no plan goes below [units]
 * @throws never
 * Source: leastTotal and leastBars
 */
export function quickBound(cutting: Cutting): number {
  const [only, ...others] = cutting.bars;
  if (only === undefined) return 0;
  const widest: Bar = others.at(-1) ?? only;
  const bars = leastBars(cutting.parts, widest.capacity);
  // So many bars are needed even if all were the longest; the cheapest that many could cost is the cheapest bar for each.
  return leastTotal(cutting, Math.max(bars * only.value, ownBars(cutting)));
}

/** Parts wider than half the longest bar each need a bar of their own, and one that is long enough. */
function ownBars({ parts, bars }: Cutting): number {
  const half = (bars.at(-1)?.capacity ?? 0) / 2;
  return parts
    .filter((part) => !fits(part.width, half))
    .reduce((sum, part) => sum + part.demand * (bars.find((bar) => fits(part.width, bar.capacity))?.value ?? 0), 0);
}
