// Is the tension enough everywhere and too much nowhere, and what stays open?
import type { Job } from "../job/job.ts";
import { type Cited, cite } from "../sources/cited.ts";
import { guardRules } from "../tables/limits.ts";
import type { Newton } from "../units/quantity.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import type { RunClimate } from "./climate-plan.ts";
import { criterionText } from "./criterion.ts";
import type { Check, Run } from "./plan.ts";
import type { SpanReading } from "./readings.ts";

export function tensionChecks(plan: Checked, job: Job): readonly Check[] {
  const { breakingForce, workingShare } = job.cable;
  const limit: Cited<number> = { ...workingShare, value: breakingForce.value * workingShare.value };
  const criterion = criterionText(job);
  return plan.runs.flatMap((run) => {
    const readings = plan.tightening.find((one) => one.runId === run.id)?.steps.map((step) => step.reading_high) ?? [];
    const tightest = tightestSpan(run);
    const hardest = hardestOf(plan, run);
    const thread: Cited<number> = { ...job.fittings.stud.threadLength, value: run.takeUp.threadAvailable };
    const checks = [
      limitCheck({
        id: `strand-${run.id}`,
        name: "Greatest reading against the strand's working limit",
        where: run.id,
        rule: "at most",
        demand: Math.max(run.tension.target, ...readings),
        limit: { ...limit, where: `${limit.where}; breaking force: ${breakingForce.source}, ${breakingForce.where}` },
        kind: "force",
        advice: "shorten the spans, set the cables closer or use a thicker cable",
      }),
      ...(hardest.worst > 0
        ? [
            limitCheck({
              id: `season-${run.id}`,
              name: `Greatest pull on the ${hardest.temperature < job.site.reference.value ? "coldest" : "warmest"} day against the strand's working limit`,
              where: run.id,
              rule: "at most",
              demand: hardestPull(plan, run),
              limit,
              kind: "force",
              advice: "shorten the spans, set the cables closer or use a thicker cable",
            }),
          ]
        : []),
      limitCheck({
        id: `required-${run.id}`,
        name: "Least tension along the run against the criterion",
        where: `${run.id}, bay ${tightest.bayId}`,
        rule: "at least",
        demand: tightest.tension,
        limit: { value: tightest.required, source: criterion.source, where: criterion.where },
        kind: "force",
        advice: "raise the target, or cut the run where it bends",
      }),
    ];
    const travel = limitCheck({
      id: `thread-${run.id}`,
      name: "Greatest travel of a nut, and its reserve, against the free thread",
      where: run.id,
      rule: "at most",
      demand: Math.max(...run.takeUp.ends.map((end) => end.travel_high + end.slack)) + run.takeUp.reserve,
      limit: thread,
      kind: "length",
      advice: "take out slack before the nut is turned; the tightening sheet says how much",
    });
    // Short thread is a way of working, not a fault: the slack comes out at the gripping end.
    return [...checks, ...infillCheck(plan, run, job), travel.verdict === "fail" ? { ...travel, verdict: "ask" as const } : travel];
  });
}

/** What the day of the year that pulls hardest adds to a run. */
export const hardestOf = ({ climate }: Pick<Checked, "climate">, { id }: Pick<Run, "id">): RunClimate["hardest"] => {
  const found = climate.find(({ runId }) => runId === id);
  if (found === undefined) throw new RangeError(`no climate of run ${id}`);
  return found.hardest;
};

/** The most that a cable of a run ever pulls with: done and on the hardest day, or while it is tightened on any day of the table. */
export function hardestPull(plan: Pick<Checked, "climate" | "tightening">, run: Run): Newton {
  const tightening = plan.tightening.find(({ runId }) => runId === run.id);
  return Math.max(run.tension.high + hardestOf(plan, run).worst, tightening?.most_onAnyDay ?? 0);
}

/**
 * What the tension is above the target before the load comes is no more above it under the load: a tighter cable stretches less.
 * The cable at mid-span of the worst span under the code's infill load, on the hardest day; null where the code has no such load.
 */
export function underInfill(plan: Pick<Checked, "climate">, run: Run): Newton | null {
  const tensions = run.spans.flatMap((span) => (span.underInfillLoad === null ? [] : [span.underInfillLoad.tension]));
  if (tensions.length === 0) return null;
  return Math.max(...tensions) + (run.tension.high - run.tension.target) + hardestOf(plan, run).worst;
}

/** Against the design resistance of the strand. */
function infillCheck(plan: Checked, run: Run, job: Job): readonly Check[] {
  const demand = underInfill(plan, run);
  if (demand === null) return [];
  const limit = cite(job.cable.breakingForce.value / RESISTANCE_factor, "en-1993-1-11", "6.2: breaking force / (1.5 x 1.0)");
  return [
    limitCheck({
      id: `infill-${run.id}`,
      name: "Tension under the code's infill load, cable held in one span",
      where: run.id,
      rule: "at most",
      demand,
      limit,
      kind: "force",
      advice: "use a thicker cable or shorter spans",
    }),
  ];
}

/** Partial factor of the design resistance of a strand, EN 1993-1-11 6.2. */
const RESISTANCE_factor = 1.5;

/** The span with the smallest margin over what the criterion asks of it. */
const tightestSpan = (run: Run): SpanReading =>
  run.spans.reduce((worst, span) => (span.tension * worst.required < worst.tension * span.required ? span : worst));

export function openQuestions(plan: Checked, job: Job): readonly Check[] {
  const rules = guardRules({ edition: job.code.edition, occupancy: job.code.occupancy });
  const force = Math.min(...plan.runs.flatMap((run) => run.spans.map((span) => span.pushThrough.sliding)));
  const checks: Check[] = [
    // Built to the code's table nothing is pushed: there is no force to ask for.
    ...(job.tightening.criterion.kind === "table" ? [] : [pushQuestion(force)]),
    {
      ...question("horizontals", "Horizontal infill allowed?", {
        source: rules?.climbRule?.source ?? "practice",
        where: rules?.climbRule?.where ?? "climbability",
        advice: "ask the authority whether horizontal cables are accepted here",
      }),
    },
  ];
  if (job.code.poolBarrier) {
    checks.push({
      ...question("pool", "Guard is also a pool barrier", {
        source: rules?.poolRule.source ?? "practice",
        where: rules?.poolRule.where ?? "pool barriers",
        advice: "a field of horizontal cables does not meet the usual rule for a pool barrier: do not build it as one",
      }),
      verdict: "fail",
    });
  }
  return checks;
}

const pushQuestion = (force: number): Check => ({
  ...question("push-through", "Force that pushes the code's sphere through, least span", {
    source: "derived",
    where: "sphere between two cables",
    advice: "ask the authority with which force it tests the opening, if with any",
  }),
  rule: "at least",
  demand: Number.isFinite(force) ? { value: force, kind: "force" } : null,
});
