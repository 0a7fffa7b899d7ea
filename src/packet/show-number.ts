// How does a number stand on a sheet, and how is it marked with its source?
import type { UnitSystem } from "../job/job.ts";
import type { Measure } from "../plan/plan.ts";
import type { Cited } from "../sources/cited.ts";
import { type SourceId, sources } from "../sources/sources.ts";
import { angleDegrees, decimal, force, hertz, length, money, percent } from "../units/print.ts";
import type { Cents, Mm, Newton, Radian } from "../units/quantity.ts";

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
  /** Small movements, finer than a tape: 1/32 in or 0.1 mm. */
  readonly fine: (value: Mm) => string;
  /** Diameters of bits, bores and cable, the other unit with a decimal: `1/4" (6.4 mm)`. */
  readonly diameter: (value: Mm) => string;
  readonly force: (value: Newton) => string;
  readonly forceBoth: (value: Newton) => string;
  /** An allowed band, rounded inward. */
  readonly forceBand: (low: Newton, high: Newton) => string;
  readonly percent: (value: number) => string;
  readonly hertz: (value_Hz: number) => string;
  readonly angle: (value: Radian) => string;
  readonly money: (value: Cents) => string;
  /** A number of turns or a ratio. */
  readonly decimal: (value: number, decimals: number) => string;
  readonly measure: (value: Measure) => string;
  /** What stands beside a blank: "in" or "mm", "lbf" or "N", "F" or "C". */
  readonly lengthUnit: string;
  readonly forceUnit: string;
  readonly heatUnit: string;
}

const FINE_in = 1 / 32;
const BIT_in = 1 / 64;
/** From here on a length is read in feet. */
const LONG_mm = 2438.4;
const FINE_mm_decimals = 1;

export function showIn(units: UnitSystem): Show {
  const tape = (value: Mm): string => length(value, { units, both: false });
  const oneForce = (value: Newton): string => force(value, units, { both: false });
  const feet = { units, style: "feet" } as const;
  return {
    tape,
    tapeBoth: (value) => length(value, { units }),
    feet: (value) => length(value, { ...feet, both: false }),
    feetBoth: (value) => length(value, feet),
    tapeDown: (value) => length(value, { units, both: false, rounding: "down" }),
    feetDown: (value) => length(value, { ...feet, both: false, rounding: "down" }),
    feetUp: (value) => length(value, { ...feet, both: false, rounding: "up" }),
    diameter: (value) => length(value, { units, step: BIT_in, decimals: FINE_mm_decimals }),
    fine: (value) => length(value, { units, both: false, step: FINE_in, decimals: FINE_mm_decimals }),
    force: oneForce,
    forceBoth: (value) => force(value, units),
    forceBand: (low, high) =>
      `${force(low, units, { both: false, rounding: "up" })} - ${force(high, units, { both: false, rounding: "down" })}`,
    percent: (value) => percent(value),
    hertz: (value_Hz) => hertz(value_Hz),
    angle: (value) => angleDegrees(value),
    money,
    decimal: (value, decimals) => decimal(value, { decimals }),
    measure: (value) =>
      showMeasure(value, {
        length: (mm) => (mm < LONG_mm ? tape(mm) : length(mm, { ...feet, both: false })),
        force: oneForce,
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
