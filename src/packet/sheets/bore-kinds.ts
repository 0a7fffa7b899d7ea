// Which kinds of bores does the job really have, and in which posts?
import type { Bore, BoreKind, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { listed, unique } from "./kit.ts";

/** Bores that are made alike: one size, one counterbore, with or without a bushing. */
export interface BoreMake {
  readonly kinds: readonly BoreKind[];
  readonly diameter: number;
  readonly counterbore: Bore["counterbore"];
  readonly bushing: boolean;
  readonly postIds: readonly string[];
}

/** A bend that is bored as a pass is one with it. */
export function boreMakes(plan: Plan): readonly BoreMake[] {
  const keyOf = ({ kind, diameter, counterbore, bushing }: Bore): string =>
    JSON.stringify([kind === "bend" ? "pass" : kind, diameter, counterbore, bushing]);
  const makes = new Map<string, BoreMake>();
  for (const bore of plan.bores) {
    const { kind, diameter, counterbore, bushing } = bore;
    const { kinds = [], postIds = [] } = makes.get(keyOf(bore)) ?? {};
    makes.set(keyOf(bore), {
      diameter,
      counterbore,
      bushing,
      kinds: unique([...kinds, kind]),
      postIds: unique([...postIds, bore.verticalId]),
    });
  }
  return [...makes.values()];
}

/** Whether any bore of the job has this kind and size. */
export const isBored = (plan: Plan, diameter: number, ...kinds: readonly BoreKind[]): boolean =>
  plan.bores.some((bore) => kinds.includes(bore.kind) && bore.diameter === diameter);

/** Spacers are all bored alike, and many. */
const whereWords = (postIds: readonly string[]): Text =>
  listed([...postIds.filter((id) => !id.startsWith("S")), ...(postIds.some((id) => id.startsWith("S")) ? ["all spacers"] : [])]);

/** "P5: bore 1/4" (6.4 mm); counterbore 3/8" (9.5 mm), 1-1/4" (32 mm) deep, from the right face"; a grip end without one goes right through. */
export function makeWords({ kinds, diameter, counterbore, bushing, postIds }: BoreMake, show: Show): Text {
  const deeper =
    counterbore === null
      ? ""
      : `; counterbore ${show.diameter(counterbore.diameter)}, ${show.tapeBoth(counterbore.depth)} deep, from the ${counterbore.face} face`;
  const through = counterbore === null && kinds.includes("grip end") ? " right through" : "";
  return `${whereWords(postIds)}: bore ${show.diameter(diameter)}${through}${deeper}${bushing ? ", with a bushing" : ""}`;
}
