// How do numbers, places and words become SVG text?
import type { Point } from "../geometry/vector.ts";
import { countSteps } from "../units/round.ts";

/** ".001" and so on, without zeros at their ends: every number of a drawing is written with one of these. */
const thousandths: readonly string[] = Array.from({ length: 1000 }, (_, count) =>
  count === 0 ? "" : `.${String(count).padStart(3, "0").replace(/0+$/, "")}`,
);

/** No sheet is a kilometre wide. */
const FARTHEST_mm = 1e6;
const toThousandths = { step: 0.001, rounding: "nearest" } as const;

/** A number in a drawing: at most three decimals, no minus zero, no exponent. */
export function writeNumber(value: number): string {
  const count = countSteps(value < 0 ? -value : value, toThousandths);
  if (count > FARTHEST_mm * 1000) throw new RangeError(`${value} is no place on paper`);
  const part = count % 1000;
  const whole = (count - part) / 1000;
  return `${value < 0 && count > 0 ? "-" : ""}${whole}${thousandths[part] ?? ""}`;
}

/** An open path through points; level and upright steps are written with one number. */
export function writePath(points: readonly Point[]): string {
  let text = "";
  let last: Point | undefined;
  for (const point of points) {
    if (last === undefined) text += `M${writeNumber(point.x)} ${writeNumber(point.y)}`;
    else if (point.y === last.y) text += `H${writeNumber(point.x)}`;
    else if (point.x === last.x) text += `V${writeNumber(point.y)}`;
    else text += `L${writeNumber(point.x)} ${writeNumber(point.y)}`;
    last = point;
  }
  return text;
}

const special: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/** What XML does not allow at all: control characters and halves of surrogate pairs. */
const REPLACEMENT = 0xfffd;

/** Text between tags; characters above 0xFF as entities, so that a page stays one byte a character. */
export function escapeText(text: string): string {
  if (plain.test(text)) return text;
  return text.replace(
    /[^\t\n\r -%'-;=?-~\u00a0-\u00ff]/gu,
    (character) => special[character] ?? `&#${allowed(character.codePointAt(0) ?? REPLACEMENT)};`,
  );
}

/** The value of an attribute, to be set between double quotes. */
export const escapeValue = (text: string): string => escapeText(text).replaceAll('"', "&quot;");

/** Nearly all labels; the marks of inches and feet may stand between tags. */
const plain = /^[ -%'-;=?-~]*$/;

const allowed = (code: number): number =>
  code < 0x20 || (code >= 0x7f && code < 0xa0) || (code >= 0xd800 && code <= 0xdfff) || (code & 0xfffe) === 0xfffe ? REPLACEMENT : code;
