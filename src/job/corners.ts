// What may a corner be made of, and what does it count among the corners of a run?
import type { JobPath, Problem } from "../problem/problem.ts";
import * as custom from "../tables/practice.ts";
import { stated } from "./fitting-defaults.ts";
import type { JobFile } from "./schema.ts";
import type { CornerLimits } from "./standing.ts";
import { wrong } from "./wrong.ts";

export const cornerLimitsOf = (file: NonNullable<JobFile["limits"]>): CornerLimits => ({
  onePostTurn_max: stated(file["largest turn on one post"], "limits: largest turn on one post", custom.onePostTurn_max),
  straightBoreTurn_max: stated(file["largest turn bored straight"], "limits: largest turn bored straight", custom.straightBoreTurn_max),
  smallTurn_max: stated(file["small turn"], "limits: small turn", custom.smallTurn_max),
});

const TWO_POSTS =
  "make it with two posts that each turn the cable half-way (corner: two posts), or interrupt the guard there with an end post on each side";

/** A corner of one post that is not planned, each with what does instead. */
export function checkCorners(guard: JobFile["guard"], posts: JobFile["posts"] | undefined): readonly Problem[] {
  return guard.sides.flatMap((side, index): readonly Problem[] => {
    if (side.corner !== "one post" && side.corner !== "one post, ends") return [];
    const path: JobPath = ["guard", "sides", index, "corner"];
    const next = guard.sides[index + 1];
    if (posts !== undefined && posts.material !== "wood") {
      return [wrong(path, "one post of metal cannot turn a cable: a tube bored on the mitre has no wall to bear on", TWO_POSTS)];
    }
    if (side.corner === "one post, ends") {
      return [
        wrong(
          path,
          "two runs that end on one corner post are not planned here: their bores would cross inside it",
          "let the cables pass it (corner: one post), or make the corner with two posts (corner: two posts), on each of which a run may end",
        ),
      ];
    }
    if (next === undefined) return [wrong(path, "the last side has no corner behind it", "leave the corner out", "key")];
    if (side.interrupted !== undefined) {
      return [wrong(path, "no cable passes what interrupts the guard here", "leave the corner out, or what interrupts the guard", "key")];
    }
    if (side.rake !== undefined || next.rake !== undefined) {
      return [wrong(path, "one post at the corner of a side that slopes is not planned here", TWO_POSTS)];
    }
    if (side.stations !== undefined || next.stations !== undefined) {
      return [
        wrong(
          path,
          "one post at a corner is not planned here on a side whose posts are given by their stations",
          "leave the stations of both its sides out if the posts are new; where they stand already, add a second post and write corner: two posts",
        ),
      ];
    }
    return [];
  });
}
