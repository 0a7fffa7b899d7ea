// Z-605: which tools does each step need, and are they at hand, rented or bought?
import type { ToolLine } from "../../plan/purchase.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { introduction } from "../wording.ts";
import { bold, column, list, prose, type SheetContext, type SheetMaker, sheet, table, tick } from "./kit.ts";

export const toolsSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [...(context.home ? [prose(...introduction.tools)] : []), list(...notes(context)), toolsTable(context)]);

/** A tool that is rented by the day may as well be bought. */
const sourceWords: Readonly<Record<ToolLine["source"], Text>> = { have: "have", rent: "rent or buy", buy: "buy" };

const notes = ({ home }: SheetContext): readonly Text[] => [
  "Keep tools that have touched carbon steel away from stainless parts: wrenches, cutters, brushes and files are clean, or kept for stainless.",
  ...(home ? ["Book what you rent for the days of boring, reeving and tightening."] : []),
];

function toolsTable({ plan }: SheetContext): Table {
  return table({
    id: "tools-list",
    caption: "Tools, in the order of the work",
    columns: [
      column("step", "To", 0.14),
      column("tool", "Tool", 0.25),
      column("size", "Size", 0.19),
      column("source", "Get it", 0.1),
      column("note", "Note", 0.26),
      column("there", "Here", 0.06, { align: "center" }),
    ],
    rows: plan.tools.map(({ step, item, size, source, note }) => [
      step,
      bold(item),
      size === "" ? "-" : size,
      sourceWords[source],
      note,
      tick,
    ]),
  });
}
