// How many passes does a tightening need so that no reading and no movement of the frame goes beyond its limit?
import type { Newton } from "../units/quantity.ts";
import { type MovementRow, movementOverLimit } from "./order-search-figures.ts";
import { COMPENSATED, type PassKind, PLAIN, type Tightening, type TighteningStep, tightenInPasses } from "./sequence.ts";
import type { CableSystem } from "./sequence-solve.ts";

export interface ProgrammeLimits {
  /** Highest reading allowed on each cable, from the lowest. */
  readonly working: readonly Newton[];
  readonly movement: readonly MovementRow[];
  /** Passes that a crew can be asked for. */
  readonly passes_max: number;
}

/** Where a programme comes nearest to a limit. */
export interface Peak {
  readonly overLimit: number;
  readonly pass: number;
  /** Place in the pass, from 1. */
  readonly step: number;
  /** The cable pulled then, from 0. */
  readonly cable: number;
}

export interface ProgrammeTrial {
  readonly passes: readonly PassKind[];
  readonly steps: readonly TighteningStep[];
  readonly highest_overTarget: number;
  readonly reading: Peak;
  readonly movement: Peak;
  readonly fits: boolean;
  /** Share of the target, not above 1, with which this programme keeps all limits: tensions are proportional to the target. */
  readonly fittingShare: number;
}

export type Programme =
  | { readonly fits: true; readonly chosen: ProgrammeTrial; readonly tried: readonly ProgrammeTrial[] }
  | {
      readonly fits: false;
      /** The programme that comes nearest. */
      readonly nearest: ProgrammeTrial;
      readonly broken: "reading" | "movement";
      readonly tried: readonly ProgrammeTrial[];
      readonly alternatives: {
        /** Fewest passes beyond the most allowed that fit, null when six more do not. */
        readonly morePasses: ProgrammeTrial | null;
        /** Share of the target that the nearest programme can reach. */
        readonly targetShare: number;
      };
    };

/** A limit is kept when it is met but for rounding. */
const DUST = 1e-9;
/** How many passes beyond the most allowed are computed as an alternative. */
const FURTHER_passes = 6;

/**
 * Fewest passes that keep every limit at every step. With one pass: compensated. With more: plain passes, then a compensated one; the
 * plain ones all to the full target, or in even stages (1/p, 2/p ... of it); of two that fit, the one with the lower highest reading.
 *
 * @param system - cables on their frame, from cableSystem [mm/N]
 * @param tightening - order of the cables, from 0 [index], target of each [N]
 * @param limits - highest reading of each cable [N], limited movements [mm/N, mm], most passes [count]
 * @returns the programme with its steps [N, mm] and shares of the limits [ratio], or a refusal with what comes nearest, more passes
 *   that would do [count], and the share of the target that would [ratio]
 * @throws RangeError when the order does not name every cable once, a target or a limit is not positive, or no pass is allowed
 * Valid: linear frame, no friction along the cable, no error of the gauge
 * Source: derived, complementarity of tension and slack; the choice of programmes is common practice, no source
 */
export function chooseProgramme(system: CableSystem, tightening: Tightening, limits: ProgrammeLimits): Programme {
  refuse(tightening, limits);
  const tried: ProgrammeTrial[] = [];
  const fitting = (passes: number): ProgrammeTrial | undefined => {
    const trials = stagings(passes).map((staging) => trial(system, tightening, { limits, passes: staging }));
    tried.push(...trials);
    return trials.filter(({ fits }) => fits).toSorted((a, b) => a.highest_overTarget - b.highest_overTarget)[0];
  };
  for (let passes = 1; passes <= limits.passes_max; passes++) {
    const chosen = fitting(passes);
    if (chosen !== undefined) return { fits: true, chosen, tried };
  }
  const nearest = tried.reduce((one, other) => (other.fittingShare > one.fittingShare + DUST ? other : one));
  const within = [...tried];
  let morePasses: ProgrammeTrial | undefined;
  // A target above its limit, or a movement of the finished frame above its own, is not helped by passes.
  const { target } = tightening;
  const atEnd = Math.max(
    movementOverLimit(limits.movement, target),
    ...target.map((aim, cable) => aim / (limits.working[cable] as number)),
  );
  for (let passes = 1; atEnd <= 1 + DUST && morePasses === undefined && passes <= FURTHER_passes; passes++) {
    morePasses = fitting(limits.passes_max + passes);
  }
  return {
    fits: false,
    nearest,
    broken: nearest.reading.overLimit >= nearest.movement.overLimit ? "reading" : "movement",
    tried: within,
    alternatives: { morePasses: morePasses ?? null, targetShare: nearest.fittingShare },
  };
}

/** Ways to divide a number of passes: the last is compensated. */
function stagings(passes: number): readonly (readonly PassKind[])[] {
  const before = passes - 1;
  const full = [...Array.from({ length: before }, () => PLAIN), COMPENSATED];
  const staged = [...Array.from({ length: before }, (_, index): PassKind => ({ kind: "plain", share: (index + 1) / passes })), COMPENSATED];
  return before === 0 ? [full] : [full, staged];
}

function trial(
  system: CableSystem,
  tightening: Tightening,
  { limits, passes }: { readonly limits: ProgrammeLimits; readonly passes: readonly PassKind[] },
): ProgrammeTrial {
  const steps = tightenInPasses(system, tightening, passes);
  const count = tightening.order.length;
  let highest = 0;
  let [reading, movement]: [Peak, Peak] = [NO_PEAK, NO_PEAK];
  for (const [index, { pass, cable, reading: read, tensions }] of steps.entries()) {
    const place = { pass, step: (index % count) + 1, cable };
    highest = Math.max(highest, read / (tightening.target[cable] as number));
    const overWorking = read / (limits.working[cable] as number);
    if (overWorking > reading.overLimit) reading = { overLimit: overWorking, ...place };
    const moved = movementOverLimit(limits.movement, tensions);
    if (moved > movement.overLimit) movement = { overLimit: moved, ...place };
  }
  const most = Math.max(reading.overLimit, movement.overLimit);
  return {
    passes,
    steps,
    highest_overTarget: highest,
    reading,
    movement,
    fits: most <= 1 + DUST,
    fittingShare: Math.min(1, 1 / most),
  };
}

const NO_PEAK: Peak = { overLimit: 0, pass: 1, step: 1, cable: 0 };

function refuse({ target }: Tightening, { working, movement, passes_max }: ProgrammeLimits): void {
  if (working.length !== target.length || movement.some(({ perPull }) => perPull.length !== target.length)) {
    throw new RangeError(`limits and movements are for each of ${target.length} cables`);
  }
  if (![...working, ...movement.map(({ limit }) => limit)].every((limit) => limit > 0)) throw new RangeError("a limit must be positive");
  if (!(passes_max >= 1)) throw new RangeError(`${passes_max} passes tighten nothing`);
}
