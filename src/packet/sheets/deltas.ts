// Which values of a schedule have changed? A triangle with the number of the change stands beside them.
import type { Change } from "../../changes/changes.ts";
import type { Cell, Text } from "../packet.ts";
import { refer, type SheetContext } from "./kit.ts";

/** Whether a change stands beside something: what is gone stands nowhere. */
type Part = (change: Change) => boolean;

const changesOf = ({ revised }: SheetContext, isPart: Part): readonly Change[] =>
  (revised?.changes.changes ?? []).filter((change) => change.what !== "removed" && isPart(change));

/** A text with the numbers of the changes that it is part of; as it is where it is part of none. */
export function withDeltas(context: SheetContext, text: Text, isPart: Part): Cell {
  const numbers = changesOf(context, isPart).map(({ number }) => number);
  return numbers.length === 0 ? text : { text, delta: numbers.join(", ") };
}

/** Of a bore: where it is. */
export const isHeight: Part = ({ subject, differences }) => subject === "bore" && differences.some(({ of }) => of.startsWith("height"));

/** Of an upright or its bores what the bore schedule says of it: not where it stands. */
export const isOfBores: Part = ({ subject, what, differences }) =>
  subject === "bore" ||
  (["post", "spacer", "pier"].includes(subject) &&
    (what === "added" || what === "renamed" || differences.some(({ of }) => of === "section" || of.startsWith("size "))));

/** What the triangles mean, on a sheet that has one. */
export function deltaNotes(context: SheetContext, isPart: Part): readonly Text[] {
  const { revised } = context;
  return revised === undefined || changesOf(context, isPart).length === 0
    ? []
    : [
        `A black triangle with a number: changed since revision ${revised.changes.from.revision}; the number is that of ${refer(context, "changes")}.`,
      ];
}
