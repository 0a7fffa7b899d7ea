// What do warmth and drying do to the tensions of a climate case, as a case file states it?
import type { AxialStiffness, Mm, Newton } from "../../units/quantity.ts";
import { guardFrame } from "../guard-frame.ts";
import { cableSystem, takeUpsFor, tensionsFor } from "../sequence-solve.ts";
import { closingByShrinkage } from "../settling.ts";
import { changedTensions, closingByTemperature, rigidFrameChange, type StandingCable, type StandingCables } from "../temperature.ts";
import { type FrameCaseInput, guardOfCase } from "./frame-case.ts";

interface PerKelvin {
  readonly "1/K": number;
}

interface Weather {
  readonly cable_alpha: PerKelvin;
  readonly dT: { readonly K: number };
  readonly post_shrinkage_each: { readonly mm: Mm };
  readonly share_of_shrinkage_moving_each_anchor: number;
}

/** The `in` object of a case with one cable between anchors that give way by a stated flexibility. */
export interface LoneClimateInput extends Weather {
  readonly L: { readonly mm: Mm };
  readonly T0: { readonly N: Newton };
  readonly EA: { readonly N: AxialStiffness };
  readonly frame_alpha: PerKelvin;
  readonly frame_closing_flexibility: { readonly "mm/N": number };
}

/** The `in` object of a case with all cables of a frame. */
export interface FrameClimateInput extends Weather {
  readonly T0: { readonly N: readonly Newton[] };
  readonly deck_alpha: PerKelvin;
  readonly rail_alpha: PerKelvin;
  readonly frame_inputs: FrameCaseInput;
}

interface Forces {
  readonly N: readonly Newton[];
}

/** Keyed like the `out` object of a climate case; vectors from the lowest cable up, cables from 1. */
export interface ClimateCaseOutput {
  readonly anchor_closing_before_cables_react: { readonly mm: readonly Mm[] };
  readonly tension: Forces;
  readonly change: Forces;
  readonly slack_cables: readonly number[];
  readonly rigid_frame_change: Forces;
  readonly linear_minus_exact_over_T0: number;
}

/**
 * A climate case solved: what the anchors do before the cables react, the tensions after, the change between rigid anchors, and by how
 * much the linear form differs.
 *
 * @param input - the `in` object of the case, as it stands in its file [keyed by unit], of which mm, N, K, 1/K, mm/N and those
 *   of the frame are read
 * @returns the `out` object of the case in the same units [mm, N, ratio]
 * @throws RangeError when the frame cannot be solved or a length or stiffness is not positive
 * Source: reference-climate; derived, as in changedTensions
 */
export function solveClimateCase(input: LoneClimateInput | FrameClimateInput): ClimateCaseOutput {
  const { standing, closing } = "frame_inputs" in input ? ofFrame(input) : alone(input);
  const change = { warmer: input.dT.K, expansion_perC: input.cable_alpha["1/K"], closing };
  const { tensions, changes, slack } = changedTensions(standing, change);
  const linear = linearTensions(standing, change);
  const largest = Math.max(...standing.cables.map(({ tension }) => tension));
  return {
    anchor_closing_before_cables_react: { mm: closing },
    tension: { N: tensions },
    change: { N: changes },
    slack_cables: slack.map((cable) => cable + 1),
    rigid_frame_change: {
      N: standing.cables.map((cable, index) =>
        rigidFrameChange({
          ...cable,
          expansion_cable_perC: change.expansion_perC,
          expansion_frame_perC: 0,
          warmer: change.warmer,
          closing: closing[index] as number,
        }),
      ),
    },
    linear_minus_exact_over_T0: Math.max(...tensions.map((tension, index) => Math.abs((linear[index] as number) - tension))) / largest,
  };
}

interface Stated {
  readonly standing: StandingCables;
  readonly closing: readonly Mm[];
}

const byShrinkage = ({ post_shrinkage_each, share_of_shrinkage_moving_each_anchor }: Weather): Mm => {
  const end = { shrinkage: post_shrinkage_each.mm, share: share_of_shrinkage_moving_each_anchor };
  return closingByShrinkage([end, end]);
};

function alone(input: LoneClimateInput): Stated {
  const [length, alpha] = [input.L.mm, input.frame_alpha["1/K"]];
  return {
    standing: {
      cables: [{ length, stiffness: input.EA.N, tension: input.T0.N }],
      flexibility: [[input.frame_closing_flexibility["mm/N"]]],
    },
    closing: [0 - alpha * input.dT.K * length + byShrinkage(input)],
  };
}

function ofFrame(input: FrameClimateInput): Stated {
  const guard = guardFrame(guardOfCase(input.frame_inputs));
  const length = input.frame_inputs.run_between_anchorages.mm;
  const stiffness: number = input.frame_inputs.cable_EA.N;
  const closing = closingByTemperature({
    warmer: input.dT.K,
    expansion_deck_perC: input.deck_alpha["1/K"],
    expansion_rail_perC: input.rail_alpha["1/K"],
    perDeckStrain: guard.perDeckStrain.closing,
    perRailStrain: guard.perRailStrain.closing,
  });
  return {
    standing: { cables: input.T0.N.map((tension): StandingCable => ({ length, stiffness, tension })), flexibility: guard.flexibility },
    closing: closing.map((one) => one + byShrinkage(input)),
  };
}

/** The customary form: strain mismatch on the first length, nothing of second order. */
function linearTensions(
  { cables, flexibility }: StandingCables,
  { warmer, expansion_perC, closing }: { readonly warmer: number; readonly expansion_perC: number; readonly closing: readonly Mm[] },
): readonly Newton[] {
  const system = cableSystem({ flexibility, cableFlexibility: cables.map(({ length, stiffness }) => length / stiffness) });
  const before = takeUpsFor(
    system,
    cables.map(({ tension }) => tension),
  );
  const takeUps = cables.map(
    ({ length }, index) => (before[index] as number) - (closing[index] as number) - expansion_perC * warmer * length,
  );
  return tensionsFor(system, takeUps);
}
