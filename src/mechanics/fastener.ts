// Which force must a fastener hold, and with which does it come out of the wood?
import type { Mm, Newton } from "../units/quantity.ts";

/**
 * Withdrawal from side grain: W = constant x G^a x D^b for each mm of thread or shank in the main piece, times its length there, times the
 * factors of use.
 *
 * @param fastener - rule: constant for W [N/mm] with D [mm], powers a and b [1]; specific gravity G [1], diameter D [mm], length in the main
 *   piece without the tip [mm], product of the adjustment factors [1]
 * @returns reference value for each length W [N/mm], allowable force [N]
 * @throws RangeError when the gravity, the diameter or the length is not positive
 * Source: nds-2018, 12.2.1 (lag screw) and 12.2.3 (nail)
 */
export function withdrawal(fastener: {
  readonly rule: { readonly constant: number; readonly gravityPower: number; readonly diameterPower: number };
  readonly gravity: number;
  readonly diameter: Mm;
  readonly penetration: Mm;
  readonly factor?: number;
}): { readonly perLength_NPerMm: number; readonly force: Newton } {
  const { rule, gravity, diameter, penetration, factor = 1 } = fastener;
  if (!(gravity > 0 && diameter > 0 && penetration > 0)) throw new RangeError("gravity, diameter and length in the wood must be positive");
  const perLength_NPerMm = rule.constant * gravity ** rule.gravityPower * diameter ** rule.diameterPower;
  return { perLength_NPerMm, force: perLength_NPerMm * penetration * factor };
}

/**
 * Force in each of two fastenings that hold a moment together: F = M / arm. A demand: what the hardware holds stands in its own report.
 *
 * @param couple - moment at the base [N mm], arm: distance between the two forces [mm]
 * @returns force in each [N]
 * @throws RangeError when the arm is not positive
 * Source: derived, a couple
 */
export function coupleForce({ moment_Nmm, arm }: { readonly moment_Nmm: number; readonly arm: Mm }): Newton {
  if (!(arm > 0)) throw new RangeError(`arm ${arm} mm must be positive`);
  return Math.abs(moment_Nmm) / arm;
}
