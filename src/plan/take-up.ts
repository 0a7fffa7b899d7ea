// How far does the nut of each pulling end travel, and is its thread long enough?
import type { Job } from "../job/job.ts";
import type { TensionProfile } from "../mechanics/corner.ts";
import { takeUp } from "../mechanics/stretch.ts";
import type { Mm } from "../units/quantity.ts";
import type { RunEnd } from "./plan.ts";
import type { EndTakeUp, TakeUp } from "./readings.ts";
import type { RunGeometry } from "./runs.ts";

/**
 * Each nut takes the stretch of the strand on its own side of the place that the pull reaches last; bedding-in goes with the length,
 * seating and the closing of the frame under all cables are shared by the ends.
 */
export function takeUpOf(run: RunGeometry, profile: TensionProfile, closing: Mm, job: Job): TakeUp {
  const pulling = [run.left, run.right].filter((end) => end.pulls);
  // A stud is set by the face of its post: what a bevelled washer is thick, its nut cannot travel.
  const seat = Math.max(...pulling.map((end) => end.seat));
  const parts = pulling.map((end) =>
    endTakeUp(end, { share: shareOf(end, pulling, run, profile), ends: pulling.length, closing, seat }, job),
  );
  const worst = parts.reduce((most, one) => (one.end.travel > most.end.travel ? one : most));
  const sum = (of: (part: (typeof parts)[number]) => Mm): Mm => parts.reduce((total, part) => total + of(part), 0);
  const { reserve } = job.fittings.stud;
  return {
    elongation: sum((part) => part.whole.elongation),
    bedding: sum((part) => part.whole.bedding),
    seating: job.tightening.seating.value,
    closing,
    travel: sum((part) => part.whole.travel),
    travelPerEnd: worst.end.travel,
    turns: worst.end.turns,
    turns_low: worst.end.turns_low,
    turns_high: worst.end.turns_high,
    threadAvailable: worst.whole.threadAvailable,
    threadLeft: worst.end.threadLeft,
    reserve: reserve.value,
    slackToPull: sum((part) => part.end.slack),
    ends: parts.map((part) => part.end),
  };
}

interface Share {
  /** Sum of tension times length on this end's side. */
  readonly integral_NMm: number;
  readonly length: Mm;
}

/** What lies on the side of this end: all of the run, or, where both ends pull, up to the place that the pull reaches last. */
export function shareOf(
  end: RunEnd,
  pulling: readonly RunEnd[],
  run: Pick<RunGeometry, "left" | "pathLength">,
  profile: TensionProfile,
): Share {
  if (pulling.length === 1) return { integral_NMm: profile.integral_NMm, length: run.pathLength };
  const still = stillPoint(profile);
  const [from, to] = end === run.left ? [0, still] : [still, run.pathLength];
  const integral_NMm = profile.segments.reduce((sum, segment) => {
    const length = Math.min(segment.to, to) - Math.max(segment.from, from);
    return length <= 0 ? sum : sum + length * meanOf(segment.tension_from, segment.tension_to);
  }, 0);
  return { integral_NMm, length: to - from };
}

/** Where the strand does not move when both ends are pulled: in the middle of the stretch of the least tension, or at its one place. */
function stillPoint({ segments, least, leastAt }: TensionProfile): Mm {
  const level = segments.filter((segment) => Math.max(segment.tension_from, segment.tension_to) <= least * (1 + SAME_share));
  return ((level[0]?.from ?? leastAt) + (level.at(-1)?.to ?? leastAt)) / 2;
}

/** Tensions that differ by less than this share are one. */
const SAME_share = 1e-9;

/** Mean of a tension that falls off exponentially between two values. */
const meanOf = (a: number, b: number): number => (Math.abs(a - b) <= SAME_share * Math.max(a, b) ? (a + b) / 2 : (a - b) / Math.log(a / b));

function endTakeUp(
  end: RunEnd,
  { share, ends, closing, seat }: { readonly share: Share; readonly ends: number; readonly closing: Mm; readonly seat: Mm },
  job: Job,
): { readonly whole: ReturnType<typeof takeUp>; readonly end: EndTakeUp } {
  const { low, nominal, high } = job.cable.stiffness.value;
  const { pitch, threadLength, firstTurns } = job.fittings.stud;
  const whole = takeUp({
    elongation: share.integral_NMm / nominal,
    elongation_low: share.integral_NMm / high,
    elongation_high: share.integral_NMm / low,
    bedding: job.cable.beddingShare.value * share.length,
    seating: (job.tightening.seating.value + closing) / ends,
    pullingEnds: 1,
    pitch: pitch.value,
    threadLength: threadLength.value - seat,
    firstTurns: firstTurns.value,
  });
  const travel_high = whole.turns_high * pitch.value;
  // What the thread cannot take with its reserve is pulled out as slack first; the nut then travels that much less.
  const slack = Math.max(0, travel_high + job.fittings.stud.reserve.value - whole.threadAvailable);
  const turnsOfSlack = slack / pitch.value;
  return {
    whole,
    end: {
      postId: end.postId,
      slack,
      travel: whole.travel - slack,
      travel_high: travel_high - slack,
      turns: whole.turns - turnsOfSlack,
      turns_low: whole.turns_low - turnsOfSlack,
      turns_high: whole.turns_high - turnsOfSlack,
      threadLeft: whole.threadLeft + slack,
    },
  };
}
