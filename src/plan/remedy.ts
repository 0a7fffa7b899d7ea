// Which change of the guard makes its frame hold at the least cost? Found by planning the guard again with each.
import type { Job } from "../job/job.ts";
import type { FrameCheck, Remedy } from "./frame-plan.ts";
import type { Plan } from "./plan.ts";
import { type Change, changesOf } from "./remedy-changes.ts";

/** Guards are planned again no more often than this. */
const MOST_plans = 40;

/** Two changes together are tried where each does what the other leaves, as far as their ratios multiply; this much is let pass. */
const PROMISING = 1.1;

/** `again` plans the guard with a changed job and must not look for a remedy itself. */
export function remedyOf(plan: Plan, job: Job, again: (job: Job) => Plan | undefined): Remedy | null {
  const before = ratiosOf(plan.frame.checks);
  const failed = [...before].filter(([, ratio]) => ratio > 1).map(([kind]) => kind);
  if (failed.length === 0) return null;
  const isFailing = (part: string): boolean => failed.some((kind) => kind.startsWith(part));
  const changes = changesOf(job, {
    posts: isFailing("post") || isFailing("base") || isFailing("movement") || isFailing("wall-posts"),
    topRail: isFailing("top-rail") || isFailing("wall-top-rail"),
    bottomRail: isFailing("bottom-rail") || isFailing("wall-bottom-rail"),
    spacers: isFailing("spacer") || isFailing("wall-spacers"),
  });
  let left = MOST_plans;
  const tried = (set: readonly Change[]): Plan | undefined => {
    left -= 1;
    return again(set.reduce((changed, { apply }) => apply(changed), job));
  };
  const singles: Tried[] = [];
  for (const change of changes) {
    const found = tried([change]);
    if (found === undefined) continue;
    if (holds(found, plan)) return remedyWith([change], found, failed);
    singles.push({ change, ratios: ratiosOf(found.frame.checks) });
  }
  for (const size of [2, 3, 4]) {
    for (const set of promising(singles, { size, before, failed })) {
      if (left <= 0) return null;
      const found = tried(set);
      if (found !== undefined && holds(found, plan)) return remedyWith(set, found, failed);
    }
  }
  return null;
}

/** A change by itself with the greatest ratio of each kind of check that it leaves. */
interface Tried {
  readonly change: Change;
  readonly ratios: ReadonlyMap<string, number>;
}

const SIDES_or_posts = /-[A-Z]+\d*$/;

/** A check's name without the member that happens to be the worst. */
const kindOf = ({ id }: Pick<FrameCheck, "id">): string => id.replace(SIDES_or_posts, "");

function ratiosOf(checks: readonly FrameCheck[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const check of checks) found.set(kindOf(check), Math.max(found.get(kindOf(check)) ?? 0, check.ratio));
  return found;
}

/** No check of the frame fails, none became a question, and no other check fails that held before. */
function holds(found: Plan, plan: Plan): boolean {
  if (found.frame.checks.some(({ verdict }) => verdict === "fail")) return false;
  const questions = (one: Plan): ReadonlySet<string> => new Set(one.frame.checks.filter(({ verdict }) => verdict === "ask").map(kindOf));
  const asked = questions(plan);
  if ([...questions(found)].some((kind) => !asked.has(kind))) return false;
  const failing = new Set(plan.checks.filter(({ verdict }) => verdict === "fail").map(({ id }) => id));
  return found.checks.every(({ id, verdict }) => verdict !== "fail" || failing.has(id));
}

function remedyWith(changes: readonly Change[], found: Plan, failed: readonly string[]): Remedy {
  const ratios = ratiosOf(found.frame.checks);
  const checks = failed.map((kind) => ({ kind, ratio: ratios.get(kind) ?? 0 }));
  return {
    change: changes.map(({ text }) => text).join("; "),
    ratio: Math.max(0, ...checks.map(({ ratio }) => ratio)),
    checks,
    write: changes.map(({ write }) => write).join("; "),
  };
}

interface Search {
  readonly size: number;
  readonly before: ReadonlyMap<string, number>;
  readonly failed: readonly string[];
}

/** Sets of changes of different families that may do together, the cheapest first. */
function promising(singles: readonly Tried[], { size, before, failed }: Search): readonly (readonly Change[])[] {
  const kinds = new Set([...before.keys(), ...failed]);
  const guess = (set: readonly Tried[], kind: string): number => {
    const start = before.get(kind) ?? 0;
    if (start === 0) return 0;
    return set.reduce((ratio, { ratios }) => ratio * ((ratios.get(kind) ?? 0) / start), start);
  };
  return setsOf(singles, size)
    .filter((set) => isCompatible(set.flatMap(({ change }) => change.sets)))
    .filter((set) => [...kinds].every((kind) => guess(set, kind) <= PROMISING))
    .map((set) => set.map(({ change }) => change))
    .sort((one, other) => costOf(one) - costOf(other));
}

const isCompatible = (families: readonly string[]): boolean => new Set(families).size === families.length;

const costOf = (changes: readonly Change[]): number => changes.reduce((sum, { cost }) => sum + cost, 0);

function setsOf<T>(items: readonly T[], size: number): readonly (readonly T[])[] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) => setsOf(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]));
}
