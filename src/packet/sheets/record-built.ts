// Z-901: what does the record of a job say, and what differs from the plan?
import { revisionOf } from "../../job/identity.ts";
import type { Bore } from "../../plan/plan.ts";
import type { BuiltBore, BuiltCable } from "../../record/as-built.ts";
import type { Comparison, Difference } from "../../record/record.ts";
import type { Mm, Newton } from "../../units/quantity.ts";
import type { Block, Cell, Text } from "../packet.ts";
import { blank, bold, caution, column, facts, heading, prose, type SheetContext, table } from "./kit.ts";
import { atLeast, atMost } from "./readings.ts";

/** What is written in the record, or a place to write. */
export const writtenOr = (text: Text | null | undefined, unit = ""): Cell =>
  text === null || text === undefined || text === "" ? blank(unit) : text;

export const builtBore = ({ built }: SheetContext, bore: Bore | undefined): BuiltBore | undefined =>
  built?.asBuilt.bores.find(({ mark }) => mark === bore?.mark);

export const builtCable = ({ built }: SheetContext, mark: string): BuiltCable | undefined =>
  built?.asBuilt.cables.find((cable) => cable.mark === mark);

/** A height as built, and by how much it differs: bold where it is off by more than a tape tells. */
export function heightCell(
  context: SheetContext,
  bore: Bore | undefined,
  { planned, built }: { readonly planned: Mm; readonly built: Mm },
): Cell {
  const text = context.show.measured(built);
  const difference = offBy({ planned, built }, context);
  if (difference === 0) return text;
  const isOff = context.built?.differences.some(({ kind, mark }) => kind === "bore" && mark === bore?.mark) === true;
  return `${isOff ? bold(text) : text} (${signed(difference, context)})`;
}

/** A reading, or a place to write it: bold where it is outside of what the sheets allow at a post or in a bay. */
export function readingCell(
  { built, show }: SheetContext,
  { mark, where, value }: { readonly mark: string; readonly where: Text; readonly value: Newton | null | undefined },
): Cell {
  if (value === null || value === undefined) return blank();
  const isOff = built?.differences.some((one) => one.mark === mark && "where" in one && one.where === where) === true;
  return isOff ? bold(show.reading(value)) : show.reading(value);
}

/** How much higher a bore lies than planned: nothing where it was measured at the very mark that the sheet names, which a slope rounds. */
export const offBy = ({ planned, built }: { readonly planned: Mm; readonly built: Mm }, { show }: SheetContext): Mm =>
  show.measured(Math.abs(built - planned)) === show.measured(0) || show.measured(built) === show.tape(planned) ? 0 : built - planned;

/** "+1/8"", "-3 mm" */
export const signed = (difference: Mm, { show }: SheetContext): Text =>
  difference === 0 ? "0" : `${difference > 0 ? "+" : "-"}${show.measured(Math.abs(difference))}`;

/** The head of a record that is filled in: who measured with what, what differs, and what is not written yet. */
export function builtBlocks(context: SheetContext): readonly Block[] {
  const { plan, built, show, stamp } = context;
  if (built === undefined) return [];
  const { asBuilt, differences } = built;
  const open = differences.filter(({ deviation }) => deviation === null).length;
  const passes = differences.some((difference) => difference.kind === "gap" && difference.isOpen);
  return [
    heading("record-built-head", "What was built"),
    facts("record-built", [
      ["Built from revision", revisionWords(asBuilt.revision, revisionOf(plan.job.identity))],
      ["Record written by", asBuilt.writtenBy],
      ["Gauge", asBuilt.gauge === "" ? "not stated" : asBuilt.gauge],
      [
        "Air at the last readings",
        asBuilt.temperature === null
          ? `not stated: readings are compared with the bands of ${show.heat(plan.job.site.reference.value)}`
          : `${show.heatBoth(asBuilt.temperature)}: readings are compared with the bands of that day`,
      ],
      ["Written down", countWords(built)],
      ["Made from", `job file ${stamp.jobHash}, record file ${stamp.recordHash ?? "not named"}`],
    ]),
    ...(passes
      ? [
          caution(
            "danger",
            "A gap as built lets the sphere of the rules through before any cable moves. Keep people off the edge until it is closed or the authority has agreed in writing.",
          ),
        ]
      : []),
    ...(open === 0
      ? []
      : [
          caution(
            "warning",
            `${open === 1 ? "One difference has" : `${open} differences have`} no deviation behind ${open === 1 ? "it" : "them"}: correct the work, or have it accepted by name. No ${context.home ? "step" : "hold point"} is passed on a difference that nobody accepted.`,
          ),
        ]),
    differences.length === 0
      ? prose("Nothing that is written down differs from the plan by more than a step of the tape, or from what a gauge may show.")
      : table({
          id: "record-differences",
          caption: "What differs from the plan",
          columns: [
            column("mark", "Mark", 0.12),
            column("what", "What", 0.3),
            column("planned", "Planned", 0.24),
            column("built", "Built", 0.16),
            column("accepted", "Deviation", 0.18, { sub: "number in the list below" }),
          ],
          rows: differences.map((difference) => differenceRow(difference, context)),
          rowHeads: true,
        }),
  ];
}

const revisionWords = (builtFrom: Text, current: Text): Text =>
  builtFrom === current ? builtFrom : `${builtFrom}; what is called planned here is that of revision ${current}`;

const countWords = ({ counts: { bores, lastReadings, proofs } }: Comparison): Text =>
  [
    `${bores.written} of ${bores.planned} bores (the others are taken as planned)`,
    `${lastReadings.written} of ${lastReadings.planned} last readings`,
    `${proofs.written} of ${proofs.planned} proof readings`,
  ].join("; ");

function differenceRow(difference: Difference, context: SheetContext): readonly Cell[] {
  const { mark, deviation } = difference;
  const accepted = deviation === null ? bold("nobody accepted it") : `no. ${deviation + 1}`;
  return [mark, ...differenceWords(difference, context), accepted];
}

function differenceWords(difference: Difference, context: SheetContext): readonly [what: Text, planned: Text, built: Text] {
  const { show } = context;
  if (difference.kind === "bore") {
    const { face, planned, built } = difference;
    const what = face === null ? "Height of the bore" : `Height of the bore on the ${face} face`;
    return [what, show.tapeBoth(planned), `${show.measured(built)} (${signed(built - planned, context)})`];
  }
  if (difference.kind === "gap") {
    const { below, above, planned, built, isOpen } = difference;
    const what = `Clear gap between ${below} and ${above}; test the opening again in the bays beside it`;
    return [what, `at most ${show.tapeUp(planned)}`, `${show.measured(built)}${isOpen ? ": the sphere goes through" : ""}`];
  }
  const { kind, where, low, high, built } = difference;
  const what = kind === "proof" ? `Proof reading in bay ${where}` : `Last reading at ${where}`;
  return [what, `at least ${atLeast(low, context)}, at most ${atMost(high, context)}`, `${show.reading(built)} ${show.forceUnit}`];
}
