// What tension does the criterion of the job ask of one span?
import type { Job } from "../job/job.ts";
import { deflectionUnder } from "../mechanics/lateral.ts";
import { pushThroughForce, tensionForPush } from "../mechanics/push-through.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import type { SourceId } from "../sources/sources.ts";
import { nccTension } from "../tables/ncc-wire.ts";
import { force, length } from "../units/print.ts";
import type { Mm, Newton } from "../units/quantity.ts";

export interface SpanDemand {
  readonly free: Mm;
  readonly spacing: Mm;
  /** Length that shares the stretch when the cable slides through its posts. */
  readonly runLength: Mm;
}

export interface CriterionText {
  readonly text: string;
  readonly source: SourceId;
  readonly where: string;
}

const path = ["tightening", "criterion"];

/** Least tension that meets the criterion in this span; the cable is taken to slide, which asks for more. */
export function requiredTension(demand: SpanDemand, job: Job): Outcome<Newton> {
  const { criterion } = job.tightening;
  switch (criterion.kind) {
    case "stated":
      // What is stated is the target: the low end of its band must still do.
      return { value: criterion.tension * (1 - job.tightening.band.value), problems: [] };
    case "table":
      return tableTension(demand, job);
    case "sag":
      return sagTension(demand, job, criterion.weight, criterion.sag_max);
    case "sphere": {
      const tension = tensionForPush({
        solid: { kind: "sphere", diameter: criterion.diameter },
        force: criterion.force,
        spacing: demand.spacing,
        cableDiameter: job.cable.diameter,
        span: demand.free,
        stiffness: job.cable.stiffness.value.low,
        runLength: demand.runLength,
        support: "sliding",
      });
      return Number.isFinite(tension) ? { value: tension, problems: [] } : { value: undefined, problems: [outOfReach(demand, job)] };
    }
  }
}

function outOfReach(demand: SpanDemand, job: Job): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  return {
    severity: "error",
    path,
    what: `no tension in reach meets the criterion in a span of ${length(demand.free, tape)} at a spacing of ${length(demand.spacing, tape)}`,
    fix: "give a smaller `largest cable spacing`, a shorter `longest free length`, or a criterion that can be met",
  };
}

function tableTension(demand: SpanDemand, job: Job): Outcome<Newton> {
  const { construction, diameter } = job.cable;
  const row = nccTension({ construction, diameter, spacing: demand.spacing, clearSpan: demand.free });
  if (typeof row !== "string") return { value: row.value, problems: [] };
  const tape = { units: "mm", style: "tape" } as const;
  const problem: Problem = {
    severity: "error",
    path,
    what: `NCC 2022 table 11.3.6a has no tension for ${construction} of ${length(diameter, { units: "mm", decimals: 2, step: 1 / 64 })} at a spacing of ${length(demand.spacing, tape)} and a clear span of ${length(demand.free, tape)}: ${row}`,
    why: "the table is never read between its rows or beyond them",
    fix: "shorten the span with spacers, set the cables closer, or choose another criterion (sphere, sag, stated)",
  };
  return { value: undefined, problems: [problem] };
}

/** Bisection on the tension: more tension, less sag. */
function sagTension(demand: SpanDemand, job: Job, weight: Newton, sag_max: Mm): Outcome<Newton> {
  const sagAt = (tension: Newton): Mm =>
    deflectionUnder({
      span: demand.free,
      force: weight,
      tension,
      stiffness: job.cable.stiffness.value.low,
      runLength: demand.runLength,
      support: "sliding",
    }).deflection;
  let low: Newton = 0;
  let high: Newton = job.cable.breakingForce.value;
  if (sagAt(high) > sag_max) return { value: undefined, problems: [outOfReach(demand, job)] };
  for (let step = 0; step < 60 && high - low > 1e-6 * high; step++) {
    const middle = (low + high) / 2;
    if (sagAt(middle) > sag_max) low = middle;
    else high = middle;
  }
  return { value: high, problems: [] };
}

/** Beyond this many times the planned span nobody looks for the longest one that would still do. */
const LONGEST_times = 2;

/** Longest free length at which this tension still meets the criterion, by bisection; null where the criterion names no force. */
export function longestFree(demand: SpanDemand, tension: Newton, job: Job): Mm | null {
  const { criterion } = job.tightening;
  if (criterion.kind === "stated" || criterion.kind === "table") return null;
  const stiffness = job.cable.stiffness.value.low;
  const meets = (span: Mm): boolean => {
    // A longer bay makes a longer run.
    const runLength = demand.runLength + Math.max(0, span - demand.free);
    const support = "sliding";
    if (criterion.kind === "sag")
      return deflectionUnder({ tension, stiffness, runLength, support, span, force: criterion.weight }).deflection <= criterion.sag_max;
    const solid = { kind: "sphere", diameter: criterion.diameter } as const;
    const push = {
      tension,
      stiffness,
      runLength,
      support,
      solid,
      span,
      spacing: demand.spacing,
      cableDiameter: job.cable.diameter,
    } as const;
    return pushThroughForce(push).force >= criterion.force;
  };
  let [good, bad] = [0, LONGEST_times * demand.free];
  if (meets(bad)) return bad;
  // To a tenth of a millimetre: the tape reads no finer.
  while (bad - good > 0.1) {
    const middle = (good + bad) / 2;
    if (meets(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** The criterion in words, with its origin. */
export function criterionText(job: Job): CriterionText {
  const { criterion } = job.tightening;
  const tape = { units: job.units, style: "tape" } as const;
  switch (criterion.kind) {
    case "stated":
      return { text: `tension stated by ${criterion.statedBy}`, source: "job", where: "tightening: criterion" };
    case "table":
      return { text: "least tension of the code's table for this cable, spacing and span", source: "ncc-2022", where: "table 11.3.6a" };
    case "sag":
      return {
        text: `at most ${length(criterion.sag_max, tape)} of sag under ${force(criterion.weight, job.units)} hung at mid-span (${criterion.agreedWith})`,
        source: "job",
        where: "tightening: criterion",
      };
    case "sphere":
      return {
        text: `a sphere of ${length(criterion.diameter, tape)} must not pass under ${force(criterion.force, job.units)} at mid-span (${criterion.agreedWith})`,
        source: "job",
        where: "tightening: criterion",
      };
  }
}
