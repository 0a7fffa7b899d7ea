// What tension does each run get at its pulling end and in its far spans, and what can be read on it?
import type { Job } from "../job/job.ts";
import { leastBetween } from "../mechanics/corner.ts";
import { deflectionUnder } from "../mechanics/lateral.ts";
import { nearestNote, pitchBand } from "../mechanics/pitch.ts";
import { pushThroughForce } from "../mechanics/push-through.ts";
import { metallicArea } from "../mechanics/strand.ts";
import { hasErrors, type Outcome, type Problem } from "../problem/problem.ts";
import { guardRules } from "../tables/limits.ts";
import { decimal } from "../units/print.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundDown, roundUp } from "../units/round.ts";
import type { BayOpening } from "./bay-openings.ts";
import { longestFree, requiredTension } from "./criterion.ts";
import { profileOf } from "./friction.ts";
import type { SpanLine } from "./lay-run.ts";
import type { Bay, Run } from "./plan.ts";
import type { SpanReading } from "./readings.ts";
import { orderLengthOf, type RunGeometry } from "./runs.ts";
import { takeUpOf } from "./take-up.ts";
import { workingLimitOf } from "./tightening.ts";

/** Spacing and sphere of a bay. */
export type Openings = (bay: Bay) => BayOpening;

/** A run with what its criterion asks, before its losses are known. */
export interface DemandedRun {
  readonly run: RunGeometry;
  readonly demands: readonly Demand[];
  /** Least pull at the nut with which every span meets the criterion. */
  readonly low_exact: Newton;
}

/** What the criterion asks of every run. */
export function demandRuns(geometries: readonly RunGeometry[], openings: Openings, job: Job): Outcome<readonly DemandedRun[]> {
  const problems: Problem[] = [];
  const demanded = geometries.map((run): DemandedRun => {
    const outcome = demandsOf(run, openings, job);
    problems.push(...outcome.problems);
    // Friction takes a share, so the profile of a unit pull scales to any target.
    const unit = profileOf(run, 1, job);
    const demands = outcome.value ?? [];
    return { run, demands, low_exact: Math.max(...demands.map(({ line, required }) => required / leastBetween(unit, line.from, line.to))) };
  });
  return { value: hasErrors(problems) ? undefined : demanded, problems };
}

export interface RunTarget {
  readonly target: Newton;
  readonly low: Newton;
}

/**
 * Reading to aim at, and the least that still does: what the criterion asks and what is lost later, the target so high that its whole
 * band does. A tension that somebody states is the target as it stands.
 */
export function targetOf({ low_exact }: DemandedRun, covered: Newton, job: Job): RunTarget {
  const band = job.tightening.band.value;
  const step = job.tightening.readingStep.value;
  const needed = job.tightening.criterion.kind === "stated" ? low_exact : low_exact + covered;
  // Where slack cables would do, they are tightened by one step all the same: a loose cable is no infill.
  return { target: Math.max(step, roundUp(needed / (1 - band), step)), low: Math.max(step, roundUp(needed, step)) };
}

export interface TargetedRun extends DemandedRun, RunTarget {
  /** Lost later: weather and settling. */
  readonly covered: Newton;
  /** How much nearer its anchors come under all cables. */
  readonly closing: Mm;
}

export function tensionRuns(targeted: readonly TargetedRun[], openings: Openings, job: Job): readonly Run[] {
  const read = spanReader(job);
  return targeted.map((one) => tensionRun(one, openings, job, read));
}

export interface Demand {
  readonly line: SpanLine;
  readonly free: Mm;
  readonly required: Newton;
}

/** What the criterion asks of each span of a run; spans that ask the same are computed once. */
function demandsOf(run: RunGeometry, openings: Openings, job: Job): Outcome<readonly Demand[]> {
  const problems: Problem[] = [];
  const known = new Map<string, Newton>();
  const demands = run.spans.map((line, index) => {
    // The code's table counts the distance between posts; a spacer is none.
    const free = job.tightening.criterion.kind === "table" ? betweenPosts(run, index) : line.bay.free;
    const { spacing } = openings(line.bay);
    const key = `${free}|${spacing}`;
    const before = known.get(key);
    if (before !== undefined) return { line, free, required: before };
    const demand = requiredTension({ free, spacing, runLength: run.pathLength }, job);
    problems.push(...demand.problems);
    known.set(key, demand.value ?? 0);
    return { line, free, required: demand.value ?? 0 };
  });
  return { value: demands, problems };
}

/** Clear distance between the two posts that a span lies between. */
function betweenPosts(run: RunGeometry, index: number): Mm {
  let [left, right] = [index, index + 1];
  while (run.members[left]?.kind === "spacer") left -= 1;
  while (run.members[right]?.kind === "spacer") right += 1;
  const longer = run.spans.slice(left, right).filter(({ bay }) => bay.longestCourse !== undefined);
  // Beside a post that leans along its side each bay counts with its longest cable.
  return longer.reduce(
    (sum, { bay, from, to }) => sum + Math.max(0, bay.free - (to - from)),
    (run.spans[right - 1]?.to ?? 0) - (run.spans[left]?.from ?? 0),
  );
}

/** Computed values that differ by less than this share are one: the first of them is named. */
const SAME_share = 1e-9;

function tensionRun({ run, demands, target, low, covered, closing }: TargetedRun, openings: Openings, job: Job, read: SpanReader): Run {
  const orderLength = orderLengthOf(run.outsideLength, job);
  if (orderLength === null) throw new RangeError(`run ${run.id} is longer than every ready length: the cuts should have prevented it`);
  const band = job.tightening.band.value;
  const profile = profileOf(run, target, job);
  const stop = stopFinder(run.pathLength, job);
  const spans = demands.map(({ line: { bay, from, to }, required, free }): SpanReading => {
    const opening = openings(bay);
    const reading = read({ free: bay.free, tension: leastBetween(profile, from, to), runLength: run.pathLength, ...opening });
    const free_stop = stop({ free: bay.free, spacing: opening.spacing }, (reading.tension * (low - covered)) / target);
    return { bayId: bay.id, required, demandSpan: free, free_stop, ...reading };
  });
  const weakest = spans.reduce((least, span) => (span.tension < least.tension * (1 - SAME_share) ? span : least));
  const high = Math.min(target * (1 + band), workingLimitOf(job));
  const { members: _members, spans: lines, ...rest } = run;
  return {
    ...rest,
    bayIds: lines.map(({ bay }) => bay.id),
    orderLength,
    tension: {
      target,
      low,
      high,
      covered,
      required: Math.max(...spans.map((span) => span.required)),
      least: profile.least,
      leastBayId: weakest.bayId,
      farRatio: profile.least / target,
    },
    takeUp: takeUpOf(run, profile, closing, job),
    spans,
    proof: proofOf(spans, lines, { low: low / target, high: high / target }),
  };
}

/** The span to read: no corner gap, and the smallest margin over what is asked of it. */
function proofOf(
  spans: readonly SpanReading[],
  lines: readonly SpanLine[],
  shares: { readonly low: number; readonly high: number },
): Run["proof"] {
  const bays = spans.filter((_, index) => lines[index]?.bay.kind === "bay");
  const margin = (span: SpanReading): number => span.tension / Math.max(span.required, Number.MIN_VALUE);
  const worst = bays.reduce((least, span) => (margin(span) < margin(least) * (1 - SAME_share) ? span : least));
  return { bayId: worst.bayId, low: worst.tension * shares.low, high: worst.tension * shares.high };
}

/** Longest free length by bay and tension; equal pairs are searched once. */
function stopFinder(runLength: Mm, job: Job): (bay: { readonly free: Mm; readonly spacing: Mm }, tension: Newton) => Mm | null {
  const known = new Map<string, Mm | null>();
  return ({ free, spacing }, tension) => {
    const key = `${free}|${tension}|${spacing}`;
    if (!known.has(key)) known.set(key, longestFree({ free, spacing, runLength }, tension, job));
    const longest = known.get(key) ?? null;
    return longest === null ? null : Math.max(longest, free);
  };
}

type Reading = Omit<SpanReading, "bayId" | "required" | "demandSpan" | "free_stop">;
interface ReadSpan extends BayOpening {
  readonly free: Mm;
  readonly tension: Newton;
  readonly runLength: Mm;
}
type SpanReader = (span: ReadSpan) => Reading;

/** Reads a span; spans of the same length, tension, opening and run are computed once. */
function spanReader(job: Job): SpanReader {
  const known = new Map<string, Reading>();
  const { cable, tightening } = job;
  const stiffness = cable.stiffness.value.nominal;
  const modulus = stiffness / metallicArea({ construction: cable.construction, diameter: cable.diameter });
  const rules = guardRules({ edition: job.code.edition, occupancy: job.code.occupancy });
  return ({ free, tension, runLength, spacing, sphere }) => {
    const key = `${free}|${tension}|${runLength}|${spacing}|${sphere}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const solid = { kind: "sphere", diameter: sphere } as const;
    const infill = rules === null ? null : infillShare(rules.infillLoad.value, Math.sqrt(rules.infillArea_mm2.value), spacing);
    const span = { span: free, tension, stiffness, runLength };
    const sag = (support: "held" | "sliding"): Mm => deflectionUnder({ ...span, support, force: tightening.sagWeight.value }).deflection;
    const push = { ...span, solid, spacing, cableDiameter: cable.diameter };
    const held = pushThroughForce({ ...push, support: "held" });
    const sliding = pushThroughForce({ ...push, support: "sliding" });
    const pitch_Hz = pitchBand({
      span: free,
      tension,
      mass_kgPerM: cable.mass_kgPerM.value,
      construction: cable.construction,
      diameter: cable.diameter,
      modulus,
    });
    const reading: Reading = {
      free,
      tension,
      spacing,
      sphere,
      pitch_Hz,
      note: noteText(pitch_Hz.nominal),
      sag: { held: sag("held"), sliding: sag("sliding") },
      pushThrough: { held: held.force, sliding: sliding.force, linear: held.linear ?? held.force },
      underInfillLoad: infill === null ? null : underInfill(infill, span),
    };
    known.set(key, reading);
    return reading;
  };
}

function noteText(pitch_Hz: number): string {
  const { name, cents } = nearestNote(pitch_Hz);
  return `${name} ${cents > 0 ? "+" : ""}${decimal(cents)} cents`;
}

/** The code's infill load stands on a square: the cables that cross it share it. */
const infillShare = (load: Newton, width: Mm, spacing: Mm): Newton => load / cablesUnder(width, spacing);

/** At least so many cables cross a square of that width. */
export const cablesUnder = (width: Mm, spacing: Mm): number => Math.max(1, roundDown(width / spacing, 1));

/** At mid-span, the cable held at the span's ends: the greatest tension that the load can make. */
function underInfill(
  load: Newton,
  span: { readonly span: Mm; readonly tension: Newton; readonly stiffness: number; readonly runLength: Mm },
): NonNullable<SpanReading["underInfillLoad"]> {
  const { deflection, tension } = deflectionUnder({ ...span, support: "held", force: load });
  return { load, deflection, tension };
}
