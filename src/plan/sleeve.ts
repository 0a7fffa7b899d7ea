// What stands round the wood of a sleeved post, and what does its bore need there?
import type { Job, Section } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";
import { angleDegrees } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { withoutDust } from "../units/round.ts";
import { sectionAt, sectionOfPost } from "./as-found.ts";
import { leftMouth, rightMouth } from "./corner-post.ts";
import type { Bay, Bore, Plan, RunEnd, Vertical } from "./plan.ts";
import type { RunGeometry } from "./runs.ts";

export type Outside = Pick<Section, "along" | "across" | "name">;

/** What a sphere, a cable and a tape meet: the sleeve where there is one. */
const around = (section: Section, { posts: { sleeve } }: Job): Outside =>
  sleeve === null ? section : { along: sleeve.along, across: sleeve.across, name: `${section.name} in a ${sleeve.name}` };

/** Outside of the posts that are like all others. */
export const outsideOf = (job: Job): Outside => around(job.posts.section, job);

/** Outside of one post. */
export const outsideOfPost = (job: Job, id: string): Outside => around(sectionOfPost(job, id), job);

/** Outside of a post that stands already, by its place on its side. */
export const outsideAt = (job: Job, sideIndex: number, nth: number): Outside => around(sectionAt(job, sideIndex, nth), job);

/** The wood in a sleeved post, as part of its vertical. */
export function coreOf(job: Job, id: string): Pick<Vertical, "core"> {
  const { sleeve } = job.posts;
  if (sleeve === null) return {};
  const { along, across } = sectionOfPost(job, id);
  return { core: { along, across, recess: recessIn(job) } };
}

/** From the outer face of a post to the face that nut and collar bear on; 0 without a sleeve. */
export const recessOf = ({ core }: Pick<Vertical, "core">): Mm => core?.recess ?? 0;

/** Where the wood holds the cable on its way into the bay to the right, in stations: the sleeve's own hole is wider and touches none. */
export const rightHold = (post: Vertical): Mm => rightMouth(post) - recessOf(post);

/** Where the wood takes the cable that comes from the bay to the left, in stations. */
export const leftHold = (post: Vertical): Mm => leftMouth(post) + recessOf(post);

/** What a tape and a drill find between two neighbours, mm: sleeve to sleeve, where the free length of the cable counts from wood to wood. */
export const clearOf = ({ leftId, rightId, free }: Bay, { verticals }: Pick<Plan, "verticals">): Mm =>
  withoutDust(verticals.filter(({ id }) => id === leftId || id === rightId).reduce((left, post) => left - recessOf(post), free));

/** The same of every post: those in sleeves are all of one size. */
export const recessIn = ({ posts: { sleeve, section } }: Job): Mm =>
  sleeve === null ? 0 : withoutDust((sleeve.along - section.along) / 2);

/** Hole in the sleeve at an end: nut or collar with its washer bears on the wood inside, in it a socket turns. */
export function washerHole({ kind }: Pick<RunEnd, "kind">, job: Job): Pick<NonNullable<Bore["counterbore"]>, "diameter" | "depth"> | null {
  const { sleeve } = job.posts;
  if (sleeve === null || kind === "face" || kind === "anchor") return null;
  return { diameter: withoutDust(job.fittings[kind].washerDiameter.value + sleeve.washerClearance.value), depth: recessIn(job) };
}

/** Holes in the sleeve of a post where a bore's cable goes through; the plan's bores carry it. */
export const sleeveHoleOf = (diameter: Mm, member: Pick<Vertical, "core">, { posts: { sleeve } }: Job): Pick<Bore, "sleeveHole"> =>
  member.core === undefined || sleeve === null ? {} : { sleeveHole: withoutDust(diameter + sleeve.boreClearance.value) };

/** A cable that turns at a sleeved post would bear on its sleeve. */
export function sleeveProblems(runs: readonly RunGeometry[], verticals: readonly Vertical[], job: Job): readonly Problem[] {
  if (job.posts.sleeve === null) return [];
  const sleeved = new Set(verticals.filter(({ core }) => core !== undefined).map(({ id }) => id));
  const bends = runs.flatMap(({ id, bends: own }) => own.map((bend) => ({ run: id, ...bend })));
  const worst = bends.find(({ postId, angle }) => sleeved.has(postId) && angle > job.fittings.bushingAngle.value);
  if (worst === undefined) return [];
  return [
    {
      severity: "error",
      path: ["posts", "sleeve"],
      what: `run ${worst.run} turns by ${angleDegrees(worst.angle)} at ${worst.postId}: its cables would bear on the sleeve there, which holds nothing`,
      fix: "end the runs at the corners, each on a post of its own (limits: most bends: 0), or leave the sleeves off (built: solid)",
    },
  ];
}
