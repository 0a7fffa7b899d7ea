// From which to which reading must a gauge and a tuner reach on this job?
import type { Job } from "../job/job.ts";
import type { Newton } from "../units/quantity.ts";
import { roundDown, roundUp } from "../units/round.ts";
import type { Plan, Run } from "./plan.ts";

/** Shorter spans (corners, pairs of posts) sound as a bar, not as a string, and tell nothing: 12 in, common practice, no source. */
export const PLUCKED_mm = 304.8;

export interface InstrumentRange {
  /** All that the proof, the steps and the days of other temperatures may ask, at the nut and in the spans behind bends, in round figures. */
  readonly lowest: Newton;
  readonly highest: Newton;
  /** null where no span is long enough to be plucked. */
  readonly pitch_Hz: { readonly low: number; readonly high: number } | null;
}

export function instrumentRange(plan: Pick<Plan, "runs" | "tightening">, job: Job): InstrumentRange {
  const runs = plan.runs.map((run) => ({ run, ...nutRange(run, plan) }));
  const pitches = runs.flatMap(pitchesOf);
  const step = job.tightening.readingStep.value;
  return {
    lowest: roundDown(Math.min(...runs.flatMap(({ run, lowest }) => [lowest, ...spanLows(run)])), step),
    highest: roundUp(Math.max(...runs.map(({ highest }) => highest)), step),
    pitch_Hz: pitches.length === 0 ? null : { low: Math.min(...pitches), high: Math.max(...pitches) },
  };
}

interface NutRange {
  readonly lowest: Newton;
  readonly highest: Newton;
}

/** What the nuts of a run may be asked to read: at the end, at each step, and on any day. */
function nutRange({ id, tension }: Run, { tightening }: Pick<Plan, "tightening">): NutRange {
  const own = tightening.filter(({ runId }) => runId === id);
  const readings = [
    tension.low,
    tension.high,
    ...own.flatMap(({ steps }) => steps.flatMap(({ reading_low, reading_high }) => [reading_low, reading_high])),
    ...own.flatMap(({ days }) => days.flatMap((day) => day.readings.filter((reading) => reading !== null))),
  ];
  return { lowest: Math.min(...readings), highest: Math.max(...readings) };
}

/**
 * The pitches of a span are those at its target; others follow them by the root of the tension, as a string's do. A stiff strand changes
 * less than that, so it stays within.
 */
const pitchesOf = ({ run, lowest, highest }: NutRange & { readonly run: Run }): readonly number[] =>
  run.spans
    .filter(({ free }) => free >= PLUCKED_mm)
    .flatMap(({ pitch_Hz: { low, high } }) => [
      low * Math.sqrt(lowest / run.tension.target),
      high * Math.sqrt(highest / run.tension.target),
    ]);

/** Behind a bend a span has only its share of what the nut reads: at the low end of the band that is what the log and the proof ask for. */
const spanLows = ({ tension: { target, low }, spans, proof }: Run): readonly Newton[] => [
  proof.low,
  ...spans.filter(({ free }) => free >= PLUCKED_mm).map(({ tension }) => (tension / target) * low),
];
