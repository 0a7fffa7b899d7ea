// Which stock lengths cover all pieces for least, and what is cut from each bar?
import type { Mm } from "../units/quantity.ts";
import { countSteps } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { leastTotal, quickBound } from "./bound.ts";
import { inCheapestBar, quickPlan } from "./first-fit.ts";
import { listPatterns } from "./patterns.ts";
import { type Bar, type Cutting, commonUnit, fits, type Pattern, type Solution, totalValue, widthOf } from "./problem.ts";
import { cheapest, relaxedTotal } from "./programme.ts";

export interface CutRequest {
  readonly pieces: readonly { readonly mark: string; readonly length: Mm; readonly count?: number }[];
  readonly stock: readonly { readonly length: Mm; readonly cost: number }[];
  readonly kerf: Mm;
  /** Taken off each end of every bar. */
  readonly endTrim: Mm;
  /** What is made least: bought length, cost, or number of bars. */
  readonly objective: "length" | "cost" | "count";
}

export interface StockBar {
  readonly stockLength: Mm;
  /** Longest first. */
  readonly pieces: readonly { readonly mark: string; readonly length: Mm }[];
  /** Left over after pieces, kerfs and end trims. */
  readonly offcut: Mm;
}

export interface StockPlan {
  readonly bars: readonly StockBar[];
  /** Length of all bars. */
  readonly bought: Mm;
  /** Length of all pieces. */
  readonly used: Mm;
  /** What the objective came to. */
  readonly total: number;
  /** No plan brings the objective below this. */
  readonly bound: number;
  /** True when no plan is better. */
  readonly proven: boolean;
}

/** More patterns than this are not listed; the plan is then the quick one, beside its bound. */
const PATTERNS_max = 2000;

/**
 * The cutting plan that buys least: a quick plan if it meets the quick bound, else the best that an integer programme over
 * all patterns finds. Where there are too many patterns or branches, the best plan known, with `proven` false and its bound beside it.
 * A bar of length S holds pieces when sum(length + kerf) <= S - 2 trim + kerf.
 *
 * @param request - pieces and stock lengths [mm], kerf and trim [mm], cost of each stock length in any one money
 * @returns bars with their pieces [mm], lengths bought and used [mm], total and bound of the objective [mm, money or count];
 *   or the mark of a piece that no bar holds
 * @throws RangeError when a length or a cost is not above zero, a kerf or trim is negative, or a count is not whole
 * Source: gilmore-gomory, pattern formulation; kerf derived: item and bar each grow by one kerf
 */
export function cutStock(request: CutRequest): StockPlan | { readonly tooLong: string } {
  refuseNonsense(request);
  const bars = buyableBars(request);
  const longest = bars.at(-1)?.capacity ?? Number.NEGATIVE_INFINITY;
  const wanted = request.pieces.filter((piece) => (piece.count ?? 1) > 0);
  const tooLong = wanted.find((piece) => !fits(piece.length + request.kerf, longest));
  if (tooLong !== undefined) return { tooLong: tooLong.mark };
  const groups = groupPieces(wanted);
  const parts = groups.map((group) => ({ width: group.length + request.kerf, demand: group.marks.length }));
  const unit = commonUnit(bars.map((bar) => bar.value));
  const cutting: Cutting = { parts, bars: bars.map((bar) => inUnits(bar, unit)) };
  return writePlan({ request, groups, cutting, unit, ...solveCutting(cutting) });
}

const inUnits = (bar: Bar, unit: number): Bar => ({ ...bar, value: countSteps(bar.value, { step: unit, rounding: "nearest" }) });

function refuseNonsense({ pieces, stock, kerf, endTrim }: CutRequest): void {
  if (!(kerf >= 0) || !(endTrim >= 0)) throw new RangeError(`kerf ${kerf} mm, trim ${endTrim} mm`);
  for (const { mark, length, count = 1 } of pieces) {
    if (!(length > 0) || !Number.isInteger(count) || count < 0) throw new RangeError(`${count} pieces ${mark} of ${length} mm`);
  }
  for (const { length, cost } of stock) if (!(length > 0) || !(cost > 0)) throw new RangeError(`stock of ${length} mm for ${cost}`);
}

/** Shortest first; a bar that costs no less than a longer one is never bought. */
function buyableBars({ stock, kerf, endTrim, objective }: CutRequest): readonly Bar[] {
  const worth = { length: (bar: { length: Mm }) => bar.length, cost: (bar: { cost: number }) => bar.cost, count: () => 1 };
  const all = stock
    .map((bar) => ({ length: bar.length, capacity: bar.length - 2 * endTrim + kerf, value: worth[objective]({ ...bar }) }))
    .filter((bar) => bar.capacity > kerf)
    .sort((a, b) => a.capacity - b.capacity || a.value - b.value);
  return all.filter((bar, index) => all.slice(index + 1).every((longer) => longer.value > bar.value));
}

interface Group {
  readonly length: Mm;
  readonly marks: string[];
}

/** Longest first; pieces of one length in the order in which they were given. */
function groupPieces(pieces: CutRequest["pieces"]): readonly Group[] {
  const groups: Group[] = [];
  for (const { mark, length, count = 1 } of pieces) {
    const marks = Array.from({ length: count }, () => mark);
    const group = groups.find((one) => Math.abs(one.length - length) < SAME_mm);
    if (group === undefined) groups.push({ length, marks });
    else group.marks.push(...marks);
  }
  return groups.sort((a, b) => b.length - a.length);
}

interface Solved {
  readonly solution: Solution;
  readonly bound: number;
  readonly proven: boolean;
}

function solveCutting(cutting: Cutting): Solved {
  if (cutting.parts.length === 0) return { solution: [], bound: 0, proven: true };
  const quick = quickPlan(cutting);
  const total = totalValue(quick);
  const bound = quickBound(cutting);
  if (total <= bound) return { solution: quick, bound: total, proven: true };
  const patterns = listPatterns(cutting, PATTERNS_max);
  if (patterns === null) return { solution: quick, bound, proven: false };
  const better = leastTotal(cutting, Math.max(bound, relaxedTotal(cutting, patterns)));
  if (total <= better) return { solution: quick, bound: total, proven: true };
  const found = cheapest(cutting, patterns, { least: better, most: total - 1 });
  if (found.kind === "none") return { solution: quick, bound: total, proven: true };
  if (found.kind === "unknown") return { solution: quick, bound: better, proven: false };
  const trimmed = dropSurplus(found.solution, cutting);
  const least = totalValue(trimmed);
  const proven = found.proven || least <= better;
  return { solution: trimmed, bound: proven ? least : better, proven };
}

/** A programme may cut more of a part than is asked: the surplus is left uncut, and its bar may then be a shorter one. */
function dropSurplus(solution: Solution, cutting: Cutting): Solution {
  const left = cutting.parts.map((part) => part.demand);
  const kept = solution.map((pattern): Pattern => {
    const counts = pattern.counts.map((count, index) => Math.min(count, left[index] ?? 0));
    for (const [index, count] of counts.entries()) left[index] = (left[index] ?? 0) - count;
    return inCheapestBar(counts, cutting);
  });
  return kept.filter((pattern) => pattern.counts.some((count) => count > 0));
}

interface Writing extends Solved {
  readonly request: CutRequest;
  readonly groups: readonly Group[];
  readonly cutting: Cutting;
  /** What one unit of value is in the objective's own measure. */
  readonly unit: number;
}

/** Longest bars first, then the fullest; marks are handed out in that order. */
function writePlan({ request, groups, cutting, unit, solution, bound, proven }: Writing): StockPlan {
  const ordered = [...solution].sort((a, b) => b.bar.length - a.bar.length || compareCounts(b.counts, a.counts));
  const next = groups.map(() => 0);
  const bars = ordered.map(({ counts, bar }): StockBar => {
    const pieces = counts.flatMap((count, index) => {
      const { length, marks } = groups[index] ?? { length: 0, marks: [] };
      const from = next[index] ?? 0;
      next[index] = from + count;
      return marks.slice(from, from + count).map((mark) => ({ mark, length }));
    });
    const room = bar.capacity - request.kerf - widthOf(counts, cutting.parts);
    return { stockLength: bar.length, pieces, offcut: Math.max(0, room) };
  });
  return {
    bars,
    bought: bars.reduce((sum, bar) => sum + bar.stockLength, 0),
    used: groups.reduce((sum, group) => sum + group.length * group.marks.length, 0),
    total: totalValue(solution) * unit,
    bound: bound * unit,
    proven,
  };
}

function compareCounts(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((count, at) => count !== b[at]);
  return index < 0 ? 0 : (a[index] ?? 0) - (b[index] ?? 0);
}
