// Z-604: what has to be bought, how many, and what does it cost?
import { BUSHING_TUBE } from "../../plan/bushing-tubes.ts";
import { BUSHING, SPOOL } from "../../plan/buying.ts";
import type { Plan } from "../../plan/plan.ts";
import type { OrderGroup, OrderLine } from "../../plan/purchase.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { bushingWarning, washerWarning } from "./bearing.ts";
import { blank, bold, caution, column, prose, refer, type SheetContext, type SheetMaker, sheet, strong, table } from "./kit.ts";
import { stockWords } from "./material.ts";

const groups: readonly OrderGroup[] = ["cable", "fittings", "bushings and washers", "care", "lumber and tube"];

export const orderSheet: SheetMaker = (context, head): Sheet => {
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.order)] : []),
    caution(
      "notice",
      `Buy one fitting of each kind first, measure it, and compare with ${refer(context, "survey")}: its size drives the bores.`,
    ),
    orderTable(context),
  ]);
};

/** One list, in the order in which the shops are visited. */
function orderTable({ plan, show }: SheetContext): Table {
  const { job } = plan;
  const lines = groups.flatMap((group) => plan.order.filter((line) => line.group === group));
  const priced = lines.some(({ price_cents }) => price_cents !== null);
  return table({
    id: "order-list",
    caption: "To buy",
    columns: [
      column("item", "Item", priced ? 0.35 : 0.38),
      column("size", "Size", 0.21),
      column("net", "Net", 0.05, { align: "right" }),
      column("spare", "Spare", 0.07, { align: "right" }),
      column("quantity", "Order", 0.13, { align: "right" }),
      ...(priced ? [column("price", "Price each", 0.08, { align: "right" })] : []),
      column("source", "Bought from / lot", priced ? 0.11 : 0.16, { sub: "field" }),
    ],
    rows: lines.map((line) => [
      `${itemText(line, plan, show)}${warningOf(line, plan)}`,
      line.size === "" ? "-" : line.size,
      String(line.net),
      String(line.spare),
      strong(`${line.quantity} ${unitWord(line)}`),
      ...(priced ? [line.price_cents === null ? "-" : show.money(line.price_cents)] : []),
      blank(),
    ]),
    writeIn: true,
    notes: [
      ...(plan.orderTotal_cents === null
        ? []
        : [`Total of the priced lines: ${bold(show.money(plan.orderTotal_cents))}, in the money of the job file: it names no currency.`]),
      `Spare fittings: ${show.percent(job.fittings.spareShare.value)}, rounded up ${sourceMark(job.fittings.spareShare.source)}. All fittings are of stainless ${job.cable.grade}, the grade of the cable.`,
      "Not in this list: screws, bolts, brackets and welds of posts, rails and spacers. Whoever accepts the frame names them.",
      ...(priced && plan.orderTotal_cents === null ? ["Prices are in the money of the job file: it names no currency."] : []),
    ],
  });
}

function warningOf({ item }: OrderLine, plan: Plan): Text {
  if (item.startsWith("washer")) return washerWarning(plan, item.includes("gripping") ? "grip" : "stud");
  return item === BUSHING || item === BUSHING_TUBE ? bushingWarning(plan) : "";
}

const unitWord = ({ unit, quantity }: OrderLine): Text => (unit === "piece" ? "pcs" : quantity === 1 ? unit : `${unit}s`);

/** Lumber says its length in its size, and its cut plan stands on its own sheet. */
function itemText({ group, item, pieceLength, note }: OrderLine, plan: Plan, show: SheetContext["show"]): Text {
  if (group === "lumber and tube") {
    return `${bold(item)}, stock pieces: ${stockWords(plan, item)}`;
  }
  return `**${item}**${pieceLength === null ? "" : `, ${item === SPOOL ? show.spool(pieceLength) : show.feet(pieceLength)}`}${note === "" ? "" : `: ${note}`}`;
}
