// How much of the pull is left along a run that rubs at its bends and bores?
import type { AxialStiffness, Mm, Newton, Radian } from "../units/quantity.ts";

/** Overlaps shorter than this are rounding of computed places along the cable. */
const SAME_mm = 1e-6;

/** A stretch without a bend; between its ends the tension falls or rises exponentially (it is even without wobble). */
export interface TensionSegment {
  readonly from: Mm;
  readonly to: Mm;
  readonly tension_from: Newton;
  readonly tension_to: Newton;
}

export interface TensionProfile {
  readonly segments: readonly TensionSegment[];
  readonly least: Newton;
  readonly leastAt: Mm;
  /** Sum of tension times length: divided by EA it is the stretch. */
  readonly integral_NMm: number;
}

interface RunUnderPull {
  readonly length: Mm;
  readonly bends: readonly { readonly at: Mm; readonly angle: Radian }[];
  readonly friction: number;
  readonly wobble_perMm: number;
  /** Reading at the left-hand end; null when this end only holds. */
  readonly pull_left: Newton | null;
  readonly pull_right: Newton | null;
}

/**
 * Tension along a run: pulled from one end T(x) = T0 exp(-mu sum|angle| - kappa x); pulled from one end and then from the other,
 * the larger of the two falling profiles, which is least where they meet.
 *
 * @param run - length [mm]; bends with their place from the left-hand end [mm] and angle, sign ignored [rad], shape (bends); friction mu
 *   [ratio]; wobble kappa [1/mm]; pull at each end, null where the end only holds [N]
 * @returns segments with places [mm] and tensions [N] in order from left to right, shape (bends + 1, one more where the profiles
 *   meet between bends); least tension [N] and where it first occurs [mm]; integral of the tension along the cable [N mm]
 * @throws RangeError when no end pulls, the length is not positive, a bend is off the run, or friction or wobble is negative
 * Source: Euler-Eytelwein (capstan) with the wobble term of post-tensioning
 */
export function tensionProfile(run: RunUnderPull): TensionProfile {
  refuse(run);
  const bends = run.bends.toSorted((a, b) => a.at - b.at);
  const angle_all = bends.reduce((sum, bend) => sum + Math.abs(bend.angle), 0);
  const segments: TensionSegment[] = [];
  let [from, angle] = [0, 0];
  for (const bend of [...bends, { at: run.length, angle: 0 }]) {
    const left = (at: Mm): Newton => (run.pull_left ?? 0) * Math.exp(-run.friction * angle - run.wobble_perMm * at);
    const right = (at: Mm): Newton =>
      (run.pull_right ?? 0) * Math.exp(-run.friction * (angle_all - angle) - run.wobble_perMm * (run.length - at));
    if (bend.at > from) segments.push(...largerOf({ left, right, from, to: bend.at, wobble_perMm: run.wobble_perMm }));
    angle += Math.abs(bend.angle);
    from = bend.at;
  }
  let [least, leastAt] = [Number.POSITIVE_INFINITY, 0];
  for (const segment of segments) {
    if (segment.tension_from < least) [least, leastAt] = [segment.tension_from, segment.from];
    if (segment.tension_to < least) [least, leastAt] = [segment.tension_to, segment.to];
  }
  return { segments, least, leastAt, integral_NMm: segments.reduce((sum, segment) => sum + integralOf(segment), 0) };
}

/**
 * Tension at one place of a run, by the exponential between the ends of its segment; at a bend, the smaller of its two sides.
 *
 * @param profile - tension along the run, from tensionProfile [N]
 * @param at - place along the cable from the left-hand end [mm]
 * @returns tension [N]
 * @throws RangeError when the place is off the run
 * Source: Euler-Eytelwein (capstan) with the wobble term of post-tensioning
 */
export const tensionAt = (profile: TensionProfile, at: Mm): Newton => Math.min(...tensionsAt(profile, at));

/**
 * Greatest tension at one place of a run: at a bend, the greater of its two sides.
 *
 * @param profile - tension along the run, from tensionProfile [N]
 * @param at - place along the cable from the left-hand end [mm]
 * @returns tension [N]
 * @throws RangeError when the place is off the run
 * Source: Euler-Eytelwein (capstan) with the wobble term of post-tensioning
 */
export const greatestAt = (profile: TensionProfile, at: Mm): Newton => Math.max(...tensionsAt(profile, at));

function tensionsAt({ segments }: TensionProfile, at: Mm): readonly Newton[] {
  const around = segments.filter(({ from, to }) => at >= from - SAME_mm && at <= to + SAME_mm);
  if (around.length === 0) throw new RangeError(`${at} mm is off the run`);
  return around.map((segment) => inside(segment, at));
}

/**
 * Least tension of a stretch of the run; a bend at its very end belongs to it only from the near side.
 *
 * @param profile - tension along the run, from tensionProfile [N]
 * @param from - where the stretch begins, from the left-hand end [mm]
 * @param to - where it ends, from the left-hand end [mm]
 * @returns least tension [N]
 * @throws RangeError when the stretch is off the run
 * Source: Euler-Eytelwein (capstan) with the wobble term of post-tensioning
 */
export function leastBetween(profile: TensionProfile, from: Mm, to: Mm): Newton {
  let least = Number.POSITIVE_INFINITY;
  for (const segment of profile.segments) {
    const [start, end] = [Math.max(from, segment.from), Math.min(to, segment.to)];
    if (end - start > SAME_mm) least = Math.min(least, inside(segment, start), inside(segment, end));
  }
  return least < Number.POSITIVE_INFINITY ? least : tensionAt(profile, from);
}

/**
 * Share of the pull that is left behind a bend: exp(-mu |angle|).
 *
 * @param bend - friction mu [ratio], angle, sign ignored [rad]
 * @returns far tension over near tension [ratio]
 * @throws RangeError when friction is negative
 * Source: Euler-Eytelwein (capstan)
 */
export function capstanRatio({ friction, angle }: { readonly friction: number; readonly angle: Radian }): number {
  if (!(friction >= 0)) throw new RangeError(`friction ${friction} must not be negative`);
  return Math.exp(-friction * Math.abs(angle));
}

/**
 * Loss when a pulled end slips back by a small length and friction p per length then acts the other way:
 * reach x = sqrt(s EA / p), loss at the end 2 p x; when x is beyond the length, the whole run loses: s EA / L + p L.
 *
 * @param end - slip s of the end [mm], axial stiffness EA [N], loss of tension per length p before the slip [N/mm], length L [mm]
 * @returns length that loses tension [mm] and loss at the end itself [N]
 * @throws RangeError when stiffness or length is not positive, or slip or loss per length is negative
 * Valid: the loss per length is taken as even (small friction)
 * Source: anchorage draw-in of post-tensioned tendons
 */
export function drawInLoss({
  slip,
  stiffness,
  loss_NPerMm,
  length,
}: {
  readonly slip: Mm;
  readonly stiffness: AxialStiffness;
  readonly loss_NPerMm: number;
  readonly length: Mm;
}): { readonly reach: Mm; readonly loss: Newton } {
  if (!(stiffness > 0 && length > 0 && slip >= 0 && loss_NPerMm >= 0)) {
    throw new RangeError("draw-in needs a positive stiffness and length, and a slip and friction that are not negative");
  }
  // Also true for a loss of 0 per length: the reach is then without end.
  if (slip * stiffness >= loss_NPerMm * length ** 2) return { reach: length, loss: (slip * stiffness) / length + loss_NPerMm * length };
  const reach = Math.sqrt((slip * stiffness) / loss_NPerMm);
  return { reach, loss: 2 * loss_NPerMm * reach };
}

function refuse({ length, bends, friction, wobble_perMm, pull_left, pull_right }: RunUnderPull): void {
  if (pull_left === null && pull_right === null) throw new RangeError("no end of the run pulls");
  if (!(length > 0)) throw new RangeError(`length ${length} mm must be positive`);
  if (!(friction >= 0 && wobble_perMm >= 0)) throw new RangeError("friction and wobble must not be negative");
  if (!bends.every(({ at }) => at >= 0 && at <= length)) throw new RangeError("a bend is off the run");
}

interface TwoProfiles {
  readonly left: (at: Mm) => Newton;
  readonly right: (at: Mm) => Newton;
  readonly from: Mm;
  readonly to: Mm;
  readonly wobble_perMm: number;
}

/** One segment, or two where the falling and the rising profile meet between bends: left exp(-k d) = right exp(k d). */
function largerOf({ left, right, from, to, wobble_perMm }: TwoProfiles): readonly TensionSegment[] {
  const piece = (start: Mm, end: Mm, profile: (at: Mm) => Newton): TensionSegment => ({
    from: start,
    to: end,
    tension_from: profile(start),
    tension_to: profile(end),
  });
  if (left(to) >= right(to)) return [piece(from, to, left)];
  if (left(from) <= right(from)) return [piece(from, to, right)];
  const meet = from + Math.log(left(from) / right(from)) / (2 * wobble_perMm);
  return [piece(from, meet, left), piece(meet, to, right)];
}

function inside({ from, to, tension_from, tension_to }: TensionSegment, at: Mm): Newton {
  const share = Math.min(1, Math.max(0, (at - from) / (to - from)));
  return tension_from === 0 ? 0 : tension_from * (tension_to / tension_from) ** share;
}

function integralOf({ from, to, tension_from, tension_to }: TensionSegment): number {
  const fall = tension_from === 0 ? 0 : Math.log(tension_to / tension_from);
  return tension_from * (to - from) * (fall === 0 ? 1 : Math.expm1(fall) / fall);
}
