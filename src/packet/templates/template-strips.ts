// How does each template become a strip with its tiles?
import type { View } from "../../drawing/paper.ts";
import { type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, wrap } from "../../drawing/text.ts";
import type { Paper } from "../../job/job.ts";
import { climbTo } from "../../plan/corner-path.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text, TitleBlock } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { halfHeight, isOffMiddle, marksOf, type Template } from "./faces.ts";
import { zoneParts, zonesOf } from "./hardware-zones.ts";
import { exitParts, holeParts, holeReach, wordsReach } from "./hole-drawing.ts";
import { onlyFor } from "./printer.ts";
import { longestTile, stripPages, stripRoom } from "./strip-pages.ts";
import { lineWordsHeight, type StripLook } from "./tile-drawing.ts";
import { cutTiles, type Strip, type Tile } from "./tiles.ts";

/** Beyond each edge of the face: what is folded round the upright. */
const FOLD_mm = 13.5;
/** Paper above the highest hole. */
const HEAD_mm = 18;

export interface StripContext {
  readonly plan: Plan;
  readonly show: Show;
  readonly paper: Paper;
  readonly titleBlock: TitleBlock;
}

/** Lines between tiles stand at heights that a tape shows at once. */
export const lineStep = ({ job }: Plan): Mm => (job.units === "inch" ? 6.35 : 5);

/** Heights that holes take with their words. */
const keptBy = ({ holes }: Template): Strip["kept"] =>
  holes.map((hole) => ({ low: hole.here.height - holeReach(hole), high: hole.here.height + holeReach(hole) }));

/** The same, and below them the words that stand on the lower line of a tile: it is not cut nearer. */
function uncut(template: Template, { plan, show, paper }: LookContext): Strip["kept"] {
  const { face, holes, width, id } = template;
  const half = halfOf(width, { plan, paper }) - FOLD_mm;
  return holes.map((hole) => {
    const { height } = hole.here;
    const line = lineWordsHeight(`${id}-00, ${show.tapeBoth(height)}`, { room: 2 * half });
    return { low: height - Math.max(holeReach(hole), wordsReach(hole, { show, half, face }) + line), high: height + holeReach(hole) };
  });
}

type LookContext = Pick<StripContext, "plan" | "show" | "paper">;

/** From the middle line to the cut edge. */
const halfOf = (width: Mm, { plan, paper }: Pick<StripContext, "plan" | "paper">): Mm =>
  Math.min(width / 2 + FOLD_mm, stripRoom(paper, plan.job).width / 2);

/** The tiles of a template on this paper. */
export function tilesOf(template: Template, context: LookContext): readonly Tile[] {
  const { plan, paper } = context;
  const top = Math.max(...template.holes.map((hole) => hole.here.height + halfHeight(hole))) + HEAD_mm;
  const longest = longestTile(stripRoom(paper, plan.job));
  return cutTiles({ foot: template.foot, top, kept: uncut(template, context) }, { longest, step: lineStep(plan) });
}

export function templatePages(template: Template, context: StripContext): readonly Drawing[] {
  const { plan, show, paper } = context;
  const { id, face, holes } = template;
  const marks = marksOf(template.uprights);
  return stripPages({
    look: lookOf(template, context),
    tiles: tilesOf(template, context),
    paper,
    job: plan.job,
    title: `${id}, ${marks.length > MANY_letters ? `${template.uprights.length} uprights` : marks}, ${face} face`,
    describe: (tiles) => {
      const shown = holes.filter(({ here }) => tiles.some((tile) => here.height >= tile.from && here.height < tile.to));
      const places = shown.map(({ course, here }) => `course ${course} at ${show.tapeBoth(here.height)}`);
      return `Full-size drilling template for the ${face} face of ${marks}. ${places.length === 0 ? "No hole on this page." : `Above the datum: ${places.join(", ")}.`}`;
    },
  });
}

const MANY_letters = 50;

function lookOf(template: Template, { plan, show, paper, titleBlock }: StripContext): StripLook {
  const { id, width, face, holes, uprights } = template;
  const half = halfOf(width, { plan, paper });
  const zones = zonesOf(template, plan);
  const beside = holes.some(isOffMiddle) ? " HOLES BESIDE THE MIDDLE LINE." : "";
  const [stamp = ""] = titleBlock.stamp.split(" - ");
  const [leftHand, rightHand] = face === "left" ? ["away from the deck", "the deck's side"] : ["the deck's side", "away from the deck"];
  const marks = marksOf(uprights);
  const job = `Job ${titleBlock.jobNumber}, revision ${titleBlock.revision}, ${titleBlock.date}`;
  const warning = [stamp, onlyFor(plan.job)].filter((text) => text !== "").join("; ");
  return {
    id,
    width,
    half,
    margin: FOLD_mm,
    standsOn: footWords(template, { plan, show }),
    about: [
      [`${id}, ${face} face: ${marks}.${beside}`, `This edge: ${leftHand}.`, job],
      [`${id}, ${face} face. This edge: ${rightHand}.`, ...(warning === "" ? [job] : [warning])],
    ],
    big: [
      ...(stamp === "" ? [] : [stamp]),
      `${face.toUpperCase()} FACE`,
      marks.length > MANY_letters ? `${uprights.length} uprights, see edge` : marks,
      ...(beside === "" ? [] : ["holes beside the middle line"]),
    ],
    kept: [...keptBy(template), ...railOf(template, plan), ...zones.map(({ from, to }) => ({ low: from, high: to }))],
    show,
    marks: (view, tile) => [
      ...zoneParts(zones, { view, tile, half: half - FOLD_mm, lines: railOf(template, plan).flatMap(({ low, high }) => [low, high]) }),
      ...railParts(template, { view, tile, half, plan }),
      ...holes
        .filter(({ here }) => here.height >= tile.from && here.height < tile.to)
        .flatMap((hole) => holeParts(hole, { view, show, half: half - FOLD_mm, face })),
      ...holes.flatMap((hole) => exitParts(hole, { view, tile })),
    ],
  };
}

/** "the datum (top of the decking)", or the bottom rail with its height; on a rake the datum is a mark on the post. */
export function footWords(
  { foot, uprights }: Pick<Template, "foot" | "uprights">,
  { plan, show }: { readonly plan: Plan; readonly show: Show },
): Text {
  if (foot !== 0) return `the bottom rail, ${show.tape(foot)} above datum`;
  return (uprights[0]?.slope ?? 0) === 0 ? `the datum: ${plan.job.frame.datum}` : "the level mark: datum in the middle of the post";
}

/** Heights that the bottom rail takes on a face of a post; on a rake it meets the two faces at two heights. */
function railOf({ uprights, face }: Template, { job, opening, rakes }: Plan): Strip["kept"] {
  const [post] = uprights;
  if (job.frame.bottomRail === null || post === undefined || uprights.some(({ kind }) => kind !== "post")) return [];
  const rake = rakes.find(({ sideId }) => sideId === post.sideId);
  if (rake === undefined) return [{ low: job.frame.gapBelow, high: opening.bottom }];
  const climb = climbTo(face, post);
  const [low, high] = [job.frame.onRakes.gapBelow.value + climb, rake.opening.bottom + climb];
  return high <= 0 ? [] : [{ low: Math.max(0, low), high }];
}

interface RailContext {
  readonly view: View;
  readonly tile: Tile;
  readonly half: Mm;
  readonly plan: Plan;
}

/** Where the bottom rail meets a post: a fitted rail is cut round. */
const railParts = (template: Template, { view, tile, half, plan }: RailContext): readonly Part[] =>
  railOf(template, plan).flatMap(({ low, high }) => {
    const isShown = (height: Mm): boolean => height > tile.from && height < tile.to;
    const middle = (low + high) / 2;
    return [
      ...[low, high]
        .filter(isShown)
        .map((height) => strokes("hidden", [[view.point({ x: -half, y: height }), view.point({ x: half, y: height })]])),
      ...(isShown(middle)
        ? wrap("bottom rail: cut out where it is fitted", 2 * (half - FOLD_mm)).map((line, index, lines) => {
            const at = view.point({ x: 0, y: middle });
            return label(line, { x: at.x, y: at.y + (index - (lines.length - 1) / 2) * lineHeight() }, { anchor: "middle", ground: true });
          })
        : []),
    ];
  });
