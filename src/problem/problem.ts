// What can be wrong with a job? Problems are values: they carry their place in the job and what to do about it.

/** A path into the job, as keys and list positions: ["guard", "sides", 0, "length"]. */
export type JobPath = readonly (string | number)[];

export interface Problem {
  readonly severity: "error" | "warning";
  /** Where in the job file; an empty path means the whole file. */
  readonly path: JobPath;
  /** "key" puts the caret under the key, "value" (the usual case) under the value. */
  readonly at?: "key" | "value";
  /** A place by position, for text that is no YAML at all: offsets of the first and the next character. */
  readonly range?: readonly [from: number, to: number];
  readonly what: string;
  readonly why?: string;
  readonly fix: string;
}

/** A value, unless an error stood in the way, with all that was noticed on the way. */
export interface Outcome<T> {
  readonly value: T | undefined;
  readonly problems: readonly Problem[];
}

export const hasErrors = (problems: readonly Problem[]): boolean => problems.some((problem) => problem.severity === "error");
