// Where do the drawn lines of a finished SVG run, and which texts do they cross? Read from the markup.
import type { TextOnPaper } from "./svg-texts.ts";

interface Spot {
  readonly x: number;
  readonly y: number;
}

type Line = readonly [Spot, Spot];

const number = (attributes: string, name: string): number => Number(new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1] ?? 0);

/** Every straight piece of a stroked path or rectangle. */
function linesOf(svg: string): readonly Line[] {
  return [...svg.matchAll(/<(path|rect)\b([^>]*)>/g)].flatMap(([, name, attributes = ""]) => {
    if (!/ stroke="#/.test(attributes)) return [];
    if (name === "path") return piecesOf(/ d="([^"]*)"/.exec(attributes)?.[1] ?? "");
    const [x, y] = [number(attributes, "x"), number(attributes, "y")];
    const [right, bottom] = [x + number(attributes, "width"), y + number(attributes, "height")];
    return piecesOf(`M${x} ${y}H${right}V${bottom}H${x}Z`);
  });
}

/** Moves, lines and closings with absolute coordinates, as the drawings write them; the end of an arc is only gone to. */
function piecesOf(path: string): readonly Line[] {
  const pieces: Line[] = [];
  let [at, start]: [Spot, Spot] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  const to = (next: Spot): void => {
    pieces.push([at, next]);
    at = next;
  };
  for (const [, kind = "", rest = ""] of path.matchAll(/([MLHVZA])([^MLHVZA]*)/g)) {
    const values = rest.trim().split(/[ ,]+/).filter(Boolean).map(Number);
    const pairs = values.flatMap((x, index) => (index % 2 === 0 ? [{ x, y: values[index + 1] ?? Number.NaN }] : []));
    if (kind === "M") {
      at = pairs[0] ?? at;
      start = at;
      pairs.slice(1).forEach(to);
    } else if (kind === "L") pairs.forEach(to);
    else if (kind === "H") for (const x of values) to({ x, y: at.y });
    else if (kind === "V") for (const y of values) to({ x: at.x, y });
    else if (kind === "Z") to(start);
    else at = pairs.at(-1) ?? at;
  }
  return pieces;
}

/** Middles of the white grounds that stand under texts, so that lines stop there. */
const groundsOf = (svg: string): readonly Spot[] =>
  [...svg.matchAll(/<rect class="ground"([^>]*)>/g)].map(([, attributes = ""]) => {
    const [turn = 0, aboutX = 0, aboutY = 0] = (/rotate\(([^)]*)\)/.exec(attributes)?.[1] ?? "").split(" ").map(Number);
    const x = number(attributes, "x") + number(attributes, "width") / 2 - aboutX;
    const y = number(attributes, "y") + number(attributes, "height") / 2 - aboutY;
    const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    return { x: aboutX + x * cos - y * sin, y: aboutY + x * sin + y * cos };
  });

const middleOf = ({ corners }: TextOnPaper): Spot => ({
  x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
  y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
});

/** A ground stands about its text: their middles are nearer to each other than half a line. */
const NEAR_mm = 1.5;
/** Of the ink of a text; a line that only grazes its edge leaves it readable. */
const CORE = 0.86;

const side = (from: Spot, to: Spot, at: Spot): number => (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);

function crosses([from, to]: Line, shape: readonly Spot[]): boolean {
  const edges = shape.map((corner, index): Line => [corner, shape[(index + 1) % shape.length] ?? corner]);
  const isInside = (at: Spot): boolean => {
    const sides = edges.map(([a, b]) => Math.sign(side(a, b, at)));
    return sides.every((sign) => sign >= 0) || sides.every((sign) => sign <= 0);
  };
  const meets = ([a, b]: Line): boolean => side(from, to, a) * side(from, to, b) < 0 && side(a, b, from) * side(a, b, to) < 0;
  return isInside(from) || isInside(to) || edges.some(meets);
}

/** Texts without a ground of their own that a line runs through. */
export function struckTexts(svg: string, texts: readonly TextOnPaper[]): readonly string[] {
  const grounds = groundsOf(svg);
  const lines = linesOf(svg);
  return texts
    .filter((text) => {
      const middle = middleOf(text);
      if (grounds.some(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) < NEAR_mm)) return false;
      const core = text.corners.map(({ x, y }) => ({ x: middle.x + CORE * (x - middle.x), y: middle.y + CORE * (y - middle.y) }));
      return lines.some((line) => crosses(line, core));
    })
    .map(({ text }) => text);
}
