// Where is a washer too small for the wood under it, and how is that said beside the washer?
import type { EndKind, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";

/** True where a check finds that the washers at ends of this kind press too hard on the wood. */
export function sinksIn({ checks, runs }: Pick<Plan, "checks" | "runs">, kind: EndKind): boolean {
  const ids = runs.flatMap((run) =>
    [run.left, run.right].filter((end) => end.kind === kind).map(({ postId }) => `bearing-${run.id}-${postId}`),
  );
  return checks.some(({ id, ratio }) => ids.includes(id) && ratio !== null && ratio > 1);
}

/** Printed behind a washer's size wherever it stands. */
export const washerWarning = (plan: Plan, kind: EndKind): Text =>
  sinksIn(plan, kind) ? " (**too small by the check on Z-001: decide first**)" : "";
