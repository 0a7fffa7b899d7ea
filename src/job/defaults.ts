// Which defaults depend on the rest of the job? Each carries its source; the others stand in tables/practice.ts.
import { type Cited, fromJob, practice } from "../sources/cited.ts";
import { strandFriction } from "../tables/friction.ts";
import { guardRules } from "../tables/limits.ts";
import { readingStep_inch, readingStep_mm, tapeStep_inch, tapeStep_mm } from "../tables/practice.ts";
import { breakingForce as strandBreakingForce } from "../tables/strand.ts";
import { lumberStockLengths, tubeStockLengths } from "../tables/timber.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { CodeBasis, FrameMaterial, UnitSystem } from "./job.ts";
import type { JobFile } from "./schema.ts";

/** Guard height and opening: what the job states, or the edition's own. */
export function codeRules(code: JobFile["code"]): Pick<CodeBasis, "guardHeight_min" | "openingSphere"> {
  const rules = guardRules(code);
  return {
    guardHeight_min: ruled(code["guard height"], "code: guard height", rules?.guardHeight_min),
    openingSphere: ruled(code.opening, "code: opening", rules?.openingSphere),
  };
}

function ruled(value: Mm | undefined, where: string, rule: Cited<Mm> | undefined): Cited<Mm> {
  if (value !== undefined) return fromJob(value, where);
  if (rule === undefined) throw new Error(`${where} passed the checks without a value`);
  return rule;
}

/** Room between the two posts of a corner, beside the half post: our own setting. */
const CORNER_ROOM_mm: Mm = 12.7;

/** From a corner to the near face of each of its posts: half a post and 1/2 in, so that the two clear each other at a square corner. */
export const cornerSetback = (across: Mm): Cited<Mm> =>
  practice(across / 2 + CORNER_ROOM_mm, "corner point to the near face of each corner post: half a post and 1/2 in");

export const stockLengths = (material: FrameMaterial): Cited<readonly Mm[]> =>
  material === "wood" ? lumberStockLengths : tubeStockLengths;

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
