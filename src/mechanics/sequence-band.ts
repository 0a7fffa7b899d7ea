// How far may the readings of a compensated pass be off so that the cables still end within a band of their targets?
import { conjugate, conjugation } from "./order-search-figures.ts";
import { COMPENSATED, type Tightening, tightenInPasses } from "./sequence.ts";
import { type CableSystem, entry, takeUpsFor, tensionsFor } from "./sequence-solve.ts";

export interface ReadingErrors {
  /** For each step, in the order of pulling: worst error that the end has, as a share of target, per share that this reading is off. */
  readonly perStep: readonly number[];
  /** The same when every reading is off by the same share, each to the side that is worst; the end's band over this is every step's. */
  readonly all: number;
}

/** Small enough to slacken no cable, and the answer is linear. */
const PROBE_share = 1e-3;

/**
 * What a reading that is off does to the end of one compensated pass: a reading too high by d at step k leaves a take-up too great by
 * d p_k (p_k what the cable gives then, with those tightened before), and the tensions of the end change by (diag(L/EA) + F)^-1 of it.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @returns worst share of error at the end per share of error of each reading, in the order of pulling, and of all of them [ratio]
 * @throws RangeError when the order does not name every cable once, or a target is not positive
 * Valid: while no cable hangs slack; a gauge that is off by the same share in all readings only scales all tensions by it
 * Source: derived, complementarity of tension and slack
 */
export function readingErrors(system: CableSystem, { order, target }: Tightening): ReadingErrors {
  const steps = tightenInPasses(system, { order, target }, [COMPENSATED]);
  const takeUps = takeUpsFor(system, target);
  const work = conjugation(system);
  work.order.set(order);
  const sums = new Float64Array(system.count);
  const perStep = steps.map(({ cable, reading }, place) => {
    conjugate(work, place);
    const probe = PROBE_share * reading * entry(work.pivots, place);
    const tensions = tensionsFor(system, takeUps.with(cable, (takeUps[cable] as number) + probe));
    const errors = tensions.map((tension, other) => Math.abs(tension / (target[other] as number) - 1) / PROBE_share);
    for (const [other, error] of errors.entries()) sums[other] = entry(sums, other) + error;
    return Math.max(...errors);
  });
  return { perStep, all: Math.max(...sums) };
}
