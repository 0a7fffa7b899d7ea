// How does a drawing become SVG text? A tree of plain data and its one writer.
import { roundTo } from "../units/round.ts";

/** Every attribute that a drawing may use, in the order in which it is written. */
const attributeOrder = [
  "id",
  "class",
  "xmlns",
  "role",
  "aria-labelledby",
  "width",
  "height",
  "viewBox",
  "x",
  "y",
  "x1",
  "y1",
  "x2",
  "y2",
  "cx",
  "cy",
  "r",
  "d",
  "transform",
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
  "style",
] as const;

type AttributeName = (typeof attributeOrder)[number];
export type Attributes = { readonly [name in AttributeName]?: string | number };

export interface Element {
  readonly tag: string;
  readonly attributes: Attributes;
  readonly children: readonly (Element | string)[];
}

const DECIMALS = 3;

/** Attributes in fixed order; at most three decimals; characters above 0xFF as entities, so a page stays one byte a character. */
export function writeElement(element: Element): string {
  const { tag, attributes, children } = element;
  let text = `<${tag}`;
  for (const name of attributeOrder) {
    const value = attributes[name];
    if (value !== undefined) text += ` ${name}="${typeof value === "number" ? writeNumber(value) : escapeMarkup(value)}"`;
  }
  if (children.length === 0) return `${text}/>`;
  text += ">";
  for (const child of children) text += typeof child === "string" ? escapeMarkup(child) : writeElement(child);
  return `${text}</${tag}>`;
}

export const element = (tag: string, attributes: Attributes, ...children: readonly (Element | string)[]): Element => ({
  tag,
  attributes,
  children,
});

/** A number in a drawing: three decimals, no minus zero, no exponent. */
export function writeNumber(value: number): string {
  const rounded = roundTo(value, DECIMALS);
  if (Math.abs(rounded) >= 1e9) throw new RangeError(`${value} is no place on paper`);
  return `${rounded === 0 ? 0 : rounded}`;
}

const special: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** What XML does not allow at all: control characters and halves of surrogate pairs. */
const REPLACEMENT = 0xfffd;

function escapeMarkup(text: string): string {
  if (plain.test(text)) return text;
  // Anything but plain characters up to 0xFF.
  return text.replace(
    /[^\t\n\r !#-%(-;=?-~\u00a0-\u00ff]/gu,
    (character) => special[character] ?? `&#${allowed(character.codePointAt(0) ?? REPLACEMENT)};`,
  );
}

const plain = /^[ !#-%(-;=?-~]*$/;

const allowed = (code: number): number =>
  code < 0x20 || (code >= 0x7f && code < 0xa0) || (code >= 0xd800 && code <= 0xdfff) || (code & 0xfffe) === 0xfffe ? REPLACEMENT : code;
