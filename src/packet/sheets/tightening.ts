// Z-803: in which order are the cables pulled, to which reading, and how is a reading taken?
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { blank, bold, column, facts, heading, list, prose, type SheetContext, type SheetMaker, sheet, signatures, table } from "./kit.ts";
import { highAtNut, leansOf, lowAtNut } from "./readings.ts";
import { safetyFor } from "./safety-messages.ts";
import { spanTable, waysToRead } from "./span-readings.ts";
import { logBlocks } from "./tightening-log.ts";

export const tighteningSheet: SheetMaker = (context, head): Sheet => {
  const { plan, home } = context;
  return sheet(head, "portrait", [
    ...(home ? [prose(...introduction.tightening)] : []),
    // What else is dangerous stands at the step.
    ...safetyFor("tighten", plan).slice(0, 1),
    targetFacts(context),
    spanTable(context),
    ...(context.issue === "record" ? [] : [heading("tightening-ways-head", "Ways to read the tension"), list(...waysToRead(context))]),
    instrumentTable(context),
    plumbTable(context),
    signatures("tightening-sign", home ? "Read by you, checked by a second person" : "Read by, checked by"),
    ...logBlocks(context),
  ]);
};

function targetFacts(context: SheetContext): Block {
  const { plan, show } = context;
  const { tightening } = plan.job;
  const { target } = plan;
  return facts("tightening-target", [
    ...plan.runs.map((run): readonly [Text, Text, true] => [
      `${run.id}: target at the nut`,
      `${show.forceBoth(run.tension.target)}; at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}; proved in bay ${run.proof.bayId}`,
      true,
    ]),
    ["Never above", `**"at most": the posts may not bear more.** Working limit of the strand: ${show.forceBothDown(target.workingLimit)}`],
    [
      "Where the target comes from",
      `${target.criterionText} ${sourceMark(target.source)} ${target.sourceWhere}: ${show.tape(target.worstSpan)} ${tightening.criterion.kind === "table" ? "clear between posts" : "free"}, cables ${show.tape(target.worstSpacing)} apart: ${show.forceBothUp(target.required)} needed there`,
    ],
    [
      "Passes",
      `${tightening.passes.value.map(show.percent).join(", ")} of target ${sourceMark(tightening.passes.source)}; band +/- ${show.percent(tightening.band.value)} ${sourceMark(tightening.band.source)}, never below what the worst span needs`,
    ],
    [
      "Order",
      `${plan.runs.length > 1 ? "**pass 1 on every run before pass 2 on any.** In a run the" : "the"} customary one: from the middle cable outward, one above, one below ${sourceMark("practice")}, without a published source`,
    ],
    [
      "Last pass",
      "**how much later cables slacken earlier ones is not computed yet:** read every cable again, correct, repeat until no nut has to be turned",
    ],
    ["Temperature", "not corrected yet: write it down, read again on a day with another one"],
  ]);
}

const instrumentTable = ({ show }: SheetContext): Table =>
  table({
    id: "tightening-instrument",
    caption: "Instrument and day",
    columns: [
      column("gauge", "Gauge: kind, serial no.", 0.27),
      column("step", "Smallest step", 0.13, { sub: show.forceUnit }),
      column("checked", "Checked against, date", 0.24),
      column("day", "Date, weather", 0.18),
      column("start", "Air, start", 0.09, { sub: show.heatUnit }),
      column("end", "Air, end", 0.09, { sub: show.heatUnit }),
    ],
    rows: [[blank(), blank(), blank(), blank(), blank(), blank()]],
    writeIn: true,
  });

function plumbTable(context: SheetContext): Table {
  const { plan, show } = context;
  const passes = plan.job.tightening.passes.value;
  return table({
    id: "tightening-plumb",
    caption: "Plumb of the posts that hold or bend cables: distance from the plumb line at the top rail",
    columns: [
      column("post", "Post", 0.09),
      column("runs", "Runs", 0.06, { sub: "plan" }),
      column("way", "Leans to", 0.15, { sub: "plan" }),
      column("before", "Before", 0.12, { sub: "field" }),
      ...passes.map((_, index) => column(`pass-${index + 1}`, `Pass ${index + 1}`, 0.12, { sub: "after, field" })),
      column("end", "At the end", 0.12, { sub: "field" }),
      column("moved", "Moved", 0.12, { sub: "calculated" }),
    ],
    rows: [
      [bold("Limit"), "all", "", blank(show.lengthUnit), "from, date:", ...Array.from({ length: passes.length + 1 }, () => blank())],
      ...leansOf(plan).map(({ postId, runIds, way }) => [
        postId,
        runIds.join(", "),
        way,
        ...Array.from({ length: passes.length + 3 }, () => blank(show.lengthUnit)),
      ]),
    ],
    rowHeads: true,
    writeIn: true,
    notes: [
      "Limit: how far a post may lean, named by the engineer or the authority; H1 needs it. Stop there, or when a post keeps moving from pass to pass.",
    ],
  });
}
