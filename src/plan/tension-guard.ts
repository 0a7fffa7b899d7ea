// At which targets do the runs stand once their losses are known, and between which tensions may they?
import type { Job } from "../job/job.ts";
import type { Cited } from "../sources/cited.ts";
import type { Newton } from "../units/quantity.ts";
import { climateOf, coveredOf } from "./climate.ts";
import type { RunClimate } from "./climate-plan.ts";
import { criterionText } from "./criterion.ts";
import { closingOf } from "./frame-answer.ts";
import type { Bound, TensionWindow } from "./frame-plan.ts";
import type { FrameGroup } from "./frames.ts";
import type { Run } from "./plan.ts";
import type { RunTightening } from "./readings.ts";
import { type DemandedRun, type Openings, targetOf, tensionRuns } from "./tensions.ts";
import { workingLimitOf } from "./tightening.ts";

export interface TensionedGuard {
  readonly runs: readonly Run[];
  readonly climate: readonly RunClimate[];
}

/** A cable that goes slack loses no more: its loss grows with its target until it stays tight, by ever smaller steps. */
const ROUNDS_max = 100;

/**
 * Targets that make up for what is lost at these same targets: found in rounds, of which the second is nearly always the last. A loss
 * that was found once is kept: where a higher target loses a hair less, its rounding would lead back and forth for ever.
 */
export function tensionGuard(
  demanded: readonly DemandedRun[],
  groups: readonly FrameGroup[],
  openings: Openings,
  job: Job,
): TensionedGuard {
  let lost: ReadonlyMap<string, Newton> = new Map();
  let targets = targetsOf(demanded, lost, job);
  for (let round = 0; round < ROUNDS_max; round++) {
    const before = targets;
    const known = lost;
    lost = new Map(
      groups.flatMap((group) => {
        const covered = coveredOf(group, reachedIn(group, before), job);
        return group.runs.map(({ id }, index) => [id, Math.max(known.get(id) ?? 0, covered[index] ?? 0)] as const);
      }),
    );
    targets = targetsOf(demanded, lost, job);
    if (targets.every(({ target }, index) => target === before[index]?.target)) break;
  }
  const climate = groups
    .flatMap((group) => climateOf(group, reachedIn(group, targets), job))
    .map((one) => ({ ...one, covered: lost.get(one.runId) ?? 0 }));
  const asRuns = targets.map(({ run, target }) => ({ id: run.id, tension: { target } as Run["tension"] }));
  const targeted = targets.map((one) => {
    const group = groups.find(({ runs }) => runs.some(({ id }) => id === one.run.id));
    return { ...one, closing: group === undefined ? 0 : closingOf(group, asRuns, one.run.id) };
  });
  return { runs: tensionRuns(targeted, openings, job), climate };
}

/** Target of each run of a group. */
const reachedIn = ({ runs }: FrameGroup, targets: readonly { readonly run: { readonly id: string }; readonly target: Newton }[]) =>
  runs.map(({ id }) => targets.find(({ run }) => run.id === id)?.target ?? 0);

/** What is lost is kept in store, unless somebody states the tension. */
const targetsOf = (demanded: readonly DemandedRun[], lost: ReadonlyMap<string, Newton>, job: Job) =>
  demanded.map((one) => {
    const covered = job.tightening.criterion.kind === "stated" ? 0 : (lost.get(one.run.id) ?? 0);
    return { ...one, covered, ...targetOf(one, covered, job) };
  });

interface WindowOf {
  readonly run: Run;
  readonly demanded: DemandedRun;
  readonly tightening: RunTightening;
  /** By how much the tensions may grow until the frame no longer holds them. */
  readonly strength: { readonly share: number; readonly name: string } | null;
  /** The same until a post moves too far. */
  readonly movement: number | null;
  /** What the hardest day adds. */
  readonly hardest: RunClimate["hardest"];
  /** What the wood under the washers of its ends bears, the least; null in metal. */
  readonly washer: Cited<Newton> | null;
  /** Pull at the nut that wood and bushings bear where it bends; null where it does not. */
  readonly bend: Cited<Newton> | null;
  /** What the fastening of its ends on faces and in piers holds, the least; null without one. */
  readonly face: Cited<Newton> | null;
  /** Loss with the least and the greatest stiffness of the strand. */
  readonly covered_band: { readonly low: Newton; readonly high: Newton };
}

/** What a run needs at its nut, part by part, and what bounds it from above. */
export function windowOf(of: WindowOf, job: Job): TensionWindow {
  const { run, demanded, covered_band } = of;
  const { target, required } = run.tension;
  const { low_exact } = demanded;
  const stated = job.tightening.criterion.kind === "stated";
  const band = job.tightening.band.value;
  const { covered } = run.tension;
  const needed = low_exact + covered;
  const allows = boundsOf(of, job);
  const criterion = criterionText(job);
  return {
    runId: run.id,
    needs: [
      { name: stated ? "what is stated, less its band" : `criterion in the worst span: ${criterion.text}`, tension: required },
      { name: "friction on the way to that span", tension: low_exact - required },
      { name: "weather, drying and bedding-in", tension: covered },
      { name: "half of the band, so that every allowed reading does", tension: needed / (1 - band) - needed },
    ],
    low: needed / (1 - band),
    allows,
    high: Math.min(...allows.map(({ tension }) => tension)),
    target,
    targetBand: {
      low: stated ? target : targetOf(demanded, covered_band.low, job).target,
      high: stated ? target : targetOf(demanded, covered_band.high, job).target,
    },
  };
}

/** What bounds the target from above; the pull of a cable is what its band allows and what the hardest day adds. */
function boundsOf(of: WindowOf, job: Job): readonly Bound[] {
  const { run, tightening, strength, hardest, washer, bend, face, movement: moved } = of;
  const { target, high } = run.tension;
  const band = target / high;
  const { workingShare } = job.cable;
  const limit = workingLimitOf(job);
  const { movementShare_max } = job.limits;
  const passes: Bound = {
    kind: "passes",
    name: "strand's working limit over the highest reading of the passes",
    tension: limit / Math.max(1, tightening.highest_overTarget),
    source: workingShare.source,
    where: workingShare.where,
  };
  const season: Bound = {
    kind: "season",
    name: "strand's working limit on the hardest day, less the band",
    tension: Math.max(0, limit - hardest.worst) * band,
    source: workingShare.source,
    where: workingShare.where,
  };
  const movement: Bound = {
    kind: "movement",
    name: "movement of the posts",
    tension: Math.min(target / tightening.movement_overLimit, moved === null ? Number.POSITIVE_INFINITY : reachOf(moved, of)),
    source: movementShare_max.source,
    where: movementShare_max.where,
  };
  return [
    passes,
    ...(hardest.worst > 0 ? [season] : []),
    ...(tightening.movement_overLimit > 0 ? [movement] : []),
    ...(washer === null ? [] : [endBound("washer", washer, of)]),
    ...(bend === null ? [] : [endBound("bend", bend, of)]),
    ...(face === null ? [] : [endBound("face", face, of)]),
    ...(strength === null ? [] : [frameBound(strength, of)]),
  ];
}

/** Ends on faces of posts are held by screws and eyes, those in piers by anchors; the least of all counts. */
const faceBound = ({ left, right }: Run): string => {
  const kinds = [left.kind, right.kind];
  return [
    ...(kinds.includes("face") ? ["what holds the ends on faces"] : []),
    ...(kinds.includes("anchor") ? ["anchors in the pier"] : []),
  ].join(", ");
};

const endBounds: Readonly<Record<"washer" | "bend" | "face", (run: Run) => string>> = {
  washer: () => "washers on the wood of the posts",
  bend: () => "wood or bushings where the cable bends",
  face: faceBound,
};

/** A cable that is done, on the hardest day; and one that is tightened on the day whose readings are the highest. */
function endBound(
  kind: keyof typeof endBounds,
  { value, source, where }: Cited<Newton>,
  { run, hardest, tightening }: Pick<WindowOf, "run" | "hardest" | "tightening">,
): Bound {
  const { target, high } = run.tension;
  const added = Math.max(0, ...tightening.days.map((day) => day.added));
  const done = (Math.max(0, value - hardest.worst) * target) / high;
  const atWork = (value * (target + added)) / tightening.most_onAnyDay - added;
  return {
    kind,
    name: `${endBounds[kind](run)} on the hardest day, less the band`,
    tension: Math.max(0, Math.min(done, atWork)),
    source,
    where,
  };
}

const frameBound = ({ share, name }: NonNullable<WindowOf["strength"]>, of: Pick<WindowOf, "run" | "hardest">): Bound => ({
  kind: "frame",
  name,
  tension: reachOf(share, of),
  source: "derived",
  where: "frame checks, sheet Z-805",
});

/** The frame bears so many times what all cables pull with; what the day adds does not grow with the target. */
function reachOf(share: number, { run, hardest }: Pick<WindowOf, "run" | "hardest">): Newton {
  const { target, high } = run.tension;
  const reach = Math.min(...hardest.each.map((added) => share * (high + added) - added));
  return (target / high) * Math.max(0, reach);
}
