// What is read on a run, how far do its nuts travel, and what does it ask of the posts? Types of the Plan.
import type { Mm, Newton } from "../units/quantity.ts";

/** One span of a run with what can be read on it when the run stands at its target. */
export interface SpanReading {
  readonly bayId: string;
  readonly free: Mm;
  /** Least tension in this span when every pulling end reads its target. */
  readonly tension: Newton;
  /** What the criterion asks of this span. */
  readonly required: Newton;
  /** The length that the criterion counts: the code's table counts from post to post, the others the free length. */
  readonly demandSpan: Mm;
  /** Longest free length at which the least allowed reading still meets the criterion; null where the criterion names no force. */
  readonly free_stop: Mm | null;
  /** First mode when plucked, from loose wires with free ends to a solid bar with clamped ends. */
  readonly pitch_Hz: { readonly low: number; readonly nominal: number; readonly high: number };
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
  /** Of all cables together, when they stand at their target and at the greatest allowed reading. */
  readonly pull_target: Newton;
  readonly pull_high: Newton;
  /** Where the resultant acts, above the datum. */
  readonly height: Mm;
}

export interface TighteningStep {
  readonly number: number;
  readonly pass: number;
  readonly mark: string;
  readonly course: number;
  readonly reading: Newton;
  readonly reading_low: Newton;
  readonly reading_high: Newton;
}

export interface RunTightening {
  readonly runId: string;
  readonly order: readonly number[];
  readonly steps: readonly TighteningStep[];
}
