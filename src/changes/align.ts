// Which of the things that stood in a row still stand there? By their places, in their order, whatever their marks are.
import type { Mm } from "../units/quantity.ts";

export interface Pair<T> {
  /** null: it was added. */
  readonly before: T | null;
  /** null: it was removed. */
  readonly after: T | null;
}

interface Row<T> {
  readonly placeOf: (item: T) => Mm;
  /** Up to here two places are one. */
  readonly same: Mm;
}

/** One that is gone, or new: two of them, at two places, cost more than one that moved by less than half of the row. */
const ALONE_cost = 0.75;
const MOVED_cost = 1;

/**
 * Pairs two rows in order so that as many as can be stand where they stood; of the others, few moved, added or removed.
 *
 * @param before - in the order of their places
 * @param after - in the order of their places
 * @returns pairs in the order of the rows
 * @throws never
 */
export function align<T>(before: readonly T[], after: readonly T[], { placeOf, same }: Row<T>): readonly Pair<T>[] {
  const places = [...before, ...after].map(placeOf);
  const span = Math.max(...places) - Math.min(...places);
  const costOf = (a: T, b: T): number => {
    const far = Math.abs(placeOf(a) - placeOf(b));
    return far <= same ? 0 : MOVED_cost + far / span;
  };
  // Of the rows from here on: the least cost.
  const costs = Array.from({ length: before.length + 1 }, () => new Array<number>(after.length + 1).fill(0));
  const costAt = (i: number, j: number): number => costs[i]?.[j] ?? Number.POSITIVE_INFINITY;
  const waysAt = (i: number, j: number): readonly Step<T>[] => {
    const [old, now] = [before[i], after[j]];
    return [
      ...(old === undefined || now === undefined
        ? []
        : [{ pair: { before: old, after: now }, i: i + 1, j: j + 1, cost: costOf(old, now) + costAt(i + 1, j + 1) }]),
      ...(old === undefined ? [] : [{ pair: { before: old, after: null }, i: i + 1, j, cost: ALONE_cost + costAt(i + 1, j) }]),
      ...(now === undefined ? [] : [{ pair: { before: null, after: now }, i, j: j + 1, cost: ALONE_cost + costAt(i, j + 1) }]),
    ];
  };
  for (let i = before.length; i >= 0; i--) {
    const row = costs[i] ?? [];
    for (let j = after.length; j >= 0; j--) row[j] = cheapest(waysAt(i, j))?.cost ?? 0;
  }
  const pairs: Pair<T>[] = [];
  for (let step = cheapest(waysAt(0, 0)); step !== undefined; step = cheapest(waysAt(step.i, step.j))) pairs.push(step.pair);
  return pairs;
}

interface Step<T> {
  readonly pair: Pair<T>;
  readonly i: number;
  readonly j: number;
  readonly cost: number;
}

/** The first of equals: the same rows give the same pairs. */
const cheapest = <T>(steps: readonly Step<T>[]): Step<T> | undefined =>
  steps.reduce<Step<T> | undefined>((best, one) => (best === undefined || one.cost < best.cost ? one : best), undefined);
