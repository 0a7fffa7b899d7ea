// In which layers is a drawing written, and how is each mark written into its layer?
import { hatchLines } from "./hatch.ts";
import { escapeText, writeNumber, writePath } from "./markup.ts";
import { type PenName, strokeOf } from "./pen.ts";
import type { Fill, Mark, Part, Words } from "./shape.ts";
import { ABOVE, CAPITAL } from "./text-metrics.ts";

/** Layers, lowest first. Grounds lie under all texts, so that none cuts a neighbour's letters. */
interface Ink {
  shapes: string;
  /** Lines of one pen are one path; pens in the order in which they first come. */
  readonly paths: Map<PenName, string>;
  rules: string;
  grounds: string;
  words: string;
}

/** Shapes first, then lines, then texts: the markup of each layer. */
export function writeMarks(parts: readonly Part[]): readonly string[] {
  const ink: Ink = { shapes: "", paths: new Map(), rules: "", grounds: "", words: "" };
  for (const { mark } of parts) put(ink, mark);
  const lines = [...ink.paths].map(([pen, path]) => `<path d="${path}" fill="none"${strokeOf(pen)}/>`);
  return [ink.shapes, ...lines, ink.rules, ink.grounds, ink.words];
}

function put(ink: Ink, mark: Mark): void {
  switch (mark.kind) {
    case "group":
      for (const part of mark.parts) put(ink, part.mark);
      return;
    case "lines": {
      if (mark.covered) {
        ink.shapes += `<path d="${mark.lines.map(writePath).join("")}" fill="none"${strokeOf(mark.pen)}/>`;
        return;
      }
      let path = ink.paths.get(mark.pen) ?? "";
      for (const line of mark.lines) path += writePath(line);
      ink.paths.set(mark.pen, path);
      return;
    }
    case "hatch": {
      let path = ink.paths.get("thin") ?? "";
      for (const line of hatchLines(mark.area)) path += writePath(line);
      ink.paths.set("thin", path);
      return;
    }
    case "polygon":
      ink.shapes += `<path d="${writePath(mark.points)}Z" fill="${colour(mark.fill)}"${mark.pen === null ? "" : strokeOf(mark.pen)}/>`;
      return;
    case "circle":
      ink.shapes += `<circle cx="${writeNumber(mark.centre.x)}" cy="${writeNumber(mark.centre.y)}" r="${writeNumber(mark.radius)}" fill="${colour(mark.fill)}"${strokeOf(mark.pen)}/>`;
      return;
    case "ellipse":
      ink.shapes += `<ellipse cx="${writeNumber(mark.centre.x)}" cy="${writeNumber(mark.centre.y)}" rx="${writeNumber(mark.across)}" ry="${writeNumber(mark.up)}" fill="${mark.fill === "none" ? "none" : colour(mark.fill)}"${strokeOf(mark.pen)}/>`;
      return;
    case "calibration":
      ink.rules += `<line class="calibration" x1="${writeNumber(mark.from.x)}" y1="${writeNumber(mark.from.y)}" x2="${writeNumber(mark.to.x)}" y2="${writeNumber(mark.to.y)}"${strokeOf("heavy")}/>`;
      return;
    case "words":
      putWords(ink, mark.words);
  }
}

const colour = (fill: Fill): string => (fill === "white" ? "#fff" : "#000");

function putWords(ink: Ink, { text, at, size, weight, anchor, angle, ground }: Words): void {
  const baseline = at.y + (CAPITAL / 2) * size;
  // Turned about `at`; the baseline lies half a capital below it in the text's own direction.
  const turn = angle === 0 ? "" : ` transform="rotate(${writeNumber((-angle * 180) / Math.PI)} ${writeNumber(at.x)} ${writeNumber(at.y)})"`;
  const letters = `${weight === 700 ? ' font-weight="700"' : ""}${anchor === "start" ? "" : ` text-anchor="${anchor}"`}`;
  ink.words += `<text x="${writeNumber(at.x)}" y="${writeNumber(baseline)}"${turn} font-size="${size}"${letters}>${escapeText(text)}</text>`;
  if (ground === null) return;
  ink.grounds += `<rect class="ground" x="${writeNumber(at.x + ground.left)}" y="${writeNumber(baseline - ABOVE * size)}" width="${writeNumber(ground.width)}" height="${writeNumber(ground.height)}"${turn} fill="#fff"/>`;
}
