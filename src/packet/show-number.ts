// How does a number stand on a sheet, and how is it marked with its source?
import type { UnitSystem } from "../job/job.ts";
import type { Measure } from "../plan/plan.ts";
import type { Cited } from "../sources/cited.ts";
import { type SourceId, sources } from "../sources/sources.ts";
import { angleDegrees, decimal, force, hertz, length, money, percent } from "../units/print.ts";
import type { Cents, Mm, Newton, Radian } from "../units/quantity.ts";
import type { Rounding } from "../units/round.ts";

/** Every way in which a sheet prints a number, in the units of the job. */
export interface Show {
  /** As read on a tape, one unit: `5-7/8"`. */
  readonly tape: (value: Mm) => string;
  /** As read on a tape, the other unit behind: `5-7/8" (149 mm)`. */
  readonly tapeBoth: (value: Mm) => string;
  /** Feet and inches, one unit: `22'-10 1/2"`. */
  readonly feet: (value: Mm) => string;
  readonly feetBoth: (value: Mm) => string;
  /** Room that must be left is rounded down. */
  readonly tapeDown: (value: Mm) => string;
  readonly feetDown: (value: Mm) => string;
  /** Lengths that are bought or must be reached are rounded up. */
  readonly feetUp: (value: Mm) => string;
  /** The same length in the other unit alone, for a column beside the first: `149 mm`. */
  readonly tapeOther: (value: Mm) => string;
  /** Small movements, finer than a tape: 1/32 in or 0.1 mm. */
  readonly fine: (value: Mm) => string;
  /** How far a nut travels, or how much thread that takes: as fine, and never too little. */
  readonly travel: (value: Mm) => string;
  /** Diameters of bits, bores, washers and cable, the other unit with a decimal: `1/4" (6.4 mm)`. */
  readonly diameter: (value: Mm) => string;
  /** The same in the first unit alone, and in the other alone. */
  readonly diameterOne: (value: Mm) => string;
  readonly diameterOther: (value: Mm) => string;
  readonly area: (value_mm2: number) => string;
  readonly force: (value: Newton) => string;
  readonly forceBoth: (value: Newton) => string;
  /** What holds back, or is allowed: rounded down. */
  readonly forceDown: (value: Newton) => string;
  readonly forceBothDown: (value: Newton) => string;
  /** What is needed, or must be borne: rounded up. */
  readonly forceUp: (value: Newton) => string;
  readonly forceBothUp: (value: Newton) => string;
  /** An allowed band, rounded inward. */
  readonly forceBand: (low: Newton, high: Newton) => string;
  readonly percent: (value: number) => string;
  readonly hertz: (value_Hz: number) => string;
  readonly angle: (value: Radian) => string;
  readonly money: (value: Cents) => string;
  /** A number of turns or a ratio. */
  readonly decimal: (value: number, decimals: number) => string;
  /** A force is rounded in the direction given; lengths are printed as everywhere. */
  readonly measure: (value: Measure, rounding?: Rounding) => string;
  /** What stands beside a blank: "in" or "mm", "lbf" or "N", "F" or "C". */
  readonly lengthUnit: string;
  readonly forceUnit: string;
  readonly heatUnit: string;
}

const FINE_in = 1 / 32;
/** From here on a length is read in feet. */
const LONG_mm = 2438.4;
const FINE_mm_decimals = 1;
const SQUARE_INCH_mm2 = 645.16;

export function showIn(units: UnitSystem): Show {
  return { ...showLengths(units), ...showForces(units), ...showOthers(units) };
}

type Lengths =
  | "tape"
  | "tapeBoth"
  | "feet"
  | "feetBoth"
  | "tapeDown"
  | "feetDown"
  | "feetUp"
  | "tapeOther"
  | "fine"
  | "travel"
  | "diameter"
  | "diameterOne"
  | "diameterOther"
  | "area";

function showLengths(units: UnitSystem): Pick<Show, Lengths> {
  const other: UnitSystem = units === "inch" ? "mm" : "inch";
  const tape = (value: Mm): string => length(value, { units, both: false });
  const feet = { units, style: "feet" } as const;
  const fine = { units, step: FINE_in, decimals: FINE_mm_decimals } as const;
  return {
    tape,
    tapeBoth: (value) => length(value, { units }),
    feet: (value) => length(value, { ...feet, both: false }),
    feetBoth: (value) => length(value, feet),
    tapeDown: (value) => length(value, { units, both: false, rounding: "down" }),
    feetDown: (value) => length(value, { ...feet, both: false, rounding: "down" }),
    feetUp: (value) => length(value, { ...feet, both: false, rounding: "up" }),
    tapeOther: (value) => length(value, { units: other, both: false }),
    fine: (value) => length(value, { ...fine, both: false }),
    travel: (value) => length(value, { ...fine, both: false, rounding: "up" }),
    diameter: (value) => length(value, fine),
    diameterOne: (value) => length(value, { ...fine, both: false }),
    diameterOther: (value) => length(value, { ...fine, units: other, both: false }),
    area: (value_mm2) => {
      const imperial = `${decimal(value_mm2 / SQUARE_INCH_mm2, { decimals: value_mm2 < 10 * SQUARE_INCH_mm2 ? 1 : 0 })} sq in`;
      const metric = `${decimal(value_mm2)} mm2`;
      return units === "inch" ? `${imperial} (${metric})` : `${metric} (${imperial})`;
    },
  };
}

type Forces = "force" | "forceBoth" | "forceDown" | "forceBothDown" | "forceUp" | "forceBothUp" | "forceBand";

function showForces(units: UnitSystem): Pick<Show, Forces> {
  const one = (value: Newton, rounding: Rounding): string => force(value, units, { both: false, rounding });
  return {
    force: (value) => one(value, "nearest"),
    forceBoth: (value) => force(value, units),
    forceDown: (value) => one(value, "down"),
    forceBothDown: (value) => force(value, units, { rounding: "down" }),
    forceUp: (value) => one(value, "up"),
    forceBothUp: (value) => force(value, units, { rounding: "up" }),
    forceBand: (low, high) => `${one(low, "up")} - ${one(high, "down")}`,
  };
}

function showOthers(units: UnitSystem): Omit<Show, Lengths | Forces> {
  return {
    percent: (value) => percent(value),
    hertz: (value_Hz) => hertz(value_Hz),
    angle: (value) => angleDegrees(value),
    money,
    decimal: (value, decimals) => decimal(value, { decimals }),
    measure: (value, rounding = "nearest") =>
      showMeasure(value, {
        length: (mm) => length(mm, { units, both: false, ...(mm < LONG_mm ? {} : { style: "feet" }) }),
        force: (newton) => force(newton, units, { both: false, rounding }),
      }),
    lengthUnit: units === "inch" ? "in" : "mm",
    forceUnit: units === "inch" ? "lbf" : "N",
    heatUnit: units === "inch" ? "deg F" : "deg C",
  };
}

function showMeasure(
  measure: Measure,
  print: { readonly length: (value: Mm) => string; readonly force: (value: Newton) => string },
): string {
  switch (measure.kind) {
    case "length":
      return print.length(measure.value);
    case "force":
      return print.force(measure.value);
    case "count":
      return decimal(measure.value);
    case "angle":
      return angleDegrees(measure.value);
    case "share":
      return percent(measure.value);
  }
}

/** Shown after a value; the sheet of sources says what each stands for. */
export const sourceMark = (source: SourceId): string => `[${source}]`;

/** "3 in [practice]" */
export const showCited = <T>(cited: Cited<T>, print: (value: T) => string): string => `${print(cited.value)} ${sourceMark(cited.source)}`;

/** "[irc-2021] R312.1.3"; practice has no place to name beside the rule itself. */
export const sourcePlace = (source: SourceId, where: string): string =>
  source === "practice" || where === "" ? sourceMark(source) : `${sourceMark(source)} ${where}`;

const isSourceId = (text: string): text is SourceId => Object.hasOwn(sources, text);

/** Every source whose mark stands somewhere in a text, in the order of the list of sources. */
export function sourcesMarkedIn(text: string): readonly SourceId[] {
  const marked = new Set([...text.matchAll(/\[([a-z0-9-]+)\]/g)].map(([, id = ""]) => id));
  return Object.keys(sources).filter((id): id is SourceId => isSourceId(id) && marked.has(id));
}
