// What has changed between two plans of one job? Types: plain data, written as changes.json and printed on its own sheet.
import type { Status } from "../job/identity.ts";
import type { Plan, Verdict } from "../plan/plan.ts";
import type { Mm } from "../units/quantity.ts";

/** What has to be done, the costliest to miss first. */
export type Todo = "ask" | "mark" | "set" | "bore" | "cut" | "buy" | "tighten" | "read";

/** What a change is about. */
export type Subject =
  | "side"
  | "rail"
  | "post"
  | "spacer"
  | "pier"
  | "bore"
  | "strand"
  | "cable"
  | "end"
  | "tension"
  | "reading"
  | "part"
  | "item"
  | "tool"
  | "check";

/** A number knows how it is printed. */
export type Value =
  | string
  | {
      readonly value: number;
      readonly kind:
        | "height"
        | "station"
        | "size"
        | "diameter"
        | "depth"
        | "across"
        | "order"
        | "force"
        | "angle"
        | "slope"
        | "turns"
        | "count";
    };

export interface Difference {
  /** "height", "diameter", "target". */
  readonly of: string;
  /** null where there was none. */
  readonly from: Value | null;
  readonly to: Value | null;
}

export interface Change {
  /** From 1, in the order of the sheet. */
  readonly number: number;
  readonly todo: Todo;
  readonly subject: Subject;
  /** renamed: the same thing at the same place, under another mark. */
  readonly what: "moved" | "added" | "removed" | "changed" | "renamed";
  /** As the new sheets have them; of what was removed, as the issued ones had them. */
  readonly marks: readonly string[];
  readonly differences: readonly Difference[];
  /** Of a bore: the least wood, or metal, between its hole and one of the issued plan that is not bored any more; below 0 they cut each other. */
  readonly left?: Mm;
}

/** A change before it has its number. */
export type Draft = Omit<Change, "number">;

/** A value of the job file by its key: "guard: sides: 3: length". Texts as they were written; null where the key was not there. */
export interface ChangedValue {
  readonly key: string;
  readonly from: string | null;
  readonly to: string | null;
}

/** What one of the two job files says of itself. */
export interface Edition {
  readonly revision: string;
  readonly issueDate: string;
  readonly status: Status;
  readonly verdict: Verdict;
}

export interface Changes {
  readonly jobNumber: string;
  readonly from: Edition;
  readonly to: Edition;
  /** Revisions between the two, by their marks. */
  readonly between: readonly string[];
  readonly changes: readonly Change[];
  readonly values: readonly ChangedValue[];
}

/** The plan that was issued before, and what has changed since. */
export interface Revised {
  readonly issued: Plan;
  readonly changes: Changes;
}
