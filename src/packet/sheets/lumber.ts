// Z-602: which parts are cut, and from which stock piece does each come?
import type { CutPlan } from "../../plan/purchase.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { caution, column, facts, prose, type SheetContext, type SheetMaker, sheet, strong, table, tick } from "./kit.ts";

export const lumberSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.lumber)] : []),
    ...(plan.cuts.length === 0
      ? [prose("Nothing is cut: the frame stands already, with its posts, rails and spacers.")]
      : [
          ...sawCaution(context),
          stockFacts(context),
          cutTable(context),
          ...plan.cutPlans.flatMap((cutPlan, index) => cutPlanBlocks(context, cutPlan, index)),
        ]),
  ]);
};

function sawCaution({ plan }: SheetContext): readonly Block[] {
  const treated = [plan.job.posts.treatment, plan.job.spacers.treatment, plan.job.frame.topRailTreatment].includes("treated");
  return [
    caution(
      "warning",
      "Wear eye and hearing protection at the saw.",
      ...(treated ? ["Treated wood: dust mask, gloves, work outdoors, collect the dust, never burn scrap. Treat every cut end."] : []),
    ),
  ];
}

function stockFacts({ plan, show }: SheetContext): Block {
  const { stock, posts } = plan.job;
  return facts("lumber-facts", [
    ["Stock lengths", `${stock.lumberLengths.value.map(show.feet).join(", ")} ${sourceMark(stock.lumberLengths.source)}`],
    ["Saw kerf", `${show.tapeBoth(stock.kerf.value)} ${sourceMark(stock.kerf.source)}`],
    ["Trimmed off each end first", `${show.tapeBoth(stock.endTrim.value)} ${sourceMark(stock.endTrim.source)}`],
    ...(posts.existing ? [] : ([["Posts below the datum", show.tapeBoth(posts.belowDatum)]] as const)),
    ["Allowance", "none in the lengths: they are finished sizes along the grain or the tube"],
  ]);
}

function cutTable({ plan, show }: SheetContext): Table {
  return table({
    id: "lumber-cuts",
    caption: "Parts to cut",
    columns: [
      column("mark", "Mark", 0.11),
      column("use", "Part", 0.2),
      column("section", "Section", 0.18),
      column("material", "Material", 0.12),
      column("length", "Length", 0.28),
      column("count", "No.", 0.07, { align: "right" }),
      column("done", "Done", 0.09, { align: "center" }),
    ],
    rows: plan.cuts.map((piece) => [
      piece.mark,
      piece.use,
      piece.sectionName,
      piece.material,
      strong(show.feetBoth(piece.length)),
      String(piece.count),
      tick,
    ]),
    rowHeads: true,
    notes: ["Measure the standing frame before cutting rails and spacers: fit them to the posts, not to the list."],
  });
}

/** "3 x PO (46-1/2), 1 x SP (29)" */
function piecesText(pieces: readonly { readonly mark: string; readonly length: number }[], show: SheetContext["show"]): Text {
  const marks = [...new Set(pieces.map(({ mark }) => mark))];
  return marks
    .map((mark) => {
      const same = pieces.filter((piece) => piece.mark === mark);
      return `${same.length} x ${mark} (${show.feet(same[0]?.length ?? 0)})`;
    })
    .join(", ");
}

function cutPlanBlocks({ show }: SheetContext, cutPlan: CutPlan, index: number): readonly Block[] {
  const waste = cutPlan.bought === 0 ? 0 : (cutPlan.bought - cutPlan.used) / cutPlan.bought;
  const bound = cutPlan.proven
    ? `no cutting plan buys less than ${show.feet(cutPlan.bought_bound)} (proven)`
    : `at best ${show.feet(cutPlan.bought_bound)} would do; this plan is not proven to be the least`;
  return [
    table({
      id: `lumber-plan-${index + 1}`,
      caption: `Cut plan: ${cutPlan.sectionName}`,
      columns: [
        column("no", "No.", 0.08),
        column("stock", "Stock piece", 0.2),
        column("pieces", "Cut from it, in this order", 0.48),
        column("offcut", "Left over", 0.15),
        column("done", "Done", 0.09, { align: "center" }),
      ],
      rows: cutPlan.bars.map((bar, number) => [
        `${number + 1}`,
        show.feet(bar.stockLength),
        piecesText(bar.pieces, show),
        show.feetDown(bar.offcut),
        tick,
      ]),
      notes: [`Bought ${show.feetBoth(cutPlan.bought)}, used ${show.feetBoth(cutPlan.used)}, waste ${show.percent(waste)}; ${bound}.`],
    }),
  ];
}
