// What pushes a sphere between two cables, asked and answered in the words of a reference file?
import type { Mm, Newton } from "../../units/quantity.ts";
import { pushAtAngle, pushThroughForce, tensionForPush } from "../push-through.ts";

interface SphereInput {
  readonly spacing_centres: { readonly mm: Mm };
  readonly cable_d: { readonly mm: Mm };
  readonly span: { readonly mm: Mm };
  readonly position_fraction_of_span: number;
  readonly EA: { readonly N: number };
  readonly run_length_sharing_tension: { readonly mm: Mm };
  readonly sphere_D: { readonly mm: Mm };
}

export type SphereCaseInput = SphereInput &
  ({ readonly T0: { readonly N: Newton } } | { readonly required_peak_force: { readonly N: Newton } });

interface SphereCaseOutput {
  readonly peak_push_force: { readonly N: Newton };
  readonly peak_force_point_contact: { readonly N: Newton };
  readonly peak_force_linear_formula: { readonly N: Newton };
  readonly sphere_centre_short_of_cable_plane_at_peak: { readonly mm: Mm };
  readonly cable_tension_at_peak: { readonly N: Newton };
  readonly cable_tension_when_centre_is_in_plane: { readonly N: Newton };
  readonly work_to_pass: { readonly "N.mm": number };
}

/** Pieces of the way over which the work is summed. */
const WORK_steps = 2000;

/**
 * Family 3, a sphere between two like cables: contact at a point, so both peaks are that of point contact; or, where a peak is asked for,
 * the tension that it needs.
 *
 * @param input - a case's `in` as it stands in its file; its SI keys are read [mm, N]
 * @returns peak force [N], where the sphere is then [mm], tensions [N] and the work until it passes [N mm], or the tension needed [N],
 *   keyed as the case's `out`
 * @throws RangeError as pushThroughForce does
 * Source: reference-sphere, as fed by its notes
 */
export function solveSphereCase(input: SphereCaseInput): SphereCaseOutput | { readonly T0_needed: { readonly N: Newton } } {
  const push = {
    solid: { kind: "sphere", diameter: input.sphere_D.mm },
    spacing: input.spacing_centres.mm,
    cableDiameter: input.cable_d.mm,
    span: input.span.mm,
    at: input.span.mm * input.position_fraction_of_span,
    stiffness: input.EA.N,
    runLength: input.run_length_sharing_tension.mm,
    support: "sliding",
  } as const;
  if ("required_peak_force" in input) return { T0_needed: { N: tensionForPush({ ...push, force: input.required_peak_force.N }) } };
  const pushed = { ...push, tension: input.T0.N };
  const peak = pushThroughForce(pushed);
  const start = Math.acos(push.spacing / (push.solid.diameter + push.cableDiameter));
  const states = Array.from({ length: WORK_steps + 1 }, (_, index) => pushAtAngle({ ...pushed, normal: start * (1 - index / WORK_steps) }));
  const work = states.reduce((sum, { force, toGo }, index) => {
    const next = states[index + 1];
    return next === undefined ? sum : sum + ((force + next.force) / 2) * (toGo - next.toGo);
  }, 0);
  return {
    peak_push_force: { N: peak.force },
    peak_force_point_contact: { N: peak.force },
    // Only a cone has no linear formula.
    peak_force_linear_formula: { N: Number(peak.linear) },
    sphere_centre_short_of_cable_plane_at_peak: { mm: peak.toGo },
    cable_tension_at_peak: { N: peak.tension_peak },
    cable_tension_when_centre_is_in_plane: { N: pushAtAngle({ ...pushed, normal: 0 }).tension_peak },
    work_to_pass: { "N.mm": work },
  };
}
