// Which thread did somebody write? Its name in one spelling, its outside diameter and its pitch.
import { quoted, type Reading, readDecimal, refuse, tidy } from "./notation.ts";
import { millimetres } from "./print.ts";
import type { Mm } from "./quantity.ts";

/** A screw thread: its name in one spelling, outside diameter and pitch. */
export interface Thread {
  readonly name: string;
  readonly diameter: Mm;
  readonly pitch: Mm;
}

/** `1/4-28` (diameter and turns per inch), `10-32` (number and turns per inch) or `M6x1` (diameter and pitch in mm) */
export function readThread(text: string): Reading<Thread> {
  const thread = unifiedOf(tidy(text)) ?? metricOf(tidy(text));
  if (thread === null) {
    return refuse(
      `${quoted(text)} is not a thread`,
      "write diameter and turns per inch as 1/4-28, or a metric thread with its pitch as M6x1",
    );
  }
  const { diameter, pitch } = thread;
  if (pitch <= diameter / COARSEST && pitch >= diameter / FINEST) return { value: thread };
  const sizes = `${millimetres(pitch, { decimals: 2 })} of pitch on ${millimetres(diameter, { decimals: 2 })} of diameter`;
  return refuse(`${quoted(text)} is no thread that is cut: it has ${sizes}`, "read it again on the stud or its packing");
}

/** From memory: a coarse thread has four turns and more on its own diameter, the finest of the standards thirty. Beyond these something is misread. */
const [COARSEST, FINEST] = [3, 40];

/** Numbered sizes end at 12; a whole inch has fewer turns than the coarsest of them. */
const [MOST_NUMBER, LEAST_TURNS] = [12, 24];

function unifiedOf(plain: string): Thread | null {
  const [, mark = "", top = "", bottom, turns = ""] = /^(#?)(\d+)(?:\/(\d+))?\s*-\s*(\d{1,2})(?:\s*UN[CF])?$/i.exec(plain) ?? [];
  const [count, size] = [Number(turns), Number(top)];
  if (count === 0 || size === 0 || (mark !== "" && bottom !== undefined) || Number(bottom ?? "1") === 0) return null;
  const isNumber = bottom === undefined && (mark !== "" || (size <= MOST_NUMBER && count >= LEAST_TURNS));
  // Number n is 0.060 + 0.013 n in (ASME B1.1, from memory; the table's 10-32 of 0.190 in agrees).
  const thousandths = isNumber ? 60 + 13 * size : (1000 * size) / Number(bottom ?? "1");
  const name = `${mark}${top}${bottom === undefined ? "" : `/${bottom}`}-${turns}`;
  return { name, diameter: (thousandths * 254) / 10_000, pitch: 254 / (10 * count) };
}

function metricOf(plain: string): Thread | null {
  const [, across = "", along = ""] = /^M\s*([\d.]+)\s*x\s*([\d.]+)$/i.exec(plain) ?? [];
  const [diameter, pitch] = [readDecimal(across), readDecimal(along)];
  if (diameter === null || pitch === null || diameter.digits === 0 || pitch.digits === 0) return null;
  return { name: `M${across}x${along}`, diameter: diameter.digits / diameter.scale, pitch: pitch.digits / pitch.scale };
}
