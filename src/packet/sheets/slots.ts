// How wide is the passage between two posts that stand close, as the plan checked it against the sphere?
import type { Bay, Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { listed, refer, type SheetContext } from "./kit.ts";

/** Narrowest passage: that of the check, or the free length where two posts of a pair stand. */
export function slotOf({ checks }: Plan, { kind, sideId, free }: Bay): Mm {
  const check = kind === "corner" ? checks.find(({ id }) => id === `corner-slot-${sideId}`) : undefined;
  return check?.demand?.value ?? free;
}

/** Why two posts that stand close have no bottom rail between them; nothing where there are none, or no bottom rail at all. */
export function cornerRailWords(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const close = plan.bays.filter(({ kind }) => kind === "corner");
  if (close.length === 0 || plan.job.frame.bottomRail === null) return [];
  const slots = close.map((bay) => `${show.tape(slotOf(plan, bay))} at ${bay.id}`);
  return [
    `No bottom rail between ${listed(close.map(({ leftId, rightId }) => `${leftId} and ${rightId}`))}: the slot there is narrower than the sphere (${listed(slots)}, measured on ${refer(context, "proof")}).`,
  ];
}
