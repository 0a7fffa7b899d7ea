// Which kinds of bores does the job really have, and in which posts?
import { BUSHING, isInTube } from "../../plan/buying.ts";
import { goesThroughOneWall } from "../../plan/face-end.ts";
import type { Bore, BoreKind, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { hasBushingTubes, mitredSeat, tubeEnds } from "./bearing.ts";
import { bushingPlace, isSameCounterbore } from "./bore-rows.ts";
import { listed } from "./kit.ts";
import { sunkName } from "./sleeve-words.ts";

/** Bores that are made alike: one size, one counterbore, with or without a bushing. */
export interface BoreMake {
  readonly kinds: readonly BoreKind[];
  readonly diameter: number;
  /** Of a blind hole; null where it goes right through. */
  readonly depth: number | null;
  /** Of a tube: not through its far wall. */
  readonly oneWall: boolean;
  readonly counterbore: Bore["counterbore"];
  readonly sleeveHole: Bore["sleeveHole"];
  readonly bushing: boolean;
  readonly postIds: readonly string[];
}

/** A bend that is bored as a pass is one with it. */
export function boreMakes({ bores, job }: Plan): readonly BoreMake[] {
  const makes: { readonly like: Bore; readonly kinds: Set<BoreKind>; readonly postIds: Set<string> }[] = [];
  for (const bore of bores) {
    let make = makes.find(({ like }) => isMadeLike(like, bore));
    if (make === undefined) {
      make = { like: bore, kinds: new Set(), postIds: new Set() };
      makes.push(make);
    }
    make.kinds.add(bore.kind);
    make.postIds.add(bore.verticalId);
  }
  return makes.map(({ like, kinds, postIds }) => {
    const { diameter, counterbore, sleeveHole, bushing, through, drilledLength } = like;
    return {
      diameter,
      depth: through ? null : drilledLength,
      oneWall: goesThroughOneWall(like, job),
      counterbore,
      sleeveHole,
      bushing,
      kinds: [...kinds],
      postIds: [...postIds],
    };
  });
}

const isMadeLike = (a: Bore, b: Bore): boolean =>
  (a.kind === b.kind || (isPassed(a) && isPassed(b))) &&
  a.diameter === b.diameter &&
  a.through === b.through &&
  (a.through || a.drilledLength === b.drilledLength) &&
  a.bushing === b.bushing &&
  a.sleeveHole === b.sleeveHole &&
  isSameCounterbore(a.counterbore, b.counterbore);

const isPassed = ({ kind }: Bore): boolean => kind === "pass" || kind === "bend";

/** Whether any bore of the job has this kind and size. */
export const isBored = (plan: Plan, diameter: number, ...kinds: readonly BoreKind[]): boolean =>
  plan.bores.some((bore) => kinds.includes(bore.kind) && bore.diameter === diameter);

/** Spacers are all bored alike, and many. */
const whereWords = (postIds: readonly string[]): Text =>
  listed([...postIds.filter((id) => !id.startsWith("S")), ...(postIds.some((id) => id.startsWith("S")) ? ["all spacers"] : [])]);

/** "P5: bore 1/4" (6.4 mm); counterbore 3/8" (9.5 mm), 1-1/4" (32 mm) deep, from the right face"; a grip end without one goes right through. */
export function makeWords({ kinds, diameter, depth, oneWall, counterbore, sleeveHole, bushing, postIds }: BoreMake, show: Show): Text {
  if (oneWall) return `${whereWords(postIds)}: hole ${show.diameter(diameter)} through the wall that the cable comes to`;
  if (depth !== null) return `${whereWords(postIds)}: blind hole ${show.diameter(diameter)}, ${show.fine(depth)} deep`;
  const deeper =
    counterbore === null
      ? ""
      : `; ${sunkName({ sleeveHole })} ${show.diameter(counterbore.diameter)}, ${show.tapeBoth(counterbore.depth)} deep, from the ${counterbore.face} face`;
  const through = counterbore === null && kinds.includes("grip end") ? " right through" : "";
  const opened = sleeveHole === undefined ? "" : `; sleeve opened to ${show.diameter(sleeveHole)} for the cable`;
  return `${whereWords(postIds)}: bore ${show.diameter(diameter)}${through}${deeper}${opened}${bushing ? ", with a bushing" : ""}`;
}

/** How many bores take bushings, and how many those are: a bore on which the cable turns at both mouths, or in a tube, takes two. */
export const bushingsOf = ({ bores, order }: Plan): { readonly bores: number; readonly bushings: number } => ({
  bores: bores.filter(({ bushing }) => bushing).length,
  bushings: order.find(({ item }) => item === BUSHING)?.net ?? 0,
});

/** Where the bushings sit that this job has. */
export function bushingRule(plan: Plan): Text {
  const { bores, job } = plan;
  const bushed = bores.filter(({ bushing }) => bushing);
  const solid = bushed.filter((bore) => !isInTube(bore, job));
  const places = new Set(solid.map((bore) => bushingPlace(plan, bore)));
  const one = solid.length < bushed.length ? "in a solid member one" : "one in each bore";
  const where = [
    ...(solid.length < bushed.length ? ["one in each wall of a tube"] : []),
    ...(places.has("left face") || places.has("right face") ? [`${one}, from the face named`] : []),
    ...(places.has("through") ? ["one right through where the table says so"] : []),
    ...(places.has("both faces") ? ["one from each face where both are named"] : []),
  ];
  const tube = hasBushingTubes(plan)
    ? ` Each sits in a stainless tube that goes right through: the bore is for the tube; its ends are ${tubeEnds(plan)} and flush with the faces.`
    : "";
  return `Bushings: ${where.join("; ")}.${tube}${mitredSeat(plan)}`;
}
