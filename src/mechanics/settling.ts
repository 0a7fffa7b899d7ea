// How much tension do drying posts and bedding strand cost, and how far must the nuts be turned at the next visit?
import type { Celsius, Mm, Newton } from "../units/quantity.ts";
import { nutTurns } from "./stretch.ts";
import { changedTensions, type StandingCables } from "./temperature.ts";

/** Fibre saturation: above it wood keeps its size, so the formulas end there. */
const SATURATION_percent = 30;
/** Between these moistures the change goes evenly with the coefficient of the table. */
const EVEN_percent = { low: 6, high: 14 };

interface Drying {
  /** Size across the grain at the first moisture. */
  readonly size: Mm;
  readonly moisture_from_percent: number;
  readonly moisture_to_percent: number;
  /** Total shrinkage from green to oven-dry in this direction. */
  readonly shrinkage_percent: number;
  /** Dimensional change per percent of moisture, from the table or derived from the shrinkage. */
  readonly coefficient: number;
}

/**
 * Change of a wooden size that goes evenly with its moisture: dD = D C dM.
 *
 * @param wood - size D [mm], change of moisture dM, negative when it dries [percent], coefficient C [1/percent]
 * @returns change of the size, negative when it shrinks [mm]
 * @throws never
 * Source: wood-handbook, 13-2
 */
export const evenSizeChange = ({
  size,
  moisture_change_percent,
  coefficient,
}: {
  readonly size: Mm;
  readonly moisture_change_percent: number;
  readonly coefficient: number;
}): Mm => size * coefficient * moisture_change_percent;

/**
 * Whether a wooden size changes evenly with its moisture: from 6 to 14 %, both counted in.
 *
 * @param moistures - those between which it dries or swells [percent]
 * @returns true where 13-2 holds [1], false where 13-3 is asked
 * @throws never
 * Source: wood-handbook, 13-2
 */
export const isEvenChange = (...moistures: readonly number[]): boolean =>
  moistures.every((moisture) => moisture >= EVEN_percent.low && moisture <= EVEN_percent.high);

/**
 * Change of a wooden size across the grain with its moisture M: from 6 to 14 %, dD = D C (M_to - M_from); outside of that,
 * dD = D (M_to - M_from) / (30/(S/100) - 30 + M_from).
 *
 * @param wood - size D [mm], moisture from [percent] and to [percent], total shrinkage S [percent], coefficient C [1/percent]
 * @returns change of the size, negative when it shrinks [mm]
 * @throws RangeError when a moisture is not between 0 and 30 %, or the size, shrinkage or coefficient is not positive
 * Valid: up to fibre saturation, taken at 30 %; wood wetter than that counts as 30 %, which the caller says
 * Source: wood-handbook, 13-2 (12-2 of the edition before) within 6 to 14 %, 13-3 outside, its form from memory
 */
export function sizeChange({ size, moisture_from_percent, moisture_to_percent, shrinkage_percent, coefficient }: Drying): Mm {
  const moistures = [moisture_from_percent, moisture_to_percent];
  if (!moistures.every((moisture) => moisture >= 0 && moisture <= SATURATION_percent)) {
    throw new RangeError(`moistures ${moistures.join(" and ")} % must lie between 0 and ${SATURATION_percent} %`);
  }
  if (!(size > 0 && shrinkage_percent > 0 && coefficient > 0)) {
    throw new RangeError("size, shrinkage and coefficient of wood must be positive");
  }
  const change = moisture_to_percent - moisture_from_percent;
  if (isEvenChange(...moistures)) return evenSizeChange({ size, moisture_change_percent: change, coefficient });
  return (size * change) / (SATURATION_percent / (shrinkage_percent / 100) - SATURATION_percent + moisture_from_percent);
}

/**
 * How much nearer the anchors of a cable come when the posts they bear on shrink: c = sum share x shrinkage. With the fitting on the
 * far face of a post that stays centred the share is a half, with the post held at its inner face it is one, at its outer face none.
 *
 * @param posts - for each end shrinkage of the post along the cable [mm] and the share of it that moves the anchor inward [ratio]
 * @returns closing [mm]
 * @throws RangeError when a share is not between 0 and 1
 * Source: derived, sum of lengths
 */
export function closingByShrinkage(posts: readonly { readonly shrinkage: Mm; readonly share: number }[]): Mm {
  if (!posts.every(({ share }) => share >= 0 && share <= 1)) throw new RangeError("a share of the shrinkage lies between 0 and 1");
  return posts.reduce((sum, { shrinkage, share }) => sum + shrinkage * share, 0);
}

interface Settling {
  /** How much nearer the anchors of each cable come by drying, or by anything else that stays. */
  readonly closing: readonly Mm[];
  /** How much longer each strand becomes as its wires bed in. */
  readonly bedding: readonly Mm[];
  /** Of the thread. */
  readonly pitch: Mm;
  readonly pullingEnds: number;
  /** Free thread of each pulling end before the visit. */
  readonly threadLeft: Mm;
  /** When the next visit is made at another temperature than the first: warmth and expansion of the strand; none when left out. */
  readonly warmer?: Celsius;
  readonly expansion_perC?: number;
}

interface Settled {
  readonly tensions: readonly Newton[];
  readonly losses: readonly Newton[];
  readonly slack: readonly number[];
  /** What each nut of a pulling end has to take up to bring every cable back. */
  readonly travelPerEnd: readonly Mm[];
  readonly turns: readonly number[];
  /** Thread left after that visit; negative when it lacks. */
  readonly threadLeft: readonly Mm[];
}

/**
 * Tensions after settling and the next visit: each cable lacks what its anchors came nearer and what its strand grew; when all are
 * brought back, the frame stands as before, so the nut of cable i travels c_i + b_i, whatever the frame's flexibility.
 *
 * @param standing - cables with length [mm], stiffness [N] and tension [N] before, flexibility of their frame [mm/N]
 * @param settling - closing and bedding-in of each cable [mm], pitch [mm], pulling ends [count], thread left [mm], warmth of the day
 *   above that of the tensions [degC] and expansion of the strand [1/degC]
 * @returns tensions and losses [N], slack cables [index], travel per pulling end [mm], turns [count], thread left then [mm]
 * @throws RangeError when the pitch or the number of pulling ends is not positive, and as changedTensions does
 * Valid: travel and turns restore the tensions at the temperature at which they held
 * Source: derived, complementarity of tension and slack
 */
export function settled(standing: StandingCables, settling: Settling): Settled {
  const { closing, bedding, pitch, pullingEnds, warmer = 0, expansion_perC = 0 } = settling;
  if (!(pullingEnds > 0)) throw new RangeError(`${pullingEnds} pulling ends: a cable is pulled from one end at least`);
  const { tensions, changes, slack } = changedTensions(standing, { warmer, expansion_perC, closing, lengthening: bedding });
  const travelPerEnd = closing.map((nearer, cable) => (nearer + (bedding[cable] as number)) / pullingEnds);
  return {
    tensions,
    losses: changes.map((change) => 0 - change),
    slack,
    travelPerEnd,
    turns: travelPerEnd.map((travel) => nutTurns({ travel, pitch })),
    threadLeft: travelPerEnd.map((travel) => settling.threadLeft - travel),
  };
}
