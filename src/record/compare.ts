// What differs between the plan and what was built, and who accepted it? AsBuilt and Plan -> Comparison.

import { betweenCables } from "../plan/bay-openings.ts";
import { heightOn } from "../plan/bores.ts";
import type { Bore, Face, Gap, Plan, Run } from "../plan/plan.ts";
import { levelGaps } from "../plan/set-off.ts";
import { hasErrors, type JobPath, type Outcome, type Problem } from "../problem/problem.ts";
import { forceAsPrinted, length } from "../units/print.ts";
import { reading } from "../units/print-measured.ts";
import type { Mm } from "../units/quantity.ts";
import { DUST_share, SAME_mm } from "../units/tolerance.ts";
import type { AsBuilt, BuiltBore, BuiltCable } from "./as-built.ts";
import { bandsOfDay } from "./band-of-day.ts";
import { checkMarks } from "./marks.ts";
import type { BoreDifference, Comparison, Difference, GapDifference, ReadingDifference } from "./record.ts";

/**
 * Compares a record with the plan of its job. A difference that nobody accepted is a warning: it is printed all the same.
 *
 * @returns the comparison, unless a mark of the record is none of the plan's
 * @throws never
 */
export function compareRecord(asBuilt: AsBuilt, plan: Plan): Outcome<Comparison> {
  const marks = checkMarks(asBuilt, plan);
  if (hasErrors(marks)) return { value: undefined, problems: marks };
  const found = [...boreDifferences(asBuilt, plan), ...gapDifferences(asBuilt, plan), ...readingDifferences(asBuilt, plan)];
  const open = found.flatMap(({ difference, path }) => (isTold(difference) ? [notAccepted(difference, path, plan)] : []));
  const cables = plan.runs.flatMap((run) => plan.cables.filter(({ runId }) => runId === run.id).map(() => run.takeUp.ends.length));
  return {
    value: {
      asBuilt,
      differences: found.map(({ difference }) => difference),
      counts: {
        bores: { written: asBuilt.bores.length, planned: plan.bores.length },
        lastReadings: {
          written: asBuilt.cables.reduce((sum, { ends }) => sum + ends.length, 0),
          planned: cables.reduce((sum, ends) => sum + ends, 0),
        },
        proofs: { written: asBuilt.cables.filter(({ proof }) => proof !== null).length, planned: plan.cables.length },
      },
    },
    problems: [...marks, ...open],
  };
}

/** An opening that lets the sphere through stays one, whoever accepted it. */
const isTold = (difference: Difference): boolean => difference.deviation === null || (difference.kind === "gap" && difference.isOpen);

interface Placed<D extends Difference = Difference> {
  readonly difference: D;
  /** In the record file. */
  readonly path: JobPath;
}

/** Where somebody accepted what has one of these marks. */
function acceptedAt({ deviations }: AsBuilt, ...marks: readonly string[]): number | null {
  const at = deviations.findIndex(({ mark }) => marks.includes(mark));
  return at === -1 ? null : at;
}

/** A tape is read to its step: what is off by no more may be the reading. */
const isOff = (difference: Mm, { job }: Plan): boolean => difference > job.limits.tapeStep.value + SAME_mm;

const faces = ["left", "right"] as const;

function boreDifferences(asBuilt: AsBuilt, plan: Plan): readonly Placed<BoreDifference>[] {
  const planned = new Map(plan.bores.map((bore) => [bore.mark, bore]));
  return asBuilt.bores.flatMap((built, index) => {
    const bore = planned.get(built.mark);
    if (bore === undefined) return [];
    const heights =
      built.height === null
        ? faces.map((face) => ({ face, key: face, planned: heightOn(bore, face), built: built[face] ?? 0 }))
        : [{ face: null, key: "height", planned: bore.height, built: built.height }];
    return heights
      .filter((one) => isOff(Math.abs(one.built - one.planned), plan))
      .map(({ key, ...one }) => ({
        difference: { kind: "bore", mark: built.mark, deviation: acceptedAt(asBuilt, built.mark, bore.verticalId), ...one },
        path: ["bores", index, key],
      }));
  });
}

/** How much higher a bore comes out on a face than planned. */
const raisedBy = (bore: Bore, built: BuiltBore, face: Face): Mm =>
  built.height === null ? (built[face] ?? 0) - heightOn(bore, face) : built.height - bore.height;

/** Gaps beside every recorded bore, as the bores above and below it lie; a bore that is not in the record lies as planned. */
function gapDifferences(asBuilt: AsBuilt, plan: Plan): readonly Placed<GapDifference>[] {
  const built = new Map(asBuilt.bores.map((bore, index) => [bore.mark, { bore, index }]));
  const columns = new Map<string, Bore[]>();
  for (const bore of plan.bores) {
    const key = `${bore.verticalId} ${bore.runId}`;
    columns.set(key, [...(columns.get(key) ?? []), bore]);
  }
  return [...columns.values()].flatMap((bores) =>
    bores.some(({ mark }) => built.has(mark)) ? gapsIn(bores, { built, asBuilt, plan }) : [],
  );
}

interface Column {
  readonly built: ReadonlyMap<string, { readonly bore: BuiltBore; readonly index: number }>;
  readonly asBuilt: AsBuilt;
  readonly plan: Plan;
}

/** By how much a recorded bore lies higher than planned on each face. */
interface BuiltAt extends Readonly<Record<Face, Mm>> {
  readonly mark: string;
  readonly index: number;
}

const widestClear = (gaps: readonly Gap[]): Mm => Math.max(...gaps.map(({ clear }) => clear));

function gapsIn(bores: readonly Bore[], { built, asBuilt, plan }: Column): readonly Placed<GapDifference>[] {
  const [first] = bores;
  const vertical = plan.verticals.find(({ id }) => id === first?.verticalId);
  const run = plan.runs.find(({ id }) => id === first?.runId);
  if (vertical === undefined || run === undefined) return [];
  const rake = plan.rakes.find(({ sideId }) => sideId === vertical.sideId);
  const gaps = rake?.gaps ?? levelGaps(plan, run);
  const sphere = rake?.openingSphere.value ?? plan.job.code.openingSphere.value;
  const inner = betweenCables(gaps);
  const at = (course: number): BuiltAt | null => {
    const bore = bores.find((one) => one.course === course);
    const own = bore === undefined ? undefined : built.get(bore.mark);
    if (bore === undefined || own === undefined) return null;
    const [left, right] = faces.map((face) => raisedBy(bore, own.bore, face));
    return { mark: bore.mark, left: left ?? 0, right: right ?? 0, index: own.index };
  };
  return gaps.flatMap((gap: Gap, below): readonly Placed<GapDifference>[] => {
    const widest = widestClear(inner.includes(gap) ? inner : gaps);
    const [lower, upper] = [at(below), at(below + 1)];
    // A bore that was begun too high and comes out too low opens a gap on one face only.
    const wider = Math.max(...faces.map((face) => (upper?.[face] ?? 0) - (lower?.[face] ?? 0)));
    const clear = gap.clear + wider * Math.cos(vertical.slope);
    const index = upper?.index ?? lower?.index;
    if (index === undefined || !isOff(clear - widest, plan)) return [];
    const marks = [vertical.id, ...[lower, upper].flatMap((bore) => (bore === null ? [] : [bore.mark]))];
    return [
      {
        difference: {
          kind: "gap",
          mark: vertical.id,
          deviation: acceptedAt(asBuilt, ...marks),
          below: gap.below,
          above: gap.above,
          planned: widest,
          built: clear,
          isOpen: clear >= sphere - SAME_mm,
        },
        path: ["bores", index],
      },
    ];
  });
}

const readingDifferences = (asBuilt: AsBuilt, plan: Plan): readonly Placed<ReadingDifference>[] =>
  asBuilt.cables.flatMap((cable, index) => {
    const run = plan.runs.find(({ id }) => id === plan.cables.find(({ mark }) => mark === cable.mark)?.runId);
    if (run === undefined) return [];
    const deviation = acceptedAt(asBuilt, cable.mark, run.id);
    return readingsOf(cable, { run, bands: bandsOfDay(run, plan, asBuilt.temperature), plan }).flatMap(({ path, ...read }) =>
      read.built >= read.low * (1 - DUST_share) && read.built <= read.high * (1 + DUST_share)
        ? []
        : [{ difference: { mark: cable.mark, deviation, ...read }, path: ["cables", index, ...path] }],
    );
  });

type Reading = Pick<ReadingDifference, "kind" | "where" | "low" | "high" | "built"> & { readonly path: JobPath };

interface ReadingContext {
  readonly run: Run;
  /** Of the day of the readings. */
  readonly bands: ReturnType<typeof bandsOfDay>;
  readonly plan: Plan;
}

/** What a gauge showed, beside what the sheets let it show: the crew has only the printed numbers. */
function readingsOf({ ends, proof }: BuiltCable, { run, bands, plan }: ReadingContext): readonly Reading[] {
  const { units } = plan.job;
  const band = ({ low, high }: Pick<Reading, "low" | "high">): Pick<Reading, "low" | "high"> => ({
    low: forceAsPrinted(low, units, "up"),
    high: forceAsPrinted(high, units, "down"),
  });
  return [
    ...ends.map(
      ({ postId, last }, at): Reading => ({
        kind: "last reading",
        where: postId,
        ...band(bands.atNut),
        built: last,
        path: ["ends", at, "last"],
      }),
    ),
    ...(proof === null ? [] : [{ kind: "proof", where: run.proof.bayId, ...band(bands.inBay), built: proof, path: ["proof"] } as const]),
  ];
}

/** What is printed on the record as a difference without a name behind it. */
function notAccepted(difference: Difference, path: JobPath, { job: { units } }: Plan): Problem {
  const { mark } = difference;
  const add = `add it to the deviations with the mark ${mark} and who accepted it`;
  const tape = (value: Mm): string => length(value, { units, step: 1 / 64, decimals: 1 });
  if (difference.kind === "bore") {
    const { planned, built, face } = difference;
    const what = `the bore ${mark} was made at ${tape(built)}${face === null ? "" : ` on the ${face} face`}, planned at ${tape(planned)}, and nobody accepted it`;
    return { severity: "warning", path, what, fix: add };
  }
  if (difference.kind === "gap") {
    const { below, above, planned, built, isOpen } = difference;
    const what = `at ${mark} the gap between ${below} and ${above} is ${tape(built)} clear, planned at most ${tape(planned)}${isOpen ? ": the sphere goes through" : ""}`;
    const fix = isOpen
      ? `close it, for example with a spacer beside ${mark} or a cable more, before anybody leans there`
      : `repeat the opening test in the bays beside ${mark}, and ${add}`;
    return { severity: "warning", path, what, fix };
  }
  const { kind, where, low, high, built } = difference;
  const show = (value: number): string => `${reading(value, units)} ${units === "inch" ? "lbf" : "N"}`;
  const what = `the ${kind === "proof" ? "proof reading" : kind} of ${mark} ${kind === "proof" ? "in bay" : "at"} ${where}, ${show(built)}, is outside of ${show(low)} to ${show(high)}, and nobody accepted it`;
  return { severity: "warning", path, what, fix: `adjust the cable and write its new reading, or ${add}` };
}
