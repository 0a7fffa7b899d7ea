// Where do two sides meet, and is it a corner, or does only the slope change there?
import type { Bay, Plan } from "../plan/plan.ts";

type Sided = Pick<Plan, "bays" | "sides">;

export const joints = ({ bays }: Pick<Plan, "bays">): readonly Bay[] => bays.filter(({ kind }) => kind === "corner");

/** Straight on: the guard turns no corner there. */
export const isSlopeChange = ({ sides }: Pick<Plan, "sides">, { sideId }: Pick<Bay, "sideId">): boolean =>
  sides.find(({ id }) => id === sideId)?.turn === 0;

/** Those where the guard turns. */
export const corners = (plan: Sided): readonly Bay[] => joints(plan).filter((bay) => !isSlopeChange(plan, bay));

/** Those where it goes straight on, up or down. */
export const slopeChanges = (plan: Sided): readonly Bay[] => joints(plan).filter((bay) => isSlopeChange(plan, bay));
