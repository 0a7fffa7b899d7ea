// Z-901: what was built, against what was planned, and who says so?
import { isOnFace } from "../../plan/face-end.ts";
import type { Run } from "../../plan/plan.ts";
import { type AsBuilt, KEPT_years } from "../../record/as-built.ts";
import type { Newton } from "../../units/quantity.ts";
import type { Block, Cell, Column, Sheet, Table, Text } from "../packet.ts";
import { introduction, runSpan } from "../wording.ts";
import { mitredIds } from "./bore-corners.ts";
import { eyeEnds } from "./face-ends.ts";
import {
  blank,
  blanks,
  bold,
  caution,
  column,
  endPostIds,
  facts,
  heading,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
  unique,
} from "./kit.ts";
import { piersOf } from "./piers.ts";
import { slopeTables } from "./proof-slopes.ts";
import { atLeast, atMost, bandDay, bandWords } from "./readings.ts";
import { boreTables } from "./record-bores.ts";
import { builtBlocks, builtCable, readingCell, writtenOr } from "./record-built.ts";
import { deviationTable, lotTable, plumbTable, setsTable } from "./record-tables.ts";
import { bayName, openingRoute, sagBays } from "./route.ts";

export const recordSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "landscape", [
    ...(context.home ? [prose(...introduction.record)] : []),
    caution(
      "notice",
      "Write with ink, as the work goes. No erasing: one line through a wrong number, the right one beside it, initials.",
      "A signed record is never changed. A correction is a new revision.",
      "On marked drawings: X and one line for what is gone, a cloud for what is added, an arrow from old to new for what was moved.",
    ),
    ...builtBlocks(context),
    heading("record-bores-head", "Bores"),
    ...boreTables(context),
    ...slopeTables(context, "record-slopes"),
    heading("record-cables-head", "Cables and readings"),
    ...plan.runs.map((run) => cableTable(context, run)),
    plumbTable(context),
    deviationTable(context),
    lotTable(context),
    setsTable(context),
    heading("record-photos-head", "Photos"),
    photoTable(context),
    ...closingBlocks(context),
    prose("I confirm that this sheet shows what was built, and that every deviation stands on it."),
    context.home
      ? signatures("record-sign", "You", "Second person", "Author of this packet", "For the authority")
      : signatures("record-sign", "Crew lead", "Firm", "Owner", "For the authority"),
  ]);
};

const keepWords = (closing: AsBuilt["closing"] | undefined): Text =>
  closing?.isKeepDefault === true
    ? `${closing.keepUntil} (${KEPT_years} years, a default of this program: the law of the place and the firm decide)`
    : (closing?.keepUntil ?? "");

/** What is known of the end of the work, and places to write the rest. */
function closingBlocks({ built }: SheetContext): readonly Block[] {
  const closing = built?.asBuilt.closing;
  const rows: readonly (readonly [label: Text, value: Text])[] = [
    ["Permit number, inspection passed on", closing?.inspection ?? ""],
    ["Date of completion", closing?.completed ?? ""],
    ["Keep until (date of completion and the firm's years)", keepWords(closing)],
    ["Open items and their dates", closing?.openItems ?? ""],
  ];
  const known = rows.filter(([, value]) => value !== "");
  const unknown = rows.filter(([, value]) => value === "");
  return [
    ...(known.length === 0 ? [] : [facts("record-closed", known)]),
    ...(unknown.length === 0
      ? []
      : [
          blanks(
            "record-closing",
            "Closing",
            unknown.map(([label]) => [label, ""]),
          ),
        ]),
  ];
}

/** What each step was to read and what it did; the last reading is the one at the end, when all cables stand. */
function cableTable(context: SheetContext, run: Run): Table {
  const { plan, show } = context;
  const ends = run.takeUp.ends.map(({ postId }) => postId);
  const tightening = plan.tightening.find(({ runId }) => runId === run.id);
  const passes = tightening?.passes ?? [];
  const columns: readonly Column[] = [
    column("mark", "Cable", 0.09),
    column("used", "Length", 0.1, { sub: `built, ${show.lengthUnit}` }),
    column("lot", "Lot or spool", 0.12, { sub: "field" }),
    ...passes.flatMap(({ number }) => [
      column(`stop-${number}`, "Stop at", 0.08, { sub: passes.length > 1 ? `pass ${number}, plan` : `plan, ${show.forceUnit}` }),
      column(`pass-${number}`, passes.length > 1 ? `Pass ${number}` : "Read", 0.1, { sub: `built, ${show.forceUnit}` }),
    ]),
    ...ends.flatMap((end) => [
      column(`reading-${end}`, "Last reading", 0.11, { sub: `at ${end}, ${show.forceUnit}` }),
      column(`turns-${end}`, "Turns", 0.08, { sub: `at ${end}` }),
      column(`thread-${end}`, "Thread left", 0.1, { sub: `at ${end}, ${show.lengthUnit}` }),
    ]),
    column("proof", "Reading", 0.1, { sub: `in bay ${run.proof.bayId}` }),
    column("initials", "Init.", 0.06),
  ];
  return table({
    id: `record-cables-${run.id}`,
    caption: `Every cable of run ${run.id}: ${show.feetUp(run.orderLength)} long, target ${show.force(run.tension.target)} at the nut; last readings ${bandWords(run, context)}; in bay ${run.proof.bayId} at least ${atLeast(run.proof.low, context)}, at most ${atMost(run.proof.high, context)}; ${bandDay(context)}`,
    columns,
    rows: plan.cables
      .filter(({ runId }) => runId === run.id)
      .map(({ mark }) => {
        const stops = passes.map(
          ({ number }) => tightening?.steps.find((step) => step.pass === number && step.mark === mark)?.reading ?? 0,
        );
        const cable = builtCable(context, mark);
        const read = (value: Newton | null | undefined, where: Text): Cell => readingCell(context, { mark, where, value });
        const planned = stops.flatMap((stop, pass): readonly Cell[] => [bold(show.gauge(stop)), read(cable?.passes[pass], "a pass")]);
        const built = ends.flatMap((postId): readonly Cell[] => {
          const end = cable?.ends.find((one) => one.postId === postId);
          const left = end?.threadLeft ?? null;
          return [read(end?.last, postId), writtenOr(end?.turns?.toString()), writtenOr(left === null ? null : show.measured(left))];
        });
        const length = cable?.length ?? null;
        return [
          mark,
          writtenOr(length === null ? null : show.feet(length)),
          writtenOr(cable?.lot),
          ...planned,
          ...built,
          read(cable?.proof, run.proof.bayId),
          writtenOr(cable?.initials),
        ];
      }),
    rowHeads: true,
    writeIn: true,
  });
}

/** Posts behind which something is fitted: an end at an eye stands in front. */
const backsOf = ({ runs }: SheetContext["plan"]): readonly string[] =>
  unique(runs.flatMap(({ left, right }) => [left, right].filter((end) => !isOnFace(end)).map(({ postId }) => postId)));

function photoTable(context: SheetContext): Table {
  const { plan } = context;
  const job = plan.job.identity.number;
  const views: readonly (readonly [view: Text, file: Text])[] = [
    ...plan.sides.map(({ id }): readonly [Text, Text] => [`Side ${id} from inside, square on`, `${job}-side-${id}`]),
    ...backsOf(plan).map((id): readonly [Text, Text] => [`Back of ${id}: nuts or fittings, washers`, `${job}-${id}-back`]),
    ...unique(eyeEnds(plan).map(({ postId }) => postId)).map((id): readonly [Text, Text] => [
      `Eyes at ${id}: flanges on the face, pins locked`,
      `${job}-${id}-eyes`,
    ]),
    ...mitredIds(plan).map((id): readonly [Text, Text] => [
      `Both faces of ${id}: bushings in the bores on the mitre`,
      `${job}-${id}-mitre`,
    ]),
    ...endPostIds(plan).map((id): readonly [Text, Text] => [`Foot of ${id} with its fasteners`, `${job}-${id}-foot`]),
    ...piersOf(plan).map(({ id }): readonly [Text, Text] => [`Face of ${id}: anchors, flanges, pins`, `${job}-${id}-face`]),
    ...plan.runs.map((run): readonly [Text, Text] => [
      `Gauge on run ${run.id}, ${runSpan(run)}, reading visible`,
      `${job}-${run.id}-gauge`,
    ]),
    ...plan.openingBayIds.map((id): readonly [Text, Text] => [
      `${openingRoute(context).push === "agreed" ? "Sphere and spring scale" : "Sphere"} in bay ${bayName(plan, id)}`,
      `${job}-${id.replaceAll("/", "-")}-sphere`,
    ]),
    ...(plan.job.tightening.criterion.kind === "sag" ? [[`Weight and sag in bay ${sagBays(plan)}`, `${job}-sag`] as const] : []),
    ["Signed sheets", `${job}-signed`],
  ];
  return table({
    id: "record-photos",
    caption: "Views needed; file names carry the marks",
    columns: [column("view", "View", 0.42), column("file", "File name begins with", 0.34), column("taken", "Taken on, by", 0.24)],
    rows: views.map(([view, file]) => [view, file, blank()]),
    writeIn: true,
  });
}
