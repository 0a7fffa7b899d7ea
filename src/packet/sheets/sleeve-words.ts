// Which words stand for holes and lengths where posts have sleeves?
import type { Bore, Plan, Run } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";

/** The hole in the sleeve of a bore. */
interface OfSleeve {
  readonly sleeveHole?: Bore["sleeveHole"] | undefined;
}

/** What a counterbore is: in a sleeved post it lies in the sleeve alone. */
export const sunkName = ({ sleeveHole }: OfSleeve): Text => (sleeveHole === undefined ? "counterbore" : "washer's hole in the sleeve");

/** What cables are measured between. */
export const lengthName = ({ job: { posts } }: Plan): Text => (posts.sleeve === null ? "outside to outside" : "wood to wood");

export const lengthSub = ({ job: { posts } }: Plan): Text =>
  posts.sleeve === null ? "over the end posts" : "far sides of the wood in the end sleeves";

/** The same of one run: the far sides of the wood, where nut and collar bear. */
export const farWoodWords = ({ left, right }: Run): Text => `far side of the wood in ${left.postId} to that in ${right.postId}`;

/** "3/8": opened in the sleeve where the cable goes through. */
export const sleeveHoleText = ({ sleeveHole }: OfSleeve, show: Show): Text =>
  sleeveHole === undefined ? "" : `, holes for the cable in the sleeve ${show.fine(sleeveHole)}`;
