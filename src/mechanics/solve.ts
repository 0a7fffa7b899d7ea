// Where does a function of one number cross zero, and where is it greatest?

/** Halvings after which doubles cannot be told apart any more. */
const HALVINGS_max = 200;

interface Search {
  readonly of: (value: number) => number;
  readonly low: number;
  readonly high: number;
  /** Width of the bracket at which to stop, as a share of its larger end. */
  readonly precision?: number;
}

/**
 * Root of a function that is below zero at the low end and rises through zero once: bisection.
 *
 * @param search - function f [any], low end [any] and high end of the bracket [any], precision of the root [ratio]
 * @returns the end of the last bracket at which f is not below zero [any]
 * @throws never
 * Source: derived, bisection
 */
export function risingRoot({ of, low, high, precision = Number.EPSILON }: Search): number {
  let [below, above] = [low, high];
  for (let step = 0; step < HALVINGS_max; step++) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above || above - below <= precision * Math.abs(above)) break;
    if (of(middle) < 0) below = middle;
    else above = middle;
  }
  return above;
}

/** The golden ratio less one: both inner points of a bracket can be used again. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Nearer to a flat top than the root of the machine's precision nothing can be told apart. */
const TOP_precision = 2e-9;

/**
 * Place of the greatest value of a function with a single hill: golden section, the ends included.
 *
 * @param search - function f [any], low end [any] and high end [any], precision of the place [ratio]
 * @returns place of the greatest value [any]
 * @throws never
 * Source: derived, golden section search
 */
export function topOf({ of, low, high, precision = TOP_precision }: Search): number {
  let [from, to] = [low, high];
  let [left, right] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
  let [atLeft, atRight] = [of(left), of(right)];
  const width = precision * (high - low);
  while (to - from > width) {
    if (atLeft >= atRight) {
      to = right;
      right = left;
      atRight = atLeft;
      left = to - GOLDEN * (to - from);
      atLeft = of(left);
    } else {
      from = left;
      left = right;
      atLeft = atRight;
      right = from + GOLDEN * (to - from);
      atRight = of(right);
    }
  }
  const inside = atLeft >= atRight ? left : right;
  const best = Math.max(of(inside), of(low), of(high));
  return [high, low].find((end) => of(end) === best) ?? inside;
}
