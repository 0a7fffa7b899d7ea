// Where is nothing bored on a template, because hardware sits in the post there?
import type { View } from "../../drawing/paper.ts";
import { hatched, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, wrap } from "../../drawing/text.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { groupBy, listed } from "../sheets/kit.ts";
import type { Template } from "./faces.ts";
import type { Tile } from "./tiles.ts";

/** Hardware of one kind on some of the uprights of a template. */
export interface TemplateZone {
  readonly words: Text;
  /** Heights above the datum. */
  readonly from: Mm;
  readonly to: Mm;
}

/** The zones of all posts that share the template; where not all of them have one it names those that do. */
export const zonesOf = ({ uprights }: Template, { hardware }: Pick<Plan, "hardware">): readonly TemplateZone[] =>
  groupBy(
    hardware.filter(({ postId }) => uprights.some(({ id }) => id === postId)),
    ({ what, from, to }) => `${what}\n${from}\n${to}`,
  ).map((same) => {
    const [{ what, from, to }] = same;
    const where = same.length === uprights.length ? "" : ` in ${listed(same.map(({ postId }) => postId))}`;
    return { words: `${what}${where}: bore nothing here`, from, to };
  });

interface ZoneRoom {
  readonly view: View;
  readonly tile: Tile;
  /** From the middle of the face to its edge, or to the edge of the paper. */
  readonly half: Mm;
  /** Heights of other lines across the strip. */
  readonly lines: readonly Mm[];
}

const HATCH_mm = 4;

/** Hatched between its two heights, as far as the tile shows it; its words stand at the upper end, below a line that would cross them. */
export const zoneParts = (zones: readonly TemplateZone[], { view, tile, half, lines: others }: ZoneRoom): readonly Part[] =>
  zones.flatMap(({ words, from, to }) => {
    const [low, high] = [Math.max(from, tile.from), Math.min(to, tile.to)];
    if (low >= high) return [];
    const at = (x: Mm, y: Mm) => view.point({ x, y });
    const lines = wrap(words, 2 * half - 4);
    const needed = lines.length * lineHeight();
    const first = high - Math.min(WORDS_mm, Math.max(0, (high - low - needed) / 2));
    const crossed = others.find((height) => height < high && height > first - needed - WORDS_mm);
    const top = crossed === undefined || crossed - WORDS_mm - needed < low ? first : crossed - WORDS_mm;
    return [
      hatched({ outlines: [[at(-half, low), at(half, low), at(half, high), at(-half, high)]], spacing: HATCH_mm, angle: Math.PI / 4 }),
      strokes(
        "edge",
        [from, to].filter((height) => height >= low && height <= high).map((height) => [at(-half, height), at(half, height)]),
      ),
      ...lines.map((line, index) => {
        const start = at(0, top);
        return label(line, { x: start.x, y: start.y + (index + 0.5) * lineHeight() }, { anchor: "middle", ground: true });
      }),
    ];
  });

/** From the upper end of a zone to its words, where it has room. */
const WORDS_mm = 2;
