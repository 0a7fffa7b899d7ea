// How does one span of a tensioned cable answer to a sideways push?
import type { AxialStiffness, Mm, Newton } from "../units/quantity.ts";

/** held: the loaded span alone stretches. sliding: the whole run shares the stretch through its bores. */
export type Support = "held" | "sliding";

/** A span of a cable before the push. */
export interface SpanUnderTension {
  readonly span: Mm;
  /** Distance of the push from the left-hand end of the span; the middle when left out. */
  readonly at?: Mm;
  readonly tension: Newton;
  readonly stiffness: AxialStiffness;
  /** Length that shares the stretch when the supports let the cable slide. */
  readonly runLength: Mm;
  readonly support: Support;
}

/** Newton's method doubles its digits each step; bisection needs about 60. */
const STEPS_max = 120;

/**
 * Force that holds a span at a given deflection, exact for large deflections: P = T (d/s1 + d/s2) with s1 = sqrt(x^2 + d^2),
 * s2 = sqrt((L - x)^2 + d^2) and T = T0 + (EA + T0) (s1 + s2 - L) / R, which is EA times the strain on the unstressed length of the
 * stretch R (the span, or the run when it slides).
 *
 * @param load - span L [mm], place x of the push from its left-hand end [mm], deflection d [mm], tension T0 before the push [N], axial
 *   stiffness EA [N], length R of the run [mm], support [word]
 * @returns force P [N] and tension T under it [N]
 * @throws RangeError when span, place, tension, stiffness, run or deflection is out of range
 * Valid: supports rigid, no weight, no bending stiffness, no friction along the cable
 * Source: derived, statics of a two-segment string
 */
export function lateralResponse(load: SpanUnderTension & { readonly deflection: Mm }): {
  readonly force: Newton;
  readonly tension: Newton;
} {
  refuseSpan(load);
  if (!(load.deflection >= 0)) throw new RangeError(`deflection ${load.deflection} mm must not be negative`);
  const { force, tension } = springOf(load)(load.deflection);
  return { force, tension };
}

/**
 * Deflection and tension of a span under a given force: the root d of P(d) = force, see lateralResponse.
 *
 * @param load - span [mm], place of the push from its left-hand end [mm], force [N], tension before the push [N], axial stiffness [N],
 *   length of the run [mm], support [word]
 * @returns deflection [mm] and tension [N] under the force
 * @throws RangeError when span, place, tension, stiffness, run or force is out of range
 * Valid: as lateralResponse
 * Source: derived, statics of a two-segment string
 */
export function deflectionUnder(load: SpanUnderTension & { readonly force: Newton }): {
  readonly deflection: Mm;
  readonly tension: Newton;
} {
  refuseSpan(load);
  if (!(load.force >= 0)) throw new RangeError(`force ${load.force} N must not be negative`);
  if (load.force === 0) return { deflection: 0, tension: load.tension };
  const spring = springOf(load);
  let [low, high]: [Mm, Mm] = [0, load.span / 64];
  while (spring(high).force < load.force) [low, high] = [high, 2 * high];
  let deflection = high;
  for (let step = 0; step < STEPS_max; step++) {
    const { force, stiffness } = spring(deflection);
    if (force < load.force) low = deflection;
    else high = deflection;
    const newton = deflection - (force - load.force) / stiffness;
    const next = newton > low && newton < high ? newton : low + (high - low) / 2;
    const done = Math.abs(next - deflection) <= 2 * Number.EPSILON * next;
    deflection = next;
    if (done) break;
  }
  return { deflection, tension: spring(deflection).tension };
}

/** What a deflected span holds: force, tension, and the slope of the force. */
interface Held {
  readonly force: Newton;
  readonly tension: Newton;
  readonly stiffness: number;
}

/**
 * The span as a spring: force, tension and slope at a deflection, without checks, for searches that ask many times.
 *
 * @param load - span [mm], place of the push [mm], tension before it [N], axial stiffness [N], length of the run [mm], support [word]
 * @returns function of the deflection [mm] that gives force [N], tension [N] and slope of the force [N/mm]
 * @throws never
 * Source: derived, statics of a two-segment string
 */
export function springOf({ span, at = span / 2, tension, stiffness, runLength, support }: SpanUnderTension): (deflection: Mm) => Held {
  const rest = span - at;
  // EA times the strain of the unstressed length is linear in the length change; see the docstring of lateralResponse.
  const rise = (stiffness + tension) / (support === "held" ? span : runLength);
  return (deflection) => {
    const square = deflection * deflection;
    const left = Math.sqrt(at * at + square);
    const right = Math.sqrt(rest * rest + square);
    // Written without the difference of two nearly equal lengths.
    const longer = square / (left + at) + square / (right + rest);
    const sines = deflection / left + deflection / right;
    const now = tension + rise * longer;
    const slope = (at * at) / (left * left * left) + (rest * rest) / (right * right * right);
    return { force: now * sines, tension: now, stiffness: rise * sines * sines + now * slope };
  };
}

/**
 * Refuses a span that cannot be: the checks of every function that pushes on one.
 *
 * @param load - span [mm], place of the push [mm], tension [N], axial stiffness [N], length of the run [mm], support [word]
 * @returns nothing [none]
 * @throws RangeError when the push is off the span, the tension negative, the stiffness not positive or a sliding run too short
 * Source: derived, limits of lateralResponse
 */
export function refuseSpan({ span, at = span / 2, tension, stiffness, runLength, support }: SpanUnderTension): void {
  if (!(at > 0 && at < span)) throw new RangeError(`a push at ${at} mm is not inside a span of ${span} mm`);
  if (!(tension >= 0 && stiffness > 0)) throw new RangeError(`tension ${tension} N and axial stiffness ${stiffness} N are out of range`);
  if (support === "sliding" && !(runLength >= span))
    throw new RangeError(`a run of ${runLength} mm is shorter than its span of ${span} mm`);
}
