// At what does each step of the tightening stop on a colder or warmer day, and what do the cables read when all is done?
import type { TighteningStep as SimulatedStep } from "../mechanics/sequence.ts";
import type { Newton } from "../units/quantity.ts";
import { roundNearest } from "../units/round.ts";
import type { RunClimate } from "./climate-plan.ts";
import type { Run } from "./plan.ts";
import type { TighteningDay, TighteningStep } from "./readings.ts";

interface Band {
  readonly low: Newton;
  readonly high: Newton;
}

/** A band moves with its reading, but no reading goes above the working limit of the strand, unless the band did already. */
export const movedBand = ({ low, high }: Band, { by, most }: { readonly by: Newton; readonly most: Newton }): Band => ({
  low: low + by,
  high: Math.min(high + by, Math.max(high, most)),
});

export interface DayRules {
  /** Working limit of the strand. */
  readonly most: Newton;
  /** Of the gauge. */
  readonly readingStep: Newton;
  /** Pitch of the span that is read, by the reading at the nut. */
  readonly pitchAt: (reading: Newton) => number;
}

/**
 * All readings of a run grow alike with its target: on a cold day each is the reading of the log times what the target then is over the
 * target of the log. The cable that needs most on that day sets it for all, so that none is left short.
 */
export function daysOf(
  steps: readonly Pick<SimulatedStep, "reading">[],
  { tension }: Pick<Run, "tension">,
  days: RunClimate["days"],
  { most, readingStep, pitchAt }: DayRules,
): readonly TighteningDay[] {
  const { target } = tension;
  return days.map(({ temperature, high }) => {
    const added = high - target;
    return {
      temperature,
      added,
      readings: steps.map(({ reading }) => {
        const then = roundNearest((reading * high) / target, readingStep);
        return then > most || then <= 0 ? null : then;
      }),
      end: { ...movedBand(tension, { by: added, most }), pitch_Hz: pitchAt(high) },
    };
  });
}

/** At the top of the band of each step, which moves with its reading; where the table says to wait, nobody pulls. */
export function mostOnAnyDay(steps: readonly TighteningStep[], days: readonly TighteningDay[], most: Newton): Newton {
  const tops = days.flatMap(({ readings }) =>
    readings.flatMap((reading, place) => {
      const step = steps[place];
      return reading === null || step === undefined ? [] : [(reading * step.reading_high) / step.reading];
    }),
  );
  return Math.min(most, Math.max(...steps.map(({ reading_high }) => reading_high), ...tops));
}
