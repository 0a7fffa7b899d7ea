// In which order are the cables tightened, and at what reading does each stop?
import type { Job } from "../job/job.ts";
import type { Newton } from "../units/quantity.ts";
import { roundDown, roundNearest } from "../units/round.ts";
import type { Course, Run } from "./plan.ts";
import type { RunTightening, TighteningStep } from "./readings.ts";

/** From the middle cable outwards, one above, one below (common practice, no source). */
export function middleOutward(count: number): readonly number[] {
  const middle = roundDown((count + 1) / 2, 1);
  const order = [middle];
  for (let away = 1; order.length < count; away++) {
    if (middle + away <= count) order.push(middle + away);
    if (middle - away >= 1) order.push(middle - away);
  }
  return order;
}

export const cableMark = (runId: string, course: number): string => `${runId}-${String(course).padStart(2, "0")}`;

export function orderTightening(runs: readonly Run[], courses: readonly Course[], job: Job): readonly RunTightening[] {
  const order = middleOutward(courses.length);
  const band = job.tightening.band.value;
  return runs.map((run) => {
    const steps = job.tightening.passes.value.flatMap((share, passIndex) =>
      order.map((course, index): TighteningStep => {
        const reading = readingOf(run.tension.target * share, job);
        const limits =
          share === 1
            ? { reading_low: run.tension.low, reading_high: run.tension.high }
            : { reading_low: reading * (1 - band), reading_high: Math.min(reading * (1 + band), workingLimitOf(job)) };
        return {
          number: passIndex * order.length + index + 1,
          pass: passIndex + 1,
          mark: cableMark(run.id, course),
          course,
          reading,
          ...limits,
        };
      }),
    );
    return { runId: run.id, order, steps };
  });
}

/** Greatest tension of the strand in any stage. */
export const workingLimitOf = (job: Job): Newton => job.cable.breakingForce.value * job.cable.workingShare.value;

const readingOf = (tension: Newton, job: Job): Newton => roundNearest(tension, job.tightening.readingStep.value);
