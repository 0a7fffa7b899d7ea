// Which cutting plan is good enough to start from? First fit decreasing, and bar by bar the best filled one.
import { type Bar, type Cutting, fits, type Part, type Pattern, type Solution, totalValue, widthOf } from "./problem.ts";

/** Steps of the search for the best filling of one bar: enough for a guard, and a fixed number, so that the answer never depends on the machine. */
const FILL_STEPS_max = 3000;

/**
 * The best of several quick plans: first fit decreasing into bars of each length, and bars filled one after another.
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @returns patterns that cut exactly what is asked [count of each part]
 * @throws never
 * Source: martello-toth, section 8.2 (first fit decreasing); the other by its description here
 */
export function quickPlan(cutting: Cutting): Solution {
  const widest = cutting.parts[0]?.width ?? 0;
  const plans = cutting.bars
    .filter((bar) => fits(widest, bar.capacity))
    .map((bar): Solution => firstFit(cutting.parts, bar.capacity).map((counts) => inCheapestBar(counts, cutting)));
  return [...plans, bestFilled(cutting)].reduce((best, plan) => (isBetter(plan, best) ? plan : best));
}

/** Less to pay, then fewer bars. */
function isBetter(plan: Solution, other: Solution): boolean {
  const [value, otherValue] = [totalValue(plan), totalValue(other)];
  return value < otherValue || (value === otherValue && plan.length < other.length);
}

/**
 * A pattern in the cheapest bar that holds it.
 *
 * @param counts - how often each part is cut [count], shape (parts)
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @returns the pattern with its bar [capacity in mm, value in units]
 * @throws RangeError when no bar holds it
 * Source: derived
 */
export function inCheapestBar(counts: readonly number[], cutting: Cutting): Pattern {
  const width = widthOf(counts, cutting.parts);
  const bar = cutting.bars.find((one) => fits(width, one.capacity));
  if (bar === undefined) throw new RangeError(`no bar holds ${width} mm`);
  return { counts, bar };
}

function firstFit(parts: readonly Part[], capacity: number): readonly (readonly number[])[] {
  const bars: { counts: number[]; room: number }[] = [];
  for (const [index, part] of parts.entries()) {
    for (let piece = 0; piece < part.demand; piece += 1) {
      let bar = bars.find((one) => fits(part.width, one.room));
      if (bar === undefined) {
        bar = { counts: parts.map(() => 0), room: capacity };
        bars.push(bar);
      }
      bar.counts[index] = (bar.counts[index] ?? 0) + 1;
      bar.room -= part.width;
    }
  }
  return bars.map((bar) => bar.counts);
}

/** Bar by bar: the widest part left must go somewhere; of all bars the one that costs least for what it carries. */
function bestFilled(cutting: Cutting): Solution {
  const left = cutting.parts.map((part) => part.demand);
  const plan: Pattern[] = [];
  for (;;) {
    const first = left.findIndex((count) => count > 0);
    if (first < 0) return plan;
    let best: { pattern: Pattern; perWidth: number } | undefined;
    for (const bar of cutting.bars) {
      if (!fits(cutting.parts[first]?.width ?? 0, bar.capacity)) continue;
      const counts = fullest({ parts: cutting.parts, left, first, bar });
      const pattern = inCheapestBar(counts, cutting);
      const perWidth = pattern.bar.value / widthOf(counts, cutting.parts);
      if (best === undefined || perWidth < best.perWidth) best = { pattern, perWidth };
    }
    if (best === undefined) throw new RangeError("a part is wider than every bar");
    plan.push(best.pattern);
    for (const [index, count] of best.pattern.counts.entries()) left[index] = (left[index] ?? 0) - count;
  }
}

interface Filling {
  readonly parts: readonly Part[];
  readonly left: readonly number[];
  /** Must be in the bar at least once. */
  readonly first: number;
  readonly bar: Bar;
}

/** The filling of a bar that leaves least over, by depth first search with the widest first. */
function fullest({ parts, left, first, bar }: Filling): readonly number[] {
  const counts = parts.map(() => 0);
  counts[first] = 1;
  let best: readonly number[] = [...counts];
  let bestRoom = bar.capacity - (parts[first]?.width ?? 0);
  let steps = 0;
  const search = (index: number, room: number): void => {
    if (room < bestRoom) {
      bestRoom = room;
      best = [...counts];
    }
    steps += 1;
    const part = parts[index];
    if (part === undefined || fits(bestRoom, 0) || steps > FILL_STEPS_max) return;
    const already = counts[index] ?? 0;
    let more = 0;
    while (already + more < (left[index] ?? 0) && fits(part.width * (more + 1), room)) more += 1;
    for (; more >= 0; more -= 1) {
      counts[index] = already + more;
      search(index + 1, room - part.width * more);
    }
    counts[index] = already;
  };
  search(first, bestRoom);
  return best;
}
