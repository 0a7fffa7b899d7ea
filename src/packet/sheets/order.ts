// Z-604: what has to be bought, how many, and what does it cost?
import type { OrderGroup, OrderLine } from "../../plan/purchase.ts";
import type { Block, Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { blank, bold, caution, column, facts, prose, refer, type SheetContext, type SheetMaker, sheet, table } from "./kit.ts";

const groups: readonly OrderGroup[] = ["cable", "fittings", "bushings and washers", "care", "lumber and tube"];

const groupNames: Readonly<Record<OrderGroup, Text>> = {
  cable: "Cable",
  fittings: "Fittings",
  "bushings and washers": "Bushings and washers",
  care: "Care of the material",
  "lumber and tube": "Lumber and tube",
};

export const orderSheet: SheetMaker = (context, head): Sheet => {
  const { plan, show } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.order)] : []),
    caution(
      "notice",
      `Buy one fitting of each kind first, measure it, and compare with ${refer(context, "survey")}: its size drives the bores.`,
    ),
    ...groups.flatMap((group) => groupBlocks(context, group)),
    facts("order-total", [
      [
        "Total of the priced lines",
        plan.orderTotal_cents === null ? "no prices given in the job file" : show.money(plan.orderTotal_cents),
        true,
      ],
      [
        "Spare fittings",
        `${show.percent(plan.job.fittings.spareShare.value)}, rounded up ${sourceMark(plan.job.fittings.spareShare.source)}`,
      ],
      ["Grade", `all fittings of stainless ${plan.job.cable.grade}, the grade of the cable`],
    ]),
  ]);
};

function groupBlocks(context: SheetContext, group: OrderGroup): readonly Block[] {
  const { plan, show } = context;
  const lines = plan.order.filter((line) => line.group === group);
  const priced = lines.some(({ price_cents }) => price_cents !== null);
  if (lines.length === 0) {
    return [];
  }
  return [
    table({
      id: `order-${group.replaceAll(" ", "-")}`,
      caption: groupNames[group],
      columns: [
        column("item", "Item", 0.29),
        column("size", "Size", 0.2),
        column("net", "Net", 0.07, { align: "right" }),
        column("spare", "Spare", 0.08, { align: "right" }),
        column("quantity", "Order", 0.12, { align: "right" }),
        ...(priced ? [column("price", "Price each", 0.1, { align: "right" })] : []),
        column("source", "From, lot", priced ? 0.16 : 0.26, { sub: "field" }),
      ],
      rows: lines.map((line) => [
        itemText(line, show),
        line.size === "" ? "-" : line.size,
        String(line.net),
        String(line.spare),
        bold(`${line.quantity} ${unitWord(line)}`),
        ...(priced ? [line.price_cents === null ? "-" : show.money(line.price_cents)] : []),
        blank(),
      ]),
      writeIn: true,
    }),
  ];
}

const unitWord = ({ unit, quantity }: OrderLine): Text => (unit === "piece" ? "pcs" : quantity === 1 ? unit : `${unit}s`);

/** Lumber says its length in its size, and its cut plan stands on its own sheet. */
function itemText({ group, item, pieceLength, note }: OrderLine, show: SheetContext["show"]): Text {
  if (group === "lumber and tube") {
    return `**${item}**`;
  }
  return `**${item}**${pieceLength === null ? "" : `, ${show.feet(pieceLength)}`}${note === "" ? "" : `: ${note}`}`;
}
