// What should each span show on a gauge, as a pitch or as a sag, and which of these ways works in this job?

import { instrumentRange, PLUCKED_mm } from "../../plan/instrument-range.ts";
import type { Run } from "../../plan/plan.ts";
import type { SpanReading } from "../../plan/readings.ts";
import { decimal } from "../../units/print.ts";
import { onScale } from "../../units/print-measured.ts";
import type { Newton } from "../../units/quantity.ts";
import type { Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { fromTo } from "../wording.ts";
import { column, greatest, least, type SheetContext, strong, table } from "./kit.ts";
import { atLeast, pitchDigits } from "./readings.ts";

/** Free lengths that differ by less read alike on every instrument. 1/8 in. */
const SAME_mm = 3.175;

interface Group {
  readonly run: Run;
  readonly spans: readonly SpanReading[];
}

export function spanTable(context: SheetContext): Table {
  const { plan, show } = context;
  const weight = show.force(plan.job.tightening.sagWeight.value);
  return table({
    id: "tightening-spans",
    caption: `What each span should show at ${show.heat(plan.job.site.reference.value)}: gauge when its run is in its band, pitch and sag when it stands at target`,
    columns: [
      column("run", "Run", 0.07),
      column("bay", "Bays", 0.12),
      column("free", "Free length", 0.18, { sub: "the longest" }),
      column("tension", "Gauge", 0.13, { sub: "at least" }),
      column("pitch", "Pitch", 0.19, { sub: "nominal (low - high)" }),
      column("sag", "Sag, held - free to slide", 0.18, { sub: `under ${weight}` }),
      column("note", "Note", 0.13, { sub: "nearest" }),
    ],
    rows: groupsOf(context).map(({ run, spans }) => [
      run.id,
      bayWords(spans),
      show.tapeBoth(greatest(spans.map(({ free }) => free))),
      strong(atLeast(least(spans.map((span) => lowIn(span, run))), context)),
      pitchWords(spans, context),
      rangeWords(show.fine(greatest(spans.map(({ sag }) => sag.held))), show.fine(greatest(spans.map(({ sag }) => sag.sliding)))),
      spans.reduce((lowest, span) => (span.pitch_Hz.nominal < lowest.pitch_Hz.nominal ? span : lowest)).note,
    ]),
    rowHeads: true,
    notes: [
      `Pitch low: wires loose on each other, ends free to turn. High: one solid bar, ends clamped. Yours lies between. Note: nearest to the nominal pitch, as a tuner shows it with A4 at 440 Hz ${sourceMark("memory")}; a half-tone has 100 cents.${context.plan.runs.some(({ spans }) => spans.some(({ free }) => free < PLUCKED_mm)) ? ` Spans under ${show.tape(PLUCKED_mm)} are left out: read none there.` : ""}${context.plan.job.posts.sleeve === null ? "" : " Free lengths count from wood to wood."}`,
    ],
  });
}

/** What prints alike is one value. */
const rangeWords = (low: Text, high: Text): Text => (low === high ? low : `${low} - ${high}`);

/** Tension falls off along a run in proportion: at the least reading of the nut each span has its share of it. */
const lowIn = ({ tension }: SpanReading, run: Run): Newton => (tension / run.tension.target) * run.tension.low;

/** Neighbours of about equal length in one row, which prints the worst of them; none of the short ones. */
function groupsOf({ plan }: SheetContext): readonly Group[] {
  return plan.runs.flatMap((run) => {
    const groups: { run: Run; spans: SpanReading[] }[] = [];
    let before: SpanReading | undefined;
    for (const span of run.spans) {
      const last = groups.at(-1);
      if (
        last &&
        before &&
        sideOf(before) === sideOf(span) &&
        before.free >= PLUCKED_mm &&
        Math.abs((last.spans[0]?.free ?? 0) - span.free) < SAME_mm
      ) {
        last.spans.push(span);
      } else if (span.free >= PLUCKED_mm) {
        groups.push({ run, spans: [span] });
      }
      before = span;
    }
    return groups;
  });
}

/** "A" of "A12" */
const sideOf = ({ bayId }: SpanReading): string => bayId.replace(/\d+$/, "");

const bayWords = (spans: readonly SpanReading[]): Text => fromTo(spans.map(({ bayId }) => bayId));

function pitchWords(spans: readonly SpanReading[], context: SheetContext): Text {
  const pitches = spans.map(({ pitch_Hz }) => pitch_Hz);
  const nominal = least(pitches.map((pitch) => pitch.nominal));
  const low = least(pitches.map((pitch) => pitch.low));
  const high = greatest(pitches.map((pitch) => pitch.high));
  return `${pitchDigits(nominal, context)} Hz (${pitchDigits(low, context)} - ${pitchDigits(high, context)})`;
}

/** Each way with the range it must cover here, to be asked of whoever lends the tool or tried on one cable. */
export function waysToRead(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const { sagWeight } = plan.job.tightening;
  const spans = groupsOf(context).flatMap((group) => group.spans);
  const { lowest, highest, pitch_Hz } = instrumentRange(plan, plan.job);
  const digits = (value_Hz: number, rounding: "down" | "up"): Text => decimal(value_Hz, { rounding });
  const pitch =
    pitch_Hz === null ? "nothing here: no span is long enough" : `${digits(pitch_Hz.low, "down")} - ${digits(pitch_Hz.high, "up")} Hz`;
  const sags =
    spans.length === 0
      ? "too little to see: no span is long enough"
      : `${rangeWords(show.fine(least(spans.map(({ sag }) => sag.held))), show.fine(greatest(spans.map(({ sag }) => sag.sliding))))} here; measure to ${show.lengthUnit === "in" ? "1/32 in" : "half a millimetre"}`;
  return [
    `**Gauge**: must read ${show.forceDown(lowest)} to ${show.forceUp(highest)} on strand of ${show.diameterOne(plan.job.cable.diameter)}: ask before you rent. Clip it on mid-span, read twice, write the second reading.`,
    `**Pitch**: must hear ${pitch}: try your tuner on one cable. Pluck mid-span, take the lowest tone, calibrate with a gauge ${sourceMark("derived")}.`,
    `**Sag**: hang ${show.forceBoth(sagWeight.value)}, on a scale ${onScale(sagWeight.value, plan.job.units)}, mid-span ${sourceMark(sagWeight.source)}. It moves ${sags}. If that is too coarse to tell low from high, use a gauge.`,
  ];
}
