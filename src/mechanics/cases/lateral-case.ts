// What does a span do under a side load, asked and answered in the words of a reference file?
import type { Mm, Newton } from "../../units/quantity.ts";
import { deflectionUnder } from "../lateral.ts";

export interface LateralCaseInput {
  readonly span: { readonly mm: Mm };
  /** slide: one tension over the whole run; clamped: the loaded span alone. */
  readonly supports: "slide" | "clamped";
  readonly run: { readonly mm: Mm };
  readonly T0: { readonly N: Newton };
  readonly P: { readonly N: Newton };
  readonly EA: { readonly N: number };
}

/**
 * Family 2, a span under a side load at its middle: weightless cable, rigid supports.
 *
 * @param input - a case's `in` as it stands in its file; its SI keys are read [mm, N]
 * @returns deflection [mm], tension and its rise [N], linear over true deflection [1], keyed as the case's `out`
 * @throws RangeError as deflectionUnder does
 * Source: reference-lateral, as fed by its notes
 */
export function solveLateralCase(input: LateralCaseInput): {
  readonly deflection: { readonly mm: Mm };
  readonly tension: { readonly N: Newton };
  readonly tension_rise: { readonly N: Newton };
  readonly small_load_formula_over_true: number;
} {
  const [span, tension, force] = [input.span.mm, input.T0.N, input.P.N];
  const support = input.supports === "slide" ? "sliding" : "held";
  const found = deflectionUnder({ span, tension, stiffness: input.EA.N, runLength: input.run.mm, support, force });
  return {
    deflection: { mm: found.deflection },
    tension: { N: found.tension },
    tension_rise: { N: found.tension - tension },
    small_load_formula_over_true: (force * span) / (4 * tension) / found.deflection,
  };
}
