// What do all drawings of a packet share: how they are finished, how their notes stand, how their numbers are printed?
import type { Room, Scale } from "../../drawing/paper.ts";
import { scaleBar } from "../../drawing/ruler.ts";
import { boxOfParts, group, type Part } from "../../drawing/shape.ts";
import { finishSvg, type Stretch } from "../../drawing/svg.ts";
import { label, lineHeight, wrap } from "../../drawing/text.ts";
import { leftMouth, rightMouth, seenFrom } from "../../plan/corner-post.ts";
import type { Bay, Plan, Vertical } from "../../plan/plan.ts";
import type { Drawing, Text } from "../packet.ts";
import { type Show, showIn } from "../show-number.ts";

/** How the numbers of a plan are printed. */
export const showOf = (plan: Plan): Show => showIn(plan.job.units);

export interface DrawingParts {
  readonly id: string;
  readonly title: Text;
  readonly description: Text;
  readonly parts: readonly Part[];
  readonly stretch?: Stretch;
}

export function finishDrawing(drawing: DrawingParts): Drawing {
  const { id, title, description } = drawing;
  const { svg, width_mm, height_mm } = finishSvg(drawing);
  return { kind: "drawing", id, title, description, svg, width_mm, height_mm };
}

/** Width that the scale bar with its words may take beside the notes. */
const BAR_ROOM_mm = 58;

/** Under everything else: the scale bar, if there is a scale, and beside it the notes. */
export function footer(
  above: readonly Part[],
  {
    scale,
    units,
    notes,
    room,
  }: { readonly scale: Scale | null; readonly units: "inch" | "mm"; readonly notes: readonly Text[]; readonly room: Room },
): Part {
  const box = boxOfParts(above);
  const top = box.bottom + 1.8;
  const bar = scale === null ? [] : [scaleBar({ x: box.left, y: top }, { scale, units })];
  const left = box.left + (scale === null ? 0 : BAR_ROOM_mm);
  const lines = notes.flatMap((note) => wrap(note, room.width - 1.2 - (left - box.left)));
  const words = lines.map((line, index) => label(line, { x: left, y: top + 1.6 + index * lineHeight() }));
  return group([...bar, ...words]);
}

/** The two verticals that a bay lies between. */
export function membersOf(plan: Plan, bay: Bay): { readonly left: Vertical; readonly right: Vertical } {
  const index = plan.sides.findIndex(({ id }) => id === bay.sideId);
  // One post at a corner is seen from the side that is drawn.
  const [left, right] = [bay.leftId, bay.rightId].map((id) => verticalOf(plan, id));
  if (left === undefined || right === undefined) throw new RangeError(`bay ${bay.id} has no two members`);
  return bay.kind === "corner" ? { left, right } : { left: seenFrom(left, index), right: seenFrom(right, index) };
}

export function verticalOf(plan: Plan, id: string): Vertical {
  const found = plan.verticals.find((vertical) => vertical.id === id);
  if (found === undefined) throw new RangeError(`no vertical ${id}`);
  return found;
}

/** Where the cable meets it, in stations of the side that it is seen from. */
export const leftFace = leftMouth;
export const rightFace = rightMouth;

/** "05": courses are numbered as in their marks. */
export const courseName = (number: number): Text => String(number).padStart(2, "0");

/** Equal texts once, with their number: `2-7/8" (4 PLS), 3" (2 PLS)`. */
export function places(texts: readonly Text[]): Text {
  const counts = new Map<Text, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].map(([text, count]) => `${text} (${count} PLS)`).join(", ");
}
