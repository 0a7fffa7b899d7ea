// Where do the sides of the guard lie, and is the outline possible?
import { firstSelfCrossing, sidesToPoints } from "../geometry/polyline.ts";
import type { Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { angleDegrees } from "../units/print.ts";
import { cornerSetback } from "./corner-path.ts";
import type { SidePlan } from "./plan.ts";

/** A corner sharper than this leaves no room for its two posts; the two sides would nearly touch. */
const TURN_MAX_rad = (135 * Math.PI) / 180;
/** Two sides that turn by less than this are one side. */
const TURN_MIN_rad = (2 * Math.PI) / 180;

export function layOutSides(job: Job): Outcome<readonly SidePlan[]> {
  const problems: Problem[] = [];
  const { points, headings } = sidesToPoints(job.sides.map((side) => ({ length: side.length, turn: side.turn ?? 0 })));
  const sides = job.sides.map((side, index): SidePlan => {
    problems.push(...turnProblems(side.turn, index));
    const isFirst = index === 0;
    const isLast = index === job.sides.length - 1;
    const before = job.sides[index - 1]?.turn ?? null;
    const half = job.posts.section.along / 2;
    const firstGiven = side.stations?.[0];
    const lastGiven = side.stations?.at(-1);
    return {
      id: side.id,
      index,
      from: points[index] ?? { x: 0, y: 0 },
      to: points[index + 1] ?? { x: 0, y: 0 },
      direction: headings[index] ?? 0,
      length: side.length,
      turn: isLast ? null : side.turn,
      startsAt: firstGiven !== undefined ? firstGiven - half : isFirst ? (job.start.gap ?? 0) : cornerSetback(before, job),
      endsAt: lastGiven !== undefined ? lastGiven + half : side.length - (isLast ? (job.end.gap ?? 0) : cornerSetback(side.turn, job)),
    };
  });
  const crossing = firstSelfCrossing(points);
  if (crossing !== null) {
    problems.push({
      severity: "error",
      path: ["guard", "sides", crossing.second, "length"],
      what: `side ${sides[crossing.second]?.id} crosses or touches side ${sides[crossing.first]?.id}: the outline runs into itself`,
      fix: "check the lengths and the turns (right is an outside corner, for somebody on the deck who looks out)",
    });
  }
  for (const side of sides) problems.push(...roomProblems(side, job));
  return { value: sides, problems };
}

function turnProblems(turn: number | null, index: number): readonly Problem[] {
  if (turn === null) return [];
  const path = ["guard", "sides", index, "turn"];
  if (Math.abs(turn) < TURN_MIN_rad) {
    return [{ severity: "error", path, what: `a turn of ${angleDegrees(turn)} is no corner`, fix: "write the two sides as one" }];
  }
  if (Math.abs(turn) > TURN_MAX_rad) {
    return [
      {
        severity: "error",
        path,
        what: `a turn of ${angleDegrees(Math.abs(turn))} is too sharp for a corner of two posts`,
        fix: "give the change of direction (90 deg at a square corner), at most 135 deg, or split the guard into two jobs",
      },
    ];
  }
  return [];
}

/** A side must hold at least its two posts. */
function roomProblems(side: SidePlan, job: Job): readonly Problem[] {
  if (side.endsAt - side.startsAt >= 2 * job.posts.section.along) return [];
  return [
    {
      severity: "error",
      path: ["guard", "sides", side.index, "length"],
      what: `side ${side.id} is too short for its two posts of ${job.posts.section.name}`,
      why: "an end or corner post stands at each end of a side",
      fix: "check the length; give more than both posts and their gaps or setbacks need",
    },
  ];
}
