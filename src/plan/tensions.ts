// What tension does each run get at its pulling end and in its far spans, and what can be read on it?
import type { Job } from "../job/job.ts";
import { leastBetween, type TensionProfile, tensionProfile } from "../mechanics/corner.ts";
import { deflectionUnder } from "../mechanics/lateral.ts";
import { pitchBand } from "../mechanics/pitch.ts";
import { pushThroughForce } from "../mechanics/push-through.ts";
import { metallicArea } from "../mechanics/strand.ts";
import { hasErrors, type Outcome, type Problem } from "../problem/problem.ts";
import { strandFriction } from "../tables/friction.ts";
import { guardRules } from "../tables/limits.ts";
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import { roundDown, roundUp } from "../units/round.ts";
import { longestFree, requiredTension } from "./criterion.ts";
import type { SpanLine } from "./lay-run.ts";
import type { Gap, Run } from "./plan.ts";
import type { SpanReading } from "./readings.ts";
import { orderLengthOf, type RunGeometry } from "./runs.ts";
import { takeUpOf } from "./take-up.ts";
import { workingLimitOf } from "./tightening.ts";

/** Spacing of the two neighbouring cables that stand farthest apart: the sphere goes through there. */
export const widestSpacing = (gaps: readonly Gap[]): Mm =>
  Math.max(...(gaps.length > 2 ? gaps.slice(1, -1) : gaps).map((gap) => gap.spacing));

export function tensionRuns(geometries: readonly RunGeometry[], gaps: readonly Gap[], job: Job): Outcome<readonly Run[]> {
  const problems: Problem[] = [];
  const runs: Run[] = [];
  const read = spanReader(widestSpacing(gaps), job);
  for (const geometry of geometries) {
    const outcome = tensionRun(geometry, widestSpacing(gaps), job, read);
    problems.push(...outcome.problems);
    if (outcome.value !== undefined) runs.push(outcome.value);
  }
  return { value: hasErrors(problems) ? undefined : runs, problems };
}

function profileOf(run: RunGeometry, pull: Newton, job: Job): TensionProfile {
  return tensionProfile({
    length: run.pathLength,
    bends: run.bends.map(({ at, angle }) => ({ at, angle: angle * frictionShare(angle, job) })),
    friction: job.tightening.friction.value,
    wobble_perMm: job.tightening.wobble_perMm.value,
    pull_left: run.left.pulls ? pull : null,
    pull_right: run.right.pulls ? pull : null,
  });
}

/** A bend too small for a bushing rubs on bare wood: as if it turned further on a bushing. */
function frictionShare(angle: Radian, job: Job): number {
  const bushed = job.posts.section.material !== "wood" || angle > job.fittings.bushingAngle.value;
  return bushed ? 1 : Math.max(1, strandFriction("wood").value.nominal / job.tightening.friction.value);
}

interface Demand {
  readonly line: SpanLine;
  readonly free: Mm;
  readonly required: Newton;
}

/** What the criterion asks of each span of a run; spans that ask the same are computed once. */
function demandsOf(run: RunGeometry, spacing: Mm, job: Job): Outcome<readonly Demand[]> {
  const problems: Problem[] = [];
  const known = new Map<Mm, Newton>();
  const demands = run.spans.map((line, index) => {
    // The code's table counts the distance between posts; a spacer is none.
    const free = job.tightening.criterion.kind === "table" ? betweenPosts(run, index) : line.bay.free;
    const before = known.get(free);
    if (before !== undefined) return { line, free, required: before };
    const demand = requiredTension({ free, spacing, runLength: run.pathLength }, job);
    problems.push(...demand.problems);
    known.set(free, demand.value ?? 0);
    return { line, free, required: demand.value ?? 0 };
  });
  return { value: demands, problems };
}

/** Clear distance between the two posts that a span lies between. */
function betweenPosts(run: RunGeometry, index: number): Mm {
  let [left, right] = [index, index + 1];
  while (run.members[left]?.kind === "spacer") left -= 1;
  while (run.members[right]?.kind === "spacer") right += 1;
  return (run.spans[right - 1]?.to ?? 0) - (run.spans[left]?.from ?? 0);
}

/** Computed values that differ by less than this share are one: the first of them is named. */
const SAME_share = 1e-9;

function tensionRun(run: RunGeometry, spacing: Mm, job: Job, read: SpanReader): Outcome<Run> {
  const orderLength = orderLengthOf(run.outsideLength, job);
  if (orderLength === null) throw new RangeError(`run ${run.id} is longer than every ready length: the cuts should have prevented it`);
  const { value: demands = [], problems } = demandsOf(run, spacing, job);
  if (hasErrors(problems)) return { value: undefined, problems };
  // Friction takes a share, so the profile of a unit pull scales to any target.
  const unit = profileOf(run, 1, job);
  const low_exact = Math.max(...demands.map(({ line, required }) => required / leastBetween(unit, line.from, line.to)));
  const band = job.tightening.band.value;
  const step = job.tightening.readingStep.value;
  // Where slack cables would do, they are tightened by one step all the same: a loose cable is no infill.
  const low = Math.max(step, roundUp(low_exact, step));
  // A stated tension is the target; else the target lies so high that its whole band meets the criterion.
  const target = Math.max(step, roundUp(low_exact / (1 - band), step));
  const profile = profileOf(run, target, job);
  const stop = stopFinder(spacing, run.pathLength, job);
  const spans = demands.map(({ line: { bay, from, to }, required, free }): SpanReading => {
    const reading = read(bay.free, leastBetween(profile, from, to), run.pathLength);
    const free_stop = stop(bay.free, (reading.tension * low) / target);
    return { bayId: bay.id, required, demandSpan: free, free_stop, ...reading };
  });
  const weakest = spans.reduce((least, span) => (span.tension < least.tension * (1 - SAME_share) ? span : least));
  const high = Math.min(target * (1 + band), workingLimitOf(job));
  const { members: _members, spans: lines, ...rest } = run;
  const value: Run = {
    ...rest,
    bayIds: lines.map(({ bay }) => bay.id),
    orderLength,
    tension: {
      target,
      low,
      high,
      required: Math.max(...spans.map((span) => span.required)),
      least: profile.least,
      leastBayId: weakest.bayId,
      farRatio: profile.least / target,
    },
    takeUp: takeUpOf(run, profile, job),
    spans,
    proof: proofOf(spans, lines, { low: low / target, high: high / target }),
  };
  return { value, problems };
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

/** Longest free length by bay and tension; equal tensions are searched once. */
function stopFinder(spacing: Mm, runLength: Mm, job: Job): (free: Mm, tension: Newton) => Mm | null {
  const known = new Map<Newton, Mm | null>();
  return (free, tension) => {
    if (!known.has(tension)) known.set(tension, longestFree({ free, spacing, runLength }, tension, job));
    const longest = known.get(tension) ?? null;
    return longest === null ? null : Math.max(longest, free);
  };
}

type Reading = Omit<SpanReading, "bayId" | "required" | "demandSpan" | "free_stop">;
type SpanReader = (free: Mm, tension: Newton, runLength: Mm) => Reading;

/** Reads a span; spans of the same length, tension and run are computed once. */
function spanReader(spacing: Mm, job: Job): SpanReader {
  const known = new Map<string, Reading>();
  const { cable, tightening } = job;
  const stiffness = cable.stiffness.value.nominal;
  const modulus = stiffness / metallicArea({ construction: cable.construction, diameter: cable.diameter });
  const solid = { kind: "sphere", diameter: job.code.openingSphere.value } as const;
  const rules = guardRules({ edition: job.code.edition, occupancy: job.code.occupancy });
  const infill = rules === null ? null : infillShare(rules.infillLoad.value, Math.sqrt(rules.infillArea_mm2.value), spacing);
  return (free, tension, runLength) => {
    const key = `${free}|${tension}|${runLength}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const span = { span: free, tension, stiffness, runLength };
    const sag = (support: "held" | "sliding"): Mm => deflectionUnder({ ...span, support, force: tightening.sagWeight.value }).deflection;
    const push = { ...span, solid, spacing, cableDiameter: cable.diameter };
    const held = pushThroughForce({ ...push, support: "held" });
    const sliding = pushThroughForce({ ...push, support: "sliding" });
    const reading: Reading = {
      free,
      tension,
      pitch_Hz: pitchBand({
        span: free,
        tension,
        mass_kgPerM: cable.mass_kgPerM.value,
        construction: cable.construction,
        diameter: cable.diameter,
        modulus,
      }),
      sag: { held: sag("held"), sliding: sag("sliding") },
      pushThrough: { held: held.force, sliding: sliding.force, linear: held.linear ?? held.force },
      underInfillLoad: infill === null ? null : underInfill(infill, span),
    };
    known.set(key, reading);
    return reading;
  };
}

/** The code's infill load stands on a square: the cables that cross it share it. */
const infillShare = (load: Newton, width: Mm, spacing: Mm): Newton => load / Math.max(1, roundDown(width / spacing, 1));

/** At mid-span, the cable held at the span's ends: the greatest tension that the load can make. */
function underInfill(
  load: Newton,
  span: { readonly span: Mm; readonly tension: Newton; readonly stiffness: number; readonly runLength: Mm },
): NonNullable<SpanReading["underInfillLoad"]> {
  const { deflection, tension } = deflectionUnder({ ...span, support: "held", force: load });
  return { load, deflection, tension };
}
