// Where does a run bend between two sides: at corners, or where only the slope changes, and how is that said?
import type { Plan, Run } from "./plan.ts";

type Sides = Pick<Plan, "sides">;

/** A place between two sides, by the name of its bay: "A/B". Straight on only the slope changes, which is no corner. */
export const isCorner = ({ sides }: Sides, bayId: string): boolean => sides.find(({ id }) => id === bayId.split("/")[0])?.turn !== 0;

/** Names of the places between two sides that runs pass. */
export const jointsOf = (runs: readonly Pick<Run, "sideIds">[]): readonly string[] => [
  ...new Set(runs.flatMap(({ sideIds }) => sideIds.slice(1).map((id, before) => `${sideIds[before]}/${id}`))),
];

/** "corner A/B", "change of slope A/B". */
export const jointName = (plan: Sides, bayId: string): string => `${isCorner(plan, bayId) ? "corner" : "change of slope"} ${bayId}`;

/** What such places are called together: "corners", "changes of slope", "corners and changes of slope"; nothing where there are none. */
export function jointsWord(plan: Sides, bayIds: readonly string[]): string {
  const corners = bayIds.some((id) => isCorner(plan, id));
  const slopes = bayIds.some((id) => !isCorner(plan, id));
  return [corners ? "corners" : "", slopes ? "changes of slope" : ""].filter((word) => word !== "").join(" and ");
}
