// Which entry of a list decides: the first within a limit, or the one beside the greatest?
import type { Value } from "./formula.ts";
import type { NamedFunction } from "./trace.ts";

const listed = (value: Value | undefined): readonly number[] => [value ?? []].flat();

export const firstWithin: NamedFunction = {
  means: "number, from 1, of the first of these that is not above",
  of: (list, most) => listed(list).findIndex((one) => one <= Number(most)) + 1,
};

export const whereMost: NamedFunction = {
  means: "the entry of the second list where the first is greatest; the first of equals",
  of: (measure, entries) => {
    const list = listed(measure);
    return listed(entries)[list.indexOf(Math.max(...list))] ?? 0;
  },
};
