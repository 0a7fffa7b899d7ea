// In how many ways can one bar be cut, when nothing more would fit?
import { type Bar, type Cutting, fits, type Pattern } from "./problem.ts";

/**
 * Every way to cut a bar to which no further part could be added, each in the cheapest bar that holds it.
 * Other ways are never needed, because a plan may cut more of a part than is asked.
 *
 * @param cutting - the problem: widths and capacities [mm], values [units]
 * @param limit - greatest number of patterns to list [count]
 * @returns the patterns in a fixed order [count of each part], or null when there are more than the limit
 * @throws never
 * Source: gilmore-gomory, pattern formulation
 */
export function listPatterns(cutting: Cutting, limit: number): readonly Pattern[] | null {
  const patterns: Pattern[] = [];
  let below = Number.NEGATIVE_INFINITY;
  for (const bar of cutting.bars) {
    if (!fillBar({ cutting, bar, below, limit, patterns })) return null;
    below = bar.capacity;
  }
  return patterns;
}

interface Listing {
  readonly cutting: Cutting;
  readonly bar: Bar;
  /** Capacity of the next cheaper bar: what fits there is not listed here. */
  readonly below: number;
  readonly limit: number;
  readonly patterns: Pattern[];
}

function fillBar({ cutting, bar, below, limit, patterns }: Listing): boolean {
  const { parts } = cutting;
  const counts = parts.map(() => 0);
  // Branches that end in no pattern count as well, so that the work is bounded and not only its result.
  let steps = 0;
  const search = (index: number, room: number): boolean => {
    steps += 1;
    if (patterns.length > limit || steps > limit * 8) return false;
    const part = parts[index];
    if (part === undefined) {
      const isFull = parts.every((one, at) => (counts[at] ?? 0) >= one.demand || !fits(one.width, room));
      if (isFull && !fits(bar.capacity - room, below)) patterns.push({ counts: [...counts], bar });
      return true;
    }
    let most = 0;
    while (most < part.demand && fits(part.width * (most + 1), room)) most += 1;
    for (let count = most; count >= 0; count -= 1) {
      counts[index] = count;
      if (!search(index + 1, room - part.width * count)) return false;
    }
    counts[index] = 0;
    return true;
  };
  return search(0, bar.capacity) && patterns.length <= limit;
}
