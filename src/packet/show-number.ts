// How does a number stand on a sheet, and how is it marked with its source?
import type { UnitSystem } from "../job/job.ts";
import type { Measure } from "../plan/plan.ts";
import type { Cited } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import {
  angleDegrees,
  decimal,
  drillStep,
  type ForceOptions,
  force,
  hertz,
  type LengthOptions,
  length,
  lineLoad,
  type MomentOptions,
  moment,
  money,
  percent,
  type SizeOptions,
  sectionArea,
  sectionModulus,
  stress,
  temperature,
  turnStiffness,
} from "../units/print.ts";
import { reading, temperatureStep } from "../units/print-measured.ts";
import type { Celsius, Cents, Megapascal, Mm, Newton, Radian } from "../units/quantity.ts";
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
  /** What strand is wound off: feet, or metres. */
  readonly spool: (value: Mm) => string;
  /** Room that must be left is rounded down. */
  readonly tapeDown: (value: Mm) => string;
  /** The least that still fits is rounded up. */
  readonly tapeUp: (value: Mm) => string;
  readonly feetDown: (value: Mm) => string;
  /** Lengths that are bought or must be reached are rounded up. */
  readonly feetUp: (value: Mm) => string;
  /** The same length in the other unit alone, for a column beside the first: `149 mm`. */
  readonly tapeOther: (value: Mm) => string;
  /** Small movements, finer than a tape: 1/32 in or 0.1 mm. */
  readonly fine: (value: Mm) => string;
  /** As somebody measured it, to 1/64 in or 0.1 mm: what was read is not rounded to a mark of the tape. */
  readonly measured: (value: Mm) => string;
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
  /** What a gauge is read against: every step of it, the number alone; its unit stands in the head of the column. */
  readonly gauge: (value: Newton) => string;
  /** What somebody read there, with a decimal where one was written. */
  readonly reading: (value: Newton) => string;
  /** An allowed band, rounded inward. */
  readonly forceBand: (low: Newton, high: Newton) => string;
  /** Three figures, the other unit behind; `both: false` leaves it out, and a demand is rounded up, a capacity down. */
  readonly stress: (value: Megapascal, options?: SizeOptions) => string;
  readonly moment: (value_Nmm: number, options?: MomentOptions) => string;
  /** Of a section. */
  readonly sectionArea: (value_mm2: number, options?: SizeOptions) => string;
  readonly sectionModulus: (value_mm3: number, options?: SizeOptions) => string;
  /** Stiffness of a post's base. */
  readonly turnStiffness: (value_NmmPerRad: number, options?: SizeOptions) => string;
  readonly lineLoad: (value_NPerMm: number, options?: SizeOptions) => string;
  readonly percent: (value: number) => string;
  readonly hertz: (value_Hz: number) => string;
  readonly heat: (value: Celsius) => string;
  readonly heatBoth: (value: Celsius) => string;
  /** From one temperature to another. */
  readonly heatStep: (value: Celsius) => string;
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
/** Lengths are read in whole sixty-fourths. */
const MEASURED_in = 1 / 64;
/** From here on a length is read in feet. */
const LONG_mm = 2438.4;
const FINE_mm_decimals = 1;
const SQUARE_INCH_mm2 = 645.16;

export const showIn = (units: UnitSystem): Show => shows[units];

/** A packet prints the same heights and stations on many sheets: so many texts are kept, then all are forgotten. */
const KEPT_most = 2000;

function remembered(print: (value: number) => string): (value: number) => string {
  const known = new Map<number, string>();
  return (value) => {
    const before = known.get(value);
    if (before !== undefined) return before;
    if (known.size >= KEPT_most) known.clear();
    const text = print(value);
    known.set(value, text);
    return text;
  };
}

type Lengths =
  | "tape"
  | "tapeBoth"
  | "feet"
  | "feetBoth"
  | "tapeDown"
  | "tapeUp"
  | "feetDown"
  | "feetUp"
  | "tapeOther"
  | "fine"
  | "measured"
  | "travel"
  | "diameter"
  | "diameterOne"
  | "diameterOther"
  | "spool"
  | "area";

function showLengths(units: UnitSystem): Pick<Show, Lengths> {
  const other: UnitSystem = units === "inch" ? "mm" : "inch";
  // Each option once, not once for each number: a packet prints thousands.
  const one = { units, both: false } as const;
  const feet = { units, style: "feet" } as const;
  const fine = { units, step: FINE_in, decimals: FINE_mm_decimals } as const;
  const print = (options: LengthOptions) => remembered((value) => length(value, options));
  const size = (options: LengthOptions) => remembered((value) => length(value, { ...options, step: drillStep(value) }));
  return {
    tape: print(one),
    tapeBoth: print({ units }),
    feet: print({ ...feet, both: false }),
    feetBoth: print(feet),
    spool: units === "mm" ? (value) => `${decimal(value / 1000, { decimals: 2 })} m` : print({ ...feet, both: false }),
    tapeDown: print({ ...one, rounding: "down" }),
    tapeUp: print({ ...one, rounding: "up" }),
    feetDown: print({ ...feet, both: false, rounding: "down" }),
    feetUp: print({ ...feet, both: false, rounding: "up" }),
    tapeOther: print({ units: other, both: false }),
    fine: print({ ...fine, both: false }),
    measured: print({ ...fine, step: MEASURED_in, both: false }),
    travel: print({ ...fine, both: false, rounding: "up" }),
    diameter: size({ ...fine, both: true }),
    diameterOne: size({ ...fine, both: false }),
    diameterOther: size({ ...fine, units: other, both: false }),
    area: (value_mm2) => {
      const imperial = `${decimal(value_mm2 / SQUARE_INCH_mm2, { decimals: value_mm2 < 10 * SQUARE_INCH_mm2 ? 1 : 0 })} sq in`;
      const metric = `${decimal(value_mm2)} mm2`;
      return units === "inch" ? `${imperial} (${metric})` : `${metric} (${imperial})`;
    },
  };
}

type Forces = "force" | "forceBoth" | "forceDown" | "forceBothDown" | "forceUp" | "forceBothUp" | "gauge" | "reading" | "forceBand";

function showForces(units: UnitSystem): Pick<Show, Forces> {
  const print = (options: ForceOptions) => remembered((value) => force(value, units, options));
  const down = print({ both: false, rounding: "down" });
  const up = print({ both: false, rounding: "up" });
  return {
    force: print({ both: false }),
    forceBoth: print({}),
    forceDown: down,
    forceBothDown: print({ rounding: "down" }),
    forceUp: up,
    forceBothUp: print({ rounding: "up" }),
    gauge: (value) => (units === "inch" ? force(value, units, { both: false }).replace(" lbf", "") : decimal(value)),
    reading: (value) => reading(value, units),
    forceBand: (low, high) => `${up(low)} - ${down(high)}`,
  };
}

type Strengths = "stress" | "moment" | "sectionArea" | "sectionModulus" | "turnStiffness" | "lineLoad";

const showStrengths = (units: UnitSystem): Pick<Show, Strengths> => ({
  stress: (value, options) => stress(value, units, options),
  moment: (value_Nmm, options) => moment(value_Nmm, units, options),
  sectionArea: (value_mm2, options) => sectionArea(value_mm2, units, options),
  sectionModulus: (value_mm3, options) => sectionModulus(value_mm3, units, options),
  turnStiffness: (value_NmmPerRad, options) => turnStiffness(value_NmmPerRad, units, options),
  lineLoad: (value_NPerMm, options) => lineLoad(value_NPerMm, units, options),
});

function showOthers(units: UnitSystem, { tape, feet }: Pick<Show, "tape" | "feet">): Omit<Show, Lengths | Forces | Strengths> {
  return {
    percent: (value) => percent(value),
    hertz: (value_Hz) => hertz(value_Hz),
    heat: (value) => temperature(value, units, { both: false }),
    heatBoth: (value) => temperature(value, units),
    heatStep: (value) => temperatureStep(value, units),
    angle: (value) => angleDegrees(value),
    money,
    decimal: (value, decimals) => decimal(value, { decimals }),
    measure: (value, rounding = "nearest") =>
      showMeasure(value, {
        length: (mm) => (mm < LONG_mm ? tape(mm) : feet(mm)),
        force: (newton) => force(newton, units, { both: false, rounding }),
      }),
    lengthUnit: units === "inch" ? "in" : "mm",
    forceUnit: units === "inch" ? "lbf" : "N",
    heatUnit: units === "inch" ? "deg F" : "deg C",
  };
}

function showAll(units: UnitSystem): Show {
  const lengths = showLengths(units);
  return { ...lengths, ...showForces(units), ...showStrengths(units), ...showOthers(units, lengths) };
}

const shows: Readonly<Record<UnitSystem, Show>> = { inch: showAll("inch"), mm: showAll("mm") };

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

/** The same of a value that knows where it stands. */
export const clauseOf = ({ source, where }: Cited<unknown>): string => sourcePlace(source, where);
