// How does each template become a strip with its tiles?
import type { View } from "../../drawing/paper.ts";
import { type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, wrap } from "../../drawing/text.ts";
import type { Paper } from "../../job/job.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { roundUp } from "../../units/round.ts";
import type { Drawing, Text, TitleBlock } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { halfHeight, isOffMiddle, marksOf, type Template } from "./faces.ts";
import { zoneParts, zonesOf } from "./hardware-zones.ts";
import { EXIT_mm, exitParts, hasExit, holeParts } from "./hole-drawing.ts";
import { BEYOND_mm, holeWords, type WordsRoom } from "./hole-words.ts";
import { onlyFor } from "./printer.ts";
import { edgeWords, faceWords, slopeNotes, zeroWords } from "./slope-words.ts";
import { longestTile, stripPages, stripRoom } from "./strip-pages.ts";
import { flapDrop, lineWordsHeight, type StripLook } from "./tile-drawing.ts";
import { type Band, cutTiles, type Tile } from "./tiles.ts";

/** Beyond each edge of the face: what is folded round the upright. */
export const FOLD_mm = 13.5;
/** Paper above the highest hole, and above the highest place where a bore comes out. */
const HEAD_mm = 18;
const EXIT_HEAD_mm = 8;

export interface StripContext {
  readonly plan: Plan;
  readonly show: Show;
  readonly paper: Paper;
  readonly titleBlock: TitleBlock;
}

/** Lines between tiles stand at heights that a tape shows at once. */
export const lineStep = ({ job }: Plan): Mm => (job.units === "inch" ? 6.35 : 5);

/** What the strips of a template are cut and drawn from. */
interface Layout {
  readonly template: Template;
  readonly context: LookContext;
  readonly notes: readonly Text[];
  /** From the middle line to the cut edge. */
  readonly half: Mm;
  readonly words: WordsRoom;
}

export type LookContext = Pick<StripContext, "plan" | "show" | "paper">;

function layoutOf(template: Template, context: LookContext): Layout {
  const { plan, paper, show } = context;
  const half = Math.min(template.width / 2 + FOLD_mm, stripRoom(paper, plan.job, []).width / 2);
  const beyond =
    half < template.width / 2
      ? [`The face is wider than this paper: middle line ${show.tapeBoth(template.width / 2)} from either edge of it.`]
      : [];
  const notes = [...beyond, ...slopeNotes(template, context)];
  return { template, context, notes, half, words: { show, half: half - FOLD_mm, face: template.face } };
}

/** Whether the paper shows the middle of the face alone. */
export const isBeyondPaper = (template: Template, context: LookContext): boolean => layoutOf(template, context).half < template.width / 2;

/** Where slanted bores come out. */
const exitsOf = ({ holes }: Template): readonly Mm[] => holes.filter(hasExit).map(({ there }) => there.height);

const exitBands = (template: Template, below: Mm = 0): readonly Band[] =>
  exitsOf(template).map((height) => ({ low: height - EXIT_mm - below, high: height + EXIT_mm }));

/** Heights that holes take with their words, and places where they come out. */
const keptBy = ({ template, words }: Layout): readonly Band[] => [
  ...template.holes.map((hole) => {
    const { above, below } = holeWords(hole, words);
    return { low: hole.here.height - below, high: hole.here.height + above };
  }),
  ...exitBands(template),
];

/** The same, and below them the words that stand on the lower line of a tile: it is not cut nearer. */
function uncut({ template, words }: Layout): readonly Band[] {
  const { holes, id } = template;
  const lineAt = (height: Mm): Mm =>
    lineWordsHeight(`${id}-00, ${words.show.tapeBoth(height)}`, { room: 2 * words.half, zero: zeroWords(template) });
  return [
    ...holes.map((hole) => {
      const { above, below } = holeWords(hole, words);
      const { height } = hole.here;
      return { low: height - below - lineAt(height), high: height + above };
    }),
    ...exitBands(template, lineAt(Math.max(0, ...exitsOf(template)))),
  ];
}

/** The tiles of a template on this paper. */
export const tilesOf = (template: Template, context: LookContext): readonly Tile[] => cutLayout(layoutOf(template, context));

function cutLayout(layout: Layout): readonly Tile[] {
  const { template, context, notes, half } = layout;
  const { plan, paper } = context;
  const { holes, foot, width } = template;
  const tops = [
    ...holes.map((hole) => hole.here.height + halfHeight(hole) + HEAD_mm),
    ...exitsOf(template).map((height) => height + EXIT_HEAD_mm),
  ];
  const step = lineStep(plan);
  const kept = uncut(layout);
  // On a slope holes and their words may reach below the mark that the lower edge lies on: then it is cut so much lower. A spacer ends at
  // its foot: only where a bore comes out lower does its strip hang below it.
  const reaching = isMarked(template) ? kept : exitBands(template);
  const lowest = Math.min(...reaching.map(({ low }) => low), foot);
  const strip = {
    foot: lowest < foot ? foot - roundUp(foot - lowest, step) : foot,
    top: Math.max(...tops),
    kept,
    marks: [
      ...holes.map((hole) => ({
        low: hole.here.height - halfHeight(hole) - BEYOND_mm,
        high: hole.here.height + halfHeight(hole) + BEYOND_mm,
      })),
      ...exitBands(template),
    ],
  };
  const drop = flapDrop({ half, width, flapRise: flapRiseOf(template) });
  return cutTiles(strip, { longest: longestTile(stripRoom(paper, plan.job, notes), drop), step });
}

/** Posts on a slope are measured from a mark on them, below which they go on. */
const isMarked = ({ kind, rake }: Template): boolean => kind === "post" && rake !== null;

/** What the strip is laid by, where it begins lower. */
function zeroParts(template: Template, { view, tile, half }: RailContext): readonly Part[] {
  const { foot } = template;
  if (tile.from >= foot || tile.to <= foot) return [];
  const [left, right] = [view.point({ x: -half, y: foot }), view.point({ x: half, y: foot })];
  const word = template.kind === "post" ? zeroWords(template) : "foot";
  return [strokes("thin", [[left, right]]), label(word, { x: left.x + 1, y: left.y - lineHeight() / 2 })];
}

/** A spacer on a slope is cut along it: away from this face its foot climbs, or falls. */
const flapRiseOf = ({ kind, rake, face }: Template): number =>
  rake === null || kind === "post" ? 0 : (face === "left" ? 1 : -1) * Math.tan(rake.slope);

/** The pages of one template. */
export function templatePages(template: Template, context: StripContext): readonly Drawing[] {
  const { plan, show, paper } = context;
  const { id, holes } = template;
  const marks = marksOf(template.uprights);
  const layout = layoutOf(template, context);
  const tiles = cutLayout(layout);
  const face = faceWords(template);
  return stripPages({
    look: lookOf(layout, tiles, context),
    tiles,
    paper,
    job: plan.job,
    title: `${id}, ${marks.length > MANY_letters ? `${template.uprights.length} uprights` : marks}, ${face}`,
    describe: (some) => {
      const shown = holes.filter(({ here }) => some.some((tile) => here.height >= tile.from && here.height < tile.to));
      const places = shown.map(({ course, here }) => `course ${course} at ${show.tapeBoth(here.height)}`);
      return `Full-size drilling template for the ${face} of ${marks}. ${places.length === 0 ? "No hole on this page." : `Above the ${zeroWords(template)}: ${places.join(", ")}.`}`;
    },
  });
}

const MANY_letters = 50;

function lookOf(layout: Layout, tiles: readonly Tile[], { plan, show, titleBlock }: StripContext): StripLook {
  const { template, notes, half, words } = layout;
  const { id, width, face, holes, uprights, rail, foot } = template;
  const zones = zonesOf(template, plan);
  const beside = holes.some(isOffMiddle) ? " HOLES BESIDE THE MIDDLE LINE." : "";
  const [stamp = ""] = titleBlock.stamp.split(" - ");
  const [leftHand, rightHand] = face === "left" ? ["away from the deck", "the deck's side"] : ["the deck's side", "away from the deck"];
  const marks = marksOf(uprights);
  const job = `Job ${titleBlock.jobNumber}, revision ${titleBlock.revision}, ${titleBlock.date}`;
  const warning = [stamp, onlyFor(plan.job)].filter((text) => text !== "").join("; ");
  const rails = rail === null ? [] : [rail];
  return {
    id,
    width,
    half,
    margin: FOLD_mm,
    edge: edgeWords(template, tiles[0]?.from ?? foot, { plan, show }),
    zero: zeroWords(template),
    flapRise: flapRiseOf(template),
    notes,
    about: [
      [`${id}, ${faceWords(template)}: ${marks}.${beside}`, `This edge: ${leftHand}.`, job],
      [`${id}, ${faceWords(template)}. This edge: ${rightHand}.`, ...(warning === "" ? [job] : [warning])],
    ],
    big: [
      ...(stamp === "" ? [] : [stamp]),
      faceWords(template).toUpperCase(),
      marks.length > MANY_letters ? `${uprights.length} uprights, see edge` : marks,
      ...(beside === "" ? [] : ["holes beside the middle line"]),
    ],
    kept: [...keptBy(layout), ...rails, ...zones.map(({ from, to }) => ({ low: from, high: to }))],
    show,
    marks: (view, tile) => [
      ...zoneParts(zones, { view, tile, half: words.half, lines: rails.flatMap(({ low, high }) => [low, high]) }),
      ...zeroParts(template, { view, tile, half: words.half }),
      ...rails.flatMap((one) => railParts(one, { view, tile, half: words.half })),
      ...holes
        .filter(({ here }) => here.height >= tile.from && here.height < tile.to)
        .flatMap((hole) => holeParts(hole, { view, ...words })),
      ...holes.flatMap((hole) => exitParts(hole, { view, tile })),
    ],
  };
}

interface RailContext {
  readonly view: View;
  readonly tile: Tile;
  /** From the middle of the face to its edge, or to the edge of the paper. */
  readonly half: Mm;
}

/** Where the bottom rail meets a post: a fitted rail is cut round. */
function railParts({ low, high }: Band, { view, tile, half }: RailContext): readonly Part[] {
  const isShown = (height: Mm): boolean => height > tile.from && height < tile.to;
  const middle = (low + high) / 2;
  return [
    ...[low, high]
      .filter(isShown)
      .map((height) => strokes("hidden", [[view.point({ x: -half, y: height }), view.point({ x: half, y: height })]])),
    ...(isShown(middle)
      ? wrap("bottom rail: cut out where it is fitted", 2 * half).map((line, index, lines) => {
          const at = view.point({ x: 0, y: middle });
          return label(line, { x: at.x, y: at.y + (index - (lines.length - 1) / 2) * lineHeight() }, { anchor: "middle", ground: true });
        })
      : []),
  ];
}
