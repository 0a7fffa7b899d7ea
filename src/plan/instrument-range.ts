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

/** Pitches of other days follow those of the log by the root of the tension, as a string's do. */
export function instrumentRange({ runs, tightening }: Pick<Plan, "runs" | "tightening">, job: Job): InstrumentRange {
  const steps = tightening.flatMap((one) => one.steps);
  const logs = [
    ...runs.flatMap(({ tension }) => [tension.low, tension.high]),
    ...steps.flatMap(({ reading_low, reading_high }) => [reading_low, reading_high]),
  ];
  const days = tightening.flatMap((one) => one.days.flatMap(({ readings }) => readings.filter((reading) => reading !== null)));
  const [lowest, highest] = [Math.min(...logs, ...days), Math.max(...logs, ...days)];
  const plucked = runs.flatMap((run) => run.spans.filter(({ free }) => free >= PLUCKED_mm).map(({ pitch_Hz }) => pitch_Hz));
  const step = job.tightening.readingStep.value;
  const reading = {
    lowest: roundDown(Math.min(lowest, ...runs.flatMap(spanLows)), step),
    highest: roundUp(highest, step),
  };
  if (plucked.length === 0) return { ...reading, pitch_Hz: null };
  const [low, high] = [Math.min(...plucked.map((one) => one.low)), Math.max(...plucked.map((one) => one.high))];
  // The spans' own pitches stand for the band of the proof; what is read beyond it sounds by so much lower or higher.
  const bands = runs.map(({ tension }) => tension);
  return {
    ...reading,
    pitch_Hz: {
      low: low * Math.sqrt(Math.min(1, lowest / Math.min(...bands.map((band) => band.low)))),
      high: high * Math.sqrt(Math.max(1, highest / Math.max(...bands.map((band) => band.high)))),
    },
  };
}

/** Behind a bend a span has only its share of what the nut reads: at the low end of the band that is what the log and the proof ask for. */
const spanLows = ({ tension: { target, low }, spans, proof }: Run): readonly Newton[] => [
  proof.low,
  ...spans.filter(({ free }) => free >= PLUCKED_mm).map(({ tension }) => (tension / target) * low),
];
