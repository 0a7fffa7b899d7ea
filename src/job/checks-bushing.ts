// What can be wrong with the bushings where a cable bends?
import type { Problem } from "../problem/problem.ts";
import type { Blocks } from "./checks.ts";
import { checkRating } from "./checks-rating.ts";
import { wrong } from "./wrong.ts";

const PATH = ["fittings", "bushing"];

export function checkBushing({ fittings, posts, spacers, cable }: Blocks): readonly Problem[] {
  const bushing = fittings?.bushing;
  if (bushing === undefined) return [];
  const { "tube wall": wall } = bushing;
  const bore = fittings?.["bushing bore"];
  const at = [...PATH, "tube wall"];
  return [
    ...checkRating(bushing, PATH, { what: "bushing", by: "its maker's data sheet, or who tested it" }),
    ...(wall !== undefined && [posts, spacers].some((member) => member !== undefined && member.material !== "wood")
      ? [
          wrong(
            at,
            "a tube round the bushings is for posts and spacers of wood",
            "leave it out: a wall of metal bears its bushing itself",
            "key",
          ),
        ]
      : []),
    ...(wall !== undefined && bore === undefined
      ? [
          wrong(
            at,
            "the tube round the bushings has a wall, but no outside diameter",
            "add bushing bore: with the outside of the tube, for example bushing bore: 5/8 in",
            "key",
          ),
        ]
      : []),
    ...(wall !== undefined && bore !== undefined && cable !== undefined && bore - 2 * wall <= cable.diameter
      ? [
          wrong(
            at,
            "a tube with this wall has no room for the cable in its bushing",
            "check both: bushing bore is the outside of the tube, tube wall its thickness",
          ),
        ]
      : []),
  ];
}
