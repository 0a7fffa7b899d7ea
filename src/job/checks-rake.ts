// What can be wrong with sides that slope although each value reads well by itself?
import type { JobPath, Problem } from "../problem/problem.ts";
import { angleDegrees } from "../units/print.ts";
import type { UnitSystem } from "./job.ts";
import { type RakeText, rakeOf } from "./rake.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

type Guard = JobFile["guard"];

/** Steeper than this no bit holds its line through a plumb post, and no stair of a building is (common practice, no source). */
const STEEPEST_rad = Math.PI / 4;
/** Less than this no level tells from none. */
const FLATTEST_rad = (0.25 * Math.PI) / 180;
/** Two rakes that differ by less are one. */
const SAME_rad = (0.5 * Math.PI) / 180;

export const checkRakes = ({ sides }: Guard): readonly Problem[] =>
  sides.flatMap(({ rake, length }, index) => {
    const path = ["guard", "sides", index, "rake"];
    const problems = rake === undefined ? [] : checkRake(rake, length, path);
    return problems.length > 0 ? problems : checkJoint(sides, index);
  });

const STEP_KEYS = ["riser", "tread", "risers", "treads", "nosing", "open risers"] as const;

function checkRake(rake: RakeText, length: number, path: JobPath): readonly Problem[] {
  const ofStair = STEP_KEYS.filter((key) => rake[key] !== undefined);
  if (rake.kind === "ramp" && ofStair.length > 0) {
    return ofStair.map((key) => wrong([...path, key], `a ramp has no ${key}`, "leave it out, or write kind: stair", "key"));
  }
  const missing = waysOf(rake);
  if (missing !== null) return [wrong(path, missing.what, missing.fix, "key")];
  const slope = Math.abs(rakeOf(rake, length).slope);
  if (slope > STEEPEST_rad + 1e-9) {
    const fix = "check rise and run; a guard steeper than 45 deg is set out and bored by hand, with no packet from here";
    return [wrong(path, `a rake of ${angleDegrees(slope)} is steeper than 45 deg`, fix, "key")];
  }
  if (slope < FLATTEST_rad) return [wrong(path, `a rake of ${angleDegrees(slope)} is level`, "leave the rake out", "key")];
  return [];
}

interface Telling {
  readonly what: string;
  readonly fix: string;
}

const HOW =
  "give one of: pitch; rise and run; riser and tread; rise and run with risers and treads, for example { kind: stair, goes: down, riser: 7 in, tread: 10-1/2 in }";

/** What is missing or too much for exactly one slope; null where there is one. */
function waysOf({ pitch, rise, run, riser, tread, risers, treads }: RakeText): Telling | null {
  const ways = [pitch, rise ?? run, riser ?? tread].filter((way) => way !== undefined).length;
  if (ways === 0 && risers === undefined && treads === undefined) return { what: "the rake does not say how steep it is", fix: HOW };
  if (ways > 1) return { what: "the rake says in two ways how steep it is", fix: HOW };
  if ((riser === undefined) !== (tread === undefined)) {
    const [has, lacks] = riser === undefined ? ["tread", "riser"] : ["riser", "tread"];
    return { what: `a ${has} alone gives no slope: the ${lacks} is missing`, fix: HOW };
  }
  if (run !== undefined && rise === undefined) return { what: "a run alone gives no slope: the rise is missing", fix: HOW };
  if ((risers === undefined) !== (treads === undefined)) {
    const [has, lacks] = risers === undefined ? ["treads", "risers"] : ["risers", "treads"];
    return { what: `the number of ${has} needs the number of ${lacks}`, fix: HOW };
  }
  if (risers !== undefined && (rise === undefined || run === undefined)) {
    return { what: "counts of risers and treads need the rise and the run that they divide", fix: HOW };
  }
  return null;
}

/** Two sides in line with one slope are one side. */
function checkJoint(sides: Guard["sides"], index: number): readonly Problem[] {
  const [side, next] = [sides[index], sides[index + 1]];
  if (side === undefined || next === undefined || side.turn !== undefined) return [];
  if (side.rake === undefined && next.rake === undefined) return [];
  const slopeOf = ({ rake, length }: Guard["sides"][number]): number => {
    const ways = rake === undefined ? null : waysOf(rake);
    return rake === undefined || ways !== null ? 0 : rakeOf(rake, length).slope;
  };
  const incomplete = [side, next].some(({ rake }) => rake !== undefined && waysOf(rake) !== null);
  if (incomplete || Math.abs(slopeOf(side) - slopeOf(next)) >= SAME_rad) return [];
  return [
    wrong(
      ["guard", "sides", index],
      `side ${index + 1} goes on into the next one with the same direction and slope`,
      "write the two sides as one, or add the turn between them",
      "key",
    ),
  ];
}

export function checkRakeFrame({ sides }: Guard, frame: JobFile["frame"]): readonly Problem[] {
  const onRakes = frame["on rakes"];
  if (onRakes === undefined) return [];
  const path = ["frame", "on rakes"];
  if (!sides.some(({ rake }) => rake !== undefined)) {
    return [wrong(path, "no side of the guard has a rake", "leave it out, or give the side that slopes its rake", "key")];
  }
  const gap = onRakes["gap below"];
  if (frame["bottom rail"] === undefined && gap !== undefined && gap > 0) {
    return [
      wrong([...path, "gap below"], "there is no bottom rail that a gap could be below", "leave it out, or add the bottom rail", "key"),
    ];
  }
  return [];
}

export function checkStairRules({ sides }: Guard, code: JobFile["code"], units: UnitSystem): readonly Problem[] {
  const hasStair = sides.some(({ rake }) => rake?.kind === "stair");
  if (code.stairs !== undefined && !hasStair) {
    return [wrong(["code", "stairs"], "no side of the guard is a stair", "leave it out, or give the stair its rake", "key")];
  }
  if (code.edition !== "other" || !hasStair) return [];
  const needed = [
    ["guard height", units === "mm" ? "900 mm" : "34 in"],
    ["opening", units === "mm" ? "100 mm" : "4-3/8 in"],
  ] as const;
  if (code.stairs === undefined) {
    const example = needed.map(([key, value]) => `${key}: ${value}`).join(", ");
    const fix = `add what the authority asks, for example stairs: { ${example}, triangle: ${units === "mm" ? "150 mm" : "6 in"} }`;
    return [wrong(["code"], "another edition brings no rules of stairs of its own", fix, "key")];
  }
  return needed
    .filter(([key]) => code.stairs?.[key] === undefined)
    .map(([key, example]) =>
      wrong(
        ["code", "stairs"],
        `another edition brings no "${key}" of its own`,
        `add what the authority asks, for example ${key}: ${example}`,
        "key",
      ),
    );
}
