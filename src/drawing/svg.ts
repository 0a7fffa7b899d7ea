// How do parts become one finished SVG, measured in paper millimetres and named for people who cannot see it?
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import { grow } from "./box.ts";
import { writeMarks } from "./ink.ts";
import { escapeText, escapeValue, writeNumber } from "./markup.ts";
import { boxOfParts, type Part } from "./shape.ts";
import { FONT_FAMILY } from "./text.ts";

export interface FinishedSvg {
  readonly svg: string;
  readonly width_mm: Mm;
  readonly height_mm: Mm;
}

/** How much longer than its true size everything is drawn, for a printer that makes it as much too short. */
export interface Stretch {
  readonly across: number;
  readonly up: number;
}

/** Paper left around everything that is drawn. */
const EDGE_mm = 0.5;

/** Shapes first, then lines, then texts; lines of one pen become one path. The picture is as large as what is drawn. */
export function finishSvg(options: {
  /** Unique on its page; the ids inside are made from it. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly parts: readonly Part[];
  readonly stretch?: Stretch;
}): FinishedSvg {
  const { title, description, parts, stretch } = options;
  const id = escapeValue(options.id);
  const box = grow(boxOfParts(parts), EDGE_mm);
  const width = roundUp(box.right - box.left, 0.1);
  const height = roundUp(box.bottom - box.top, 0.1);
  const [width_mm, height_mm] = stretch === undefined ? [width, height] : [width * stretch.across, height * stretch.up];
  const size = `width="${writeNumber(width_mm)}mm" height="${writeNumber(height_mm)}mm"${stretch === undefined ? "" : ' preserveAspectRatio="none"'}`;
  const viewBox = `viewBox="${writeNumber(box.left)} ${writeNumber(box.top)} ${writeNumber(width)} ${writeNumber(height)}"`;
  // Joined, not added: a string that was added piece by piece keeps all its pieces.
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-desc" ${size} ${viewBox}`,
    ` stroke-linecap="butt" stroke-linejoin="miter" font-family="${FONT_FAMILY}" style="font-kerning:none">`,
    `<title id="${id}-title">${escapeText(title)}</title><desc id="${id}-desc">${escapeText(description)}</desc>`,
    ...writeMarks(parts),
    "</svg>",
  ].join("");
  return { svg, width_mm, height_mm };
}
