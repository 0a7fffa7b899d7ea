// Which post is not like the others: its section, its lean, what is behind it?
import type { Access, Job, Section } from "../job/job.ts";
import type { PostAsFound } from "../job/standing.ts";
import type { Problem } from "../problem/problem.ts";
import { endsOnOnePost } from "./corner-post.ts";
import type { Vertical } from "./plan.ts";

/** What the job says of one post. */
const foundAt = (job: Job, id: string): PostAsFound | undefined => job.posts.asFound.find(({ post }) => post === id);

export const sectionOfPost = (job: Job, id: string): Section => foundAt(job, id)?.section ?? job.posts.section;

/** The mark of a post that stands already, by its place on its side; null where some side before it has no stations. */
function markAt(job: Job, sideIndex: number, nth: number): string | null {
  // One post at a corner stands on both its sides and has one mark.
  const before = job.sides.slice(0, sideIndex).map(({ stations }, index) => {
    return stations === null ? null : stations.length - (endsOnOnePost(job, index) ? 1 : 0);
  });
  return before.includes(null) ? null : `P${before.reduce<number>((sum, own) => sum + (own ?? 0), 0) + nth + 1}`;
}

/** The section of a post that stands already. */
export function sectionAt(job: Job, sideIndex: number, nth: number): Section {
  const mark = markAt(job, sideIndex, nth);
  return mark === null ? job.posts.section : sectionOfPost(job, mark);
}

/** Whether nothing reaches the back of a post that stands already. */
function hasNoBack(job: Job, sideIndex: number, nth: number): boolean {
  const mark = (job.sides[sideIndex]?.stations ?? null) === null ? null : markAt(job, sideIndex, nth);
  return mark !== null && accessOf(job, mark, "drill") === "none";
}

/** Whether no run can end on a post that stands already: nothing reaches its back, and no end stands on a face. */
export const isShut = (job: Job, sideIndex: number, nth: number): boolean => job.fittings.face === null && hasNoBack(job, sideIndex, nth);

/** Whether two runs that meet on one post end on its two faces. */
export const endOnFacesAt = (job: Job, sideIndex: number, nth: number): boolean =>
  job.fittings.ends === "on the face" || (job.fittings.face !== null && hasNoBack(job, sideIndex, nth));

/** How far the middle of a post moves away from the deck for each mm of height. */
export function leanOf(job: Job, id: string): number {
  const leans = foundAt(job, id)?.leans ?? null;
  return leans === null ? 0 : leans.out / leans.over;
}

/** How far the middle of a post moves to the right for each mm of height. */
export function slantOf(job: Job, id: string): number {
  const leans = foundAt(job, id)?.leans ?? null;
  return leans === null ? 0 : leans.right / leans.over;
}

/** What reaches the back of a post: as found there, else as it usually is at such a place. */
export const accessOf = (job: Job, id: string, usual: Access): Access => foundAt(job, id)?.access ?? usual;

/** Marks that no post bears, and access that is told twice. */
export function asFoundProblems(verticals: readonly Vertical[], job: Job): readonly Problem[] {
  const posts = verticals.filter(({ kind }) => kind === "post");
  return job.posts.asFound.flatMap(({ post, section, access, leans }, index): readonly Problem[] => {
    const path = ["posts", "as found", index];
    const found = posts.find(({ id }) => id === post);
    if (found === undefined) {
      const fix = `the posts of this guard are ${posts[0]?.id} to ${posts.at(-1)?.id}`;
      return [{ severity: "error", path: [...path, "post"], what: `there is no post ${post}`, fix }];
    }
    if (found.corner?.isSetOff === true && access === "none") {
      const what = `nothing reaches the backs of ${post}, behind which the runs of two sides end`;
      const fix = "hold the ends on its two faces (corner: one post, ends; fittings: face), or make the corner with two posts";
      return [{ severity: "error", path: [...path, "access"], what, fix }];
    }
    if (found.corner?.isSetOff === true && leans !== null) {
      const what = `${post} leans, and the runs of two sides go through it: out for one is along for the other, which is not planned here`;
      const fix = "set it plumb or replace it, or make the corner with two posts (corner: two posts)";
      return [{ severity: "error", path: [...path, "leans"], what, fix }];
    }
    if (section !== null && (found.role === "corner" || found.role === "transition")) {
      const joint = found.role === "corner" ? "corner" : "change of slope";
      const what =
        found.corner === undefined
          ? `${post} is one of the two posts of a ${joint}, which must have one section`
          : `${post} makes a corner by itself, which is planned for the section of the other posts only`;
      const fix = `replace it by a post of the others' section, or end the runs at the posts beside the ${joint}`;
      return [{ severity: "error", path: [...path, "size"], what, fix }];
    }
    return [];
  });
}
