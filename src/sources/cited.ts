// How does a value carry its origin? By source id and the place in that source.
import type { SourceId } from "./sources.ts";

/** A value with the source it was taken from. */
export interface Cited<T> {
  readonly value: T;
  readonly source: SourceId;
  /** Clause, table, equation or page. */
  readonly where: string;
  readonly note?: string;
}

export const cite = <T>(value: T, source: SourceId, where: string, note?: string): Cited<T> =>
  note === undefined ? { value, source, where } : { value, source, where, note };

/** A rule that the trade follows and that no published source states. */
export const practice = <T>(value: T, where: string): Cited<T> => ({ value, source: "practice", where });

/** A value that the job file states itself. */
export const fromJob = <T>(value: T, where: string): Cited<T> => ({ value, source: "job", where });

/** A number remembered but not looked up: printed as such. */
export const fromMemory = <T>(value: T, where: string): Cited<T> => ({ value, source: "memory", where });
