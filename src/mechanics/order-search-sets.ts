// Which order has the least highest reading of all n! orders? In a compensated pass a step's reading depends only on which cables are
// already tight, not on their order: so the best way to each set of cables is found from the best ways to the sets with one less.
import { conjugate, conjugation, type OrderTask, SLACK_share } from "./order-search-figures.ts";
import { type CableSystem, entry, LOOSE, takeUpsFor, tensionsFor } from "./sequence-solve.ts";

export interface BestOrder {
  readonly order: readonly number[];
  /** Least possible highest reading over target of one compensated pass. */
  readonly bound: number;
  /** Least possible largest movement over its limit, among orders whose highest reading is within the tie. */
  readonly movement_overLimit: number;
  /** Sets of cables that were looked at. */
  readonly sets: number;
}

/**
 * Best order of one compensated pass: first the highest reading over target is made least, then, among all orders that come within a
 * tie of it, the largest movement of the frame. best(S) = min over k in S of max(best(S without k), T_k(S) / T*_k).
 *
 * @param task - cables on their frame [mm/N], target of each [N], limited movements [mm/N, mm]
 * @param tie - highest readings over target that differ by less are alike [ratio]
 * @returns an order [index], the bound and the movement over its limit [ratio], number of sets [count]
 * @throws never
 * Valid: for up to about 14 cables, the number of sets doubles with each; linear frame, no friction
 * Source: derived, shortest way with the largest step as its length
 */
export function bestOrderBySets(task: OrderTask, tie: number): BestOrder {
  const { count } = task.system;
  const { shares, moved } = statesOfSets(task);
  const sets = 2 ** count;
  const byReading = narrowest({ count, shares, ceiling: Number.POSITIVE_INFINITY, lengths: null });
  if (task.movement.length === 0) return { order: byReading.order, bound: byReading.longest, movement_overLimit: 0, sets };
  const byMovement = narrowest({ count, shares, ceiling: byReading.longest + tie, lengths: moved });
  return { order: byMovement.order, bound: byReading.longest, movement_overLimit: byMovement.longest, sets };
}

interface SetStates {
  /** Tension over target of each cable when just the cables of the set stand at their take-ups, shape (sets, cables). */
  readonly shares: Float64Array;
  /** Largest movement over its limit then, shape (sets). */
  readonly moved: Float64Array;
}

/**
 * A set is a number whose bit k says that cable k is tight. From all tight, cables are let go one after another, each lower than the one
 * before: T_i falls by G_ik T_k / G_kk, and so does every column of the inverse G that a later one will need.
 */
function statesOfSets({ system, target, movement }: OrderTask): SetStates {
  const { count } = system;
  const takeUps = takeUpsFor(system, target);
  const perTarget = new Float64Array(target.map((aim) => 1 / aim));
  const dust = -SLACK_share * Math.max(...target);
  const shares = new Float64Array(2 ** count * count);
  const moved = new Float64Array(2 ** count);
  const rows = new Float64Array(greatest(movement.map(({ perPull, limit }) => perPull.map((each) => each / limit))).flat());
  // For each number of cables let go: tensions, and after them the columns of the inverse.
  const size = count * (count + 1);
  const levels = new Float64Array(size * (count + 1));
  levels.set(target);
  levels.set(inverseOf(system), count);

  // Cables of the set that is looked at, for each number of cables let go: the others carry nothing.
  const held = new Int32Array(count * (count + 1));

  const record = (set: number, list: number, length: number, tensions: Float64Array, from: number): void => {
    const own = set * count;
    for (let place = list; place < list + length; place++) {
      const cable = held[place] as number;
      shares[own + cable] = entry(tensions, from + cable) * entry(perTarget, cable);
    }
    let most = 0;
    for (let row = 0; row < rows.length; row += count) {
      let sum = 0;
      for (let place = list; place < list + length; place++) {
        const cable = held[place] as number;
        sum += entry(rows, row + cable) * entry(tensions, from + cable);
      }
      most = Math.max(most, Math.abs(sum));
    }
    moved[set] = most;
  };
  const visit = (set: number, depth: number, below: number): void => {
    const [at, list, length] = [depth * size, depth * count, count - depth];
    let slack = false;
    for (let place = list, cable = 0; place < list + length; cable++) if ((set >> cable) & 1) held[place++] = cable;
    for (let place = list; place < list + length; place++) slack ||= entry(levels, at + (held[place] as number)) < dust;
    if (slack) {
      const standing = takeUps.map((takeUp, cable) => ((set >> cable) & 1 ? takeUp : LOOSE));
      record(set, list, length, new Float64Array(tensionsFor(system, standing)), 0);
    } else record(set, list, length, levels, at);
    for (let gone = 0; gone < below; gone++) {
      const column = at + (gone + 1) * count;
      const own = entry(levels, column + gone);
      // Column -1 is the tensions.
      for (let from = at; from < column; from += count) {
        const share = entry(levels, from + gone) / own;
        const to = from + size;
        for (let place = list; place < list + length; place++) {
          const i = held[place] as number;
          levels[to + i] = entry(levels, from + i) - share * entry(levels, column + i);
        }
      }
      visit(set & ~(1 << gone), depth + 1, gone);
    }
  };
  visit(2 ** count - 1, 0, count);
  return { shares, moved };
}

/** Rows of movement that can be the largest: what never moves as far as another is left out. */
const greatest = (rows: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  rows.filter((row, own) => !rows.some((other, index) => index !== own && isBeyond(other, row) && (index < own || !isBeyond(row, other))));

/** True when every pull moves the first to the same side, and as far as the second or farther. */
const isBeyond = (one: readonly number[], other: readonly number[]): boolean =>
  (one.every((each) => each >= 0) || one.every((each) => each <= 0)) &&
  one.every((each, cable) => Math.abs(each) >= Math.abs(other[cable] as number));

/** (diag(L/EA) + F)^-1 as the sum of x x^T / p over conjugate directions. */
function inverseOf(system: CableSystem): Float64Array {
  const { count } = system;
  const work = conjugation(system);
  for (let place = 0; place < count; place++) {
    work.order[place] = place;
    conjugate(work, place);
  }
  const inverse = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      let sum = 0;
      for (let place = Math.max(i, j); place < count; place++) {
        const row = place * count;
        sum += (entry(work.directions, row + i) * entry(work.directions, row + j)) / entry(work.pivots, place);
      }
      inverse[i * count + j] = sum;
    }
  }
  return inverse;
}

interface Steps {
  readonly count: number;
  readonly shares: Float64Array;
  /** A step with a reading over target above this is no step. */
  readonly ceiling: number;
  /** Length of a step by the set that it ends in; its reading over target when null. */
  readonly lengths: Float64Array | null;
}

/** The order whose longest step is shortest; the lowest cable last where several are. */
function narrowest({ count, shares, ceiling, lengths }: Steps): { readonly order: readonly number[]; readonly longest: number } {
  const sets = 2 ** count;
  const least = new Float64Array(sets);
  const last = new Uint8Array(sets);
  for (let set = 1; set < sets; set++) {
    let best = Number.POSITIVE_INFINITY;
    for (let rest = set; rest !== 0; rest &= rest - 1) {
      const cable = 31 - Math.clz32(rest & -rest);
      const before = entry(least, set & ~(1 << cable));
      const share = entry(shares, set * count + cable);
      if (before >= best || share > ceiling) continue;
      const length = Math.max(before, lengths === null ? share : entry(lengths, set));
      if (length < best) [best, last[set]] = [length, cable];
    }
    least[set] = best;
  }
  const order: number[] = [];
  for (let set = sets - 1; set > 0; set &= ~(1 << (order[0] as number))) order.unshift(last[set] as number);
  return { order, longest: entry(least, sets - 1) };
}
