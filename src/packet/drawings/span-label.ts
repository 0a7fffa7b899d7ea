// What is written in a bay of an elevation, and how does it stay clear of the cables?
import type { Part } from "../../drawing/shape.ts";
import { label, lineHeight, textLines, textWidth } from "../../drawing/text.ts";
import type { Bay } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Show } from "../show-number.ts";
import { leftFace, membersOf, rightFace } from "./kit.ts";
import { openingOn } from "./raked.ts";
import type { Scene } from "./side-scene.ts";

/** Name and free length in the bay: on one line, on two, or turned; what has no room at all stands in the table only. */
export function spanLabel({ plan, side, stretch, view }: Scene, bay: Bay, show: Show): readonly Part[] {
  const { left, right } = membersOf(plan, bay);
  const [from, to] = [Math.max(rightFace(left), stretch.from), Math.min(leftFace(right), stretch.to)];
  // Level, as it is drawn; on a rake the cable is longer.
  const level = leftFace(right) - rightFace(left);
  const { bottom, top } = openingOn(plan, side);
  const whole = to - from > level - 1;
  // A bay cut by a match line is named in the larger half of it.
  if (bay.kind !== "bay" || to - from < 0.45 * level) return [];
  const middle = view.point({ x: (from + to) / 2, y: (bottom + top) / 2 });
  const room = {
    width: level * view.ratio * (whole ? 1 : 0.5) - 1.6,
    height: (top - bottom) * view.ratio - 1,
  };
  const span = `(span ${show.tape(bay.free)})`;
  const rows = [
    [bay.id, span],
    [bay.id, "(span", `${show.tape(bay.free)})`],
  ].find((lines) => Math.max(...lines.map((line) => textWidth(line))) <= room.width && lines.length * lineHeight() <= room.height);
  if (rows !== undefined) {
    const first = { x: middle.x, y: middle.y - ((rows.length - 1) * lineHeight()) / 2 };
    return textLines(rows, first, { anchor: "middle", ground: groundFor(rows) });
  }
  // The notes say that spans stand in parentheses: half a short bay has no room for the word.
  const turned = [[`${bay.id} ${span}`], [bay.id, span], [`${bay.id} (${show.tape(bay.free)})`]].find(
    (lines) => Math.max(...lines.map((line) => textWidth(line))) <= room.height && lines.length * lineHeight() <= room.width,
  );
  // Turned text is read from the right, so that its first line lies to the left.
  const left_mm = middle.x - (((turned?.length ?? 1) - 1) * lineHeight()) / 2;
  return (turned ?? []).map((line, index, lines) =>
    label(line, { x: left_mm + index * lineHeight(), y: middle.y }, { anchor: "middle", angle: Math.PI / 2, ground: groundFor(lines) }),
  );
}

/** All lines on grounds of one width: no end of a cable stands beside a short one. */
const groundFor = (lines: readonly string[]): Mm => Math.max(...lines.map((line) => textWidth(line)));
