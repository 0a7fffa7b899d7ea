// What is said where the cables of some sides lie higher than those of the others, and of the corner post that both go through?
import { crossedPosts } from "../../plan/check-set-off.ts";
import type { Course, Plan, RunEnd, SidePlan } from "../../plan/plan.ts";
import { courseHeight, type Level } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { faceName } from "../wording.ts";
import { listed, type SheetContext } from "./kit.ts";
import { levelSides, sidesWord } from "./slopes.ts";

/** Level sides whose cables lie at the same heights. */
export interface LevelGroup {
  readonly level: Level;
  readonly sideIds: readonly Text[];
}

const LEVELS: readonly Level[] = [{}, { isRaised: true }];

/** One group, or two: the lower ones first. */
export const levelGroups = (plan: Plan): readonly LevelGroup[] =>
  LEVELS.map((level) => ({
    level,
    sideIds: levelSides({ ...plan, sides: plan.sides.filter((side) => side.isRaised === level.isRaised) }),
  })).filter(({ sideIds }) => sideIds.length > 0);

/** The sides with the heights of this one. */
export const sidesAsHighAs = ({ sides }: Plan, { isRaised }: Level): readonly SidePlan[] =>
  sides.filter((side) => side.isRaised === isRaised);

export const runLevel = ({ runs }: Pick<Plan, "runs">, runId: string): Level =>
  runs.find(({ id }) => id === runId)?.isRaised === true ? { isRaised: true } : {};

/** Height at which a course is bored for a run. */
export const heightForRun = ({ runs }: Pick<Plan, "runs">, runId: string, course: Course): Mm =>
  courseHeight(course, runLevel({ runs }, runId));

/** Corner posts behind which the runs of both their sides end. */
export const crossedIds = (plan: Plan): readonly Text[] => crossedPosts(plan).map(({ id }) => id);

/** The face of its post that an end stands on: at a corner post that two runs go through neither left nor right tells it. */
export function backOfEnd({ verticals }: Pick<Plan, "verticals">, { postId, backFace }: RunEnd): Text {
  const corner = verticals.find(({ id }) => id === postId)?.corner;
  return corner?.isSetOff === true ? `face away from side ${backFace === "left" ? corner.nextId : corner.homeId}` : faceName[backFace];
}

/** "side A: 10 marks, first 7-7/16", last 33-5/8"; sides B and C: ..." */
export const stickMarks = (plan: Plan, show: Show): Text =>
  levelGroups(plan)
    .map(({ level, sideIds }) => {
      const [first, last] = [plan.courses[0], plan.courses.at(-1)].map((course) =>
        course === undefined ? "" : show.tapeBoth(courseHeight(course, level)),
      );
      return `${sidesWord(sideIds)}: ${plan.courses.length} marks, first ${first}, last ${last}`;
    })
    .join("; ");

/** Which stick goes on which face of a corner post that is bored from both sides. */
export const cornerStick = (plan: Plan): Text =>
  listed(
    crossedPosts(plan).flatMap(({ id, corner }) =>
      corner === undefined
        ? []
        : [
            `${id}: the stick of side ${corner.homeId} on the face towards ${corner.homeId}, that of side ${corner.nextId} on the face towards ${corner.nextId}`,
          ],
    ),
  );

/** How much higher the cables of raised sides lie. */
export const raisedBy = ({ plan, show }: Pick<SheetContext, "plan" | "show">): Text => show.tape(plan.setOff?.by ?? 0);

/** Corner posts whose far faces stand over the open edge: where the guard turns right the deck is on the inside of the turn. */
export const overEdgeIds = (plan: Plan): readonly Text[] =>
  crossedPosts(plan).flatMap(({ id, corner }) => ((corner?.turn ?? 0) > 0 ? [id] : []));

/** Nuts and grips on those faces are not reached from the deck. */
export const overEdge = (plan: Plan): readonly Text[] =>
  overEdgeIds(plan).length === 0
    ? []
    : [
        `At ${listed(overEdgeIds(plan))} nuts and grips stand on outer faces, over the open edge. Reach them from a ladder or platform outside, with fall protection; never lean over the guard or climb it.`,
      ];
