// Where do two sides meet at a corner, and where does only the slope change?
import { isCorner } from "../plan/joints.ts";
import type { Bay, Plan } from "../plan/plan.ts";

type Sided = Pick<Plan, "bays" | "sides">;

export const joints = ({ bays }: Pick<Plan, "bays">): readonly Bay[] => bays.filter(({ kind }) => kind === "corner");

/** Those where the guard turns. */
export const corners = (plan: Sided): readonly Bay[] => joints(plan).filter(({ id }) => isCorner(plan, id));

/** Those where it goes straight on, up or down. */
export const slopeChanges = (plan: Sided): readonly Bay[] => joints(plan).filter(({ id }) => !isCorner(plan, id));

/** Whether the guard turns anywhere, at two posts or at one. */
export const turns = (plan: Plan): boolean => corners(plan).length > 0 || plan.verticals.some(({ corner }) => corner !== undefined);
