// In which order are the cables tightened, in how many passes, and at what reading does each step stop?
import type { Job, PlainOrder } from "../job/job.ts";
import { deflectionUnder } from "../mechanics/lateral.ts";
import { searchOrder } from "../mechanics/order-search.ts";
import { type MovementRow, movementOverLimit } from "../mechanics/order-search-figures.ts";
import { pitchBand } from "../mechanics/pitch.ts";
import {
  type PassKind,
  PLAIN,
  passesToWithin,
  plainPassesUntil,
  type TighteningStep as SimulatedStep,
  tightenInPasses,
} from "../mechanics/sequence.ts";
import { readingErrors } from "../mechanics/sequence-band.ts";
import { centreOutwards, type OrderName } from "../mechanics/sequence-order.ts";
import { chooseProgramme, type Programme } from "../mechanics/sequence-programme.ts";
import { type CableSystem, cableSystem } from "../mechanics/sequence-solve.ts";
import { metallicArea } from "../mechanics/strand.ts";
import { nutTurns } from "../mechanics/stretch.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundNearest } from "../units/round.ts";
import type { RunClimate } from "./climate-plan.ts";
import { daysOf, mostOnAnyDay } from "./day-targets.ts";
import type { FrameGroup } from "./frames.ts";
import { movementRows } from "./movement.ts";
import type { Run } from "./plan.ts";
import type { OrderFigures, RunTightening, TighteningStep } from "./readings.ts";

export const cableMark = (runId: string, course: number): string => `${runId}-${String(course).padStart(2, "0")}`;

/** Greatest tension of the strand in any stage. */
export const workingLimitOf = (job: Job): Newton => job.cable.breakingForce.value * job.cable.workingShare.value;

const readingOf = (tension: Newton, job: Job): Newton => roundNearest(tension, job.tightening.readingStep.value);

/** A named order is easier to keep than a row of numbers: it is taken where its highest reading is no more than this above the best. */
const NAMED_worth = 0.03;

const orderNames: Readonly<Record<OrderName, PlainOrder>> = {
  bottomToTop: "from the bottom up",
  topToBottom: "from the top down",
  centreOutwards: "from the middle outward",
  outsideIn: "from the outside in",
};

/** Tightening of all runs of a group: each pass goes over all of them, run by run. */
export function tightenGroup(
  group: FrameGroup,
  { runs, climate }: { readonly runs: readonly Run[]; readonly climate: readonly RunClimate[] },
  job: Job,
): readonly RunTightening[] {
  const own = runs.filter((run) => group.runs.some(({ id }) => id === run.id));
  const count = group.courses.length;
  const whole = cableSystem(group);
  const target = own.flatMap((run) => group.courses.map(() => run.tension.target));
  const movement = movementRows(group, job);
  const found = own.map((run, index) => chooseOrder(group, { run, index, movement, prescribed: job.tightening.order?.value ?? null }));
  const order = found.flatMap(({ chosen }, index) => chosen.order.map((cable) => index * count + cable));
  const tightening = { order, target };
  const programme = programmeOf(whole, tightening, movement, job);
  const errors = readingErrors(whole, tightening).all;
  const custom = own.flatMap((_, index) => centreOutwards(count).map((cable) => index * count + cable));
  const plain = { order: custom, target };
  const plainSteps = tightenInPasses(whole, plain, [PLAIN]);
  const plainResults = plainPassesUntil(whole, plain, { within: 0.05, passes_min: 1 });
  return own.map((run, index): RunTightening => {
    const from = index * count;
    const ownTensions = (tensions: readonly Newton[]): readonly Newton[] => tensions.slice(from, from + count);
    const inRun = ({ cable }: SimulatedStep): boolean => cable >= from && cable < from + count;
    const steps = programme.steps.filter(inRun);
    const { search, chosen, orderName } = found[index] as Found;
    const after = ownTensions(plainResults[0]?.tensions ?? []);
    const read = spanReader(run, job);
    const writer = stepWriter(run, { job, errors, ownTensions, from, read });
    const written = steps.map((step, place) => writer(step, { place, share: shareOf(programme.passes[step.pass - 1] ?? PLAIN).share }));
    const days = daysOf(steps, run, climate.find(({ runId }) => runId === run.id)?.days ?? [], {
      most: workingLimitOf(job),
      readingStep: job.tightening.readingStep.value,
      pitchAt: (reading) => read(reading).pitch_Hz,
    });
    return {
      runId: run.id,
      together: own.map(({ id }) => id),
      order: chosen.order.map((cable) => cable + 1),
      orderName,
      passes: programme.passes.map((kind, pass) => ({ number: pass + 1, ...shareOf(kind) })),
      steps: written,
      days,
      most_onAnyDay: mostOnAnyDay(written, days, workingLimitOf(job)),
      highest_overTarget: Math.max(...steps.map(({ reading }) => reading / run.tension.target)),
      movement_overLimit: Math.max(...programme.steps.map(({ tensions }) => movementOverLimit(movement, tensions))),
      recommended: figuresOf(chosen),
      customary: figuresOf(search.named.centreOutwards),
      bound: search.bound,
      exact: search.exact,
      ordersTried: search.ordersTried,
      plain: {
        steps: plainSteps.filter(inRun).map(({ cable, tensions }) => ({ course: cable - from + 1, tensions: ownTensions(tensions) })),
        tensions: after,
        slackCourses: after.flatMap((tension, course) => (tension === 0 ? [course + 1] : [])),
        passes_10: passesToWithin(plainResults, 0.1),
        passes_5: passesToWithin(plainResults, 0.05),
      },
      refusal: programme.refusal === null ? null : { ...programme.refusal, course: (programme.refusal.course % count) + 1 },
    };
  });
}

interface Found {
  readonly search: ReturnType<typeof searchOrder>;
  readonly chosen: Figures;
  readonly orderName: RunTightening["orderName"];
}

type Figures = ReturnType<typeof searchOrder>["best"];

const figuresOf = (figures: Figures): OrderFigures => ({
  order: figures.order.map((cable) => cable + 1),
  highest_overTarget: figures.highest_overTarget,
  leastAfterPlain_overTarget: figures.leastAfterPlain_overTarget,
});

interface OrderContext {
  readonly run: Run;
  readonly index: number;
  readonly movement: readonly MovementRow[];
  /** By the job file; null: it is searched. */
  readonly prescribed: PlainOrder | null;
}

/** The order of one run by itself; the other runs of the group stand as they are. */
function chooseOrder(group: FrameGroup, { run, index, movement, prescribed }: OrderContext): Found {
  const count = group.courses.length;
  const part = <T>(list: readonly T[]): readonly T[] => list.slice(index * count, (index + 1) * count);
  const system = cableSystem({ flexibility: part(group.flexibility).map(part), cableFlexibility: part(group.cableFlexibility) });
  const search = searchOrder({
    system,
    target: group.courses.map(() => run.tension.target),
    movement: movement.map(({ perPull, limit }) => ({ perPull: part(perPull), limit })),
  });
  const [own] = Object.entries(orderNames).flatMap(([name, words]) => (words === prescribed ? [name as OrderName] : []));
  if (own !== undefined) return { search, chosen: search.named[own], orderName: orderNames[own] };
  const named = search.named[search.bestNamed];
  const plainEnough = named.highest_overTarget <= search.best.highest_overTarget + NAMED_worth;
  const keepsStill = named.movement_overLimit <= Math.max(1, search.best.movement_overLimit);
  if (plainEnough && keepsStill) return { search, chosen: named, orderName: orderNames[search.bestNamed] };
  return { search, chosen: search.best, orderName: "as numbered" };
}

interface Passes {
  readonly passes: readonly PassKind[];
  readonly steps: readonly SimulatedStep[];
  readonly refusal: RunTightening["refusal"];
}

/** The passes that the job asks for, the last one compensated; else the fewest that keep the limits. */
function programmeOf(
  system: CableSystem,
  tightening: { readonly order: readonly number[]; readonly target: readonly Newton[] },
  movement: readonly MovementRow[],
  job: Job,
): Passes {
  const { passes, passes_max } = job.tightening;
  const working = tightening.target.map(() => workingLimitOf(job));
  if (passes !== null) {
    const kinds = passes.value.map(
      (share, index, all): PassKind => (index === all.length - 1 ? { kind: "compensated" } : { kind: "plain", share }),
    );
    return { passes: kinds, steps: tightenInPasses(system, tightening, kinds), refusal: null };
  }
  const programme = chooseProgramme(system, tightening, { working, movement, passes_max: passes_max.value });
  const trial = programme.fits ? programme.chosen : programme.nearest;
  return { passes: trial.passes, steps: trial.steps, refusal: programme.fits ? null : refusalOf(programme) };
}

function refusalOf(programme: Extract<Programme, { readonly fits: false }>): RunTightening["refusal"] {
  const { nearest, broken, alternatives } = programme;
  const peak = nearest[broken];
  return {
    broken,
    overLimit: peak.overLimit,
    course: peak.cable,
    pass: peak.pass,
    morePasses: alternatives.morePasses?.passes.length ?? null,
    targetShare: alternatives.targetShare,
  };
}

const shareOf = (pass: PassKind): { readonly kind: PassKind["kind"]; readonly share: number } =>
  pass.kind === "plain" ? pass : { kind: "compensated", share: 1 };

interface Writing {
  readonly job: Job;
  /** Error of the end per error of every reading. */
  readonly errors: number;
  readonly ownTensions: (tensions: readonly Newton[]) => readonly Newton[];
  /** Number of the run's first cable in its group. */
  readonly from: number;
  readonly read: (reading: Newton) => SpanRead;
}

type StepWriter = (step: SimulatedStep, of: { readonly place: number; readonly share: number }) => TighteningStep;

interface SpanRead {
  readonly pitch_Hz: number;
  readonly sag: Mm;
}

/** What is heard and seen on the span that is read, by the reading at the nut; equal readings are computed once. */
function spanReader(run: Run, job: Job): (reading: Newton) => SpanRead {
  const known = new Map<Newton, SpanRead>();
  const span = run.spans.find(({ bayId }) => bayId === run.proof.bayId) ?? run.spans[0];
  if (span === undefined) throw new RangeError(`run ${run.id} has no span`);
  const { cable, tightening } = job;
  const stiffness = cable.stiffness.value.nominal;
  const modulus = stiffness / metallicArea({ construction: cable.construction, diameter: cable.diameter });
  return (reading) => {
    const before = known.get(reading);
    if (before !== undefined) return before;
    const tension = (reading * span.tension) / run.tension.target;
    const strung = { span: span.free, tension };
    const { nominal } = pitchBand({
      ...strung,
      mass_kgPerM: cable.mass_kgPerM.value,
      construction: cable.construction,
      diameter: cable.diameter,
      modulus,
    });
    const { deflection } = deflectionUnder({
      ...strung,
      stiffness,
      runLength: run.pathLength,
      support: "sliding",
      force: tightening.sagWeight.value,
    });
    const made = { pitch_Hz: nominal, sag: deflection };
    known.set(reading, made);
    return made;
  };
}

/** Writes the steps of a run as a crew reads them. */
function stepWriter(run: Run, { job, errors, ownTensions, from, read }: Writing): StepWriter {
  const ends = run.takeUp.ends.length;
  const firstTravel = run.takeUp.bedding + run.takeUp.seating - run.takeUp.slackToPull;
  const band = job.tightening.band.value;
  return ({ pass, kind, cable: number, reading, takeUp, tensions }, { place }) => {
    const course = number - from + 1;
    const rounded = Math.max(job.tightening.readingStep.value, readingOf(reading, job));
    const allowed = kind === "compensated" ? band / Math.max(1, errors) : band;
    return {
      number: place + 1,
      pass,
      kind,
      mark: cableMark(run.id, course),
      course,
      reading: rounded,
      reading_exact: reading,
      reading_low: rounded * (1 - allowed),
      reading_high: Math.min(rounded * (1 + allowed), workingLimitOf(job)),
      turnsPerEnd: nutTurns({ travel: Math.max(0, takeUp + firstTravel) / ends, pitch: job.fittings.stud.pitch.value }),
      ...read(rounded),
      tensions: ownTensions(tensions),
    };
  };
}
