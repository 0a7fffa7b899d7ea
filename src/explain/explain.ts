// What stands behind a number, a mark or a part of the plan, and what can be asked at all?
import { distance } from "fastest-levenshtein";
import type { Plan } from "../plan/plan.ts";
import type { SourceId } from "../sources/sources.ts";
import { bendRules } from "./bend-rules.ts";
import { boreRules } from "./bore-rules.ts";
import { checkRules } from "./check-rules.ts";
import { climateRules } from "./climate-rules.ts";
import { cutRules } from "./cut-rules.ts";
import { dayRules } from "./day-rules.ts";
import { frameCheckRules } from "./frame-check-rules.ts";
import { framePartRules } from "./frame-part-rules.ts";
import { frameRules } from "./frame-rules.ts";
import { kindAt } from "./kind.ts";
import { layoutRules } from "./layout-rules.ts";
import { leanRules } from "./lean-rules.ts";
import { behindMark, marksOf } from "./marks.ts";
import { memberRules } from "./member-rules.ts";
import { orderRules } from "./order-rules.ts";
import { isCited, leavesBelow, type Place, placeAt, wholePlan } from "./path.ts";
import { programmeRules } from "./programme-rules.ts";
import { rakeRules } from "./rake-rules.ts";
import { makeReader, type Reader } from "./reader.ts";
import { readingRules } from "./reading-rules.ts";
import { type Rule, traceOf, wordsOf } from "./rule.ts";
import { runRules } from "./run-rules.ts";
import { searchRules } from "./search-rules.ts";
import { seasonRules } from "./season-rules.ts";
import { settlingRules } from "./settling-rules.ts";
import { spanRules } from "./span-rules.ts";
import { takeUpRules } from "./take-up-rules.ts";
import { tighteningRules } from "./tightening-rules.ts";
import type { Kind, Origin, Trace } from "./trace.ts";
import { windowRules } from "./window-rules.ts";

const rules: readonly Rule[] = [
  ...layoutRules,
  ...rakeRules,
  ...leanRules,
  ...runRules,
  ...bendRules,
  ...spanRules,
  ...readingRules,
  ...takeUpRules,
  ...tighteningRules,
  ...searchRules,
  ...dayRules,
  ...programmeRules,
  ...climateRules,
  ...seasonRules,
  ...settlingRules,
  ...memberRules,
  ...frameRules,
  ...windowRules,
  ...checkRules,
  ...frameCheckRules,
  ...framePartRules,
  ...boreRules,
  ...orderRules,
  ...cutRules,
];

const ruleAt: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.pattern, rule]));

/** A value with its place, as a line of a list. */
export interface Line {
  readonly path: string;
  /** In words; empty where nobody has said. */
  readonly what: string;
  readonly value: string | number | boolean | null;
  readonly kind: Kind | null;
}

export type Answer =
  | { readonly kind: "trace"; readonly trace: Trace }
  /** A value without an explanation of its own: its source if it stands there with one, and what near it is explained. */
  | {
      readonly kind: "value";
      readonly line: Line;
      readonly jsonPath: string;
      readonly origin: (Origin & { readonly note: string }) | null;
      /** A formula that stands beside it in the plan. */
      readonly formula: string;
      readonly near: readonly Line[];
    }
  | { readonly kind: "list"; readonly title: string; readonly lines: readonly Line[] }
  | { readonly kind: "unknown"; readonly nearest: readonly string[] };

/** What stands behind a path into the plan, or behind a mark of a sheet. */
export function explain(plan: Plan, value: string): Answer {
  const reader = makeReader(plan);
  const behind = behindMark(plan, value);
  if (behind !== null) {
    const places = behind.paths.flatMap((path) => placeAt(plan, path) ?? []);
    return { kind: "list", title: behind.title, lines: places.flatMap(leavesBelow).map(lineOf) };
  }
  const found = value === "" ? undefined : placeAt(plan, value);
  if (found === undefined) return { kind: "unknown", nearest: nearestTo(plan, value) };
  const cited = isCited(found.value) ? found.value : null;
  const place = cited === null ? found : (placeAt(plan, `${value}.value`) ?? found);
  if (isPart(place.value)) return { kind: "list", title: place.path, lines: leavesBelow(place).map(lineOf) };
  const trace = traced(place, reader);
  if (trace !== null) return { kind: "trace", trace };
  const origin = cited === null ? null : { source: cited.source as SourceId, where: cited.where, note: cited.note ?? "" };
  const line = lineOf(place);
  return {
    kind: "value",
    line,
    jsonPath: place.jsonPath,
    origin,
    formula: formulaBeside(place),
    near: nearPlaces(place, plan).map(lineOf),
  };
}

const formulaBeside = ({ holder }: Place): string =>
  typeof holder === "object" && holder !== null && "formula" in holder ? `${holder.formula}` : "";

const isPart = (value: unknown): boolean => typeof value === "object" && value !== null;

function traced(place: Place, reader: Reader): Trace | null {
  const rule = ruleAt.get(place.pattern);
  return rule === undefined ? null : traceOf(rule, place, reader);
}

function lineOf(place: Place): Line {
  const { path, pattern, keys, value } = place;
  const what = ruleAt.get(pattern)?.what;
  return { path, what: what === undefined ? "" : wordsOf(what, keys), value: value as Line["value"], kind: kindAt(place) };
}

/** Explained numbers in the smallest part of the plan around a place that holds any. */
function nearPlaces(place: Place, plan: Plan): readonly Place[] {
  const steps = place.jsonPath.replace(/\[(\d+)\]/g, ".[$1]").split(".");
  for (let length = steps.length - 1; length > 0; length--) {
    const around = placeAt(plan, steps.slice(0, length).join("."));
    const near = around === undefined ? [] : leavesBelow(around).filter(({ pattern }) => ruleAt.has(pattern));
    if (near.length > 0) return near.slice(0, NEAR_most);
  }
  return [];
}

const NEAR_most = 5;

function nearestTo(plan: Plan, value: string): readonly string[] {
  const known = [...marksOf(plan), ...new Set(leavesBelow(wholePlan(plan)).flatMap(({ path }) => withParts(path)))];
  const asked = value.toLowerCase();
  const far = known.map((one) => ({ one, far: distance(asked, one.toLowerCase()) }));
  return far
    .sort((a, b) => a.far - b.far)
    .slice(0, NEAR_most)
    .map(({ one }) => one);
}

/** A path and the parts of the plan that it lies in. */
function withParts(path: string): readonly string[] {
  const steps = path.split(".");
  return steps.map((_, index) => steps.slice(0, index + 1).join("."));
}

/** What can be asked: one line for each kind of number that has an explanation and stands in this plan, with its first place. */
export interface Askable {
  readonly pattern: string;
  readonly what: string;
  readonly example: string;
  readonly places: number;
}

export function askable(plan: Plan): readonly Askable[] {
  const places = new Map<string, { readonly first: string; count: number }>();
  for (const { pattern, path } of leavesBelow(wholePlan(plan))) {
    const known = places.get(pattern);
    if (known === undefined) places.set(pattern, { first: path, count: 1 });
    else known.count += 1;
  }
  return rules.flatMap(({ pattern, what }) => {
    const found = places.get(pattern);
    return found === undefined ? [] : [{ pattern, what, example: found.first, places: found.count }];
  });
}

/** Every number of the plan that has an explanation of its own, traced. */
export function traceAll(plan: Plan): readonly Trace[] {
  const reader = makeReader(plan);
  return leavesBelow(wholePlan(plan)).flatMap((place) => traced(place, reader) ?? []);
}
