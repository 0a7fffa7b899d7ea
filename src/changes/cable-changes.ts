// What has changed in the cables: the strand itself, lengths, ends, and how each run is tightened?
import type { Plan, Run, RunEnd } from "../plan/plan.ts";
import type { RunTightening } from "../plan/readings.ts";
import { forceAsPrinted, hertz } from "../units/print.ts";
import type { Pair } from "./align.ts";
import type { Difference, Draft } from "./changes.ts";
import { numberDiffers, wordDiffers } from "./differences.ts";
import type { Match } from "./match.ts";

export const cableChanges = (match: Match): readonly Draft[] => [
  ...strandChange(match),
  ...match.runs.flatMap((pair) => [
    ...nameChange(pair),
    ...lengthChange(pair, match),
    ...endChange(pair, match),
    ...pullChange(pair, match),
    ...readingChange(pair, match),
  ]),
];

/** Another strand is another cable everywhere. */
function strandChange({ before, after }: Match): readonly Draft[] {
  const [old, now] = [before.job.cable, after.job.cable];
  const differences = [
    ...wordDiffers("construction", [old.construction, now.construction]),
    ...numberDiffers("diameter", [old.diameter, now.diameter], { kind: "diameter" }),
    ...wordDiffers("stainless grade", [old.grade, now.grade]),
  ];
  const marks = after.runs.map(({ id }) => id);
  return differences.length === 0 ? [] : [{ todo: "buy", subject: "strand", what: "changed", marks, differences }];
}

const nameChange = ({ before, after }: Pair<Run>): readonly Draft[] =>
  before === null || after === null || before.id === after.id
    ? []
    : [{ todo: "mark", subject: "cable", what: "renamed", marks: [after.id], differences: wordDiffers("mark", [before.id, after.id]) }];

function lengthChange({ before: old, after: now }: Pair<Run>, { before, after, same }: Match): readonly Draft[] {
  const run = now ?? old;
  if (run === null) return [];
  const differences = [
    ...numberDiffers("number of cables", [old && cablesOf(before, old), now && cablesOf(after, now)], { kind: "count" }),
    ...numberDiffers("length to order", [old?.orderLength, now?.orderLength], { kind: "order" }),
    ...numberDiffers("outside to outside", [old?.outsideLength, now?.outsideLength], { kind: "station", same }),
  ];
  if (differences.length === 0) return [];
  return [
    { todo: "cut", subject: "cable", what: old === null ? "added" : now === null ? "removed" : "changed", marks: [run.id], differences },
  ];
}

const cablesOf = ({ cables }: Plan, { id }: Run): number => cables.filter(({ runId }) => runId === id).length;

function endChange({ before: old, after: now }: Pair<Run>, { names }: Match): readonly Draft[] {
  if (old === null || now === null) return [];
  const differences = (["left", "right"] as const).flatMap((at) => endDiffers(at, [old[at], now[at]], names));
  return differences.length === 0 ? [] : [{ todo: "cut", subject: "end", what: "changed", marks: [now.id], differences }];
}

/** A post that has another mark and stands where it stood is the same post. */
function endDiffers(at: string, [old, now]: readonly [RunEnd, RunEnd], names: Match["names"]): readonly Difference[] {
  return [
    ...(names.get(old.postId) === now.postId ? [] : wordDiffers(`${at} end on`, [old.postId, now.postId])),
    ...wordDiffers(`${at} end`, [old.kind, now.kind]),
    ...wordDiffers(`${at} end is tightened`, [old.pulls ? "yes" : "no", now.pulls ? "yes" : "no"]),
  ];
}

/** Forces differ when they are printed otherwise. */
function pullChange({ before: old, after: now }: Pair<Run>, { before, after }: Match): readonly Draft[] {
  if (old === null || now === null) return [];
  const { units } = after.job;
  const band = (key: "target" | "low" | "high", of: string, rounding: "nearest" | "up" | "down"): readonly Difference[] => {
    const [from, to] = [old, now].map(({ tension }) => forceAsPrinted(tension[key], units, rounding));
    return numberDiffers(of, [from, to], { kind: "force" });
  };
  const logs = [logOf(before, old), logOf(after, now)] as const;
  const differences = [
    ...band("target", "target at the nut", "nearest"),
    ...band("low", "last reading, at least", "up"),
    ...band("high", "last reading, at most", "down"),
    ...logDiffers(logs[0], logs[1]),
  ];
  return differences.length === 0 ? [] : [{ todo: "tighten", subject: "tension", what: "changed", marks: [now.id], differences }];
}

const logOf = ({ tightening }: Plan, { id }: Run): RunTightening | undefined => tightening.find(({ runId }) => runId === id);

function logDiffers(old: RunTightening | undefined, now: RunTightening | undefined): readonly Difference[] {
  if (old === undefined || now === undefined) return [];
  const order = wordDiffers("order of the courses", [old.order.join(", "), now.order.join(", ")]);
  const passes = numberDiffers("passes", [old.passes.length, now.passes.length], { kind: "count" });
  const readings = now.steps.filter(({ reading }, index) => old.steps[index]?.reading !== reading).length;
  if (order.length > 0 || passes.length > 0 || readings === 0) return [...order, ...passes];
  return [{ of: "readings of the log that differ", from: null, to: { value: readings, kind: "count" } }];
}

/** What is read beside the gauge: pitch and sag of the bays, turns of the nuts, and where the run is proved. */
function readingChange({ before: old, after: now }: Pair<Run>, { names }: Match): readonly Draft[] {
  if (old === null || now === null) return [];
  const pitches = new Map(old.spans.map(({ bayId, pitch_Hz }) => [bayId, hertz(pitch_Hz.nominal)]));
  const bays = now.spans.filter(({ bayId, pitch_Hz }) => pitches.get(bayId) !== hertz(pitch_Hz.nominal)).map(({ bayId }) => bayId);
  const turns = now.takeUp.ends.flatMap(({ postId, turns }) => {
    const before = old.takeUp.ends.find((end) => names.get(end.postId) === postId)?.turns;
    return numberDiffers(`turns of the nut at ${postId}`, [before, turns], { kind: "turns", same: TURNS_same });
  });
  const differences = [
    ...wordDiffers("pitch and sag in bays", [null, bays.length === 0 ? null : bays.join(", ")]),
    ...turns,
    ...wordDiffers("proved in bay", [old.proof.bayId, now.proof.bayId]),
  ];
  return differences.length === 0 ? [] : [{ todo: "tighten", subject: "reading", what: "changed", marks: [now.id], differences }];
}

/** Turns are counted by hand: a quarter is seen. */
const TURNS_same = 0.25;
