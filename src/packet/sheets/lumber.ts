// Z-602: which parts are cut, and from which stock piece does each come?
import type { Plan } from "../../plan/plan.ts";
import type { CutPlan } from "../../plan/purchase.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { bold, caution, column, facts, prose, refer, type SheetContext, type SheetMaker, sheet, table, tick } from "./kit.ts";
import { anglesWords, sidesWord, slopedSides } from "./slopes.ts";
import { cornerRailWords } from "./slots.ts";

export const lumberSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.lumber)] : []),
    ...(plan.cuts.length === 0
      ? [prose("Nothing is cut: the frame stands already, with its posts, rails and spacers.")]
      : [
          ...sawCaution(context),
          prose(orderOfWork(context), ...slopeWords(context)),
          cutTable(context),
          stockFacts(context),
          cutPlanTable(context),
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

/** The way of the parts that this job cuts: of wood, of metal, or both. */
function grainWords({ cuts }: Plan): Text {
  const wood = cuts.filter(({ material }) => material === "wood").length;
  if (wood === cuts.length) return "grain";
  return wood === 0 ? "tube" : "grain or the tube";
}

const orderOfWork = ({ plan }: SheetContext): Text =>
  `Lengths are finished sizes along the ${grainWords(plan)}, without allowance. ${
    plan.job.posts.existing ? "The posts stand already; rails and spacers are new, cut and fixed before H1" : "Posts first"
  }: measure the standing frame, then cut rails and spacers to it, not to the list.`;

/** What slopes is cut to a parallelogram: a length without its edge is cut wrong. */
const slopeWords = ({ plan, show }: SheetContext): readonly Text[] =>
  plan.rakes.length === 0
    ? []
    : [
        `**Parts of ${sidesWord(slopedSides(plan))} (${anglesWords(plan, show.angle)}) are not cut square.** Angles are off square: 0 deg is a square cut. Both ends of a rail and of a spacer are cut the same way, so that the cuts are parallel; never mirrored. Their length is **from tip to tip along the part**: the two tips lie on opposite edges, and each edge alone is shorter by what its row says. Measure the slope of the standing posts first, set saw and bevel to it, and try one scrap between two posts.`,
      ];

function stockFacts({ plan, show }: SheetContext): Block {
  const { stock, posts } = plan.job;
  return facts("lumber-facts", [
    ["Stock lengths", `${stock.lumberLengths.value.map(show.feet).join(", ")} ${sourceMark(stock.lumberLengths.source)}`],
    ...(posts.existing
      ? []
      : ([
          ["Stock lengths of posts", `${stock.postLengths.value.map(show.feet).join(", ")} ${sourceMark(stock.postLengths.source)}`],
        ] as const)),
    [
      "Saw kerf; trimmed off each end",
      `${show.tapeBoth(stock.kerf.value)} ${sourceMark(stock.kerf.source)}; ${show.tapeBoth(stock.endTrim.value)} ${sourceMark(stock.endTrim.source)}`,
    ],
    ...(posts.existing ? [] : ([["Posts below the datum", belowWords(plan, show)]] as const)),
  ]);
}

/** On a slope a post ends somewhere else than on the level. */
function belowWords({ job, rakes }: Plan, show: SheetContext["show"]): Text {
  const level = show.tapeBoth(job.posts.belowDatum);
  return rakes.length === 0
    ? level
    : `${level}; on a slope, in the middle of the post, ${show.tapeBoth(job.frame.onRakes.postBelow.value)}`;
}

function cutTable(context: SheetContext): Table {
  const { plan, show } = context;
  return table({
    id: "lumber-cuts",
    caption: "Parts to cut",
    columns: [
      column("mark", "Mark", 0.08),
      column("use", "Part", 0.3),
      column("section", "Section", 0.23),
      column("length", "Length", 0.22),
      column("count", "No.", 0.07, { align: "right" }),
      column("done", "Done", 0.1, { align: "center" }),
    ],
    rows: plan.cuts.map((piece) => [
      bold(piece.mark),
      piece.use,
      `${piece.sectionName}, ${piece.material}`,
      bold(show.feetBoth(piece.length)),
      String(piece.count),
      tick,
    ]),
    rowHeads: true,
    notes: cornerRailWords(context),
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

function cutPlanTable(context: SheetContext): Table {
  const { plan, show } = context;
  return table({
    id: "lumber-plan",
    caption: `Cut plan: which part comes from which piece; what to buy stands on ${refer(context, "order")}`,
    columns: [
      column("section", "Section", 0.2),
      column("no", "No.", 0.05),
      column("stock", "Stock piece", 0.13),
      column("pieces", "Cut from it, in this order", 0.4),
      column("offcut", "Left over", 0.14),
      column("done", "Done", 0.1, { align: "center" }),
    ],
    rows: plan.cutPlans.flatMap(({ sectionName, bars }) =>
      bars.map((bar, number) => [
        sectionName,
        `${number + 1}`,
        show.feet(bar.stockLength),
        piecesText(bar.pieces, show),
        show.feetDown(bar.offcut),
        tick,
      ]),
    ),
    notes: plan.cutPlans.map((cutPlan) => boundWords(cutPlan, show)),
  });
}

function boundWords({ sectionName, bought, used, bought_bound, proven }: CutPlan, show: SheetContext["show"]): Text {
  const waste = bought === 0 ? 0 : (bought - used) / bought;
  const bound = proven
    ? "no cutting plan for these pieces buys less (proven)"
    : `at best ${show.feet(bought_bound)} would do for these pieces; not proven to be the least`;
  return `${sectionName}: bought ${show.feetBoth(bought)}, used ${show.feet(used)}, waste ${show.percent(waste)}; ${bound}.`;
}
