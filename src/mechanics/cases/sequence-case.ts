// What does the order of tightening come to in a frame case, as a case file states it?
import type { Newton } from "../../units/quantity.ts";
import { guardFrame } from "../guard-frame.ts";
import { type PassResult, passesToWithin, plainPassesUntil, stepTargets, type Tightening } from "../sequence.ts";
import { namedOrders } from "../sequence-order.ts";
import { type CableSystem, cableSystem } from "../sequence-solve.ts";
import { type FrameCaseInput, guardOfCase } from "./frame-case.ts";

const ORDERS = {
  top_to_bottom: namedOrders.topToBottom,
  bottom_to_top: namedOrders.bottomToTop,
  centre_outwards: namedOrders.centreOutwards,
  outside_in: namedOrders.outsideIn,
} as const;

interface Forces {
  readonly N: readonly Newton[];
}

/** Keyed like one order of the `out` object: cables from 1, the lowest; vectors from the lowest cable up. */
export interface SequenceCaseOrder {
  readonly order: readonly number[];
  readonly tension_after_one_pass: Forces;
  readonly slack_after_one_pass: readonly number[];
  readonly first_cable_left_with: number;
  readonly least_over_target: number;
  readonly mean_over_target: number;
  readonly passes_to_5pct: number | null;
  readonly passes_to_10pct: number | null;
  readonly least_over_target_by_pass: readonly number[];
  readonly one_pass_step_targets_by_cable: Forces;
  readonly largest_step_target_over_target: number;
  readonly second_pass_step_targets_by_cable: Forces;
  readonly largest_second_pass_target_over_target: number;
  /** Errors at the pass that is within 5 % or 10 % and at the one before: worst_error_at_pass_2 and so on. */
  readonly [worst_error_at_pass: `worst_error_at_pass_${number}`]: number;
}

export interface SequenceCaseOutput {
  readonly orders: Readonly<Record<keyof typeof ORDERS, SequenceCaseOrder>>;
}

/** Passes whose least tension a case lists. */
const LISTED_passes = 8;

/**
 * A frame case's orders of tightening: every order with its plain passes and its step targets.
 *
 * @param input - the `in` object of the case, as it stands in its file [keyed by unit], of which mm, mm^2, mm^4, MPa, N and
 *   N.mm/rad are read
 * @param flexibility - F of the frame where it is known already, else it is solved from the input [mm/N], shape (cables, cables)
 * @returns the `orders` of the `out` object of the case in the same units [N, ratio, count]
 * @throws RangeError when the frame cannot be solved or F does not fit the cables
 * Source: reference-sequence; derived, as in tightenInPasses
 */
export function solveSequenceCase(
  input: FrameCaseInput,
  flexibility: readonly (readonly number[])[] = guardFrame(guardOfCase(input)).flexibility,
): SequenceCaseOutput {
  const own = input.run_between_anchorages.mm / input.cable_EA.N;
  const target = input.cable_heights.mm.map(() => input.target.N);
  const system = cableSystem({ flexibility, cableFlexibility: target.map(() => own) });
  const solved = (name: keyof typeof ORDERS): SequenceCaseOrder => solveOrder(system, { order: ORDERS[name](target.length), target });
  return {
    orders: {
      top_to_bottom: solved("top_to_bottom"),
      bottom_to_top: solved("bottom_to_top"),
      centre_outwards: solved("centre_outwards"),
      outside_in: solved("outside_in"),
    },
  };
}

function solveOrder(system: CableSystem, tightening: Tightening): SequenceCaseOrder {
  const { order, target } = tightening;
  const passes = plainPassesUntil(system, tightening, { within: 0.05, passes_min: LISTED_passes });
  const [passes_to_5pct, passes_to_10pct] = [passesToWithin(passes, 0.05), passesToWithin(passes, 0.1)];
  const first = passes[0] as PassResult;
  const [one, second] = [stepTargets(system, tightening), stepTargets(system, tightening, 1)];
  const overTarget = (readings: readonly Newton[]): number =>
    Math.max(...readings.map((reading, cable) => reading / (target[cable] as number)));
  const told = [passes_to_5pct, passes_to_10pct].flatMap((pass) => (pass === null ? [] : [pass, pass - 1])).filter((pass) => pass > 0);
  const errors = told.map((pass) => [`worst_error_at_pass_${pass}`, (passes[pass - 1] as PassResult).worstError] as const);
  const pulledFirst = order[0] as number;
  return {
    order: order.map((cable) => cable + 1),
    tension_after_one_pass: { N: first.tensions },
    slack_after_one_pass: first.slack.map((cable) => cable + 1),
    first_cable_left_with: (first.tensions[pulledFirst] as number) / (target[pulledFirst] as number),
    least_over_target: first.least_overTarget,
    mean_over_target: first.mean_overTarget,
    passes_to_5pct,
    passes_to_10pct,
    ...Object.fromEntries(errors),
    least_over_target_by_pass: passes.slice(0, LISTED_passes).map(({ least_overTarget }) => least_overTarget),
    one_pass_step_targets_by_cable: { N: one },
    largest_step_target_over_target: overTarget(one),
    second_pass_step_targets_by_cable: { N: second },
    largest_second_pass_target_over_target: overTarget(second),
  };
}
