// What does an order of tightening ask of the cables and the frame: how high must a gauge read, how far does the frame move?
import type { Mm, Newton } from "../units/quantity.ts";
import { COMPENSATED, PLAIN, type TighteningStep, tightenInPasses } from "./sequence.ts";
import { type CableSystem, entry, takeUpsFor } from "./sequence-solve.ts";

/** A place of the frame whose movement is limited. */
export interface MovementRow {
  /** Movement of the place when a cable pulls with 1 N [mm/N], from the lowest cable. */
  readonly perPull: readonly number[];
  readonly limit: Mm;
}

export interface OrderFigures {
  readonly order: readonly number[];
  /** Highest reading over target of one compensated pass, and the cable that needs it, from 0. */
  readonly highest_overTarget: number;
  readonly highestCable: number;
  /** Largest movement over its limit during that pass; 0 when no movement is limited. */
  readonly movement_overLimit: number;
  /** Least tension over target when one pass is made with all readings at target, and the cable that has it. */
  readonly leastAfterPlain_overTarget: number;
  readonly leastCable: number;
}

export interface OrderTask {
  readonly system: CableSystem;
  /** Of each cable, from the lowest. */
  readonly target: readonly Newton[];
  readonly movement: readonly MovementRow[];
}

/** A tension that is below zero by less than this share of the largest target is rounding. */
export const SLACK_share = 1e-9;
/** An order is above a highest reading when it is so by more than rounding. */
const SAME_share = 1e-12;

/**
 * Largest movement over its limit under given tensions: max |m . T| / limit.
 *
 * @param movement - places with their movement per pull and their limits [mm/N, mm]
 * @param tensions - tension of each cable [N], shape (cables)
 * @returns largest movement over its limit, 0 when none is limited [ratio]
 * @throws never
 * Source: derived, superposition
 */
export function movementOverLimit(movement: readonly MovementRow[], tensions: ArrayLike<Newton>): number {
  let most = 0;
  for (const { perPull, limit } of movement) {
    let sum = 0;
    for (let cable = 0; cable < perPull.length; cable++) sum += (perPull[cable] as number) * (tensions[cable] as number);
    most = Math.max(most, Math.abs(sum) / limit);
  }
  return most;
}

/** Makes the figures of an order; null when its highest reading over target is above the one given. */
export type FiguresWithin = (order: readonly number[], highest_max: number) => OrderFigures | null;

/**
 * Makes a function that tells the figures of an order. Each pull of a cable adds reading x (the direction in which only this cable's
 * take-up changes) to the tensions, see conjugate; an order of n cables costs about n^3 operations. Where a cable goes slack on the way,
 * the full simulation answers.
 *
 * @param task - cables on their frame [mm/N], target of each [N], limited movements [mm/N, mm]
 * @returns a function from an order [index] and a highest reading over target [ratio] to the order's figures [ratio], null when its
 *   highest reading is above that; it keeps its working space, so its results do not depend on earlier calls
 * @throws RangeError in the function returned, when the order does not name every cable once
 * Source: derived, conjugate directions of the coupling
 */
export function orderFigures(task: OrderTask): FiguresWithin {
  const { system, movement } = task;
  const { count } = system;
  const target = new Float64Array(task.target);
  const takeUps = new Float64Array(takeUpsFor(system, task.target));
  const dust = -SLACK_share * Math.max(...task.target);
  const work = conjugation(system);
  const { order: places, directions, pivots } = work;
  // By cable, so that movements are summed in one order of cables whatever the order of pulling.
  const [compensated, plain] = [new Float64Array(count), new Float64Array(count)];
  return (order, highest_max) => {
    // An order that does not name every cable once is left to the simulation, which refuses it.
    let slack = order.length !== count || order.reduce((set, cable) => set | (1 << cable), 0) !== 2 ** count - 1;
    let slackPlain = false;
    let [highest, highestCable, moved] = [0, 0, 0];
    places.set(slack ? [] : order);
    compensated.fill(0);
    plain.fill(0);
    for (let place = 0; place < count && !slack; place++) {
      const cable = places[place] as number;
      const row = place * count;
      conjugate(work, place);
      let reading = 0;
      for (let i = 0; i <= place; i++) reading += entry(directions, row + i) * entry(takeUps, places[i] as number);
      reading /= entry(pivots, place);
      for (let i = 0; i <= place; i++) {
        const other = places[i] as number;
        const share = entry(directions, row + i);
        compensated[other] = entry(compensated, other) + share * reading;
        plain[other] = entry(plain, other) + share * entry(target, cable);
        slack ||= entry(compensated, other) < dust;
        slackPlain ||= entry(plain, other) < dust;
      }
      const share = reading / entry(target, cable);
      if (share > highest) [highest, highestCable] = [share, cable];
      if (highest > highest_max + SAME_share && !slack) return null;
      moved = Math.max(moved, movementOverLimit(movement, compensated));
    }
    const found = slack ? compensatedSimulated(task, order) : { highest_overTarget: highest, highestCable, movement_overLimit: moved };
    if (found.highest_overTarget > highest_max + SAME_share) return null;
    return { order, ...found, ...leastOf(slack || slackPlain ? plainSimulated(task, order) : plain, task.target) };
  };
}

/** Working space of conjugate. */
export interface Conjugation {
  readonly coupling: Float64Array;
  readonly count: number;
  /** Cable of each place. */
  readonly order: Int32Array;
  /** One row a place: the direction's parts by place. */
  readonly directions: Float64Array;
  readonly pivots: Float64Array;
}

/**
 * Empty working space for conjugate.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @returns working space: order [index], directions [ratio], pivots [mm/N]
 * @throws never
 * Source: derived, see conjugate
 */
export const conjugation = (system: CableSystem): Conjugation => ({
  ...system,
  order: new Int32Array(system.count),
  directions: new Float64Array(system.count ** 2),
  pivots: new Float64Array(system.count),
});

/**
 * Writes the direction and the pivot of one place from those before it: x_k = e_k - sum (x_j . M e_k / p_j) x_j, p_k = x_k . M x_k. The
 * tensions change along x_k when the cable at place k is pulled and those before it keep their take-ups; p_k is what it gives then.
 *
 * @param work - coupling M row by row [mm/N], number of cables [count], order of pulling [index], directions one row a place [ratio],
 *   pivots by place [mm/N]
 * @param place - place to write, those before it stand [index]
 * @returns nothing: the row and the pivot of the place are written into the work [ratio, mm/N]
 * @throws never
 * Source: derived, Gram-Schmidt in the inner product of the coupling
 */
export function conjugate({ coupling, count, order, directions, pivots }: Conjugation, place: number): void {
  const column = (order[place] as number) * count;
  const own = place * count;
  for (let i = 0; i < place; i++) directions[own + i] = 0;
  directions[own + place] = 1;
  let pivot = entry(coupling, column + (order[place] as number));
  for (let j = 0; j < place; j++) {
    const row = j * count;
    let shared = 0;
    for (let i = 0; i <= j; i++) shared += entry(directions, row + i) * entry(coupling, column + (order[i] as number));
    const share = shared / entry(pivots, j);
    pivot -= shared * share;
    for (let i = 0; i <= j; i++) directions[own + i] = entry(directions, own + i) - share * entry(directions, row + i);
  }
  pivots[place] = pivot;
}

function leastOf(
  tensions: ArrayLike<Newton>,
  target: readonly Newton[],
): { readonly leastAfterPlain_overTarget: number; readonly leastCable: number } {
  let [least, leastCable] = [Number.POSITIVE_INFINITY, 0];
  for (let cable = 0; cable < target.length; cable++) {
    const share = (tensions[cable] as number) / (target[cable] as number);
    if (share < least) [least, leastCable] = [share, cable];
  }
  return { leastAfterPlain_overTarget: least, leastCable };
}

const plainSimulated = ({ system, target }: OrderTask, order: readonly number[]): readonly Newton[] =>
  (tightenInPasses(system, { order, target }, [PLAIN]).at(-1) as TighteningStep).tensions;

function compensatedSimulated(
  { system, target, movement }: OrderTask,
  order: readonly number[],
): Pick<OrderFigures, "highest_overTarget" | "highestCable" | "movement_overLimit"> {
  let [highest, highestCable, moved] = [0, 0, 0];
  for (const { cable, reading, tensions } of tightenInPasses(system, { order, target }, [COMPENSATED])) {
    const share = reading / (target[cable] as number);
    if (share > highest) [highest, highestCable] = [share, cable];
    moved = Math.max(moved, movementOverLimit(movement, tensions));
  }
  return { highest_overTarget: highest, highestCable, movement_overLimit: moved };
}
