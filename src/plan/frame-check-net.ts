// What is left of a post's section at its bores?
import type { Section as JobSection } from "../job/job.ts";
import { blindHoleCuts, mitredSection, solidBoreCuts, tubeBoreCuts } from "../mechanics/bore-cuts.ts";
import { type Cut, type NetSection, netSection, type Section } from "../mechanics/section.ts";
import type { Mm } from "../units/quantity.ts";
import type { CornerPost } from "./corner-post.ts";
import { designWall } from "./frame-members.ts";
import type { Bore, Vertical } from "./plan.ts";

/** What a section is made of. */
type Built = Pick<JobSection, "material" | "wall"> & { readonly corner?: CornerPost | undefined };

export function netOf(whole: Section, bores: readonly Bore[], built: Built): NetSection {
  const mitred = mitredBore(bores, built);
  return mitred === null ? netSection(whole, boreCutsOf(whole, bores, built)) : mitredSection(whole, mitred);
}

/** The bore of a course that goes through on the mitre, with the wall that it goes through; null where none does. */
export function mitredBore(bores: readonly Bore[], { material, wall }: Built): { readonly diameter: Mm; readonly wall: Mm | null } | null {
  const bore = bores.find(({ skew }) => skew !== 0);
  return bore === undefined ? null : { diameter: bore.diameter, wall: wall === null ? null : designWall(material, wall) };
}

/** The section of a post, and how it stands at a corner. */
export const builtOf = ({ material, wall }: JobSection, { corner }: Pick<Vertical, "corner">): Built => ({ material, wall, corner });

/** What the bores of a course that go along its axes take out of a post's section; what a bore takes beyond the post's edge is left out. */
export function boreCutsOf(whole: Section, bores: readonly Bore[], { material, wall, corner }: Built): readonly Cut[] {
  const ofOwnSide = bores.find(({ entryFace }) => entryFace === "left");
  const cuts = bores.flatMap(({ through, entryFace, drilledLength, diameter, offset, counterbore, sleeveHole }) => {
    const bore = { along: "x", diameter, offset } as const;
    if (!through) {
      const depth = wall === null ? Math.min(drilledLength, whole.x.size) : designWall(material, wall);
      // Of two runs that end on a corner post one is bored into the face that looks to the next side: the deck's in a turn to the right.
      if (corner !== undefined && entryFace === "right") {
        return blindHoleCuts(whole, { ...bore, along: "y", depth, from: corner.turn > 0 ? "near" : "far" });
      }
      return blindHoleCuts(whole, { ...bore, depth, from: entryFace === "left" ? "near" : "far" });
    }
    if (wall !== null) return tubeBoreCuts(whole, { ...bore, wall: designWall(material, wall) });
    // Behind a corner post the run of the next side ends too, whose bores cross those of this one.
    if (corner?.isSetOff === true && entryFace === "right") return squareToIt(whole, { diameter, taken: ofOwnSide?.diameter ?? 0 });
    // The hole of a washer in a sleeve takes nothing out of the wood inside.
    if (counterbore === null || sleeveHole !== undefined) return solidBoreCuts(whole, bore);
    const sunk = { diameter: Math.max(diameter, counterbore.diameter), depth: Math.min(counterbore.depth, whole.x.size) };
    return solidBoreCuts(whole, { ...bore, ...(counterbore.face === "left" ? { near: sunk } : { far: sunk }) });
  });
  return cuts.flatMap((cut) => inside(cut, whole));
}

/** A bore through the post in the other direction, without what a bore of the first one took. */
function squareToIt(whole: Section, { diameter, taken }: { readonly diameter: Mm; readonly taken: Mm }): readonly Cut[] {
  const y = (whole.y.size - taken) / 2;
  const atY = (y + taken) / 2;
  return [-atY, atY].map((at) => ({ x: diameter, y, atX: 0, atY: at }));
}

function inside(cut: Cut, whole: Section): readonly Cut[] {
  const half = whole.y.size / 2;
  const [from, to] = [Math.max(-half, cut.atY - cut.y / 2), Math.min(half, cut.atY + cut.y / 2)];
  return to > from ? [{ ...cut, y: to - from, atY: (from + to) / 2 }] : [];
}

/**
 * Of each post the bores of one course: alike at every course, or farthest from its middle where a post leans. Bores that cross a corner post
 * at two heights are taken out of one section, which is less than what is left at either.
 */
export function boresOfWorstCourse({ bores }: { readonly bores: readonly Bore[] }): ReadonlyMap<string, readonly Bore[]> {
  const byPost = new Map<string, Map<number, Bore[]>>();
  for (const bore of bores) {
    const courses = byPost.get(bore.verticalId) ?? new Map<number, Bore[]>();
    byPost.set(bore.verticalId, courses.set(bore.course, [...(courses.get(bore.course) ?? []), bore]));
  }
  const farthest = (course: readonly Bore[]): number => Math.max(...course.map(({ offset }) => Math.abs(offset)));
  return new Map(
    [...byPost].map(([id, courses]) => {
      const all = [...courses.values()];
      return [id, all.reduce((worst, one) => (farthest(one) > farthest(worst) ? one : worst), all[0] ?? [])] as const;
    }),
  );
}
