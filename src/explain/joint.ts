// What does the way of a cable over a joint of two sides come to, as a step of a calculation?
import { type CornerPath, jointPath } from "../plan/corner-path.ts";
import type { FunctionOf } from "./formula.ts";

/** Takes a, b: from the joint to the near faces of its two posts, level; the turn; the slope of either side. */
export const overJoint =
  (pick: (path: CornerPath) => number): FunctionOf =>
  (a, b, turn, slope_left, slope_right) =>
    pick(
      jointPath({
        setback_left: Number(a),
        setback_right: Number(b),
        turn: Number(turn),
        slope_left: Number(slope_left),
        slope_right: Number(slope_right),
      }),
    );
