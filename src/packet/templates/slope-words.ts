// What must a template for an upright on a slope say: which face, from where it is measured, how the bit is held?
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { unique } from "../sheets/kit.ts";
import { onWhat } from "../sheets/slopes.ts";
import type { Show } from "../show-number.ts";
import { faceName } from "../wording.ts";
import { type FaceSlope, marksOf, type Template } from "./faces.ts";
import { hasExit } from "./hole-drawing.ts";
import { slantWords } from "./hole-words.ts";

interface WordsContext {
  readonly plan: Plan;
  readonly show: Show;
}

/** One post at a corner has no left and right face: its faces look at sides. Where posts of several corners share a template, the hand says it. */
function cornerFace({ face, uprights }: Pick<Template, "face" | "uprights">): Text {
  const [only, ...others] = unique(
    uprights.flatMap(({ corner }) => (corner === undefined ? [] : [face === "left" ? corner.homeId : corner.nextId])),
  );
  return only !== undefined && others.length === 0 ? `face towards side ${only}` : `face towards the side to its ${face}`;
}

/** "left face", on a slope "left face (up-slope)": the face that looks up the slope. */
export const faceWords = ({ face, rake, isCorner, uprights }: Pick<Template, "face" | "rake" | "isCorner" | "uprights">): Text =>
  isCorner
    ? cornerFace({ face, uprights })
    : rake === null
      ? faceName[face]
      : `${faceName[face]} (${rake.climb > 0 ? "up-slope" : "down-slope"})`;

/** What people walk on, where it is measured. */
export const surfaceWords = ({ kind }: Pick<FaceSlope, "kind">): Text => (kind === "stair" ? "line of the nosings" : "surface of the ramp");

/** "the datum (top of the decking)", or the bottom rail with its height; on a slope a mark on the post, or the spacer's own foot. */
export function footWords({ foot, kind, rake, face }: Pick<Template, "foot" | "kind" | "rake" | "face">, context: WordsContext): Text {
  const { plan, show } = context;
  if (rake === null)
    return kind === "spacer" && plan.job.frame.bottomRail !== null
      ? `the bottom rail, ${show.tape(foot)} above datum`
      : `the datum: ${plan.job.frame.datum}`;
  if (kind === "post") return "the level mark of the post";
  return `the foot of the spacer, ${face} face: ${offWords(foot, show)} its level mark`;
}

/** From what the heights of a template count. */
export const zeroWords = ({ rake }: Pick<Template, "rake">): Text => (rake === null ? "datum" : "level mark");

/** "1-1/8" above" */
const offWords = (height: Mm, show: Show): Text => `${show.tape(Math.abs(height))} ${height < 0 ? "below" : "above"}`;

/** What the lower edge of the lowest tile does; it is cut lower where a bore comes out below the foot. */
export function edgeWords(template: Template, lowest: Mm, context: WordsContext): Text {
  const stands = footWords(template, context);
  if (lowest < template.foot) return `this edge lies ${context.show.tape(template.foot - lowest)} below ${stands}`;
  return template.rake !== null && template.kind === "post" ? `this edge lies on ${stands}` : `this edge stands on ${stands}`;
}

/** Under the rulers of each page; nothing where the whole guard is level. */
export function slopeNotes(template: Template, { plan, show }: WordsContext): readonly Text[] {
  const { rake, kind, uprights, holes, foot } = template;
  const marks = marksOf(uprights);
  const [hole] = holes;
  if (plan.rakes.length === 0 || hole === undefined) return [];
  if (rake === null) return [`Level side (${marks}): every bore is level, heights are above the datum.`];
  const surface = surfaceWords(rake);
  const board = `a straight board on ${onWhat(rake.kind)}`;
  const datum =
    kind === "post"
      ? `Level mark: ${board}; where its lower edge crosses the middle line of the post, carried level to this face. Check: on this face the ${surface} lies ${offWords(rake.climb, show)} the mark.`
      : `Lower edge: on the foot of the spacer; its flaps are cut along the slope. Level mark: the ${surface} plumb under the middle of the spacer, ${show.tape(Math.abs(foot))} ${foot < 0 ? "above" : "below"} its foot on this face.`;
  return [
    `${marks}, ${faceWords(template).toUpperCase()}. Rake ${show.angle(Math.abs(rake.slope))}. ${datum}`,
    `Bit in at the ellipse, ${slantWords(hole, show)} from level (arrow); bore ${show.tape(hole.drilledLength)} long, face to face.${hasExit(hole) ? ` X: where it comes out on the other face, seen through the ${kind}.` : ""}`,
  ];
}
