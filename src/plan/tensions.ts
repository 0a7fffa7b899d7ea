// What tension does each run get at its pulling end and in its far spans, and what can be read on it?
import type { Job } from "../job/job.ts";
import { leastBetween, type TensionProfile, tensionProfile } from "../mechanics/corner.ts";
import { deflectionUnder } from "../mechanics/lateral.ts";
import { pitchBand } from "../mechanics/pitch.ts";
import { pushThroughForce } from "../mechanics/push-through.ts";
import { metallicArea } from "../mechanics/strand.ts";
import { takeUp } from "../mechanics/stretch.ts";
import { hasErrors, type Outcome, type Problem } from "../problem/problem.ts";
import { guardRules } from "../tables/limits.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundDown, roundUp } from "../units/round.ts";
import { requiredTension } from "./criterion.ts";
import type { Gap, Run, SpanReading, TakeUp } from "./plan.ts";
import { orderLengthOf, type RunGeometry } from "./runs.ts";

const INFILL_WIDTH_mm = 304.8;

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
    bends: run.bends.map(({ at, angle }) => ({ at, angle })),
    friction: job.tightening.friction.value,
    wobble_perMm: job.tightening.wobble_perMm.value,
    pull_left: run.left.pulls ? pull : null,
    pull_right: run.right.pulls ? pull : null,
  });
}

function tensionRun(run: RunGeometry, spacing: Mm, job: Job, read: SpanReader): Outcome<Run> {
  const orderLength = orderLengthOf(run.outsideLength, job);
  if (orderLength === null) throw new RangeError(`run ${run.id} is longer than every ready length: the cuts should have prevented it`);
  // Friction takes a share, so the profile of a unit pull scales to any target.
  const unit = profileOf(run, 1, job);
  const problems: Problem[] = [];
  const demands = new Map<number, Newton>();
  let [required, target_exact]: [Newton, Newton] = [0, 0];
  for (const { bay, from, to } of run.spans) {
    if (!demands.has(bay.free)) {
      const demand = requiredTension({ free: bay.free, spacing, runLength: run.pathLength }, job);
      problems.push(...demand.problems);
      demands.set(bay.free, demand.value ?? 0);
    }
    const tension = demands.get(bay.free) ?? 0;
    required = Math.max(required, tension);
    target_exact = Math.max(target_exact, tension / leastBetween(unit, from, to));
  }
  if (hasErrors(problems)) return { value: undefined, problems };
  const target = roundUp(target_exact, job.tightening.readingStep.value);
  const profile = profileOf(run, target, job);
  const spans = run.spans.map(({ bay, from, to }): SpanReading => {
    const reading = read(bay.free, leastBetween(profile, from, to), run.pathLength);
    return { bayId: bay.id, required: demands.get(bay.free) ?? 0, ...reading };
  });
  const weakest = spans.reduce((least, span) => (span.tension < least.tension ? span : least));
  const { members: _members, spans: lines, ...rest } = run;
  const tension = { target, required, least: profile.least, leastBayId: weakest.bayId, farRatio: profile.least / target };
  const value: Run = {
    ...rest,
    bayIds: lines.map(({ bay }) => bay.id),
    orderLength,
    tension,
    takeUp: takeUpOf(run, profile, job),
    spans,
  };
  return { value, problems };
}

function takeUpOf(run: RunGeometry, profile: TensionProfile, job: Job): TakeUp {
  const { low, nominal, high } = job.cable.stiffness.value;
  const { pitch, threadLength, firstTurns } = job.fittings.stud;
  return takeUp({
    elongation: profile.integral_NMm / nominal,
    elongation_low: profile.integral_NMm / high,
    elongation_high: profile.integral_NMm / low,
    bedding: job.cable.beddingShare.value * run.pathLength,
    seating: job.tightening.seating.value,
    pullingEnds: (run.left.pulls ? 1 : 0) + (run.right.pulls ? 1 : 0),
    pitch: pitch.value,
    threadLength: threadLength.value,
    firstTurns: firstTurns.value,
  });
}

type Reading = Omit<SpanReading, "bayId" | "required">;
type SpanReader = (free: Mm, tension: Newton, runLength: Mm) => Reading;

/** Reads a span; spans of the same length, tension and run are computed once. */
function spanReader(spacing: Mm, job: Job): SpanReader {
  const known = new Map<string, Reading>();
  const { cable, tightening } = job;
  const stiffness = cable.stiffness.value.nominal;
  const modulus = stiffness / metallicArea({ construction: cable.construction, diameter: cable.diameter });
  const solid = { kind: "sphere", diameter: job.code.openingSphere.value } as const;
  const infill = guardRules({ edition: job.code.edition, occupancy: job.code.occupancy })?.infillLoad?.value ?? null;
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
      underInfillLoad: infill === null ? null : underInfill(infill, spacing, span),
    };
    known.set(key, reading);
    return reading;
  };
}

/** The infill load stands on a foot of width: the cables that cross it share it, at mid-span and held at the span's ends. */
function underInfill(
  infill: Newton,
  spacing: Mm,
  span: { readonly span: Mm; readonly tension: Newton; readonly stiffness: number; readonly runLength: Mm },
): NonNullable<SpanReading["underInfillLoad"]> {
  const load = infill / Math.max(1, roundDown(INFILL_WIDTH_mm / spacing, 1));
  const { deflection, tension } = deflectionUnder({ ...span, support: "held", force: load });
  return { load, deflection, tension };
}
