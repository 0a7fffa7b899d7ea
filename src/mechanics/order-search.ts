// Which order of tightening asks least of the cables and the frame, and how does the trade's custom compare?
import { type FiguresWithin, type OrderFigures, type OrderTask, orderFigures } from "./order-search-figures.ts";
import { bestOrderBySets } from "./order-search-sets.ts";
import { namedOrders, type OrderName } from "./sequence-order.ts";
import { LOOSE, takeUpsFor, tensionsFor } from "./sequence-solve.ts";

export interface OrderSearch {
  readonly best: OrderFigures;
  readonly named: Readonly<Record<OrderName, OrderFigures>>;
  /** The best of the named orders by the same rule: easier to say, and often within a few percent. */
  readonly bestNamed: OrderName;
  /** No order has a lower highest reading over target than this. */
  readonly bound: number;
  /** True when no order is better by more than a gauge can tell. */
  readonly exact: boolean;
  /** Orders whose figures were computed one by one. */
  readonly ordersTried: number;
  /** Sets of cables looked at; with every set, each of the n! orders is answered for. */
  readonly setsTried: number;
}

/** With more cables the table of sets costs more than the whole plan may. */
const CABLES_bySets_max = 12;
/** A gauge cannot tell highest readings apart that differ by half a percent of the target (common practice, no source). */
const READING_tie = 0.005;
/** Movements of the frame that differ by less than this share of their limit are alike: less than a rule shows. */
const MOVEMENT_tie = 0.01;
/** Orders that the search may compute one by one. */
const ORDERS_max = 1500;
/** Two results that differ by less are one. */
const SAME_share = 1e-12;

/**
 * Order with the lowest highest reading over target of one compensated pass; among those that a gauge cannot tell apart, with the
 * least movement of the frame over its limit; among those that are alike in this too, with the greatest least tension after one plain
 * pass, so that a crew that does not compensate loses least. Up to 12 cables the first two are exact over all orders and the third is
 * sought by exchanging pairs from the order found and from the named orders; with more cables all three are sought so, from the named
 * orders and one that takes the lowest reading at each step, under a bound from the first and from the last but one pull.
 *
 * @param task - cables on their frame [mm/N], target of each [N], limited movements [mm/N, mm]
 * @returns best order [index] and its figures [ratio], the same of the named orders, the bound [ratio], what was tried [count]
 * @throws RangeError when the number of targets is not that of the cables
 * Source: derived, search with the largest step as the length of a way
 */
export function searchOrder(task: OrderTask): OrderSearch {
  const { count } = task.system;
  if (task.target.length !== count || count === 0) throw new RangeError(`${task.target.length} targets for ${count} cables`);
  const figuresWithin = orderFigures(task);
  let ordersTried = 0;
  const within: FiguresWithin = (order, highest_max) => {
    ordersTried += 1;
    return figuresWithin(order, highest_max);
  };
  const figures = (order: readonly number[]): OrderFigures => within(order, Number.POSITIVE_INFINITY) as OrderFigures;
  const named = {
    topToBottom: figures(namedOrders.topToBottom(count)),
    bottomToTop: figures(namedOrders.bottomToTop(count)),
    centreOutwards: figures(namedOrders.centreOutwards(count)),
    outsideIn: figures(namedOrders.outsideIn(count)),
  };
  const starts = Object.values(named);
  const climb = (ceilings: Ceilings, from: readonly OrderFigures[]): OrderFigures =>
    exchanged({ from, ceilings, within, mayTry: () => ordersTried < ORDERS_max });

  if (count <= CABLES_bySets_max) {
    const { order, bound, movement_overLimit, sets } = bestOrderBySets(task, READING_tie);
    const ceilings = { highest: bound + READING_tie, movement: movement_overLimit + MOVEMENT_tie };
    const best = climb(ceilings, [figures(order), ...starts]);
    return { best, named, bestNamed: bestOf(named, ceilings), bound, exact: true, ordersTried, setsTried: sets };
  }
  const bound = lowerBound(task);
  const first = climb({ highest: bound, movement: 0 }, [...starts, figures(lowestFirst(task))]);
  const ceilings = { highest: first.highest_overTarget + READING_tie, movement: first.movement_overLimit + MOVEMENT_tie };
  const best = climb(ceilings, [first]);
  const exact = best.highest_overTarget <= bound + READING_tie;
  return { best, named, bestNamed: bestOf(named, ceilings), bound, exact, ordersTried, setsTried: 2 * count };
}

function bestOf(named: OrderSearch["named"], ceilings: Ceilings): OrderName {
  const names: readonly OrderName[] = ["centreOutwards", "bottomToTop", "topToBottom", "outsideIn"];
  return names.reduce((one, other) => (isBetter(named[other], named[one], ceilings) ? other : one));
}

/** Up to its ceiling a figure is as good as it need be. */
interface Ceilings {
  readonly highest: number;
  readonly movement: number;
}

/** True when the first order is better: reading above its ceiling, then movement above its ceiling, then least tension. */
function isBetter(one: OrderFigures, other: OrderFigures, { highest, movement }: Ceilings): boolean {
  const above = (value: number, ceiling: number): number => Math.max(0, value - ceiling);
  const reading = above(one.highest_overTarget, highest) - above(other.highest_overTarget, highest);
  if (Math.abs(reading) > SAME_share) return reading < 0;
  const moved = above(one.movement_overLimit, movement) - above(other.movement_overLimit, movement);
  if (Math.abs(moved) > SAME_share) return moved < 0;
  return one.leastAfterPlain_overTarget > other.leastAfterPlain_overTarget + SAME_share;
}

interface Exchange {
  readonly from: readonly OrderFigures[];
  readonly ceilings: Ceilings;
  readonly within: FiguresWithin;
  readonly mayTry: () => boolean;
}

/** From the best start, the first exchange of two cables that makes the order better, until none does. */
function exchanged({ from, ceilings, within, mayTry }: Exchange): OrderFigures {
  let best = from.reduce((one, other) => (isBetter(other, one, ceilings) ? other : one));
  const count = best.order.length;
  let unchanged = 0;
  for (let pair = 0; unchanged < count * count && mayTry(); pair = (pair + 1) % (count * count)) {
    unchanged += 1;
    const [left, right] = [pair % count, (pair - (pair % count)) / count];
    if (left >= right) continue;
    const order = best.order.with(left, best.order[right] as number).with(right, best.order[left] as number);
    const found = within(order, Math.max(ceilings.highest, best.highest_overTarget));
    if (found !== null && isBetter(found, best, ceilings)) [best, unchanged] = [found, 0];
  }
  return best;
}

/** At each step the cable that can be brought to its take-up with the lowest reading over its target. */
function lowestFirst({ system, target }: OrderTask): readonly number[] {
  const takeUps_end = takeUpsFor(system, target);
  const takeUps = target.map(() => LOOSE);
  const order: number[] = [];
  while (order.length < target.length) {
    let [least, next] = [Number.POSITIVE_INFINITY, 0];
    for (const [cable, aim] of target.entries()) {
      if (takeUps[cable] !== LOOSE) continue;
      const reading = tensionsFor(system, takeUps.with(cable, takeUps_end[cable] as number))[cable] as number;
      if (reading / aim < least) [least, next] = [reading / aim, cable];
    }
    takeUps[next] = takeUps_end[next] as number;
    order.push(next);
  }
  return order;
}

/** Some cable is pulled first, some last but one, and the last reads its target: no order escapes the lowest of each. */
function lowerBound({ system, target }: OrderTask): number {
  const takeUps = takeUpsFor(system, target);
  const alone = target.map((aim, cable) => {
    const only = target.map((_, other) => (other === cable ? (takeUps[other] as number) : LOOSE));
    return (tensionsFor(system, only)[cable] as number) / aim;
  });
  const lastButOne = target.flatMap((_, left) => {
    const tensions = tensionsFor(system, takeUps.with(left, LOOSE));
    return target.flatMap((aim, cable) => (cable === left ? [] : [(tensions[cable] as number) / aim]));
  });
  return Math.max(1, Math.min(...alone), Math.min(...lastButOne));
}
