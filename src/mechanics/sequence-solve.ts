// Which cables are tight, and how tight, when each keeps its take-up on a frame that gives way?
import type { Mm, Newton } from "../units/quantity.ts";

/** Cables that share a frame: what a pull of one takes from the anchors of the others. */
export interface CableSystem {
  readonly count: number;
  /** Row by row [mm/N]: how far the anchors of cable i close when cable j pulls with 1 N; on the diagonal the cable's own stretch too. */
  readonly coupling: Float64Array;
}

/** A cable that was never pulled: however the anchors move, it stays slack. */
export const LOOSE = Number.NEGATIVE_INFINITY;

/** What is smaller than this share of the largest of its kind is rounding of the solution. */
const DUST = 1e-9;
/** A flexibility matrix from a frame is symmetric but for rounding, printed digits included. */
const ASYMMETRY_max = 1e-6;

/**
 * An entry that the caller knows to be there: the compiler asks at every index, and this stands in inmost loops.
 *
 * @param values - packed numbers; only these, so that the engine sees one kind of list [any]
 * @param index - place that the list has, from 0 [index]
 * @returns the number there [any]
 * @throws never
 * Source: derived, look-up
 */
export const entry = (values: Float64Array, index: number): number => values[index] as number;

/**
 * Cables on a common frame: coupling = diag(L/EA) + F.
 *
 * @param frame - flexibility F, closing between the anchors of cable i when cable j pulls with 1 N [mm/N], shape (cables, cables);
 *   cableFlexibility L/EA of each cable [mm/N], shape (cables)
 * @returns the system, coupling row by row [mm/N]
 * @throws RangeError when the shapes differ, a value is not finite, F is not symmetric, L/EA is not positive, or the sum is not positive
 *   definite (a frame that opens when it is pulled)
 * Source: derived, each cable keeps its take-up: T L/EA + F T = u
 */
export function cableSystem(frame: CablesOnFrame): CableSystem {
  const system = coupled(frame);
  const { count } = system;
  const all = Array.from({ length: count }, (_, index) => index);
  if (!solveInto(new Float64Array(count), { system, cables: all, rightSides: new Float64Array(count) })) throw opening();
  return system;
}

interface CablesOnFrame {
  readonly flexibility: readonly (readonly number[])[];
  readonly cableFlexibility: readonly number[];
}

const opening = (): RangeError => new RangeError("the frame opens when it is pulled");

/** The system, of which nobody has looked yet whether the frame opens when it is pulled. */
function coupled({ flexibility, cableFlexibility }: CablesOnFrame): CableSystem {
  const count = cableFlexibility.length;
  if (flexibility.length !== count || flexibility.some((row) => row.length !== count)) {
    throw new RangeError(`${count} cables need a flexibility of ${count} rows of ${count}`);
  }
  let largest = 0;
  for (const row of flexibility) for (const closing of row) largest = Math.max(largest, Math.abs(closing));
  if (!Number.isFinite(largest)) throw new RangeError("the flexibility of the frame must be finite");
  if (!cableFlexibility.every((own) => own > 0 && own < Number.POSITIVE_INFINITY)) {
    throw new RangeError("the flexibility L/EA of a cable must be positive");
  }
  const coupling = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const row = flexibility[i] as readonly number[];
    for (let j = 0; j <= i; j++) {
      const closing = row[j] as number;
      const mirrored = (flexibility[j] as readonly number[])[i] as number;
      if (Math.abs(closing - mirrored) > ASYMMETRY_max * largest) {
        throw new RangeError(`flexibility ${i + 1},${j + 1} is ${closing} and ${j + 1},${i + 1} is ${mirrored}: it must be symmetric`);
      }
      coupling[i * count + j] = (closing + mirrored) / 2 + (i === j ? (cableFlexibility[i] as number) : 0);
      coupling[j * count + i] = entry(coupling, i * count + j);
    }
  }
  return { count, coupling };
}

/**
 * Take-ups that leave given tensions: u = (diag(L/EA) + F) T.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tensions - tension of each cable [N], shape (cables)
 * @returns take-up of each cable from slack [mm], shape (cables)
 * @throws never
 * Source: derived, each cable keeps its take-up
 */
export function takeUpsFor(system: CableSystem, tensions: readonly Newton[]): readonly Mm[] {
  const { count, coupling } = system;
  return tensions.map((_, i) => {
    let sum = 0;
    for (let j = 0; j < count; j++) sum += entry(coupling, i * count + j) * (tensions[j] as number);
    return sum;
  });
}

/**
 * Tensions that given take-ups leave: (diag(L/EA) + F) T = u for the tight cables, T = 0 for the slack ones.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param takeUps - take-up of each cable from slack, LOOSE where it was never pulled [mm], shape (cables)
 * @returns tension of each cable, exactly 0 where it is slack [N], shape (cables)
 * @throws never
 * Source: derived, complementarity of tension and slack; murty-1974 for the choice of the slack ones
 */
export function tensionsFor(system: CableSystem, takeUps: readonly Mm[]): readonly Newton[] {
  return listOf(complementary({ system, cables: pulledOf(takeUps), rightSides: new Float64Array(takeUps) }).tensions);
}

/**
 * Tensions that given take-ups leave on a frame that is asked once: as cableSystem and tensionsFor, with one solution for both.
 *
 * @param frame - as for cableSystem [mm/N]
 * @param takeUps - take-up of each cable from slack, none LOOSE [mm], shape (cables)
 * @returns tension of each cable, exactly 0 where it is slack [N], shape (cables)
 * @throws RangeError as cableSystem does
 * Source: derived, complementarity of tension and slack; murty-1974 for the choice of the slack ones
 */
export function tensionsOn(frame: CablesOnFrame, takeUps: readonly Mm[]): readonly Newton[] {
  const { tensions, isDefinite } = complementary({
    system: coupled(frame),
    cables: pulledOf(takeUps),
    rightSides: new Float64Array(takeUps),
  });
  if (!isDefinite) throw opening();
  return listOf(tensions);
}

/**
 * Tightening one cable until its gauge reads a value: T_k = R, the others keep their take-ups.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param takeUps - take-up of each cable before, LOOSE where it was never pulled [mm], shape (cables)
 * @param pull - cable that is pulled, from 0 [index], reading R at which the nut stops [N]
 * @returns take-up of the pulled cable [mm] and tension of every cable then [N], shape (cables)
 * @throws RangeError when the reading is negative
 * Source: derived, complementarity with one tension given
 */
export function pullTo(
  system: CableSystem,
  takeUps: readonly Mm[],
  { cable, reading }: { readonly cable: number; readonly reading: Newton },
): { readonly takeUp: Mm; readonly tensions: readonly Newton[] } {
  if (!(reading >= 0)) throw new RangeError(`a gauge reads no tension of ${reading} N`);
  const { count, coupling } = system;
  const others = pulledOf(takeUps).filter((other) => other !== cable);
  const rightSides = new Float64Array(takeUps);
  for (const other of others) rightSides[other] = entry(rightSides, other) - entry(coupling, other * count + cable) * reading;
  const { tensions } = complementary({ system, cables: others, rightSides });
  tensions[cable] = reading;
  let takeUp = 0;
  for (let j = 0; j < count; j++) takeUp += entry(coupling, cable * count + j) * entry(tensions, j);
  return { takeUp, tensions: listOf(tensions) };
}

function pulledOf(takeUps: readonly Mm[]): number[] {
  const pulled: number[] = [];
  for (let cable = 0; cable < takeUps.length; cable++) if (takeUps[cable] !== LOOSE) pulled.push(cable);
  return pulled;
}

function listOf(values: Float64Array): number[] {
  const list: number[] = [];
  for (let index = 0; index < values.length; index++) list.push(entry(values, index));
  return list;
}

interface Given {
  readonly system: CableSystem;
  /** Those that may be tight; all others carry nothing or are accounted for in the right sides. */
  readonly cables: readonly number[];
  readonly rightSides: Float64Array;
}

/**
 * Linear complementarity by principal pivoting, least index first: it ends for every positive definite matrix, after at most 2^n
 * changes of one cable between tight and slack (in practice after as many as there are slack cables). Tells, too, whether the matrix of
 * all of them is positive definite.
 */
function complementary(given: Given): { readonly tensions: Float64Array; readonly isDefinite: boolean } {
  const { system, cables, rightSides } = given;
  const { count, coupling } = system;
  let [mostTakeUp, mostTension] = [0, 0];
  for (const cable of cables) {
    const size = Math.abs(entry(rightSides, cable));
    mostTakeUp = Math.max(mostTakeUp, size);
    mostTension = Math.max(mostTension, size / entry(coupling, cable * count + cable));
  }
  const tensions = new Float64Array(count);
  const slack = new Uint8Array(count);
  let tight = cables;
  const isWrong = (cable: number): boolean => {
    if (slack[cable] === 0) return entry(tensions, cable) < -DUST * mostTension;
    let lacks = -entry(rightSides, cable);
    for (const other of tight) lacks += entry(coupling, cable * count + other) * entry(tensions, other);
    return lacks < -DUST * mostTakeUp;
  };
  let isDefinite = true;
  let wrong: number | undefined = -1;
  for (let change = 0; wrong !== undefined && change < 2 ** cables.length; change++) {
    const solved = solveInto(tensions, { system, cables: tight, rightSides });
    if (change === 0) isDefinite = solved;
    wrong = cables.find(isWrong);
    if (wrong !== undefined) {
      slack[wrong] = 1 - (slack[wrong] as number);
      tight = cables.filter((cable) => slack[cable] === 0);
    }
  }
  for (const cable of cables) if (entry(tensions, cable) <= DUST * mostTension) tensions[cable] = 0;
  return { tensions, isDefinite };
}

/** Cholesky on the rows and columns of some cables, in their order; false where they are not positive definite. */
function solveInto(tensions: Float64Array, { system: { count, coupling }, cables, rightSides }: Given): boolean {
  const size = cables.length;
  const lower = new Float64Array(size * size);
  const values = new Float64Array(size);
  let isDefinite = true;
  for (let i = 0; i < size; i++) {
    const row = (cables[i] as number) * count;
    const own = i * size;
    let value = entry(rightSides, cables[i] as number);
    let pivot = entry(coupling, row + (cables[i] as number));
    for (let j = 0; j < i; j++) {
      let sum = entry(coupling, row + (cables[j] as number));
      for (let k = 0; k < j; k++) sum -= entry(lower, own + k) * entry(lower, j * size + k);
      const part = sum / entry(lower, j * size + j);
      lower[own + j] = part;
      pivot -= part * part;
      value -= part * entry(values, j);
    }
    if (!(pivot > 0)) isDefinite = false;
    const root = Math.sqrt(pivot);
    lower[own + i] = root;
    values[i] = value / root;
  }
  tensions.fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let value = entry(values, i);
    for (let k = i + 1; k < size; k++) value -= entry(lower, k * size + i) * entry(values, k);
    value /= entry(lower, i * size + i);
    values[i] = value;
    tensions[cables[i] as number] = value;
  }
  return isDefinite;
}
