// Z-803: in which order are the cables pulled, to which reading, and what is written down?
import type { Run, RunTightening } from "../../plan/plan.ts";
import type { Block, Column, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction, runSpan } from "../wording.ts";
import { drawnTightening } from "./drawn.ts";
import {
  blank,
  blanks,
  bold,
  caution,
  column,
  endPostIds,
  facts,
  heading,
  list,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  strong,
  table,
} from "./kit.ts";
import { safetyFor } from "./safety-messages.ts";

export const tighteningSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.tightening)] : []),
    ...safetyFor("tighten", plan),
    orderNotice(),
    targetFacts(context),
    instrumentBlanks(context),
    readingsTable(context),
    ...(context.issue === "record" ? [] : [heading("tightening-ways-head", "Ways to read the tension"), list(...waysToRead(context))]),
    plumbTable(context),
    signatures("tightening-sign", "Read by", "Checked by"),
    ...plan.tightening.flatMap((tightening) => runBlocks(context, tightening)),
  ]);
};

const orderNotice = (): Block =>
  caution(
    "notice",
    `The order printed here is the customary one: from the middle cable outward, one above, one below ${sourceMark("practice")}. It has no published source.`,
    "**How much later cables slacken earlier ones is not computed yet.** So the last pass checks: read every cable again, correct, and repeat until nothing has to be turned.",
  );

function targetFacts({ plan, show }: SheetContext): Block {
  const { tightening } = plan.job;
  const { target } = plan;
  return facts("tightening-target", [
    ...plan.runs.map((run): readonly [Text, Text, true] => [`Target of ${run.id} at the nut`, show.forceBoth(run.tension.target), true]),
    [
      "Never above",
      `**the high value in the log: the posts may not bear more.** Working limit of the strand: ${show.forceBoth(target.workingLimit)}`,
    ],
    ["Where the target comes from", `${target.criterionText} ${sourceMark(target.source)} ${target.sourceWhere}`],
    [
      "Worst span",
      `bay ${target.worstBayId}, ${show.tapeBoth(target.worstSpan)} free, cables ${show.tapeBoth(target.worstSpacing)} apart: ${show.forceBoth(target.required)} needed there`,
    ],
    [
      "Passes",
      `${tightening.passes.value.map(show.percent).join(", ")} of target ${sourceMark(tightening.passes.source)}; band +/- ${show.percent(tightening.band.value)} ${sourceMark(tightening.band.source)}`,
    ],
    ["Readings are printed to", show.force(tightening.readingStep.value)],
    ["Temperature", "no correction is computed yet: write down the day's temperature, and read again on a day with another one"],
  ]);
}

const instrumentBlanks = ({ show }: SheetContext): Block =>
  blanks("tightening-instrument", "Instrument and day", [
    ["Gauge: kind, serial number", ""],
    ["Set for cable size; smallest step it shows", show.forceUnit],
    ["Checked against, date", ""],
    ["Date and weather", ""],
    ["Air temperature at the start", show.heatUnit],
    ["Air temperature at the end", show.heatUnit],
  ]);

function readingsTable({ plan, show }: SheetContext): Table {
  const weight = show.force(plan.job.tightening.sagWeight.value);
  return table({
    id: "tightening-spans",
    caption: "What each span should show when its run stands at target",
    columns: [
      column("run", "Run", 0.07),
      column("bay", "Bay", 0.09),
      column("free", "Free length", 0.17),
      column("tension", "Gauge", 0.22, { sub: "at least" }),
      column("pitch", "Pitch", 0.25, { sub: "nominal (low - high)" }),
      column("sag", "Sag", 0.2, { sub: `under ${weight}` }),
    ],
    rows: plan.runs.flatMap((run) =>
      run.spans.map((span) => [
        run.id,
        span.bayId,
        show.tapeBoth(span.free),
        show.forceBoth(span.tension),
        `${show.hertz(span.pitch_Hz.nominal)} (${show.decimal(span.pitch_Hz.low, 1)} - ${show.decimal(span.pitch_Hz.high, 1)})`,
        `${show.fine(span.sag.held)} - ${show.fine(span.sag.sliding)}`,
      ]),
    ),
    rowHeads: true,
    notes: ["Sag: the first value when the cable is held at both uprights, the second when it slides through the whole run."],
  });
}

function waysToRead({ plan, show }: SheetContext): readonly Text[] {
  const { sagWeight } = plan.job.tightening;
  return [
    "**Gauge**: clip it on in the middle of a span, off the uprights. Read twice, write down the second reading.",
    `**Pitch**: pluck the middle of a span and read the lowest tone with a tuner. Stiff ends raise it: calibrate on one cable with a gauge, then compare the others ${sourceMark("derived")}.`,
    `**Sag**: hang ${show.forceBoth(sagWeight.value)} on the middle of a span and measure how far it moves ${sourceMark(sagWeight.source)}. Read to ${show.lengthUnit === "in" ? "1/32 in" : "half a millimetre"}.`,
    "Never judge a value more finely than the instrument shows it.",
  ];
}

function plumbTable({ plan, show }: SheetContext): Table {
  const passes = plan.job.tightening.passes.value;
  return table({
    id: "tightening-plumb",
    caption: "Plumb of the posts that hold ends: distance from the plumb line at the top rail",
    columns: [
      column("post", "Post", 0.1),
      column("before", "Before", 0.15, { sub: "field" }),
      ...passes.map((_, index) => column(`pass-${index + 1}`, `After pass ${index + 1}`, 0.15, { sub: "field" })),
      column("end", "At the end", 0.15, { sub: "field" }),
      column("moved", "Moved", 0.15, { sub: "calculated" }),
    ],
    rows: endPostIds(plan).map((id) => [id, ...Array.from({ length: passes.length + 3 }, () => blank(show.lengthUnit))]),
    rowHeads: true,
    writeIn: true,
    notes: [
      "Stop when a post keeps moving from pass to pass, or leans more than the engineer or the authority allowed. No limit is computed yet.",
    ],
  });
}

function runBlocks(context: SheetContext, tightening: RunTightening): readonly Block[] {
  const run = context.plan.runs.find(({ id }) => id === tightening.runId);
  return run
    ? [
        { kind: "break" },
        heading(`tightening-${run.id}`, `Run ${run.id}, ${runSpan(run)}: order and log`),
        ...drawnTightening(context.plan, run.id),
        logTable(context, run, tightening),
      ]
    : [];
}

const logColumns: readonly Column[] = [
  column("step", "Step", 0.07, { sub: "plan" }),
  column("pass", "Pass", 0.07, { sub: "plan" }),
  column("mark", "Cable", 0.12, { sub: "plan" }),
  column("reading", "Reading", 0.13, { sub: "plan" }),
  column("band", "Low - high", 0.18, { sub: "plan" }),
  column("field", "Reading", 0.16, { sub: "field reading" }),
  column("turns", "Turns", 0.13, { sub: "field" }),
  column("initials", "Initials", 0.14, { sub: "field" }),
];

function logTable({ plan, show }: SheetContext, run: Run, tightening: RunTightening): Table {
  const shares = plan.job.tightening.passes.value;
  const last = shares.length;
  const checks = last > 1 && shares.at(-1) === shares.at(-2);
  return table({
    id: `tightening-log-${run.id}`,
    caption: `Log of ${run.id}: stop each nut at its reading; about ${show.decimal(run.takeUp.turns, 1)} turns of each nut in all (${show.decimal(run.takeUp.turns_low, 1)} - ${show.decimal(run.takeUp.turns_high, 1)})`,
    columns: logColumns,
    rows: tightening.steps.map((step) => [
      String(step.number),
      checks && step.pass === last ? `${step.pass} check` : String(step.pass),
      bold(step.mark),
      strong(show.force(step.reading)),
      show.forceBand(step.reading_low, step.reading_high),
      blank(show.forceUnit),
      blank(),
      blank(),
    ]),
    rowHeads: true,
    writeIn: true,
    ...(checks
      ? {
          notes: [
            `Pass ${last} is the check pass: turn a nut only where the reading is outside its band. If any nut was turned, read all once more.`,
          ],
        }
      : {}),
  });
}
