// Which values are named at the left of a plot, and where does each stand?
import { spread } from "../../drawing/leader.ts";
import { type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, textWidth } from "../../drawing/text.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";

/** A value on the upright axis and what it is called. */
export interface NamedValue {
  readonly y: Mm;
  readonly text: Text;
}

const LEADER_mm = 3;

/** Room that the names take left of the axis. */
export const namesWidth = (values: readonly NamedValue[]): Mm => Math.max(...values.map(({ text }) => textWidth(text))) + LEADER_mm;

/** Names that keep clear of each other, each with a thin line to its value on the axis at `x`. */
export function namesLeftOf(x: Mm, values: readonly NamedValue[]): readonly Part[] {
  const places = spread(values.map(({ y }) => ({ at: y, size: lineHeight() })));
  const leaders = values.map(
    ({ y }, index): Line => [
      { x: x - LEADER_mm + 0.8, y: places[index] ?? y },
      { x, y },
    ],
  );
  return [
    strokes("thin", leaders),
    ...values.map(({ text, y }, index) => label(text, { x: x - LEADER_mm, y: places[index] ?? y }, { anchor: "end" })),
  ];
}

/** Marks at the ends of lines, kept clear of each other, each with a thin line to its end at `x`. */
export function marksRightOf(x: Mm, values: readonly NamedValue[], { from, to }: { readonly from: Mm; readonly to: Mm }): readonly Part[] {
  const places = spread(
    values.map(({ y }) => ({ at: y, size: lineHeight() })),
    { from, to },
  );
  const leaders = values.map(
    ({ y }, index): Line => [
      { x, y },
      { x: x + LEADER_mm - 0.6, y: places[index] ?? y },
    ],
  );
  return [
    strokes("thin", leaders),
    ...values.map(({ text, y }, index) => label(text, { x: x + LEADER_mm, y: places[index] ?? y }, { weight: 700 })),
  ];
}
