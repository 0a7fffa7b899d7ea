// How wide is the passage between two posts that stand close, as the plan checked it against the sphere?
import type { Bay, Plan } from "../../plan/plan.ts";
import { clearOf } from "../../plan/sleeve.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Table, Text } from "../packet.ts";
import { blankRow, bold, column, listed, refer, type SheetContext, table } from "./kit.ts";

/** Narrowest passage: that of the check, or what is clear where two posts of a pair stand. */
function slotOf(plan: Plan, bay: Bay): Mm {
  const check = bay.kind === "corner" ? plan.checks.find(({ id }) => id === `corner-slot-${bay.sideId}`) : undefined;
  return check?.demand?.value ?? clearOf(bay, plan);
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

/** Between two posts of a pair or of a corner stands no rail that could stop a sphere: the slot is measured, at its narrowest. */
export function slotTables({ plan, show }: SheetContext): readonly Table[] {
  const columns = [
    column("slot", "Slot", 0.16),
    column("posts", "Between", 0.22),
    column("plan", "Plan", 0.16, { sub: "clear" }),
    column("widest", "Widest measured", 0.28, { sub: show.lengthUnit }),
    column("initials", "Initials", 0.18),
  ];
  const rows = plan.bays
    .filter(({ kind }) => kind !== "bay")
    .map((bay) => blankRow(columns, bold(bay.id), `${bay.leftId} and ${bay.rightId}`, show.tape(slotOf(plan, bay))));
  return rows.length === 0
    ? []
    : [
        table({
          id: "proof-slots",
          caption: "Slots between two posts, from the datum to the top rail: measure, the sphere must not pass",
          columns,
          rows,
          writeIn: true,
        }),
      ];
}
