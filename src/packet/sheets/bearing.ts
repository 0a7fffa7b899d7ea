// Where is a washer too small for the wood under it, and how is that said beside the washer?
import type { EndKind, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";

/** True where a check finds that the washers at ends of this kind press too hard on the wood. */
function sinksIn({ checks, runs }: Pick<Plan, "checks" | "runs">, kind: EndKind): boolean {
  const ids = runs.flatMap((run) =>
    [run.left, run.right].filter((end) => end.kind === kind).map(({ postId }) => `bearing-${run.id}-${postId}`),
  );
  return checks.some(({ id, ratio }) => ids.includes(id) && ratio !== null && ratio > 1);
}

/** For the sheet of questions. */
export const bearingQuestion = (plan: Plan): readonly (readonly [Text, Text])[] =>
  plan.job.posts.section.material === "wood"
    ? [
        [
          "Do the washers bear on the wood of these posts (engineer)?",
          sinksIn(plan, "stud") || sinksIn(plan, "grip") ? "not by the check on Z-001: to be decided" : "yes, by the check on Z-001",
        ],
      ]
    : [];

/** Printed behind a washer's size wherever it stands. */
export const washerWarning = (plan: Plan, kind: EndKind): Text =>
  sinksIn(plan, kind) ? " (**too small by the check on Z-001: decide first**)" : "";
