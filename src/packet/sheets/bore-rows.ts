// Which bores of an upright are alike at all courses, so that one row of the grid holds them?
import type { Bore, Plan, Vertical } from "../../plan/plan.ts";
import { angleDegrees } from "../../units/print.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { unique } from "./kit.ts";
import { heightForRun } from "./set-off-words.ts";

/** The bores of one run in one upright; the first stands for all but in its height. */
export interface BoreRow {
  readonly vertical: Vertical;
  readonly first: Bore;
  /** In the order of the courses. */
  readonly bores: readonly Bore[];
  /** "/R1" behind the upright's mark where it has two bores at each height. */
  readonly behind: Text;
}

/** From left to right along the guard; at a post with two runs the left-hand run first. */
export function boreRows(plan: Plan): readonly BoreRow[] {
  return plan.verticals.flatMap((vertical) => {
    const own = plan.bores.filter(({ verticalId }) => verticalId === vertical.id);
    return unique(own.map(({ runId }) => runId)).flatMap((runId) => {
      const bores = own.filter((bore) => bore.runId === runId).toSorted((a, b) => a.course - b.course);
      const [first] = bores;
      return first ? [{ vertical, first, bores, behind: first.mark.includes("/") ? `/${runId}` : "" }] : [];
    });
  });
}

/** True when every course has its bore at its own height, and all are made alike: then one row says it all. */
export const isEven = ({ bores, first }: BoreRow, { courses, runs }: Plan): boolean =>
  bores.length === courses.length &&
  courses.every((course, index) => {
    const bore = bores[index];
    return (
      bore !== undefined &&
      bore.course === course.number &&
      bore.height === heightForRun({ runs }, bore.runId, course) &&
      isMadeLike(bore, first)
    );
  });

/** Angles are alike when they are printed alike. */
const isMadeLike = (a: Bore, b: Bore): boolean =>
  a.kind === b.kind &&
  a.offset === b.offset &&
  a.diameter === b.diameter &&
  a.through === b.through &&
  isSameCounterbore(a.counterbore, b.counterbore) &&
  a.entryFace === b.entryFace &&
  a.angle === b.angle &&
  a.skew === b.skew &&
  a.bushing === b.bushing &&
  (a.bend === b.bend || angleDegrees(a.bend) === angleDegrees(b.bend));

export const isSameCounterbore = (a: Bore["counterbore"], b: Bore["counterbore"]): boolean =>
  a === null || b === null ? a === b : a.diameter === b.diameter && a.depth === b.depth && a.face === b.face;

/** Where a bushing goes: in both walls of a tube, in a solid member at the face where the cable leaves at an angle. */
export function bushingPlace(plan: Plan, { bushing, verticalId, bend }: Bore): Text {
  if (!bushing) {
    return "no";
  }
  const vertical = plan.verticals.find(({ id }) => id === verticalId);
  const section = vertical?.kind === "spacer" ? plan.job.spacers.section : plan.job.posts.section;
  if (section.wall !== null) {
    return "both walls";
  }
  if (bend === 0) {
    return "through";
  }
  if (vertical?.corner !== undefined) return "both faces";
  return plan.bays.some(({ kind, leftId }) => kind === "corner" && leftId === verticalId) ? "right face" : "left face";
}

/** On a face of a post on a rake a bore is higher or lower than in the middle. */
export function offHeight(by: number, show: Show): Text {
  const off = show.tape(Math.abs(by));
  if (off === show.tape(0)) return "at it";
  return `${off} ${by > 0 ? "higher" : "lower"}`;
}
