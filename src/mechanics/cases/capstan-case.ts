// What is left of a pull along a run, asked and answered in the words of a reference file?
import type { Mm, Newton } from "../../units/quantity.ts";
import { type TensionProfile, tensionProfile } from "../corner.ts";
import { pick } from "../frame-pick.ts";

export interface CapstanCaseInput {
  readonly run: { readonly mm: Mm };
  readonly bends_from_A: readonly { readonly at: { readonly mm: Mm }; readonly angle_deg: number }[];
  readonly mu: number;
  readonly pull: { readonly N: Newton };
  readonly EA: { readonly N: number };
}

interface PulledRun {
  readonly segment_tension: { readonly N: readonly Newton[] };
  readonly elongation_total: { readonly mm: Mm };
  readonly least_segment: readonly number[];
  readonly least_tension: { readonly N: Newton };
  readonly least_over_pull: number;
}

/** Segments within this share of the least tie with it. */
const TIE_share = 1e-9;
const HALF_TURN_deg = 180;

/**
 * Family 4, friction along a run: pulled from A, from B, and from A, locked, then from B.
 *
 * @param input - a case's `in` as it stands in its file; its SI keys are read [mm, deg, N]
 * @returns tension of each segment [N], stretch [mm] and least tension [N] for each way of pulling, keyed as the case's `out`
 * @throws RangeError as tensionProfile does
 * Source: reference-capstan, as fed by its notes
 */
export function solveCapstanCase(input: CapstanCaseInput): {
  readonly pulled_from_A: PulledRun;
  readonly pulled_from_B: PulledRun;
  readonly pulled_from_A_then_B: PulledRun & {
    readonly drawn_in_at_A: { readonly mm: Mm };
    readonly drawn_in_at_B: { readonly mm: Mm };
    readonly segments_raised_by_second_pull: readonly number[];
  };
} {
  const pulled = (from: "A" | "B" | "both"): TensionProfile =>
    tensionProfile({
      length: input.run.mm,
      bends: input.bends_from_A.map(({ at, angle_deg }) => ({ at: at.mm, angle: (angle_deg * Math.PI) / HALF_TURN_deg })),
      friction: input.mu,
      wobble_perMm: 0,
      pull_left: from === "B" ? null : input.pull.N,
      pull_right: from === "A" ? null : input.pull.N,
    });
  const [fromA, fromB, both] = [pulled("A"), pulled("B"), pulled("both")];
  const stretch = ({ integral_NMm }: TensionProfile): Mm => integral_NMm / input.EA.N;
  const told = (profile: TensionProfile): PulledRun => ({
    segment_tension: { N: profile.segments.map(({ tension_from }) => tension_from) },
    elongation_total: { mm: stretch(profile) },
    least_segment: profile.segments.flatMap(({ tension_from }, index) =>
      tension_from <= profile.least * (1 + TIE_share) ? [index + 1] : [],
    ),
    least_tension: { N: profile.least },
    least_over_pull: profile.least / input.pull.N,
  });
  return {
    pulled_from_A: told(fromA),
    pulled_from_B: told(fromB),
    pulled_from_A_then_B: {
      ...told(both),
      drawn_in_at_A: { mm: stretch(fromA) },
      drawn_in_at_B: { mm: stretch(both) - stretch(fromA) },
      // Without wobble both ways of pulling have a segment between each two bends.
      segments_raised_by_second_pull: both.segments.flatMap(({ tension_from }, index) =>
        tension_from > pick(fromA.segments, index).tension_from * (1 + TIE_share) ? [index + 1] : [],
      ),
    },
  };
}
