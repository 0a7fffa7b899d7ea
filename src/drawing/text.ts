// How wide is a text on paper, and which paper does it take?
import type { Point } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { type Box, boxOf, meet, overlap, type Quad, quadOf } from "./box.ts";
import { advances, UNITS_PER_EM } from "./font-metrics.ts";
import type { Part } from "./shape.ts";
import { ABOVE, BELOW, CAPITAL } from "./text-metrics.ts";

/** Nothing on a drawing is smaller than 9 points. */
export const SMALLEST_mm = 3.175;
/** Marks that are looked for: 11 points. */
export const MARK_mm = 3.9;

/** Family name of the page's fonts first; the second name is for a drawing that is looked at by itself. */
export const FONT_FAMILY = "Hyper,Atkinson Hyperlegible,sans-serif";

export interface TextStyle {
  readonly size?: Mm;
  readonly weight?: 400 | 700;
  readonly anchor?: "start" | "middle" | "end";
  /** Turned counter-clockwise as the reader sees it. */
  readonly angle?: Radian;
  /** White behind the text, where lines pass; a number makes it at least so wide. */
  readonly ground?: boolean | Mm;
}

/** Sum of the advances; drawings are set without kerning so that this is exact. An unknown letter counts a full em. */
export function textWidth(text: string, { size = SMALLEST_mm, weight = 400 }: TextStyle = {}): Mm {
  return (advanceOf(text, weight, 0, text.length) * size) / UNITS_PER_EM;
}

/** The advances of a part of a text. */
function advanceOf(text: string, weight: 400 | 700, from: number, to: number): number {
  const table = common[weight];
  let sum = 0;
  for (let index = from; index < to; index++) {
    const code = text.charCodeAt(index);
    sum += code < table.length ? (table[code] ?? 0) : rareAdvance(text, index, weight);
  }
  return sum;
}

/** Advances of the first 256 characters by their codes: most texts hold no others, and every label is measured. */
const commonOf = (weight: 400 | 700): readonly number[] =>
  Array.from({ length: 256 }, (_, code) => advances[weight][String.fromCharCode(code)] ?? UNITS_PER_EM);
const common = { 400: commonOf(400), 700: commonOf(700) } as const;

/** The second half of a surrogate pair adds nothing to the first. */
function rareAdvance(text: string, index: number, weight: 400 | 700): number {
  const code = text.codePointAt(index) ?? 0;
  const isSecondHalf = code >= 0xdc00 && code <= 0xdfff && index > 0 && (text.codePointAt(index - 1) ?? 0) > 0xffff;
  return isSecondHalf ? 0 : (advances[weight][String.fromCodePoint(code)] ?? UNITS_PER_EM);
}

/** The height a line of text takes, with the gap to the next. */
export const lineHeight = (size: Mm = SMALLEST_mm): Mm => size * (ABOVE + BELOW) + LINE_GAP_mm;
const LINE_GAP_mm = 0.35;

/** The ground reaches this far beyond both ends of its text. */
const GROUND_mm = 0.4;

/** A text; `at` is the middle of its capitals, at its start, middle or end. */
export function label(text: string, at: Point, style: TextStyle = {}): Part {
  const { size = SMALLEST_mm, weight = 400, anchor = "start", angle = 0, ground = false } = style;
  const width = textWidth(text, style);
  const left = anchor === "start" ? 0 : anchor === "middle" ? -width / 2 : -width;
  const top = (CAPITAL / 2 - ABOVE) * size;
  const bottom = (CAPITAL / 2 + BELOW) * size;
  const level = { left: at.x + left, top: at.y + top, right: at.x + left + width, bottom: at.y + bottom };
  const quad = angle === 0 ? quadOf(level) : turned(at, angle, { left, right: left + width, top, bottom });
  const behind = ground === false ? null : groundOf({ left, width, height: bottom - top }, ground);
  return {
    mark: { kind: "words", words: { text, at, size, weight, anchor, angle, ground: behind } },
    box: angle === 0 ? level : boxOf(quad),
    texts: [quad],
  };
}

interface Ground {
  readonly left: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** Around the text, as far to its left as to its right; one of a given width belongs to several lines and reaches the next. */
function groundOf({ left, width, height }: Ground, given: true | Mm): Ground {
  const wide = Math.max(width, given === true ? 0 : given) + 2 * GROUND_mm;
  return { left: left - (wide - width) / 2, width: wide, height: height + (given === true ? 0 : LINE_GAP_mm) };
}

/** Several lines below each other, the first one at `at`. */
export const textLines = (lines: readonly string[], at: Point, style: TextStyle = {}): readonly Part[] =>
  lines.map((line, index) => label(line, { x: at.x, y: at.y + index * lineHeight(style.size) }, style));

/** Words of a sentence in lines no wider than `width`; a single longer word stands alone. */
export function wrap(text: string, width: Mm, { size = SMALLEST_mm, weight = 400 }: TextStyle = {}): readonly string[] {
  const lines: string[] = [];
  const space = textWidth(" ", { size, weight });
  let used = Number.NEGATIVE_INFINITY;
  let lineStart = 0;
  for (let start = 0; start <= text.length; ) {
    const found = text.indexOf(" ", start);
    const end = found < 0 ? text.length : found;
    const needs = (advanceOf(text, weight, start, end) * size) / UNITS_PER_EM;
    if (start > lineStart && used + space + needs > width) {
      lines.push(text.slice(lineStart, start - 1));
      lineStart = start;
    }
    if (needs > width && lineStart === start) {
      const cut = fitting(text, { start, end, weight, most: (width * UNITS_PER_EM) / size });
      if (cut < end) {
        lines.push(text.slice(start, cut));
        lineStart = cut;
        start = cut;
        used = Number.NEGATIVE_INFINITY;
        continue;
      }
    }
    used = lineStart === start ? needs : used + space + needs;
    start = end + 1;
  }
  lines.push(text.slice(lineStart));
  return lines;
}

/** Where a word that is wider than its line is broken: behind the letters that fit, at least one. */
function fitting(
  text: string,
  { start, end, weight, most }: { readonly start: number; readonly end: number; readonly weight: 400 | 700; readonly most: number },
): number {
  let sum = advanceOf(text, weight, start, start + 1);
  for (let index = start + 1; index < end; index++) {
    sum += advanceOf(text, weight, index, index + 1);
    if (sum > most) return index;
  }
  return end;
}

/** The angle at which text along a step on paper can be read from below or from the right, and whether it then runs against the step. */
export function readable(step: Point): { readonly angle: Radian; readonly against: boolean } {
  const LEAST = 1e-6;
  const against = step.x < -LEAST || (Math.abs(step.x) <= LEAST && step.y > 0);
  const [x, y] = against ? [-step.x, -step.y] : [step.x, step.y];
  const angle = Math.atan2(-y, x);
  return { angle: Math.abs(angle) < LEAST ? 0 : angle, against };
}

/** The first candidate whose texts are clear of all obstacles; the last one if none is. Later ones are not even made. */
export function firstClear(candidates: Iterable<Part>, obstacles: readonly Quad[]): Part {
  const boxes = obstacles.map(boxOf);
  const isClear = (quad: Quad): boolean => {
    const own = boxOf(quad);
    return !obstacles.some((other, index) => meet(own, boxes[index] ?? own) && overlap(quad, other));
  };
  let last: Part | undefined;
  for (const part of candidates) {
    if (part.texts.every(isClear)) return part;
    last = part;
  }
  if (last === undefined) throw new RangeError("nothing to choose from");
  return last;
}

/** The corners of a box about `at`, turned with it. */
function turned(at: Point, angle: Radian, { left, right, top, bottom }: Box): Quad {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corner = (along: Mm, down: Mm): Point => ({ x: at.x + along * cos + down * sin, y: at.y - along * sin + down * cos });
  return [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
}
