// How does an explanation get at the numbers of a plan, and at those on the way to them that the plan does not keep?

import { type PassKind, PLAIN, type Tightening, type TighteningStep, tightenInPasses } from "../mechanics/sequence.ts";
import { centreOutwards } from "../mechanics/sequence-order.ts";
import { type CableSystem, cableSystem } from "../mechanics/sequence-solve.ts";
import { openingsOf } from "../plan/bay-openings.ts";
import { type FrameGroup, frameGuard } from "../plan/frames.ts";
import { layRun } from "../plan/lay-run.ts";
import type { Plan, Run } from "../plan/plan.ts";
import type { RunTightening } from "../plan/readings.ts";
import type { RunGeometry } from "../plan/runs.ts";
import { type DemandedRun, demandRuns } from "../plan/tensions.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Value } from "./formula.ts";
import { kindAt } from "./kind.ts";
import { isCited, placeAt } from "./path.ts";
import type { Input, Kind, Origin } from "./trace.ts";

/** A tightening of the cables of a group, computed again. */
export interface Simulated {
  readonly system: CableSystem;
  readonly tightening: Tightening;
  readonly steps: readonly TighteningStep[];
}

export interface Reader {
  readonly plan: Plan;
  readonly run: (id: string) => Run;
  readonly tightening: (runId: string) => RunTightening;
  readonly geometry: (runId: string) => RunGeometry;
  readonly demanded: (runId: string) => DemandedRun;
  /** Cables that share a frame with those of a run, and the number of the run's first cable among them. */
  readonly group: (runId: string) => { readonly group: FrameGroup; readonly first: number };
  /** The passes of the plan, and one plain pass in the customary order. */
  readonly passes: (runId: string) => Simulated;
  readonly plainPass: (runId: string) => Simulated;
  /** The frames of the guard, made again. */
  readonly groups: () => readonly FrameGroup[];
  /** A number of the plan. */
  readonly number: (path: string) => number;
  readonly at: (symbol: string, what: string, path: string) => Input;
  readonly all: (symbol: string, what: string, paths: readonly string[]) => Input;
}

/** A number that the plan does not keep. */
export const given = (symbol: string, what: string, value: Value, kind: Kind, origin: Origin | null = null): Input => ({
  symbol,
  what,
  value,
  kind,
  paths: [],
  origin,
});

export const from = (source: SourceId, where: string): Origin => ({ source, where });
export const derived = (where: string): Origin => from("derived", where);

/** What is computed at most once, when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

export function must<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new RangeError(`the plan has no ${what}`);
  return value;
}

export function makeReader(plan: Plan): Reader {
  const run = (id: string): Run =>
    must(
      plan.runs.find((one) => one.id === id),
      `run ${id}`,
    );
  const geometries = once(() =>
    plan.runs.map(
      ({ id, left, right, sideIds, why }): RunGeometry => ({ id, left, right, sideIds, why, ...layRun({ left, right, layout: plan }) }),
    ),
  );
  const groups = once(() => frameGuard({ ...plan, runs: geometries() }, plan.job));
  const demands = once(() => demandRuns(geometries(), openingsOf(plan, plan.job), plan.job).value ?? []);
  const group = (runId: string): { readonly group: FrameGroup; readonly first: number } => {
    const found = must(
      groups().find(({ runs }) => runs.some(({ id }) => id === runId)),
      `frame of run ${runId}`,
    );
    return { group: found, first: found.runs.findIndex(({ id }) => id === runId) * found.courses.length };
  };
  const tightening = (runId: string): RunTightening =>
    must(
      plan.tightening.find((one) => one.runId === runId),
      `tightening of run ${runId}`,
    );
  const simulate = (runId: string, orderOf: (runId: string) => readonly number[], passes: readonly PassKind[]): Simulated => {
    const { group: own } = group(runId);
    const count = own.courses.length;
    const order = own.runs.flatMap(({ id }, index) => orderOf(id).map((cable) => index * count + cable));
    const target = own.runs.flatMap(({ id }) => own.courses.map(() => run(id).tension.target));
    const system = cableSystem(own);
    return { system, tightening: { order, target }, steps: tightenInPasses(system, { order, target }, passes) };
  };
  const number = (path: string): number => numberAt(plan, path).value;
  return {
    plan,
    run,
    tightening,
    geometry: (id) =>
      must(
        geometries().find((one) => one.id === id),
        `run ${id}`,
      ),
    demanded: (id) =>
      must(
        demands().find((one) => one.run.id === id),
        `demand of run ${id}`,
      ),
    group,
    groups,
    passes: memo((id) => simulate(id, (own) => tightening(own).order.map((course) => course - 1), tightening(id).passes.map(passOf))),
    plainPass: memo((id) => simulate(id, () => centreOutwards(plan.courses.length), [PLAIN])),
    number,
    at: (symbol, what, path) => ({ symbol, what, ...numberAt(plan, path) }),
    all: (symbol, what, paths) => {
      const found = paths.map((path) => numberAt(plan, path));
      return {
        symbol,
        what,
        value: found.map(({ value }) => value),
        kind: found[0]?.kind ?? "count",
        paths: found.flatMap((one) => one.paths),
        origin: null,
      };
    },
  };
}

const passOf = ({ kind, share }: RunTightening["passes"][number]): PassKind => (kind === "plain" ? { kind, share } : { kind });

function memo<T>(make: (key: string) => T): (key: string) => T {
  const made = new Map<string, T>();
  return (key) => {
    const before = made.get(key);
    if (before !== undefined) return before;
    const value = make(key);
    made.set(key, value);
    return value;
  };
}

/** A number of the plan with its unit; a value that stands there with its source brings it along. */
function numberAt(plan: Plan, path: string): Pick<Input, "kind" | "paths" | "origin"> & { readonly value: number } {
  const place = placeAt(plan, path);
  const cited = place !== undefined && isCited(place.value) ? place.value : null;
  const end = cited === null ? place : placeAt(plan, `${path}.value`);
  if (end === undefined || typeof end.value !== "number") throw new RangeError(`there is no number at ${path}`);
  const kind = kindAt(end);
  if (kind === null) throw new RangeError(`the number at ${path} has no unit`);
  const origin = cited === null ? null : from(cited.source as SourceId, cited.where);
  return { value: end.value, kind, paths: [path], origin };
}
