// What is read on a run, how far do its nuts travel, and what does it ask of the posts? Types of the Plan.
import type { PlainOrder } from "../job/job.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Celsius, Mm, Newton } from "../units/quantity.ts";

/** One span of a run with what can be read on it when the run stands at its target. */
export interface SpanReading {
  readonly bayId: string;
  readonly free: Mm;
  /** Least tension in this span when every pulling end reads its target. */
  readonly tension: Newton;
  /** Of the two neighbouring cables that stand farthest apart here, square to them, and the code's sphere that must not pass. */
  readonly spacing: Mm;
  readonly sphere: Mm;
  /** What the criterion asks of this span. */
  readonly required: Newton;
  /** The length that the criterion counts: the code's table counts from post to post, the others the free length. */
  readonly demandSpan: Mm;
  /** Longest free length at which the least allowed reading still meets the criterion; null where the criterion names no force. */
  readonly free_stop: Mm | null;
  /** First mode when plucked, from loose wires with free ends to a solid bar with clamped ends. */
  readonly pitch_Hz: { readonly low: number; readonly nominal: number; readonly high: number };
  /** The nominal pitch as a tuner shows it: "B2 -30 cents". */
  readonly note: string;
  /** Sag at the middle under the test weight: cable held at the span's ends, and free to slide through the run. */
  readonly sag: { readonly held: Mm; readonly sliding: Mm };
  /** Force that pushes the sphere of the code through two neighbouring cables at mid-span. */
  readonly pushThrough: { readonly held: Newton; readonly sliding: Newton; readonly linear: Newton };
  /** Tension in the span, its deflection and the pull on its posts under the code's infill load on one cable. */
  readonly underInfillLoad: { readonly load: Newton; readonly deflection: Mm; readonly tension: Newton } | null;
}

export interface EndTakeUp {
  readonly postId: string;
  /** Slack of this end to take out before its nut is turned; the travel and the turns below are what is left to do. */
  readonly slack: Mm;
  readonly travel: Mm;
  /** With the least stiffness of the strand. */
  readonly travel_high: Mm;
  readonly turns: number;
  readonly turns_low: number;
  readonly turns_high: number;
  readonly threadLeft: Mm;
}

/** How far the nuts travel and what is left of their thread; figures of one end are those of the end that travels most. */
export interface TakeUp {
  readonly elongation: Mm;
  readonly bedding: Mm;
  readonly seating: Mm;
  /** How much nearer the posts come under all cables. */
  readonly closing: Mm;
  readonly travel: Mm;
  /** Travel of the nut that travels most. */
  readonly travelPerEnd: Mm;
  readonly turns: number;
  readonly turns_low: number;
  readonly turns_high: number;
  /** Free thread after the first turns. */
  readonly threadAvailable: Mm;
  readonly threadLeft: Mm;
  /** Thread that must be left for later visits. */
  readonly reserve: Mm;
  /** Slack to take out before the nut is turned, so that the reserve is left with the greatest stretch; 0 when the thread is enough. */
  readonly slackToPull: Mm;
  /** One for each pulling end, from left to right. */
  readonly ends: readonly EndTakeUp[];
}

/** What the cables of one run ask of one post: a demand to be checked by an engineer, with no capacity beside it. */
export interface PostPull {
  readonly postId: string;
  readonly runId: string;
  /** end: along the cables, towards them. bend: towards the inside of the corner. */
  readonly cause: "end" | "bend";
  readonly cables: number;
  /** Of all cables together, when they stand at their target, and at the greatest allowed reading on the day that pulls hardest. */
  readonly pull_target: Newton;
  readonly pull_high: Newton;
  /** Where the resultant acts, above the datum. */
  readonly height: Mm;
}

/** What the runs of both sides together ask of a corner post on which they end: the resultant of their two pulls, to the inside of the turn. */
export interface CornerPull extends Pick<PostPull, "postId" | "pull_target" | "pull_high"> {
  readonly runIds: readonly [left: string, right: string];
}

export interface Pulls {
  readonly pulls: readonly PostPull[];
  /** At each corner post on which the runs of both sides end. */
  readonly cornerPulls: readonly CornerPull[];
}

export interface TighteningStep {
  /** From 1, within the run. */
  readonly number: number;
  readonly pass: number;
  /** plain: to a share of the target. compensated: to the reading that leaves every cable at its target when the pass ends. */
  readonly kind: "plain" | "compensated";
  readonly mark: string;
  readonly course: number;
  /** Rounded to the gauge's step. */
  readonly reading: Newton;
  readonly reading_exact: Newton;
  readonly reading_low: Newton;
  readonly reading_high: Newton;
  /** Of each nut from its first position to the end of this step. */
  readonly turnsPerEnd: number;
  /** Of the span that is read on this run, at this reading. */
  readonly pitch_Hz: number;
  readonly sag: Mm;
  /** Of every cable of the run after the step, from the lowest. */
  readonly tensions: readonly Newton[];
}

/** What an order of tightening asks. */
export interface OrderFigures {
  /** Courses in the order in which they are pulled. */
  readonly order: readonly number[];
  /** Highest reading over target of one compensated pass. */
  readonly highest_overTarget: number;
  /** Least tension over target after one pass in which every cable is pulled to the target. */
  readonly leastAfterPlain_overTarget: number;
}

/** What each step stops at on a day of this temperature, and what is read when all is done. */
export interface TighteningDay {
  readonly temperature: Celsius;
  /** What the cable that needs most then reads above the target. */
  readonly added: Newton;
  /** In the order of the steps; null where the strand's working limit would be passed, or the cable hang slack. */
  readonly readings: readonly (Newton | null)[];
  /** When all are done: between what every cable reads at its nut, and how the span that is read sounds at the target of the day. */
  readonly end: { readonly low: Newton; readonly high: Newton; readonly pitch_Hz: number };
}

export interface RunTightening {
  readonly runId: string;
  /** Runs that share a frame are tightened together: each pass goes over all of them, in this order. */
  readonly together: readonly string[];
  readonly order: readonly number[];
  readonly orderName: PlainOrder | "as numbered";
  readonly passes: readonly { readonly number: number; readonly kind: "plain" | "compensated"; readonly share: number }[];
  readonly steps: readonly TighteningStep[];
  /** The same passes on a day of another temperature. */
  readonly days: readonly TighteningDay[];
  /** Greatest reading that a step may come to on any day of the table: the top of its band there, never above the working limit. */
  readonly most_onAnyDay: Newton;
  /** Highest reading of all passes over the target. */
  readonly highest_overTarget: number;
  /** Largest movement of a post during the passes, over its limit. */
  readonly movement_overLimit: number;
  readonly recommended: OrderFigures;
  /** From the middle outward, as is customary. */
  readonly customary: OrderFigures;
  /** No order has a lower highest reading over target. */
  readonly bound: number;
  readonly exact: boolean;
  readonly ordersTried: number;
  /** What happens when every cable is pulled to the target in the customary order. */
  readonly plain: {
    /** After each step of one pass, of every cable from the lowest. */
    readonly steps: readonly { readonly course: number; readonly tensions: readonly Newton[] }[];
    readonly tensions: readonly Newton[];
    readonly slackCourses: readonly number[];
    /** Plain passes until every cable is within 10 % and within 5 %; null: more than are worth counting. */
    readonly passes_10: number | null;
    readonly passes_5: number | null;
  };
  /** null where the passes keep every limit. */
  readonly refusal: {
    readonly broken: "reading" | "movement";
    readonly overLimit: number;
    readonly course: number;
    readonly pass: number;
    /** Passes that would do; null where none would. */
    readonly morePasses: number | null;
    /** Share of the target that would do. */
    readonly targetShare: number;
  } | null;
}

export interface TargetChoice {
  /** Least tension in the worst span. */
  readonly required: Newton;
  readonly criterionText: string;
  readonly source: SourceId;
  readonly sourceWhere: string;
  readonly worstBayId: string;
  readonly worstSpan: Mm;
  readonly worstSpacing: Mm;
  /** Greatest reading that the strand allows. */
  readonly workingLimit: Newton;
}
