// Which words stand for holes and lengths where posts have sleeves?
import type { Bore, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";

/** The hole in the sleeve of a bore. */
interface OfSleeve {
  readonly sleeveHole?: Bore["sleeveHole"] | undefined;
}

/** What a counterbore is: in a sleeved post it lies in the sleeve alone. */
export const sunkName = ({ sleeveHole }: OfSleeve): Text => (sleeveHole === undefined ? "counterbore" : "washer's hole in the sleeve");

/** The same of all posts. */
export const sunkWord = ({ job: { posts } }: Plan): Text => (posts.sleeve === null ? "counterbore" : "washer's hole");

/** Posts that are marked on two faces: nut or collar is let in from another one than the bit goes in. */
export const sunkElsewhere = ({ bores }: Plan): readonly Text[] => [
  ...new Set(
    bores.flatMap(({ counterbore, entryFace, verticalId }) => (counterbore !== null && counterbore.face !== entryFace ? [verticalId] : [])),
  ),
];

/** What cables are measured between. */
export const lengthName = ({ job: { posts } }: Plan): Text => (posts.sleeve === null ? "outside to outside" : "wood to wood");

export const lengthSub = ({ job: { posts } }: Plan): Text =>
  posts.sleeve === null ? "over the end posts" : "far sides of the wood in the end sleeves";

/** "3/8": opened in the sleeve where the cable goes through. */
export const sleeveHoleText = ({ sleeveHole }: OfSleeve, show: Show): Text =>
  sleeveHole === undefined ? "" : `, holes for the cable in the sleeve ${show.fine(sleeveHole)}`;
