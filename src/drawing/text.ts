// How wide is a text on paper, and which paper does it take?
import type { Point } from "../geometry/vector.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { boxOf, overlap, type Quad } from "./box.ts";
import { element, writeNumber as short } from "./element.ts";
import { advances, UNITS_PER_EM } from "./font-metrics.ts";
import type { Part } from "./shape.ts";

/** Nothing on a drawing is smaller than 9 points. */
export const SMALLEST_mm = 3.175;
/** Marks that are looked for: 11 points. */
export const MARK_mm = 3.9;

/** Family name of the page's fonts first; the second name is for a drawing that is looked at by itself. */
export const FONT_FAMILY = "Hyper,Atkinson Hyperlegible,sans-serif";

/** Shares of the size: height of capitals, and how far any letter reaches above and below the baseline. */
const CAPITAL = 0.668;
const ABOVE = 0.76;
const BELOW = 0.22;

export interface TextStyle {
  readonly size?: Mm;
  readonly weight?: 400 | 700;
  readonly anchor?: "start" | "middle" | "end";
  /** Turned counter-clockwise as the reader sees it. */
  readonly angle?: Radian;
  /** White behind the text, where lines pass. */
  readonly ground?: boolean;
}

/** Sum of the advances; drawings are set without kerning so that this is exact. An unknown letter counts a full em. */
export function textWidth(text: string, { size = SMALLEST_mm, weight = 400 }: TextStyle = {}): Mm {
  const table = common[weight];
  let sum = 0;
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    sum += code < table.length ? (table[code] ?? 0) : rareAdvance(text, index, weight);
  }
  return (sum * size) / UNITS_PER_EM;
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
export const lineHeight = (size: Mm = SMALLEST_mm): Mm => size * (ABOVE + BELOW) + 0.35;

/** A text; `at` is the middle of its capitals, at its start, middle or end. */
export function label(text: string, at: Point, style: TextStyle = {}): Part {
  const { size = SMALLEST_mm, weight = 400, anchor = "start", angle = 0, ground = false } = style;
  const width = textWidth(text, style);
  const left = anchor === "start" ? 0 : anchor === "middle" ? -width / 2 : -width;
  const baseline = (CAPITAL / 2) * size;
  const turn = turner(at, angle);
  const quad: Quad = [
    turn(left, baseline - ABOVE * size),
    turn(left + width, baseline - ABOVE * size),
    turn(left + width, baseline + BELOW * size),
    turn(left, baseline + BELOW * size),
  ];
  const degrees = (-angle * 180) / Math.PI;
  // Turned about `at`; the baseline lies half a capital below it in the text's own direction.
  const transform: { transform?: string } = angle === 0 ? {} : { transform: `rotate(${short(degrees)} ${short(at.x)} ${short(at.y)})` };
  const words = element(
    "text",
    {
      x: at.x,
      y: at.y + baseline,
      ...transform,
      "font-size": size,
      ...(weight === 700 ? { "font-weight": 700 } : {}),
      ...(anchor === "start" ? {} : { "text-anchor": anchor }),
    },
    text,
  );
  const ownGround = element("rect", {
    class: "ground",
    x: at.x + left - 0.4,
    y: at.y + baseline - ABOVE * size,
    width: width + 0.8,
    height: (ABOVE + BELOW) * size,
    ...transform,
    fill: "#fff",
  });
  return { element: ground ? element("g", {}, ownGround, words) : words, box: boxOf(quad), texts: [quad] };
}

/** Several lines below each other, the first one at `at`. */
export const textLines = (lines: readonly string[], at: Point, style: TextStyle = {}): readonly Part[] =>
  lines.map((line, index) => label(line, { x: at.x, y: at.y + index * lineHeight(style.size) }, style));

/** Words of a sentence in lines no wider than `width`; a single longer word stands alone. */
export function wrap(text: string, width: Mm, style: TextStyle = {}): readonly string[] {
  const lines: string[] = [];
  const space = textWidth(" ", style);
  let used = Number.POSITIVE_INFINITY;
  for (const word of text.split(" ")) {
    const needs = textWidth(word, style);
    if (used + space + needs <= width) {
      lines[lines.length - 1] += ` ${word}`;
      used += space + needs;
    } else {
      lines.push(word);
      used = needs;
    }
  }
  return lines;
}

/** The angle at which text along a step on paper can be read from below or from the right, and whether it then runs against the step. */
export function readable(step: Point): { readonly angle: Radian; readonly against: boolean } {
  const LEAST = 1e-6;
  const against = step.x < -LEAST || (Math.abs(step.x) <= LEAST && step.y > 0);
  const [x, y] = against ? [-step.x, -step.y] : [step.x, step.y];
  const angle = Math.atan2(-y, x);
  return { angle: Math.abs(angle) < LEAST ? 0 : angle, against };
}

/** The first candidate whose texts are clear of all obstacles; the last one if none is. */
export function firstClear(candidates: readonly Part[], obstacles: readonly Quad[]): Part {
  const clear = candidates.find((part) => !part.texts.some((quad) => obstacles.some((other) => overlap(quad, other))));
  const chosen = clear ?? candidates.at(-1);
  if (chosen === undefined) throw new RangeError("nothing to choose from");
  return chosen;
}

function turner(at: Point, angle: Radian): (along: Mm, down: Mm) => Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (along, down) => ({ x: at.x + along * cos + down * sin, y: at.y - along * sin + down * cos });
}
