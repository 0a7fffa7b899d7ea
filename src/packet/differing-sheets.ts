// Which sheets say something else than those that were issued before?
import type { Sheet } from "./packet.ts";

export interface DifferingSheet {
  readonly id: string;
  readonly name: string;
  readonly how: "differs" | "new" | "gone" | "same";
}

/** Sheets by their ids, whole: words, numbers and drawings. */
export function differingSheets(before: readonly Sheet[], after: readonly Sheet[]): readonly DifferingSheet[] {
  const issued = new Map(before.map((sheet) => [sheet.id, sheet]));
  const own = new Set(after.map(({ id }) => id));
  return [
    ...after.map(({ id, name, blocks }) => ({ id, name, how: howOf(issued.get(id)?.blocks, blocks) })),
    ...before.filter(({ id }) => !own.has(id)).map(({ id, name }) => ({ id, name, how: "gone" as const })),
  ];
}

function howOf(before: Sheet["blocks"] | undefined, after: Sheet["blocks"]): DifferingSheet["how"] {
  if (before === undefined) return "new";
  return JSON.stringify(before) === JSON.stringify(after) ? "same" : "differs";
}
