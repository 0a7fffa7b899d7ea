// Which words stand at a hole of a template, and where have they room?

import type { Part } from "../../drawing/shape.ts";
import { label, lineHeight, MARK_mm, SMALLEST_mm, textWidth, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Face } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { halfHeight, isOffMiddle, type TemplateHole, widestOf } from "./faces.ts";

/** Lines through the middle reach this far beyond the hole's edge. */
export const BEYOND_mm = 4;
/** Words begin this far from the hole's edge. */
export const WORDS_mm = 5;
/** From the middle of a hole down to the first line that says what is bored. */
const BORED_mm = 2.4;
/** From the middle of a hole up to the middle of its course and height. */
const NAME_mm = lineHeight(MARK_mm) / 2 + 0.4;

export interface WordsRoom {
  readonly show: Show;
  /** From the middle of the face to where words should end. */
  readonly half: Mm;
  /** The face that is looked at: it says on which hand the deck is. */
  readonly face: Face;
}

interface Line {
  readonly text: Text;
  readonly isBold: boolean;
  /** To the right of the middle of the face, and above the middle of the hole. */
  readonly at: Point;
  readonly anchor: "start" | "middle" | "end";
}

export interface HoleWords {
  readonly lines: readonly Line[];
  /** Where the words of the hole reach, from its middle up and down. */
  readonly above: Mm;
  readonly below: Mm;
  /** Beside the hole, or one line under the other across the face. */
  readonly lay: "beside" | "stacked";
}

/** Beside the hole where its words have room, else across the face: above or below, where the bore does not come out. */
export function holeWords(hole: TemplateHole, room: WordsRoom): HoleWords {
  const { half, show } = room;
  const own = half - Math.abs(hole.here.right) - acrossOf(hole) / 2 - WORDS_mm;
  const name = isOffMiddle(hole) ? `${nameOf(hole)} ${show.tape(hole.here.height)}` : show.tape(hole.here.height);
  const words = [...boredWords(hole, show), ...offsetWords(hole, room)];
  const widest = Math.max(boldWidth(name), ...words.flatMap((text) => text.split(" ").map((word) => textWidth(word))));
  const lines = words.flatMap((text) => wrap(text, own));
  // What stands beside a hole is broken no more than once, and then where it stands beside the middle line.
  const isShort = lines.length <= words.length + (isOffMiddle(hole) ? 1 : 0);
  return widest <= own && isShort ? beside(hole, name, lines) : stacked(hole, words, room);
}

/** Across the upright: where a round bit goes in askew, the hole is an ellipse. */
export const acrossOf = (hole: TemplateHole): Mm => widestOf(hole) / Math.cos(hole.skew);

const nameOf = ({ course }: TemplateHole): Text => String(course).padStart(2, "0");
const boldWidth = (text: Text): Mm => textWidth(text, BOLD);
const BOLD = { size: MARK_mm, weight: 700 } as const;

/** In the middle of a face the course stands on the left and the height on the right; beside it all stands on the outer side. */
function beside(hole: TemplateHole, name: Text, words: readonly Text[]): HoleWords {
  const { right } = hole.here;
  const isMiddle = !isOffMiddle(hole);
  const side = !isMiddle && right < 0 ? -1 : 1;
  const away = acrossOf(hole) / 2 + WORDS_mm;
  const [x, anchor] = [right + side * away, side < 0 ? "end" : "start"] as const;
  return {
    lines: [
      ...(isMiddle ? [{ text: nameOf(hole), isBold: true, at: { x: right - away, y: NAME_mm }, anchor: "end" } as const] : []),
      { text: name, isBold: true, at: { x, y: NAME_mm }, anchor },
      ...words.map((text, index) => ({ text, isBold: false, at: { x, y: 0 - BORED_mm - index * lineHeight() }, anchor })),
    ],
    above: Math.max(halfHeight(hole) + BEYOND_mm, 3 * lineHeight()),
    below: Math.max(halfHeight(hole) + BEYOND_mm, 3 * lineHeight(), BORED_mm + words.length * lineHeight()),
    lay: "beside",
  };
}

/** Between the lines through the middle of a hole and words above or below them. */
const AIR_mm = 0.6;

function stacked(hole: TemplateHole, words: readonly Text[], { half, show }: WordsRoom): HoleWords {
  const { here, there } = hole;
  const title = `${nameOf(hole)}   ${show.tape(here.height)}`;
  const lines = words.flatMap((text) => wrap(text, 2 * half));
  const reach = halfHeight(hole) + BEYOND_mm + AIR_mm;
  const tall = lineHeight(MARK_mm) + lines.length * lineHeight();
  const isAbove = there.height < here.height || (isOffMiddle(hole) && here.right < 0);
  const first = isAbove ? reach + tall - lineHeight(MARK_mm) / 2 : 0 - reach - lineHeight(MARK_mm) / 2;
  const wide = Math.max(boldWidth(title), ...lines.map((line) => textWidth(line)));
  // As near to the hole as the face allows.
  const x = Math.max(Math.min(here.right, half - wide / 2), wide / 2 - half);
  const next = first - (lineHeight(MARK_mm) + lineHeight()) / 2;
  return {
    lines: [
      { text: title, isBold: true, at: { x, y: first }, anchor: "middle" },
      ...lines.map((text, index) => ({ text, isBold: false, at: { x, y: next - index * lineHeight() }, anchor: "middle" }) as const),
    ],
    above: reach + (isAbove ? tall : 0),
    below: reach + (isAbove ? 0 : tall),
    lay: "stacked",
  };
}

/** `middle` is that of the face at the height of the hole. */
export const wordParts = ({ lines }: HoleWords, middle: Point): readonly Part[] =>
  lines.map(({ text, isBold, at, anchor }) =>
    label(text, { x: middle.x + at.x, y: middle.y - at.y }, { ...(isBold ? BOLD : { size: SMALLEST_mm }), anchor, ground: true }),
  );

/** "1/16" to the deck's side" of the middle line: whoever looks at the left face has the deck on the right hand. */
function offsetWords(hole: TemplateHole, { show, face }: Pick<WordsRoom, "show" | "face">): readonly Text[] {
  const { right } = hole.here;
  if (!isOffMiddle(hole)) return [];
  return [`${show.tape(Math.abs(right))} ${right > 0 === (face === "left") ? "to the deck's side" : "away from the deck"}`];
}

function boredWords(hole: TemplateHole, show: Show): readonly Text[] {
  const { diameter, sleeveHole, counterbore, here, there, angle, skew, isExit, through, oneWall, drilledLength } = hole;
  if (skew !== 0) return isExit ? ["comes out here"] : [`bore ${show.diameterOne(diameter)}`, `bit ${wayWords(hole, show)}`];
  const bored =
    counterbore === null
      ? through
        ? `bore ${show.diameterOne(diameter)}`
        : oneWall
          ? `hole ${show.diameterOne(diameter)}, this wall only`
          : `blind ${show.diameterOne(diameter)} x ${show.fine(drilledLength)} deep`
      : `${sleeveHole === null ? "counterbore" : "in the sleeve"} ${show.diameterOne(counterbore.diameter)} x ${show.tape(counterbore.depth)}`;
  if (angle === 0) return [bored, ...(sleeveHole === null || counterbore !== null ? [] : [`sleeve ${show.diameterOne(sleeveHole)}`])];
  const rise = there.height - here.height;
  return [`${bored}, ${slantWords(hole, show)}`, `out ${show.tape(Math.abs(rise))} ${rise < 0 ? "lower" : "higher"}`];
}

/** "45 deg to the right": which way a bit goes on the mitre, for somebody who looks at this face. */
export const wayWords = ({ skew }: Pick<TemplateHole, "skew">, show: Show): Text =>
  `${show.angle(Math.abs(skew))} to the ${skew > 0 ? "right" : "left"}`;

/** "33.7 deg down": which way a bit goes that is held on this face. */
export const slantWords = ({ angle }: Pick<TemplateHole, "angle">, show: Show): Text =>
  angle === 0 ? "level" : `${show.angle(Math.abs(angle))} ${angle < 0 ? "down" : "up"}`;
