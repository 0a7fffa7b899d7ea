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
 * Root of a function that is below zero at the low end and rises through zero once: inverse quadratic interpolation where the last
 * three points allow it, else bisection, so that the bracket closes in any case.
 *
 * @param search - function f [any], low end [any] and high end [any] of the bracket, precision of the root [ratio]
 * @returns the end of the last bracket at which f is not below zero [any]
 * @throws never
 * Source: chandrupatla-1997, the rule that chooses between the two steps
 */
export function risingRoot({ of, low, high, precision = Number.EPSILON }: Search): number {
  let [below, above, before] = [low, high, low];
  let [atBelow, atAbove, atBefore] = [of(low), of(high), 0];
  let share = 0.5;
  for (let step = 0; step < HALVINGS_max; step++) {
    // A step that lands just beside an end would leave the other end where it was.
    const least = Math.max((precision * Math.abs(above)) / 2, Number.EPSILON * Math.abs(above)) / Math.abs(above - below);
    const value = below + (above - below) * Math.min(1 - least, Math.max(least, share));
    if (value <= below || value >= above || above - below <= precision * Math.abs(above)) break;
    const at = of(value);
    if (at < 0) [before, atBefore, below, atBelow] = [below, atBelow, value, at];
    else [before, atBefore, above, atAbove] = [above, atAbove, value, at];
    share = nextShare({ below, above, before, atBelow, atAbove, atBefore });
  }
  return above;
}

interface Bracket {
  readonly below: number;
  readonly above: number;
  /** The end that was given up last. */
  readonly before: number;
  readonly atBelow: number;
  readonly atAbove: number;
  readonly atBefore: number;
}

/** Where in the bracket to look next, as a share of its width from its low end. */
function nextShare({ below, above, before, atBelow, atAbove, atBefore }: Bracket): number {
  const newestIsBelow = before < below;
  const [newest, atNewest, other, atOther] = newestIsBelow ? [below, atBelow, above, atAbove] : [above, atAbove, below, atBelow];
  const place = (newest - other) / (before - other);
  const height = (atNewest - atOther) / (atBefore - atOther);
  // The published test that the parabola through the three points rises all the way across the bracket.
  if (!(height ** 2 < place && (1 - height) ** 2 < 1 - place)) return 0.5;
  const fromNewest =
    (atNewest / (atOther - atNewest)) * (atBefore / (atOther - atBefore)) +
    ((before - newest) / (other - newest)) * (atNewest / (atBefore - atNewest)) * (atOther / (atBefore - atOther));
  return newestIsBelow ? fromNewest : 1 - fromNewest;
}

/** The golden ratio less one: both inner points of a bracket can be used again. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** The top is flat: its height is then known to the square of this. */
const TOP_precision = 1e-6;

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
  const [atLow, atHigh] = [of(low), of(high)];
  const best = Math.max(atLeft, atRight, atLow, atHigh);
  if (atHigh === best) return high;
  return atLow === best ? low : inside;
}
