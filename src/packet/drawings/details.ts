// Which ends, corners and crossings does this job have, each drawn once?
import type { Room } from "../../drawing/paper.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Drawing, Text } from "../packet.ts";
import { composeDetail, type Detail } from "./detail-compose.ts";
import { cornerDetail, cornerKey, cornersOf } from "./detail-corner.ts";
import { cornerEndsDetail } from "./detail-corner-ends.ts";
import { crossingDetail } from "./detail-crossing.ts";
import { endDetail } from "./detail-end.ts";
import { caseKey, type EndCase, endCases } from "./detail-end-cases.ts";
import { meetingDetail } from "./detail-meeting.ts";
import { onePostDetail, onePostKey, onePostsOf } from "./detail-one-post.ts";
import { passDetail } from "./detail-pass.ts";
import { slopeChangeDetail, slopeChangeKey, slopeChangesOf } from "./detail-slope.ts";

/** What holds for all details; the sheet prints it once, above them. */
export const detailNotes: readonly Text[] = [
  "Details are cut level at the height of a cable and seen from above, but for those that say otherwise. Posts, bores, gaps and bevelled washers are to scale; fittings are signs, not shapes.",
  "In the details of straight sides the inside, where people stand, is below, the outside above.",
];

/** Ends first, then where runs meet, corners, and what a cable only passes. */
export function details(plan: Plan, box: Room): readonly Drawing[] {
  const cases = endCases(plan);
  const meetings = meetingsOf(cases);
  const met = new Set(meetings.flat());
  const all: readonly Detail[] = [
    ...alike(
      cases.filter((one) => !met.has(one)),
      caseKey,
    ).map((group) => endDetail(plan, group)),
    ...meetings.flatMap(([left, right]) => {
      if (left.post.corner === undefined) return [meetingDetail(plan, left, right)];
      const fromAbove = cornerEndsDetail(plan, left, right);
      return left.post.corner.isSetOff ? [fromAbove, crossingDetail(plan, left, right)] : [fromAbove];
    }),
    ...alike(cornersOf(plan), (corner) => cornerKey(plan, corner)).map((group) => cornerDetail(plan, group)),
    ...alike(slopeChangesOf(plan), (change) => slopeChangeKey(plan, change)).map((group) => slopeChangeDetail(plan, group)),
    ...alike(
      onePostsOf(plan).filter(({ corner }) => corner.isPassed),
      (corner) => onePostKey(plan, corner),
    ).map((group) => onePostDetail(plan, group)),
    ...[passDetail(plan)].filter((one) => one !== null),
  ];
  return all.map((detail) => composeDetail(plan, box, detail));
}

/** Where one run ends and the next begins on the same side. */
function meetingsOf(cases: readonly EndCase[]): readonly (readonly [EndCase, EndCase])[] {
  return cases.flatMap((left, index) => {
    const right = cases[index + 1];
    const meets = right !== undefined && left.run !== right.run && left.post.sideIndex === right.post.sideIndex;
    return meets ? [[left, right] as const] : [];
  });
}

function alike<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
}
