// Do the forces on a solved frame hold each other in balance?
import type { Mm, Newton } from "../units/quantity.ts";
import { EQUILIBRIUM_share, SUM_DUST_share } from "../units/tolerance.ts";
import { pick } from "./frame-pick.ts";

/** A force at a place of the plane, with its couple [N mm]. */
export interface PlacedForce {
  readonly x: Mm;
  readonly y: Mm;
  readonly force_x: Newton;
  readonly force_y: Newton;
  readonly moment: number;
}

/**
 * Refuses forces that do not balance: sum Fx = 0, sum Fy = 0, sum (M + x Fy - y Fx) = 0 about the first of them, each within a share of
 * what goes into it and the dust of the products from which the reactions come.
 *
 * @param forces - loads and reactions with their places [mm, N, N mm]
 * @param products - largest stiffness times movement in the frame, as a force [N] and as a moment [N mm]
 * @returns greatest share by which a sum misses zero, dust aside [ratio]
 * @throws RangeError naming the sum that misses zero by more than the tolerance
 * Source: derived, balance of forces in a plane
 */
export function checkBalance(forces: readonly PlacedForce[], products: { readonly force: Newton; readonly moment: number }): number {
  let [sum_x, sum_y, sum_turn, size, size_turn, reach] = [0, 0, 0, 0, 0, 0];
  const origin = pick(forces, 0, "force");
  for (const { x, y, force_x, force_y, moment } of forces) {
    const [dx, dy] = [x - origin.x, y - origin.y];
    sum_x += force_x;
    sum_y += force_y;
    sum_turn += moment + dx * force_y - dy * force_x;
    size += Math.abs(force_x) + Math.abs(force_y);
    size_turn += Math.abs(moment);
    reach = Math.max(reach, Math.hypot(dx, dy));
  }
  const dust = SUM_DUST_share * products.force;
  const misses = [
    { of: "forces along x", by: missed(sum_x, dust, size) },
    { of: "forces along y", by: missed(sum_y, dust, size) },
    { of: "moments", by: missed(sum_turn, SUM_DUST_share * products.moment + dust * reach, size_turn + size * reach) },
  ];
  const worst = misses.reduce((most, one) => (one.by <= most.by ? most : one));
  if (!(worst.by <= EQUILIBRIUM_share)) throw new RangeError(`the ${worst.of} on the frame miss balance by ${worst.by} of their size`);
  return worst.by;
}

const missed = (sum: number, dust: number, size: number): number => (Math.abs(sum) <= dust ? 0 : (Math.abs(sum) - dust) / size);
