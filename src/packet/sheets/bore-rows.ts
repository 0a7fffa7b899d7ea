// Which bores of an upright are alike at all courses, so that one row of the grid holds them?
import type { Bore, Course, Plan, Vertical } from "../../plan/plan.ts";
import { angleDegrees } from "../../units/print.ts";
import type { Text } from "../packet.ts";
import { unique } from "./kit.ts";

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
export function isEven({ bores, first }: BoreRow, plan: Plan): boolean {
  const makeOf = ({ kind, offset, diameter, counterbore, entryFace, bushing, bend }: Bore): string =>
    JSON.stringify([kind, offset, diameter, counterbore, entryFace, bushing, angleDegrees(bend)]);
  const isAt = (course: Course, bore: Bore | undefined): boolean =>
    bore !== undefined && bore.course === course.number && bore.height === course.height && makeOf(bore) === makeOf(first);
  return bores.length === plan.courses.length && plan.courses.every((course, index) => isAt(course, bores[index]));
}

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
  return plan.bays.some(({ kind, leftId }) => kind === "corner" && leftId === verticalId) ? "right face" : "left face";
}
