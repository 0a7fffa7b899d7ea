// In which orders does a crew tighten the cables of a run, and what are they called?

export type OrderName = "topToBottom" | "bottomToTop" | "centreOutwards" | "outsideIn";

/**
 * From the top cable down: n, n-1, ... 1.
 *
 * @param count - number of cables, the first is the lowest [count]
 * @returns cables in the order in which they are pulled, from 0 [index], shape (cables)
 * @throws never
 * Source: derived, counting
 */
export const topToBottom = (count: number): readonly number[] => Array.from({ length: count }, (_, place) => count - 1 - place);

/**
 * From the lowest cable up: 1, 2, ... n.
 *
 * @param count - number of cables, the first is the lowest [count]
 * @returns cables in the order in which they are pulled, from 0 [index], shape (cables)
 * @throws never
 * Source: derived, counting
 */
export const bottomToTop = (count: number): readonly number[] => Array.from({ length: count }, (_, place) => place);

/**
 * From the middle outward, the trade's custom: the middle cable (the lower of two), then the one above, the one below, and so on.
 *
 * @param count - number of cables, the first is the lowest [count]
 * @returns cables in the order in which they are pulled, from 0 [index], shape (cables)
 * @throws never
 * Source: practice
 */
export function centreOutwards(count: number): readonly number[] {
  const middle = (count - 2 + (count % 2)) / 2;
  const rings = Array.from({ length: count }, (_, ring) => [middle + ring + 1, middle - ring - 1]);
  return [middle, ...rings.flat()].filter((cable) => cable >= 0 && cable < count);
}

/**
 * From the outside in: top, bottom, the next below the top, the next above the bottom, and so on.
 *
 * @param count - number of cables, the first is the lowest [count]
 * @returns cables in the order in which they are pulled, from 0 [index], shape (cables)
 * @throws never
 * Source: derived, counting
 */
export const outsideIn = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, place) => (place % 2 === 0 ? count - 1 - place / 2 : (place - 1) / 2));

/** The named orders; each makes the order for a number of cables. */
export const namedOrders: Readonly<Record<OrderName, (count: number) => readonly number[]>> = {
  topToBottom,
  bottomToTop,
  centreOutwards,
  outsideIn,
};
