// How does a check of the frame become a row, and how far may the tensions grow until it reaches 1?

import type { Mm } from "../units/quantity.ts";
import type { Rule } from "./frame-check-strength.ts";
import type { Stressed } from "./frame-check-stress.ts";
import type { CheckPart, FrameCheck } from "./frame-plan.ts";

/** Loads of the rows that hold for the cables alone. */
export const CABLES_ALONE = "cables alone, at the top of their band on the hardest day";

/** A row may be told that it grows faster than the tensions: it then carries the growth that brings it to 1 under this name. */
export const GROWTH = "growth of the tensions to a ratio of 1";

/** A member that buckles first has no ratio: this stands for it. */
const MOST = 99;
const BUCKLES = " It buckles under these loads: the ratio stands for one without end.";

interface Where {
  readonly id: string;
  readonly name: string;
  readonly member: string;
  readonly height: Mm | null;
  readonly loads: string;
  /** What to do when it fails. */
  readonly advice: string;
}

export function stressRow(where: Where, { check, ...stressed }: Stressed, parts: readonly CheckPart[] = []): FrameCheck {
  const ratio = Math.min(MOST, check.ratio);
  const { id, name, member, height, loads, advice } = where;
  return {
    id,
    name,
    member,
    height,
    loads,
    demand: Number.isFinite(check.demand) ? check.demand : ratio * check.capacity,
    capacity: check.capacity,
    unit: stressed.unit,
    ratio,
    formula: stressed.formula,
    parts: [...check.parts.map((part) => ({ ...part, value: Math.min(MOST_part, part.value) })), ...parts],
    factors: stressed.factors,
    source: stressed.source,
    sourceWhere: stressed.where,
    verdict: ratio <= 1 ? "pass" : "fail",
    advice: ratio <= 1 ? "" : `${advice}${check.ratio > MOST ? BUCKLES : ""}`,
  };
}

const MOST_part = 1e15;

/** A row of another kind than stress: movement, moment of a base, slenderness of a wall. */
export const limitRow = (
  where: Where,
  of: Rule & Pick<Stressed, "check" | "formula" | "factors"> & { readonly unit: CheckPart["unit"] },
): FrameCheck => ({ ...stressRow(where, { ...of, unit: "1" }), unit: of.unit });

/** What nobody here can answer: the demand is printed, and somebody has to be asked. */
export function askRow(
  where: Where,
  of: Rule & { readonly demand: number; readonly unit: CheckPart["unit"]; readonly formula: string; readonly parts: readonly CheckPart[] },
): FrameCheck {
  const { source, where: sourceWhere, ...rest } = of;
  return { ...where, ...rest, capacity: 0, ratio: 0, factors: [], source, sourceWhere, verdict: "ask" };
}

/** The growth of the tensions at which a ratio that rises ever faster from nothing comes to 1, as a part of its row. */
export function growthPart(ratioAt: (growth: number) => number): CheckPart {
  const now = ratioAt(1);
  // Rising ever faster from 0, the ratio reaches 1 between no growth and the growth that would do if it rose evenly.
  let [low, high] = now > 1 ? [1 / Math.min(MOST, now), 1] : [1, 1 / Math.max(now, 1 / MOST)];
  if (now > MOST) low = 0;
  for (let step = 0; step < BISECTIONS; step++) {
    const middle = (low + high) / 2;
    if (ratioAt(middle) > 1) high = middle;
    else low = middle;
  }
  return { name: GROWTH, value: low, unit: "1" };
}

const BISECTIONS = 20;

/** The entry with the greatest measure; the first of equals. */
export function worstOf<T>(list: readonly T[], measure: (one: T) => number): T | undefined {
  let [worst, most]: [T | undefined, number] = [undefined, Number.NEGATIVE_INFINITY];
  for (const one of list) {
    const value = measure(one);
    // Equal posts differ by dust: the first of them is named.
    if (worst === undefined || value > most + Math.abs(most) * 1e-9) [worst, most] = [one, value];
  }
  return worst;
}
