// At which stations do the posts of one side stand, and the spacers between them?
import type { Mm } from "../units/quantity.ts";
import { roundNearest, roundUp } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";

export interface PostStation {
  readonly station: Mm;
  readonly role: "fixed" | "line" | "pair";
}

/** Evenly placed centres between two fixed ones, ends left out, so that no distance exceeds `spacing_max`. */
export function between(from: Mm, to: Mm, spacing_max: Mm, step: Mm): readonly Mm[] {
  const bays = Math.max(1, roundUp((to - from) / spacing_max, 1));
  return Array.from({ length: bays - 1 }, (_, i) => roundNearest(from + ((to - from) * (i + 1)) / bays, step));
}

/**
 * Posts of a side from its first to its last centre; at each split two posts whose faces stand `pairGap` apart.
 * Between two fixed posts the others are spread evenly.
 */
export function placePosts(options: {
  readonly first: Mm;
  readonly last: Mm;
  readonly splits: readonly Mm[];
  readonly along: Mm;
  readonly pairGap: Mm;
  readonly spacing_max: Mm;
  readonly step: Mm;
}): readonly PostStation[] {
  const { first, last, splits, along, pairGap, spacing_max, step } = options;
  const half = (pairGap + along) / 2;
  const posts: PostStation[] = [{ station: first, role: "fixed" }];
  let from = first;
  for (const split of splits) {
    const left = roundNearest(split - half, step);
    posts.push(...between(from, left, spacing_max, step).map((station) => ({ station, role: "line" as const })));
    posts.push({ station: left, role: "pair" }, { station: left + 2 * half, role: "pair" });
    from = left + 2 * half;
  }
  posts.push(...between(from, last, spacing_max, step).map((station) => ({ station, role: "line" as const })));
  if (last - from > SAME_mm) posts.push({ station: last, role: "fixed" });
  return posts;
}

/** Spacer centres in the clear between two faces so that no free length exceeds `free_max`, after rounding too. */
export function placeSpacers(options: {
  readonly from: Mm;
  readonly to: Mm;
  readonly along: Mm;
  readonly free_max: Mm;
  readonly step: Mm;
}): readonly Mm[] {
  const { from, to, along, free_max, step } = options;
  const clear = to - from;
  for (let count = 0; ; count++) {
    const free = (clear - count * along) / (count + 1);
    if (free <= 0) return [];
    const centres = Array.from({ length: count }, (_, i) => roundNearest(from + free * (i + 1) + along * (i + 0.5), step));
    const edges = [from, ...centres.flatMap((centre) => [centre - along / 2, centre + along / 2]), to];
    const widest = Math.max(...centres.map((_, i) => (edges[2 * i + 1] ?? 0) - (edges[2 * i] ?? 0)), to - (edges.at(-2) ?? from));
    if (widest <= free_max + SAME_mm) return centres;
  }
}
