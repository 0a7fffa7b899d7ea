// What can be wrong with how a guard stands although each value reads well by itself?

import type { JobPath, Problem } from "../problem/problem.ts";
import { alongLean_max } from "../tables/practice.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

type SideFile = JobFile["guard"]["sides"][number];

export function checkInterruption({ interrupted }: SideFile, path: JobPath, isLast: boolean): readonly Problem[] {
  if (interrupted === undefined) return [];
  const at = [...path, "interrupted"];
  const fix = "add the side that follows, or leave it out and say under guard: end how the guard ends";
  return [
    ...(isLast ? [wrong(at, "the last side has no side behind what interrupts it", fix, "key")] : []),
    ...(interrupted.in !== undefined && interrupted.out !== undefined
      ? [wrong([...at, "in"], "the next side cannot start both towards and away from the deck", "keep the one that was measured", "key")]
      : []),
  ];
}

export function checkHardware(posts: JobFile["posts"]): readonly Problem[] {
  const problems = (posts.hardware ?? []).flatMap(({ what, from, to, posts: marks }, index): readonly Problem[] => {
    const path = ["posts", "hardware", index];
    const twice = (marks ?? []).findIndex((mark, place) => (marks ?? []).indexOf(mark) < place);
    return [
      ...(to <= from + SAME_mm
        ? [
            wrong(
              [...path, "to"],
              `the upper end of "${what}" is not above its lower end`,
              "write the lower height as from, the upper as to",
            ),
          ]
        : []),
      ...(twice >= 0
        ? [wrong([...path, "posts", twice], `${marks?.[twice]} stands twice in the list of posts`, "write each post once")]
        : []),
    ];
  });
  if (posts["hardware clearance"] === undefined || posts.hardware !== undefined) return problems;
  const fix = "add hardware: with what it is and its heights, or leave the clearance out";
  return [...problems, wrong(["posts", "hardware clearance"], "there is no hardware to keep clear of", fix, "key")];
}

/** Posts by themselves: each once, with something to say, and of a size or lean only where it stands already. */
export function checkAsFound(posts: JobFile["posts"], sides: readonly SideFile[]): readonly Problem[] {
  const found = posts["as found"] ?? [];
  const standing = posts.existing === true && sides.every(({ stations }) => stations !== undefined);
  return found.flatMap(({ post, access, behind, size, wall, leans }, index): readonly Problem[] => {
    const path = ["posts", "as found", index];
    const own = size ?? leans;
    return [
      ...(found.findIndex((other) => other.post === post) < index
        ? [wrong([...path, "post"], `${post} stands twice in the list`, "write all that is to be said of a post in one place")]
        : []),
      ...(access === undefined && behind === undefined && own === undefined
        ? [wrong(path, `nothing is said of ${post}`, "add what is found there, for example access: hand, or leave the post out", "key")]
        : []),
      ...(behind !== undefined && access === undefined
        ? [wrong([...path, "behind"], `it is not said what reaches the back of ${post}`, "add access: drill, hand or none", "key")]
        : []),
      ...(own !== undefined && !standing
        ? [
            wrong(
              [...path, size === undefined ? "leans" : "size"],
              `${post} can only be told apart by its size or lean where posts stand already`,
              "write existing: true under posts and give the stations of all sides, so that each post has its mark before the plan is made",
              "key",
            ),
          ]
        : []),
      ...(size !== undefined && wall === undefined && posts.wall !== undefined
        ? [wrong([...path, "size"], `${post} has no wall, although the other posts are tubes`, "add the wall of this tube", "key")]
        : []),
      ...(wall !== undefined && size === undefined
        ? [wrong([...path, "wall"], "a wall without a size", "add the size of the tube", "key")]
        : []),
      ...(leans === undefined ? [] : checkLean(leans, post, [...path, "leans"])),
    ];
  });
}

type LeanFile = NonNullable<NonNullable<JobFile["posts"]["as found"]>[number]["leans"]>;

/** One way across the guard and one along it at most, and along it no further than its bores can be level in it. */
function checkLean({ out, in: inward, left, right, over }: LeanFile, post: string, path: JobPath): readonly Problem[] {
  const along = Math.max(left ?? 0, right ?? 0);
  return [
    ...((out !== undefined && inward !== undefined) || [out, inward, left, right].every((way) => way === undefined)
      ? [
          wrong(
            path,
            "a lean is either away from the deck or towards it",
            "write out: or in:, whichever the level shows; along the guard left: or right:",
          ),
        ]
      : []),
    ...(left !== undefined && right !== undefined
      ? [
          wrong(
            path,
            "a lean along the guard is either to the left or to the right",
            "write left: or right:, as seen from the deck, looking out",
          ),
        ]
      : []),
    ...(along > alongLean_max.value * over + SAME_mm
      ? [
          wrong(
            [...path, left === undefined ? "right" : "left"],
            `${post} leans along the guard by more than 1 in 20: nuts and washers would bear on one edge, and a tape along it shows wrong heights`,
            "set the post plumb or replace it, and look why it leans",
          ),
        ]
      : []),
  ];
}

const SLEEVED_TUBE =
  "bushings must go into the tube before its sleeve goes on: write built: solid, bore the tube, and cut holes in the sleeve that clear bushings and washers";

/** What is not planned here is refused, each with what does instead. */
export function checkNotBored(blocks: { readonly posts?: JobFile["posts"] | undefined }): readonly Problem[] {
  const { posts } = blocks;
  const wood = posts?.material === "wood";
  return [
    ...(posts?.built !== undefined && posts.built !== "solid" && !wood
      ? [
          wrong(
            ["posts", "built"],
            `a post of ${posts.material} is not ${posts.built}`,
            posts.built === "sleeved" ? SLEEVED_TUBE : "leave it out; only wood is laminated or sleeved",
            "key",
          ),
        ]
      : []),
    ...(posts?.mount === "fascia" && posts.base?.kind !== "measured"
      ? [
          wrong(
            ["posts", "mount"],
            "a post on the fascia moves more than one on the deck, and by how much is not known here",
            "pull one and write what it does: base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 1/4 in }",
          ),
        ]
      : []),
  ];
}
