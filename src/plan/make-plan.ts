// How does a Job become a Plan: in which order does one thing follow from another?
import type { Job } from "../job/job.ts";
import { hasErrors, type Outcome, type Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import { asFoundProblems } from "./as-found.ts";
import { openingsOf } from "./bay-openings.ts";
import { countBits, makeBores } from "./bores.ts";
import { makeOrder, totalOf } from "./buying.ts";
import { calibrated } from "./calibrated.ts";
import { type Checked, overallVerdict } from "./check-row.ts";
import { checkPlan } from "./checks.ts";
import { layOutCourses } from "./courses.ts";
import { criterionText } from "./criterion.ts";
import { cutLumber } from "./cuts.ts";
import { frameOf, rowOf } from "./frame-of.ts";
import { frameProblems } from "./frame-problems.ts";
import { frameGuard, withCables } from "./frames.ts";
import { clearOfHardware, hardwareZones } from "./hardware.ts";
import { instrumentRange } from "./instrument-range.ts";
import { leaningAlong } from "./lean-along-plan.ts";
import { chooseOutline, longestCable, type OutlineChoice } from "./outline-choice.ts";
import { isPier } from "./pier.ts";
import type { Plan, Run } from "./plan.ts";
import { cornerPullsOf, pullsOf } from "./pulls.ts";
import { remedyOf } from "./remedy.ts";
import { makeRuns, type RunGeometry } from "./runs.ts";
import { sleeveProblems } from "./sleeve.ts";
import { tensionGuard } from "./tension-guard.ts";
import { demandRuns } from "./tensions.ts";
import { cableMark, tightenGroup, workingLimitOf } from "./tightening.ts";
import { makeTools } from "./tools.ts";
import { transitionsOf } from "./transitions.ts";
import { placeVerticals, type Verticals, withSharedPosts } from "./verticals.ts";
import { warningsOf } from "./warnings.ts";

/** Everything about one guard; errors stand where a frame cannot be built as the job says. */
export function makePlan(given: Job): Outcome<Plan> {
  const outcome = planOnce(given);
  const plan = outcome.value;
  if (plan === undefined || !plan.frame.checks.some(({ verdict }) => verdict === "fail")) return outcome;
  const remedy = remedyOf(plan, given, (job) => planOnce(job).value);
  return { ...outcome, value: { ...plan, frame: { ...plan.frame, remedy } } };
}

function planOnce(given: Job): Outcome<Plan> {
  const problems: Problem[] = [];
  const outline = keep(chooseOutline(given), problems);
  const sides = outline?.chosen.sides;
  const evenly = sides === undefined ? undefined : keep(layOutCourses(sides, given), problems);
  problems.push(...frameProblems(given));
  if (outline === undefined || sides === undefined || evenly === undefined || hasErrors(problems)) return { value: undefined, problems };
  const upright = keep(layOut(outline, evenly.courses.length, given), problems);
  if (upright !== undefined) problems.push(...asFoundProblems(upright.verticals, given));
  const hardware = upright === undefined ? undefined : keep(hardwareZones(upright.verticals, given), problems);
  if (upright === undefined || hardware === undefined || hasErrors(problems)) return { value: undefined, problems };
  const courses = keep(clearOfHardware(evenly, hardware, upright, given), problems);
  if (courses === undefined || hasErrors(problems)) return { value: undefined, problems };
  const layout = keep(leaningAlong({ sides, ...upright }, courses, given), problems);
  if (layout === undefined) return { value: undefined, problems };
  const framed = frameGuard({ sides, verticals: layout.verticals, ...courses, runs: layout.geometries }, given);
  const job = keep(calibrated(framed, given), problems);
  const openings = openingsOf({ sides, ...courses }, given);
  const demanded = job === undefined ? undefined : keep(demandRuns(layout.geometries, openings, job), problems);
  if (job === undefined || demanded === undefined || hasErrors(problems)) return { value: undefined, problems };
  const groups = job === given ? framed : framed.map((group) => withCables(group, job.cable.stiffness.value.nominal, job));
  const lumber = keep(cutLumber({ sides, verticals: layout.verticals, bays: layout.bays, ...courses }, job), problems);
  if (lumber === undefined || hasErrors(problems)) return { value: undefined, problems };
  const { runs, climate } = tensionGuard(demanded, groups, openings, job);
  const bores = makeBores(layout.geometries, courses.courses, job);
  const tightening = groups.flatMap((group) => tightenGroup(group, { runs, climate }, job));
  const { geometries: _geometries, ...drawn } = layout;
  const parts = { ...drawn, ...courses, hardware, runs, bores, tightening, climate };
  const frame = frameOf({ ...parts, groups, demanded }, job);
  const plan = assemble({ parts: { ...parts, frame }, lumber, problems }, job);
  return { value: plan, problems: [...problems, ...plan.warnings.filter((warning) => !problems.includes(warning))] };
}

interface Assembling {
  readonly parts: Checked & Pick<Plan, "frame" | "transitions">;
  readonly lumber: Pick<Plan, "cuts" | "cutPlans">;
  readonly problems: readonly Problem[];
}

/** What follows from the layout, its tensions and its frame: checks, lists and warnings. */
function assemble({ parts, lumber, problems }: Assembling, job: Job): Plan {
  const { runs, courses, bores, frame } = parts;
  const bits = countBits(bores, job);
  const pulls = pullsOf(parts, job.fittings.bushingAngle.value);
  const checks = [...checkPlan(parts, job), ...frame.checks.map(rowOf)];
  const order = makeOrder({ runs, courseCount: courses.length, bores, cutPlans: lumber.cutPlans }, job);
  return {
    job,
    ...parts,
    cables: runs.flatMap((run) => courses.map(({ number }) => ({ mark: cableMark(run.id, number), runId: run.id, course: number }))),
    bits,
    pulls,
    cornerPulls: cornerPullsOf(parts, pulls),
    openingBayIds: openingBays(parts),
    target: chosenTarget(runs, job),
    checks,
    verdict: overallVerdict(checks),
    order,
    orderTotal_cents: totalOf(order),
    ...lumber,
    tools: makeTools({ bits, bores, runs, rakes: parts.rakes, range: instrumentRange(parts, job) }, job),
    warnings: [...problems.filter((problem) => problem.severity === "warning"), ...warningsOf(parts, job)],
  };
}

/** Takes a step's value and keeps its problems. */
function keep<T>(outcome: Outcome<T>, problems: Problem[]): T | undefined {
  problems.push(...outcome.problems);
  return outcome.value;
}

interface LaidOut extends Verticals {
  readonly geometries: readonly RunGeometry[];
  readonly transitions: Plan["transitions"];
}

/** The posts that the cuts ask for, then the runs. */
function layOut(outline: OutlineChoice, courseCount: number, job: Job): Outcome<LaidOut> {
  const { sides, cuts } = outline.chosen;
  if (cuts === null) return { value: undefined, problems: [noRuns(job, longestCable(job))] };
  const placed = placeVerticals(sides, cuts, job);
  const runs = makeRuns({ sides, ...placed }, cuts, job);
  if (runs.value === undefined) return { value: undefined, problems: runs.problems };
  const verticals = withSharedPosts(placed.verticals, runs.value);
  const transitions = transitionsOf(outline, courseCount, job);
  const problems = [...runs.problems, ...sleeveProblems(runs.value, verticals, job)];
  return { value: { bays: placed.bays, verticals, geometries: runs.value, transitions }, problems };
}

function noRuns(job: Job, readyLength_max: number): Problem {
  const { runStraight_max, runWithBends_max, bends_max } = job.limits;
  const feet = { units: job.units, style: "feet" } as const;
  const bent =
    bends_max.value === 0 ? "no run may turn" : `one with up to ${bends_max.value} corners ${length(runWithBends_max.value, feet)}`;
  const hasCorners = job.sides.some(({ turn, interrupted }) => turn !== null && interrupted === null);
  const corners = hasCorners
    ? `; two runs meet at a corner only where its two posts leave ${length(job.posts.pairGap.value, { units: job.units, style: "tape" })} between them for hand and wrench`
    : "";
  return {
    severity: "error",
    path: ["guard", "sides"],
    what: "the guard cannot be cut into runs that keep the limits",
    why: `${twoPiers(job)}a straight run may have ${length(runStraight_max.value, feet)}, ${bent}, and the longest cable to be had is ${length(readyLength_max, feet)}${corners}`,
    fix: `add posts where runs can meet, ${hasCorners ? "set the two posts of a corner further apart (posts: corner clearance, or their stations), " : ""}allow longer cables under supply, or change the limits`,
  };
}

/** An end in a pier only holds. */
const twoPiers = ({ start, end }: Job): string =>
  isPier(start) && isPier(end) ? "an end in a pier only holds, so between two piers two runs must meet where their nuts can pull; " : "";

/** On each side the bay through which the sphere goes most easily; the first of equal ones. */
function openingBays({ sides, bays, runs }: Pick<Plan, "sides" | "bays" | "runs">): readonly string[] {
  const spans = runs.flatMap((run) => run.spans);
  return sides.flatMap((side) => {
    const own = new Set(bays.filter((bay) => bay.sideId === side.id && bay.kind === "bay").map((bay) => bay.id));
    const onSide = spans.filter((span) => own.has(span.bayId));
    if (onSide.length === 0) return [];
    return [onSide.reduce((least, span) => (span.pushThrough.sliding < least.pushThrough.sliding * (1 - 1e-9) ? span : least)).bayId];
  });
}

function chosenTarget(runs: readonly Run[], job: Job): Plan["target"] {
  const worst = runs.flatMap((run) => run.spans).reduce((most, span) => (span.required > most.required * (1 + 1e-9) ? span : most));
  const criterion = criterionText(job);
  return {
    required: worst.required,
    criterionText: criterion.text,
    source: criterion.source,
    sourceWhere: criterion.where,
    worstBayId: worst.bayId,
    worstSpan: worst.demandSpan,
    worstSpacing: worst.spacing,
    workingLimit: workingLimitOf(job),
  };
}
