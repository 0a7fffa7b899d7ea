// Where do the sides of the guard lie, and is the outline possible?
import { firstSelfCrossing } from "../geometry/polyline.ts";
import { along as pointAlong } from "../geometry/vector.ts";
import type { Job } from "../job/job.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { angleDegrees } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_rad } from "../units/tolerance.ts";
import { cornerSetback } from "./corner-path.ts";
import { cornerPostAt, endsOnOnePost } from "./corner-post.ts";
import type { PlanPoint, SidePlan } from "./plan.ts";
import { levelAt } from "./set-off.ts";
import { outsideAt, outsideOf } from "./sleeve.ts";

/** A corner sharper than this leaves no room for its two posts; the two sides would nearly touch. */
const TURN_MAX_rad = (135 * Math.PI) / 180;
/** Two sides that turn by less than this are one side. */
const TURN_MIN_rad = (2 * Math.PI) / 180;

/** Sides that two runs end between although only the slope changes there, by the number of the left one. */
export type EndedAt = ReadonlySet<number>;

const NOWHERE: EndedAt = new Set();

/** Where only the slope changes, two posts stand as near as at a corner; as far apart as those of a pair where two runs end between them. */
export function jointSetback(job: Job, index: number, endedAt: EndedAt): Mm {
  const side = job.sides[index];
  const isStraight = side?.turn === 0 && job.posts.cornerSetback === null;
  return isStraight && endedAt.has(index) ? job.posts.pairGap.value / 2 : cornerSetback(side?.turn ?? null, job);
}

/** From the corner point to the outside of the last post; one post that makes the corner stands astride of it. */
function beyondCorner(job: Job, index: number, endedAt: EndedAt): Mm {
  const onePost = cornerPostAt(job, index);
  return onePost === null ? jointSetback(job, index, endedAt) : onePost.nextStation - outsideOf(job).along / 2;
}

export function layOutSides(job: Job, endedAt: EndedAt = NOWHERE): Outcome<readonly SidePlan[]> {
  const problems: Problem[] = [];
  const lines = linesOf(job);
  const datums = datumsOf(job);
  const sides = job.sides.map((side, index): SidePlan => {
    const isStraight = side.turn === 0 && (side.rake?.slope ?? 0) !== (job.sides[index + 1]?.rake?.slope ?? 0);
    if (side.interrupted === null && !isStraight) problems.push(...turnProblems(side.turn, index, job));
    const { from, to, direction } = lines[index] ?? { from: ORIGIN, to: ORIGIN, direction: 0 };
    const { begins, ends } = guardEndsOf(job, index);
    const half = (nth: number): number => outsideAt(job, index, nth).along / 2;
    const firstGiven = side.stations?.[0];
    const lastGiven = side.stations?.at(-1);
    return {
      id: side.id,
      index,
      from,
      to,
      direction,
      length: side.length,
      slope: side.rake?.slope ?? 0,
      datum_from: datums[index] ?? 0,
      datum_to: datums[index + 1] ?? 0,
      turn: ends === null ? side.turn : null,
      begins,
      ends,
      ...levelAt(job, index),
      startsAt:
        begins?.kind === "pier"
          ? 0
          : firstGiven !== undefined
            ? firstGiven - half(0)
            : begins !== null
              ? (begins.gap ?? 0)
              : beyondCorner(job, index - 1, endedAt),
      endsAt:
        ends?.kind === "pier"
          ? side.length
          : lastGiven !== undefined
            ? lastGiven + half((side.stations?.length ?? 1) - 1)
            : side.length - (ends !== null ? (ends.gap ?? 0) : beyondCorner(job, index, endedAt)),
    };
  });
  problems.push(...crossingProblems(sides));
  for (const side of sides) problems.push(...roomProblems(side, job));
  return { value: sides, problems };
}

const ORIGIN: PlanPoint = { x: 0, y: 0 };

/** Where the guard begins and ends on a side; null at a corner. */
export function guardEndsOf(job: Job, index: number): Pick<SidePlan, "begins" | "ends"> {
  const before = job.sides[index - 1];
  return {
    begins: before === undefined ? job.start : (before.interrupted?.start ?? null),
    ends: index === job.sides.length - 1 ? job.end : (job.sides[index]?.interrupted?.end ?? null),
  };
}

/** Each side from its start to its end; behind an interruption the next side starts apart from the end of the one before. */
function linesOf(job: Job): readonly Pick<SidePlan, "from" | "to" | "direction">[] {
  let [from, direction] = [ORIGIN, 0];
  return job.sides.map(({ length: reach, turn, interrupted }) => {
    const to = pointAlong(from, direction, reach);
    const line = { from, to, direction };
    const beyond = pointAlong(to, direction, interrupted?.width ?? 0);
    from = pointAlong(beyond, direction + Math.PI / 2, interrupted?.out ?? 0);
    direction -= turn ?? 0;
    return line;
  });
}

/** The way from the start of the guard to its end, across what interrupts it, must not meet itself. */
function crossingProblems(sides: readonly SidePlan[]): readonly Problem[] {
  // A segment for each side, and one for each interruption, which belongs to the side before it.
  const points: PlanPoint[] = [];
  const owners: SidePlan[] = [];
  for (const side of sides) {
    if (side.begins !== null) points.push(side.from);
    const before = sides[side.index - 1];
    if (before !== undefined && side.begins !== null) owners.push(before);
    points.push(side.to);
    owners.push(side);
  }
  const crossing = firstSelfCrossing(points);
  const [first, second] = [owners[crossing?.first ?? -1], owners[crossing?.second ?? -1]];
  if (first === undefined || second === undefined) return [];
  return [
    {
      severity: "error",
      path: ["guard", "sides", second.index, "length"],
      what: `side ${second.id} crosses or touches side ${first.id}: the outline runs into itself`,
      fix: "check the lengths and the turns (right is an outside corner, for somebody on the deck who looks out)",
    },
  ];
}

/** The walking surface at the ends of the sides, above that at the guard's start: it climbs along each side and jumps nowhere. */
function datumsOf({ sides }: Job): readonly Mm[] {
  const datums: Mm[] = [0];
  for (const { rake, length } of sides) datums.push((datums.at(-1) ?? 0) + (rake === null ? 0 : length * Math.tan(rake.slope)));
  return datums;
}

function turnProblems(turn: number | null, index: number, job: Job): readonly Problem[] {
  if (turn === null) return [];
  const path = ["guard", "sides", index, "turn"];
  if (Math.abs(turn) < TURN_MIN_rad) {
    return [{ severity: "error", path, what: `a turn of ${angleDegrees(turn)} is no corner`, fix: "write the two sides as one" }];
  }
  const { onePostTurn_max } = job.limits;
  if (endsOnOnePost(job, index) && Math.abs(turn) > onePostTurn_max.value + SAME_rad) {
    const what = `a turn of ${angleDegrees(Math.abs(turn))} is too sharp for a corner of one post: at most ${angleDegrees(onePostTurn_max.value)}`;
    const why = "each mouth of the bore would bend the cable by more than half of that (common practice, no source)";
    return [{ severity: "error", path, what, why, fix: "make it with two posts (corner: two posts), or interrupt the guard there" }];
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
  if (side.endsAt - side.startsAt >= 2 * outsideOf(job).along) return [];
  return [
    {
      severity: "error",
      path: ["guard", "sides", side.index, "length"],
      what: `side ${side.id} is too short for its two posts of ${outsideOf(job).name}`,
      why: "an end or corner post stands at each end of a side",
      fix: "check the length; give more than both posts and their gaps or setbacks need",
    },
  ];
}
