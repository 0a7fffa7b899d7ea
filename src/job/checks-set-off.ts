// What can be wrong with a corner post behind which the runs of both sides end, their bores set off in height?
import type { JobPath, Problem } from "../problem/problem.ts";
import { crossedTurn_off } from "../tables/practice.ts";
import { SAME_rad } from "../units/tolerance.ts";
import { endsOf } from "./checks-pier.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

interface Blocks {
  readonly guard?: JobFile["guard"] | undefined;
  readonly posts?: JobFile["posts"] | undefined;
  readonly fittings?: JobFile["fittings"] | undefined;
}

const FACES = "hold the ends on its two faces (corner: one post, ends; fittings: face)";
const TWO_POSTS = "make the corner with two posts (corner: two posts)";

/** The bores of one side lie between those of the other: what is not planned with that is refused, each with what does instead. */
export function checkSetOff({ guard, posts, fittings }: Blocks): readonly Problem[] {
  const index = guard?.sides.findIndex(({ corner }) => corner === "one post, bores set off") ?? -1;
  if (guard === undefined || index < 0) return [];
  return [
    ...guard.sides.flatMap((side, at) => turnProblems(side, at)),
    ...placeProblems(guard),
    ...(posts === undefined ? [] : postProblems(posts, ["guard", "sides", index, "corner"])),
    ...(fittings?.ends === "on the face"
      ? [
          wrong(
            ["fittings", "ends"],
            "ends on the faces of posts are not planned together with a corner post whose bores are set off",
            `leave it out, or ${FACES}`,
            "key",
          ),
        ]
      : []),
  ];
}

function turnProblems({ corner, turn }: JobFile["guard"]["sides"][number], at: number): readonly Problem[] {
  if (corner !== "one post, bores set off" || Math.abs(Math.abs(turn ?? 0) - Math.PI / 2) <= crossedTurn_off.value + SAME_rad) return [];
  return [
    wrong(
      ["guard", "sides", at, "corner"],
      "bores of two runs go through one corner post only at a right angle: at another turn they are not square to its faces",
      `let the cables pass it (corner: one post), or ${TWO_POSTS}`,
    ),
  ];
}

function placeProblems(guard: JobFile["guard"]): readonly Problem[] {
  const piers = endsOf(guard).flatMap(({ path, end }): readonly Problem[] => {
    if (end.kind !== "pier") return [];
    const what = "the heights of a guard that ends at a pier are not set off at a corner post";
    return [wrong([...path, "kind"], what, `stand an end post beside the pier, or ${TWO_POSTS}`)];
  });
  const rakes = guard.sides.flatMap((side, at): readonly Problem[] => {
    if (side.rake === undefined) return [];
    const what = "courses that are set off in height at a corner post are planned for level sides only";
    return [wrong(["guard", "sides", at, "rake"], what, `write the side that slopes as a job of its own, or ${TWO_POSTS}`, "key")];
  });
  return [...piers, ...rakes];
}

function postProblems(posts: JobFile["posts"], corner: JobPath): readonly Problem[] {
  const leans = (posts["as found"] ?? []).findIndex((one) => one.leans?.left !== undefined || one.leans?.right !== undefined);
  return [
    ...(posts.material === "wood"
      ? []
      : [
          wrong(
            corner,
            `bores that cross at two heights are planned in wood only: in a tube of ${posts.material} two families of bores weaken every wall`,
            `${FACES}, or ${TWO_POSTS}`,
          ),
        ]),
    ...(posts.hardware === undefined
      ? []
      : [
          wrong(
            ["posts", "hardware"],
            "courses that are set off in height at a corner post are not moved past hardware",
            `leave it out and set out the bores beside it by hand, or ${FACES}`,
            "key",
          ),
        ]),
    ...(leans < 0
      ? []
      : [
          wrong(
            ["posts", "as found", leans, "leans"],
            "a post that leans along the guard is not planned together with a corner post whose bores are set off",
            `set it plumb or replace it, or ${FACES}`,
          ),
        ]),
  ];
}
