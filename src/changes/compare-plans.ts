// What has changed between the plan that was issued and the plan as it is now? Two plans and their job files -> Changes.
import { revisionOf } from "../job/identity.ts";
import type { Plan } from "../plan/plan.ts";
import { boreChanges } from "./bore-changes.ts";
import { cableChanges } from "./cable-changes.ts";
import type { Changes, Draft, Edition, Todo } from "./changes.ts";
import { checkChanges } from "./check-changes.ts";
import { frameChanges } from "./frame-changes.ts";
import { changedValues } from "./job-values.ts";
import { matchPlans } from "./match.ts";
import { shopChanges } from "./shop-changes.ts";

/** A plan with the text of its job file. */
export interface Source {
  readonly plan: Plan;
  readonly text: string;
}

/** In the order in which they stand on the sheet: what was missed there costs most. */
const todos: readonly Todo[] = ["ask", "mark", "set", "bore", "cut", "buy", "tighten", "read"];

/**
 * Compares two plans of one job.
 *
 * @param before - as it was issued
 * @param after - as it is now
 * @returns numbered changes, by what has to be done; none where both are the same
 * @throws never
 */
export function comparePlans(before: Source, after: Source): Changes {
  const match = matchPlans(before.plan, after.plan);
  const drafts = [...frameChanges(match), ...boreChanges(match), ...cableChanges(match), ...shopChanges(match), ...checkChanges(match)];
  const { number, revisions } = after.plan.job.identity;
  const issuedAt = revisions.findIndex(({ mark }) => mark === revisionOf(before.plan.job.identity));
  return {
    jobNumber: number,
    from: editionOf(before.plan),
    to: editionOf(after.plan),
    between: revisions.slice(issuedAt + 1, -1).map(({ mark }) => mark),
    changes: todos.flatMap((todo) => drafts.filter((draft) => draft.todo === todo)).map(numbered),
    values: changedValues(before.text, after.text),
  };
}

const numbered = (draft: Draft, index: number): Changes["changes"][number] => ({ number: index + 1, ...draft });

const editionOf = ({ job: { identity }, verdict }: Plan): Edition => ({
  revision: revisionOf(identity),
  issueDate: identity.issueDate,
  status: identity.status,
  verdict,
});
