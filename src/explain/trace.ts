// What is told of one number of the plan: its formula, its inputs, its source, its rounding? Types of the explanations.
import type { SourceId } from "../sources/sources.ts";
import type { Value } from "./formula.ts";

/** Of what a number counts, so that it can be printed in its unit. */
export type Kind =
  | "length"
  | "force"
  | "angle"
  | "share"
  | "percent"
  | "count"
  | "turns"
  | "frequency"
  | "temperature"
  | "warmth"
  | "stress"
  | "moment"
  | "turn stiffness"
  | "axial stiffness"
  | "bending stiffness"
  | "flexibility"
  | "line load"
  | "area"
  | "section modulus"
  | "second moment"
  | "mass"
  | "per length"
  | "per degree"
  | "sum of force and length"
  | "months"
  | "money";

/** Where a value was taken from. */
export interface Origin {
  readonly source: SourceId;
  readonly where: string;
}

/** A number that goes into a formula. */
export interface Input {
  readonly symbol: string;
  readonly what: string;
  readonly value: Value;
  readonly kind: Kind;
  /** Where it stands in the plan; empty when the plan does not keep it. */
  readonly paths: readonly string[];
  /** null where its own path tells more. */
  readonly origin: Origin | null;
}

/** A step of the calculation that no short formula says. */
export interface NamedFunction {
  readonly means: string;
  readonly of: (...values: readonly Value[]) => number;
}

/** What a rule says of a number. */
export interface Working {
  /** Right-hand side in the symbols of the inputs. */
  readonly formula: string;
  readonly inputs: readonly Input[];
  readonly functions?: Readonly<Record<string, NamedFunction>>;
  readonly origin: Origin;
  /** How it is rounded and in which direction; left out where the plan keeps it as it is. */
  readonly rounding?: string;
}

/** A number of the plan with all that leads to it. */
export interface Trace extends Working {
  readonly path: string;
  /** The same place counted from 0, as in plan.json. */
  readonly jsonPath: string;
  readonly what: string;
  readonly kind: Kind;
  /** As the plan has it. */
  readonly value: number;
  /** What the formula makes of the inputs. */
  readonly recomputed: number;
}
