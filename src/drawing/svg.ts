// How do parts become one finished SVG, measured in paper millimetres and named for people who cannot see it?
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import { grow, unite } from "./box.ts";
import { type Element, element, writeElement, writeNumber } from "./element.ts";
import { group, type Part } from "./shape.ts";
import { FONT_FAMILY } from "./text.ts";

export interface FinishedSvg {
  readonly svg: string;
  readonly width_mm: Mm;
  readonly height_mm: Mm;
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
}): FinishedSvg {
  const { id, title, description, parts } = options;
  const box = grow(unite(parts.map((part) => part.box)), EDGE_mm);
  const [width, height] = [roundUp(box.right - box.left, 0.1), roundUp(box.bottom - box.top, 0.1)];
  const root = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      "aria-labelledby": `${id}-title ${id}-desc`,
      width: `${writeNumber(width)}mm`,
      height: `${writeNumber(height)}mm`,
      viewBox: [box.left, box.top, width, height].map(writeNumber).join(" "),
      "font-family": FONT_FAMILY,
      "stroke-linecap": "butt",
      "stroke-linejoin": "miter",
      style: "font-kerning:none",
    },
    element("title", { id: `${id}-title` }, title),
    element("desc", { id: `${id}-desc` }, description),
    ...layered(leaves(group(parts).element)),
  );
  return { svg: writeElement(root), width_mm: width, height_mm: height };
}

const leaves = (node: Element): readonly Element[] =>
  node.tag === "g" ? node.children.flatMap((child) => (typeof child === "string" ? [] : leaves(child))) : [node];

const layerOf = ({ tag, attributes }: Element): "shape" | "line" | "text" => {
  if (tag === "text" || attributes.class === "ground") return "text";
  return attributes.fill === "none" || tag === "line" ? "line" : "shape";
};

function layered(elements: readonly Element[]): readonly Element[] {
  const of = (layer: ReturnType<typeof layerOf>): readonly Element[] => elements.filter((one) => layerOf(one) === layer);
  const texts = of("text");
  // All grounds lie under all texts, so that no ground cuts a neighbour's letters.
  const [grounds, words] = [texts.filter(({ tag }) => tag === "rect"), texts.filter(({ tag }) => tag === "text")];
  return [...of("shape"), ...merged(of("line")), ...grounds, ...words];
}

/** Lines of the same pen as one path, in the order in which the pens first come. */
function merged(lines: readonly Element[]): readonly Element[] {
  const byPen = new Map<string, Element>();
  const single: Element[] = [];
  for (const line of lines) {
    if (line.tag !== "path") {
      single.push(line);
      continue;
    }
    const { d = "", ...pen } = line.attributes;
    const key = JSON.stringify(pen);
    byPen.set(key, element("path", { ...pen, d: `${byPen.get(key)?.attributes.d ?? ""}${d}` }));
  }
  return [...byPen.values(), ...single];
}
