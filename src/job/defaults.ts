// Which defaults depend on the rest of the job? Each carries its source; the others stand in tables/practice.ts.
import { type Cited, fromJob, practice } from "../sources/cited.ts";
import { strandFriction } from "../tables/friction.ts";
import { guardRules } from "../tables/limits.ts";
import { readingStep_inch, readingStep_mm, tapeStep_inch, tapeStep_mm } from "../tables/practice.ts";
import { breakingForce as strandBreakingForce } from "../tables/strand.ts";
import { lumberStockLengths, postStockLengths, tubeStockLengths } from "../tables/timber.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { CodeBasis, FrameMaterial, UnitSystem } from "./job.ts";
import type { JobFile } from "./schema.ts";
import type { StairBasis } from "./slope.ts";

/** Guard height and opening: what the job states, or the edition's own. */
export function codeRules(code: JobFile["code"]): Pick<CodeBasis, "guardHeight_min" | "rampHeight_min" | "openingSphere" | "stairs"> {
  const rules = guardRules(code);
  return {
    guardHeight_min: ruled(code["guard height"], "code: guard height", rules?.guardHeight_min),
    // A height that the job states holds on a ramp too.
    rampHeight_min: ruled(code["guard height"], "code: guard height", rules?.rampHeight_min ?? rules?.guardHeight_min),
    openingSphere: ruled(code.opening, "code: opening", rules?.openingSphere),
    stairs: stairRulesOf(code),
  };
}

/** Rules of stairs: what the job states, or the edition's own; where no side is a stair, another edition's level rules stand for them. */
function stairRulesOf(code: JobFile["code"]): StairBasis {
  const rules = guardRules(code)?.stairs;
  const { "guard height": height, opening, triangle } = code.stairs ?? {};
  const guardHeight_min = ruled(height ?? code["guard height"], "code: stairs: guard height", rules?.guardHeight_min);
  return {
    guardHeight_min: height === undefined && rules !== undefined ? rules.guardHeight_min : guardHeight_min,
    openingSphere:
      opening === undefined && rules !== undefined
        ? rules.openingSphere
        : ruled(opening ?? code.opening, "code: stairs: opening", rules?.openingSphere),
    openingFrom: rules?.openingFrom ?? "steps",
    triangleSphere: triangle === undefined ? (rules?.triangleSphere ?? null) : fromJob(triangle, "code: stairs: triangle"),
    handrail: rules?.handrail ?? { low: guardHeight_min, high: null },
  };
}

function ruled(value: Mm | undefined, where: string, rule: Cited<Mm> | undefined): Cited<Mm> {
  if (value !== undefined) return fromJob(value, where);
  if (rule === undefined) throw new Error(`${where} passed the checks without a value`);
  return rule;
}

export const stockLengths = (material: FrameMaterial): Cited<readonly Mm[]> =>
  material === "wood" ? lumberStockLengths : tubeStockLengths;

/** Posts of wood come in fewer lengths than boards; a post of tube is cut from the same tube as a rail. */
export const postLengths = (material: FrameMaterial): Cited<readonly Mm[]> => (material === "wood" ? postStockLengths : tubeStockLengths);

/** Screws and brackets let a post's top turn; a weld does not. */
export const railJoint = (material: FrameMaterial): Cited<"pinned" | "rigid"> =>
  material === "wood"
    ? practice("pinned", "rails of wood are fastened to the posts: a hinge")
    : practice("rigid", "rails of metal are welded to the posts: no hinge");

export const tapeStep = (units: UnitSystem): Cited<Mm> => (units === "mm" ? tapeStep_mm : tapeStep_inch);

export const readingStep = (units: UnitSystem): Cited<Newton> => (units === "mm" ? readingStep_mm : readingStep_inch);

/** Least breaking force of the strand: what the job states, or a list; null where no list that was read holds it. */
export function breakingForce(cable: JobFile["cable"]): Cited<Newton> | null {
  const stated = cable["breaking force"];
  return stated === undefined ? strandBreakingForce(cable) : fromJob(stated, "cable: breaking force");
}

/** A bend runs over a bushing, so strand on plastic. */
export function friction(): Cited<number> {
  const { value, ...origin } = strandFriction("plastic");
  return { ...origin, value: value.nominal };
}
