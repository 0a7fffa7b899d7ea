// What does each cable carry after every step of a tightening, and at which readings must the crew stop to end with all at target?
import type { Mm, Newton } from "../units/quantity.ts";
import { type CableSystem, LOOSE, pullTo, takeUpsFor, tensionsFor } from "./sequence-solve.ts";

/** plain: every cable to a share of its target. compensated: every cable to the reading that leaves it at target when the pass ends. */
export type PassKind = { readonly kind: "plain"; readonly share: number } | { readonly kind: "compensated" };

export const PLAIN: PassKind = { kind: "plain", share: 1 };
export const COMPENSATED: PassKind = { kind: "compensated" };

export interface TighteningStep {
  /** From 1. */
  readonly pass: number;
  readonly kind: PassKind["kind"];
  /** From 0, the lowest. */
  readonly cable: number;
  /** What the gauge reads on this cable when the nut stops. */
  readonly reading: Newton;
  /** Of this cable, from slack. */
  readonly takeUp: Mm;
  /** Of all cables after the step. */
  readonly tensions: readonly Newton[];
}

export interface Tightening {
  /** Cables in the order in which they are pulled, from 0. */
  readonly order: readonly number[];
  /** Of each cable, from the lowest. */
  readonly target: readonly Newton[];
}

/**
 * Every step of a tightening that starts with all cables slack: a pulled cable keeps its take-up, T_i L_i/EA_i + sum F_ij T_j = u_i.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @param passes - what is done in each pass over all cables [word, share]
 * @returns steps in their order with reading [N], take-up [mm] and the tensions after it [N], shape (passes x cables)
 * @throws RangeError when the order does not name every cable once, or a target is not positive
 * Valid: linear frame, no friction along the cable, no error of the gauge
 * Source: derived, complementarity of tension and slack; derived from the same system: step targets are the readings on the way to
 *   u* = (diag(L/EA) + F) T*
 */
export function tightenInPasses(system: CableSystem, tightening: Tightening, passes: readonly PassKind[]): readonly TighteningStep[] {
  const state = slackState(system, tightening);
  return passes.flatMap((kind, index) => runPass(state, kind, index + 1));
}

interface Running {
  readonly system: CableSystem;
  readonly tightening: Tightening;
  readonly takeUps: Mm[];
  readonly takeUps_end: readonly Mm[];
}

function slackState(system: CableSystem, tightening: Tightening): Running {
  refuse(system, tightening);
  const { target } = tightening;
  return { system, tightening, takeUps: target.map(() => LOOSE), takeUps_end: takeUpsFor(system, target) };
}

/** Pulls each cable once and keeps its take-up in the state. */
function runPass({ system, tightening, takeUps, takeUps_end }: Running, kind: PassKind, pass: number): readonly TighteningStep[] {
  return tightening.order.map((cable): TighteningStep => {
    if (kind.kind === "plain") {
      const reading = kind.share * (tightening.target[cable] as number);
      const { takeUp, tensions } = pullTo(system, takeUps, { cable, reading });
      takeUps[cable] = takeUp;
      return { pass, kind: kind.kind, cable, reading, takeUp, tensions };
    }
    const takeUp = takeUps_end[cable] as number;
    takeUps[cable] = takeUp;
    const tensions = tensionsFor(system, takeUps);
    return { pass, kind: kind.kind, cable, reading: tensions[cable] as number, takeUp, tensions };
  });
}

/**
 * Readings at which to stop each cable so that the pass ends with all at target: at step k the cables tightened so far stand at u*
 * (those of an earlier plain pass at what it left), and T_k is read.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @param plainBefore - plain passes to the full target before the compensated one, none when left out [count]
 * @returns reading of each cable in the compensated pass, from the lowest [N], shape (cables)
 * @throws RangeError when the order does not name every cable once, or a target is not positive
 * Source: derived, u* = (diag(L/EA) + F) T*
 */
export function stepTargets(system: CableSystem, tightening: Tightening, plainBefore = 0): readonly Newton[] {
  const passes = [...Array.from({ length: plainBefore }, () => PLAIN), COMPENSATED];
  const readings = tightening.target.map(() => 0);
  for (const step of tightenInPasses(system, tightening, passes)) {
    if (step.kind === "compensated") readings[step.cable] = step.reading;
  }
  return readings;
}

export interface PassResult {
  readonly tensions: readonly Newton[];
  /** Greatest difference from its target that a cable has, as a share of it. */
  readonly worstError: number;
  readonly least_overTarget: number;
  readonly mean_overTarget: number;
  /** Cables that hang slack, from 0. */
  readonly slack: readonly number[];
}

/**
 * Where plain passes to the full target leave the cables: after each whole pass, tensions and errors.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @param count - number of passes [count]
 * @returns a result for each pass: tensions [N], errors and shares of the target [ratio], slack cables [index], shape (passes)
 * @throws RangeError when the order does not name every cable once, or a target is not positive
 * Source: derived, complementarity of tension and slack
 */
export function plainPasses(system: CableSystem, tightening: Tightening, count: number): readonly PassResult[] {
  const state = slackState(system, tightening);
  return Array.from({ length: count }, (_, index) => plainPass(state, index + 1));
}

/** Each plain pass shrinks what is missing; a frame on which so many do not suffice is not tightened this way. */
const PASSES_max = 50;

/**
 * Plain passes to the full target, as many as it takes until every cable is within a share of its target, 50 at most.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @param until - allowed difference from the target, as a share of it [ratio], least number of passes [count]
 * @returns a result for each pass: tensions [N], errors and shares of the target [ratio], slack cables [index], shape (passes)
 * @throws RangeError when the order does not name every cable once, or a target is not positive
 * Source: derived, complementarity of tension and slack
 */
export function plainPassesUntil(
  system: CableSystem,
  tightening: Tightening,
  until: { readonly within: number; readonly passes_min: number },
): readonly PassResult[] {
  const state = slackState(system, tightening);
  const results: PassResult[] = [];
  let error = Number.POSITIVE_INFINITY;
  while (results.length < until.passes_min || (error > until.within && results.length < PASSES_max)) {
    const result = plainPass(state, results.length + 1);
    results.push(result);
    error = result.worstError;
  }
  return results;
}

/**
 * Passes needed until every cable is within a share of its target, judged after whole passes.
 *
 * @param results - of plain passes, from plainPassesUntil [N, ratio], shape (passes)
 * @param within - allowed difference from the target, as a share of it [ratio]
 * @returns passes [count], null when those are not enough
 * @throws never
 * Source: derived, counting
 */
export function passesToWithin(results: readonly PassResult[], within: number): number | null {
  const found = results.findIndex(({ worstError }) => worstError <= within);
  return found < 0 ? null : found + 1;
}

const plainPass = (state: Running, pass: number): PassResult =>
  passResult((runPass(state, PLAIN, pass).at(-1) as TighteningStep).tensions, state.tightening.target);

function passResult(tensions: readonly Newton[], target: readonly Newton[]): PassResult {
  const shares = tensions.map((tension, cable) => tension / (target[cable] as number));
  return {
    tensions,
    worstError: Math.max(...shares.map((share) => Math.abs(share - 1))),
    least_overTarget: Math.min(...shares),
    mean_overTarget: shares.reduce((sum, share) => sum + share, 0) / shares.length,
    slack: tensions.flatMap((tension, cable) => (tension === 0 ? [cable] : [])),
  };
}

function refuse({ count }: CableSystem, { order, target }: Tightening): void {
  const named = new Set(order.filter((cable) => cable in target));
  if (target.length !== count || order.length !== count || named.size !== count) {
    throw new RangeError(`the order must name each of ${count} cables once, and each needs a target`);
  }
  if (!target.every((tension) => tension > 0)) throw new RangeError("a target tension must be positive");
}
