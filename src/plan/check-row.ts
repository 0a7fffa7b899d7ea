// How is one rule compared with the plan: demand, limit, ratio, verdict?
import type { Cited } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { Check, Measure, Plan, Verdict } from "./plan.ts";

/** What the checks look at. */
export type Checked = Pick<
  Plan,
  | "sides"
  | "verticals"
  | "bays"
  | "courses"
  | "gaps"
  | "opening"
  | "setOff"
  | "rakes"
  | "hardware"
  | "runs"
  | "bores"
  | "tightening"
  | "climate"
>;

type Kind = Measure["kind"];

/** A limit that must not be exceeded, or must be reached; passes within the tolerance that makes two lengths one. */
export function limitCheck(options: {
  readonly id: string;
  readonly name: string;
  readonly where: string;
  readonly rule: "at most" | "at least";
  readonly demand: number;
  readonly limit: Cited<number>;
  readonly kind: Kind;
  readonly advice: string;
}): Check {
  const { id, name, where, rule, demand, limit, kind, advice } = options;
  const ratio = rule === "at most" ? share(demand, limit.value) : share(limit.value, Math.max(demand, NOTHING * limit.value));
  const slack = kind === "length" ? SAME_mm : 0;
  const keeps = rule === "at most" ? demand <= limit.value + slack : demand >= limit.value - slack;
  return {
    id,
    name,
    where,
    rule,
    demand: { value: demand, kind },
    limit: { value: limit.value, kind },
    ratio,
    source: limit.source,
    sourceWhere: limit.where,
    verdict: keeps ? "pass" : "fail",
    advice: keeps ? "" : advice,
  };
}

/** What is not there at all, or less, is beyond any ratio to a least value: a million times stands for it, which a sheet shows as over 99. */
const NOTHING = 1e-6;

const share = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole);

export function question(
  id: string,
  name: string,
  options: { readonly source: SourceId; readonly where: string; readonly advice: string },
): Check {
  return {
    id,
    name,
    where: "whole guard",
    rule: "at most",
    demand: null,
    limit: null,
    ratio: null,
    source: options.source,
    sourceWhere: options.where,
    verdict: "ask",
    advice: options.advice,
  };
}

/** fail if any check fails, ask if one must be asked or is not made, else pass. */
export function overallVerdict(checks: readonly Check[]): Verdict {
  if (checks.some((check) => check.verdict === "fail")) return "fail";
  return checks.some((check) => check.verdict !== "pass") ? "ask" : "pass";
}
