// How does a test get at one check or bore of a plan, and at the ends of its runs?
import type { Bore, Check, Plan } from "../../src/plan/plan.ts";

/** Exact: in mm and in N. */
export const INCH = 25.4;
export const LBF = 4.4482216152605;

export function checkOf({ checks }: Plan, id: string): Check {
  const found = checks.find((check) => check.id === id);
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
}

export function boreOf({ bores }: Plan, mark: string): Bore {
  const found = bores.find((bore) => bore.mark === mark);
  if (found === undefined) throw new Error(`no bore ${mark}`);
  return found;
}

/** "P1 face false": of the left and the right end of each run its post, its kind, and whether it pulls. */
export const endsOf = ({ runs }: Plan): readonly (readonly string[])[] =>
  runs.map(({ left, right }) => [left, right].map(({ postId, kind, pulls }) => `${postId} ${kind} ${pulls}`));
