// Does the frame hold its cables and the code's loads? One row for each question and group of like members: the worst of them.
import type { Job, Rail, Section } from "../job/job.ts";
import type { LoadDuration } from "../tables/wood-factors.ts";
import { sectionOfPost } from "./as-found.ts";
import { baseRows } from "./frame-check-base.ts";
import { type GuardLoads, guardLoadsOf } from "./frame-check-guard.ts";
import { type CheckInput, type FrameLoads, type LoadedBay, type LoadedPost, loadsOf } from "./frame-check-loads.ts";
import { movementRows, postDeflectionRows, railDeflectionRows, wallRows } from "./frame-check-movement.ts";
import { type PostQuestion, postRows } from "./frame-check-post.ts";
import { type RailQuestion, railRows } from "./frame-check-rail.ts";
import { CABLES_ALONE, GROWTH } from "./frame-check-row.ts";
import { loadedSpacers, type SpacerQuestion, spacerRows } from "./frame-check-spacer.ts";
import { type Loaded, type Strength, strengthOf } from "./frame-check-strength.ts";
import { designWall, postMember, railMember, spacerMember } from "./frame-members.ts";
import type { FrameCheck } from "./frame-plan.ts";

/** What is asked of the posts and of the rails. */
export interface FrameQuestions {
  readonly loads: FrameLoads;
  readonly guard: GuardLoads;
  /** One for each section of posts. */
  readonly posts: readonly PostQuestion[];
  readonly top: RailQuestion;
  readonly bottom: RailQuestion | null;
  /** null where there are none, or their load is not known. */
  readonly spacers: SpacerQuestion | null;
}

/** Posts of all sides are judged under one lever: that of the highest guard. */
export const highestOf = ({ opening, rakes }: Pick<CheckInput, "opening" | "rakes">): number =>
  Math.max(opening.guardHeight, ...rakes.map((rake) => rake.opening.guardHeight));

export function questionsOf(input: CheckInput): FrameQuestions {
  const { job } = input;
  const loads = loadsOf(input);
  const guard = guardLoadsOf(job);
  const { topRail, bottomRail } = job.frame;
  return {
    loads,
    guard,
    posts: bySection(loads.posts, job).map(
      ({ posts, section }): PostQuestion => ({
        posts,
        strength: strengths(postOf(section, job), job),
        guard,
        top: highestOf(input),
        ofSection: section === job.posts.section ? "" : ` of ${section.name}`,
      }),
    ),
    top: { ...railOf("top rail", topRail, loads.topRail, job), guard },
    // Nobody leans on the bottom rail.
    bottom: bottomRail === null ? null : { ...railOf("bottom rail", bottomRail, loads.bottomRail, job), guard: { ...guard, top: [] } },
    spacers: spacersOf(input, guard),
  };
}

export function checkFrame(input: CheckInput): readonly FrameCheck[] {
  const { job } = input;
  const highest = highestOf(input);
  const { loads, guard, posts, top, bottom, spacers } = questionsOf(input);
  return [
    ...guard.asks,
    ...posts.flatMap(postRows),
    ...posts.flatMap((question) => baseRows(question, job)),
    ...railRows(top),
    ...(bottom === null ? [] : railRows(bottom)),
    ...(spacers === null ? [] : spacerRows(spacers, job)),
    ...movementRows(loads.posts, job),
    ...postDeflectionRows(loads.posts, guard, highest, job),
    ...railDeflectionRows(loads.topRail, guard, job),
    ...wallRows([
      ...posts.map(({ strength, ofSection }) => ({
        id: `posts${ofSection.replaceAll(" ", "-")}`,
        name: `posts${ofSection}`,
        strength: strength(guard.permanent),
      })),
      { id: "top-rail", name: "top rail", strength: top.strength(guard.permanent) },
      ...(bottom === null ? [] : [{ id: "bottom-rail", name: "bottom rail", strength: bottom.strength(guard.permanent) }]),
      ...(spacers === null ? [] : [{ id: "spacers", name: "spacers", strength: spacers.strength(guard.permanent) }]),
    ]),
  ];
}

const wallOf = ({ material, wall }: Pick<Rail, "material" | "wall">): Loaded["wall"] => (wall === null ? null : designWall(material, wall));

const postOf = (section: Section, job: Job): Loaded => ({
  member: postMember(job, section),
  wood: job.posts.wood,
  wall: wallOf(section),
});

/** Posts that were found with a section of their own stand in groups of their own. */
function bySection(
  posts: readonly LoadedPost[],
  job: Job,
): readonly { readonly posts: readonly LoadedPost[]; readonly section: Section }[] {
  const groups = new Map<string, { readonly posts: LoadedPost[]; readonly section: Section }>();
  for (const post of posts) {
    const section = sectionOfPost(job, post.post.id);
    const known = groups.get(section.name);
    if (known === undefined) groups.set(section.name, { posts: [post], section });
    else known.posts.push(post);
  }
  return [...groups.values()];
}

/** Strength by duration, each worked out once. */
function strengths(loaded: Loaded, job: Job): (load: LoadDuration) => Strength | null {
  const known = new Map<LoadDuration, Strength | null>();
  return (load) => {
    const before = known.get(load);
    if (before !== undefined) return before;
    const strength = strengthOf(loaded, load, job);
    known.set(load, strength);
    return strength;
  };
}

function railOf(name: RailQuestion["rail"], rail: Rail, bays: readonly LoadedBay[], job: Job): Omit<RailQuestion, "guard"> {
  const member = railMember(rail, job);
  const strength = strengths({ member, wood: rail.wood, wall: wallOf(rail) }, job);
  return { rail: name, bays, section: member.section, strength };
}

function spacersOf(input: CheckInput, { infill }: GuardLoads): SpacerQuestion | null {
  const { job } = input;
  const spacers = loadedSpacers(input);
  if (infill === null || spacers.length === 0) return null;
  const member = spacerMember(job);
  const { section, wood } = job.spacers;
  return { spacers, member, strength: strengths({ member, wood, wall: wallOf(section) }, job), infill };
}

/**
 * By how much the tensions may grow until a row of strength under the cables alone reaches 1, and which; null where no such row has a
 * ratio. Movement has a bound of its own.
 */
export function tensionShare(checks: readonly FrameCheck[]): { readonly share: number; readonly name: string } | null {
  const shares = checks
    .filter(({ loads, ratio, unit }) => loads === CABLES_ALONE && ratio > 0 && unit !== "mm")
    .map(({ name, member, ratio, parts }) => ({
      share: parts.find((part) => part.name === GROWTH)?.value ?? 1 / ratio,
      name: `${name}, ${member}`,
    }));
  return shares.reduce<{ readonly share: number; readonly name: string } | null>(
    (least, one) => (least === null || one.share < least.share ? one : least),
    null,
  );
}

/** The same until the row of movement reaches 1; null where nothing moves. */
export function movementShare(checks: readonly FrameCheck[]): number | null {
  const ratio = Math.max(0, ...checks.filter(({ id }) => id.startsWith("movement-")).map((check) => check.ratio));
  return ratio > 0 ? 1 / ratio : null;
}
