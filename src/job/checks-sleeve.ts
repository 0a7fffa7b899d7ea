// What can be wrong with posts that stand in a sleeve?
import type { JobPath, Problem } from "../problem/problem.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { endsOf } from "./checks-pier.ts";
import { isOnePost } from "./corners.ts";
import type { JobFile } from "./schema.ts";
import { lumberOf } from "./sections.ts";
import { wrong } from "./wrong.ts";

interface Blocks {
  readonly guard?: JobFile["guard"] | undefined;
  readonly posts?: JobFile["posts"] | undefined;
  readonly fittings?: JobFile["fittings"] | undefined;
}

const PATH: JobPath = ["posts", "sleeve"];

/** What is not planned with sleeves is refused, each with what does instead. */
export function checkSleeve({ guard, posts, fittings }: Blocks): readonly Problem[] {
  if (posts === undefined) return [];
  const { sleeve, built } = posts;
  if (sleeve === undefined) return built === "sleeved" ? [undescribed] : [];
  if (built !== "sleeved") {
    return [wrong(PATH, "there is a sleeve, but the posts are not sleeved", "write built: sleeved, or leave the sleeve out", "key")];
  }
  return [...sizeProblems(posts, sleeve), ...placeProblems(guard), ...partProblems(posts, fittings)];
}

const undescribed = wrong(
  ["posts", "built"],
  "the posts are sleeved, but their sleeve is not described",
  "add sleeve: { size: 5 in x 5 in, wall: 3/16 in, material: vinyl }; size: is the wood inside it. A hollow sleeve with nothing inside holds no cable: set a post in it first",
);

function sizeProblems(posts: JobFile["posts"], { size, wall }: NonNullable<JobFile["posts"]["sleeve"]>): readonly Problem[] {
  const at = [...PATH, "size"];
  if (size.kind === "nominal") {
    return [wrong(at, `a sleeve of ${size.name} is a name, not a measure`, "measure it outside and write, for example, 5 in x 5 in")];
  }
  const inside = posts.size.kind === "measured" ? posts.size.sizes : lumberOf(posts.size);
  if (inside === null) return [];
  const [along, across] = [0, 1].map((axis) => (size.sizes[axis] ?? 0) - (inside[axis] ?? 0) - 2 * wall) as [number, number];
  if (along > -SAME_mm && across > -SAME_mm) return [];
  const fix = "measure the sleeve outside, its wall and the post inside it: size of the sleeve = post + two walls + the gaps between them";
  return [wrong(at, "the post does not go into its sleeve: post and two walls are wider than the sleeve", fix)];
}

function placeProblems(guard: JobFile["guard"] | undefined): readonly Problem[] {
  if (guard === undefined) return [];
  const piers = endsOf(guard).flatMap(({ path, end }): readonly Problem[] => {
    if (end.kind !== "pier") return [];
    const fix =
      "stand a sleeved end post beside the pier and write { kind: wall, gap: 3-1/2 in }, make what ends at the pier a job of its own with posts that are not sleeved (built: solid), or leave the sleeves off";
    return [wrong([...path, "kind"], "a guard of sleeved posts that ends at a pier is not planned here", fix)];
  });
  const sides = guard.sides.flatMap((side, index): readonly Problem[] => {
    const at = ["guard", "sides", index];
    if (side.rake !== undefined) {
      const fix = "write the side that slopes as a job of its own with posts that are not sleeved, or leave the sleeves off";
      return [wrong([...at, "rake"], "sleeved posts are planned for level sides only", fix, "key")];
    }
    if (isOnePost(side.corner)) {
      const fix = "make it with two posts (corner: two posts) and end the runs there (limits: most bends: 0), or leave the sleeves off";
      return [wrong([...at, "corner"], "one post in a sleeve cannot make a corner: cables or eyes would bear on the sleeve", fix)];
    }
    return [];
  });
  return [...piers, ...sides];
}

function partProblems(posts: JobFile["posts"], fittings: JobFile["fittings"] | undefined): readonly Problem[] {
  const own = (posts["as found"] ?? []).findIndex(({ size, leans }) => size !== undefined || leans !== undefined);
  return [
    ...(fittings?.face === undefined
      ? []
      : [
          wrong(
            ["fittings", "face"],
            "an end on the face would stand on the sleeve, which holds nothing",
            "leave face: out and end the cables behind their posts, or cut the sleeve away there and write built: solid",
            "key",
          ),
        ]),
    ...(own < 0
      ? []
      : [
          wrong(
            ["posts", "as found", own],
            "a sleeved post with a size or a lean of its own is not planned here",
            "set it right so that it is like the others, or write the sides without it as a job of their own",
            "key",
          ),
        ]),
  ];
}
