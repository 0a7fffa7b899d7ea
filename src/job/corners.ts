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
  betweenBores_min: stated(file["wood between bores"], "limits: wood between bores", custom.betweenBores_min),
});

/** Whether one post makes the corner, passed or not. */
export const isOnePost = (corner: JobFile["guard"]["sides"][number]["corner"]): boolean => corner !== undefined && corner !== "two posts";

const TWO_POSTS =
  "make it with two posts that each turn the cable half-way (corner: two posts), or interrupt the guard there with an end post on each side";

/** Eyes on two faces that are square to each other are both pulled straight within this much of a right angle: common practice, no source. */
const OFF_SQUARE_rad = (4 * Math.PI) / 180;

const PASS = "let the cables pass it (corner: one post)";
const TWO_ENDS = "make the corner with two posts (corner: two posts), on each of which a run may end";

interface Beside {
  readonly posts?: JobFile["posts"] | undefined;
  readonly fittings?: JobFile["fittings"] | undefined;
}

/** A corner of one post that is not planned, each with what does instead. */
export function checkCorners(guard: JobFile["guard"], { posts, fittings }: Beside): readonly Problem[] {
  return guard.sides.flatMap((side, index): readonly Problem[] => {
    const endHere = side.corner === "one post, ends";
    if (!isOnePost(side.corner)) return [];
    const path: JobPath = ["guard", "sides", index, "corner"];
    const next = guard.sides[index + 1];
    if (posts !== undefined && posts.material !== "wood" && side.corner === "one post") {
      return [wrong(path, "one post of metal cannot turn a cable: a tube bored on the mitre has no wall to bear on", TWO_POSTS)];
    }
    if (endHere && fittings !== undefined && fittings.face === undefined) {
      return [
        wrong(
          path,
          "bores of two runs that end on one corner post would cross inside it: such runs end on its two faces, and what holds there is not said",
          `add face: to fittings, for example face: { kind: lag screw, diameter: 5/16 in, depth: 1-1/2 in, ... }; or set the bores of one side off in height (corner: one post, bores set off), or ${PASS}, or ${TWO_ENDS}`,
        ),
      ];
    }
    if (endHere && Math.abs(Math.abs(side.turn ?? 0) - Math.PI / 2) > OFF_SQUARE_rad) {
      return [
        wrong(
          path,
          "two runs end on one corner post only at a right angle: at another turn its faces look past the cables, and the eyes are pulled aside",
          `${PASS}, or ${TWO_ENDS}`,
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
    return [];
  });
}
