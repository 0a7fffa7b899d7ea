// Z-605: which tools does each step need, and are they at hand, rented or bought?
import type { Block, Sheet, Table } from "../packet.ts";
import { introduction, sourceVerb } from "../wording.ts";
import { bold, caution, column, list, listed, prose, type SheetContext, type SheetMaker, sheet, table, tick, unique } from "./kit.ts";

export const toolsSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.tools), ...rentAdvice(context)] : []),
    caution(
      "notice",
      "Keep tools that have touched carbon steel away from stainless parts: wrenches, cutters, brushes and files must be clean, or kept for stainless.",
    ),
    ...unique(context.plan.tools.map(({ step }) => step)).map((step, index) => stepTable(context, step, index)),
  ]);

function stepTable({ plan }: SheetContext, step: string, index: number): Table {
  return table({
    id: `tools-${index + 1}`,
    caption: `To ${step}`,
    columns: [
      column("tool", "Tool", 0.27),
      column("size", "Size", 0.22),
      column("source", "Get it", 0.08),
      column("note", "Note", 0.35),
      column("there", "There", 0.08, { align: "center" }),
    ],
    rows: plan.tools
      .filter((tool) => tool.step === step)
      .map(({ item, size, source, note }) => [bold(item), size === "" ? "-" : size, sourceVerb[source], note, tick]),
  });
}

function rentAdvice({ plan }: SheetContext): readonly Block[] {
  const rented = plan.tools.filter(({ source }) => source === "rent").map(({ item }) => item);
  return rented.length === 0 ? [] : [list(`**Rent:** ${listed(rented)}. Book them for the days of boring, reeving and tightening.`)];
}
