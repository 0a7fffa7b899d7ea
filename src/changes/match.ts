// Which posts, spacers and runs of the issued plan are which of the new one? By where they stand; marks follow from that.
import type { Plan, Run, Vertical } from "../plan/plan.ts";
import type { Mm } from "../units/quantity.ts";
import { align, type Pair } from "./align.ts";

export interface Match {
  readonly before: Plan;
  readonly after: Plan;
  readonly verticals: readonly Pair<Vertical>[];
  readonly runs: readonly Pair<Run>[];
  /** New marks of posts, spacers, piers and runs by those of the issued plan. */
  readonly names: ReadonlyMap<string, string>;
  /** Of the tape. */
  readonly step: Mm;
  /** Places that are nearer than half a step are marked at the same place. */
  readonly same: Mm;
}

export function matchPlans(before: Plan, after: Plan): Match {
  const step = after.job.limits.tapeStep.value;
  const same = step / 2;
  const verticals = matchVerticals(before, after, same);
  const posts = namesOf(verticals);
  const runs = matchRuns(before, after, posts);
  return { before, after, verticals, runs, names: new Map([...posts, ...namesOf(runs)]), step, same };
}

const kinds = ["post", "spacer", "pier"] as const;

/** A side is known by its letter, whatever its length. */
function matchVerticals(before: Plan, after: Plan, same: Mm): readonly Pair<Vertical>[] {
  const sideIds = new Set([...before.sides, ...after.sides].map(({ id }) => id));
  return [...sideIds].flatMap((id) =>
    kinds.flatMap((kind) => {
      const row = ({ verticals }: Plan): readonly Vertical[] =>
        verticals.filter((one) => one.sideId === id && one.kind === kind).toSorted((a, b) => a.station - b.station);
      return align(row(before), row(after), { placeOf: ({ station }) => station, same });
    }),
  );
}

function namesOf(pairs: readonly Pair<{ readonly id: string }>[]): ReadonlyMap<string, string> {
  return new Map(pairs.flatMap(({ before, after }) => (before === null || after === null ? [] : [[before.id, after.id] as const])));
}

/** A run between the same two posts is the same; of the others, those of one mark are. */
function matchRuns(before: Plan, after: Plan, names: ReadonlyMap<string, string>): readonly Pair<Run>[] {
  const isBetween = (old: Run, now: Run): boolean =>
    names.get(old.left.postId) === now.left.postId && names.get(old.right.postId) === now.right.postId;
  const known = new Map<Run, Run>();
  const free = (run: Run): boolean => !known.has(run) && ![...known.values()].includes(run);
  for (const fits of [isBetween, (old: Run, now: Run): boolean => old.id === now.id]) {
    for (const old of before.runs.filter(free)) {
      const now = after.runs.find((one) => free(one) && fits(old, one));
      if (now !== undefined) known.set(old, now);
    }
  }
  return [
    ...before.runs.map((run) => ({ before: run, after: known.get(run) ?? null })),
    ...after.runs.filter(free).map((run) => ({ before: null, after: run })),
  ];
}
