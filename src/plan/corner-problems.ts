// Which corners cannot be built as the job gives their posts?
import type { Job, Side } from "../job/job.ts";
import type { JobPath, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { cornerRoom, cornerSetback, touchingSetback } from "./corner-path.ts";
import { endsOnOnePost } from "./corner-post.ts";
import { outsideAt, outsideOf } from "./sleeve.ts";

export const cornerProblems = (job: Job): readonly Problem[] => [...twoPostProblems(job), ...onePostProblems(job)];

const tape = (job: Job) => ({ units: job.units, style: "tape" }) as const;

/** The two posts of a corner must not stand in each other. */
function twoPostProblems(job: Job): readonly Problem[] {
  return job.sides.flatMap((side, index): readonly Problem[] => {
    const next = job.sides[index + 1];
    const { turn } = side;
    if (turn === null || next === undefined || side.interrupted !== null || endsOnOnePost(job, index)) return [];
    const [setback_left, setback_right] = [lastSetback(job, side, index), firstSetback(job, next, index)];
    const room = cornerRoom({ setback_left, setback_right, turn, ...outsideOf(job) });
    if (room >= -SAME_mm) return [];
    const given = stationPath(job, index);
    return [given === null ? setInto(job, side) : foundInto(job, { index, given, setback_left, setback_right, turn })];
  });
}

/** From the near face of the last post of a side to its corner point. */
function lastSetback(job: Job, { stations, length: whole, turn }: Side, index: number): Mm {
  const last = stations?.at(-1);
  if (stations === null || last === undefined) return cornerSetback(turn, job);
  return whole - last - outsideAt(job, index, stations.length - 1).along / 2;
}

/** From the corner point at the end of side `index` to the near face of the first post of the next one. */
function firstSetback(job: Job, { stations }: Side, index: number): Mm {
  const first = stations?.[0];
  return first === undefined ? cornerSetback(job.sides[index]?.turn ?? null, job) : first - outsideAt(job, index + 1, 0).along / 2;
}

/** The station beside the corner that the file gives, the last of the left side before the first of the right one. */
function stationPath(job: Job, index: number): JobPath | null {
  const last = job.sides[index]?.stations?.length;
  if (last !== undefined) return ["guard", "sides", index, "stations", last - 1];
  return job.sides[index + 1]?.stations == null ? null : ["guard", "sides", index + 1, "stations", 0];
}

function setInto(job: Job, { turn, id }: Side): Problem {
  const setback = cornerSetback(turn, job);
  return {
    severity: "error",
    path: ["posts", "corner setback"],
    what: `a corner setback of ${length(setback, tape(job))} puts the two posts at the end of side ${id} into each other`,
    fix: `give a corner setback of more than ${length(touchingSetback(turn, job), tape(job))}, or leave it out`,
  };
}

interface Found {
  readonly index: number;
  readonly given: JobPath;
  readonly setback_left: Mm;
  readonly setback_right: Mm;
  readonly turn: number;
}

function foundInto(job: Job, { index, given, setback_left, setback_right, turn }: Found): Problem {
  const name = (at: number): string => job.sides[at]?.id ?? "";
  const show = (value: Mm): string => length(value, tape(job));
  return {
    severity: "error",
    path: given,
    what: `the last post of side ${name(index)} and the first of side ${name(index + 1)} stand in each other: their near faces are ${show(setback_left)} and ${show(setback_right)} from the corner point`,
    why: `where both stand back alike, posts of ${job.posts.section.name} touch at ${show(touchingSetback(turn, job))}`,
    fix: "check the tape readings and the size of the posts: a side is measured to the corner point, where the lines of the bores cross, and a station to the middle of the post",
  };
}

/** One post at a corner shows a face to either side. */
function onePostProblems(job: Job): readonly Problem[] {
  const { along, across, name } = job.posts.section;
  const index = job.sides.findIndex((_, side) => endsOnOnePost(job, side));
  if (index < 0 || Math.abs(along - across) < SAME_mm) return [];
  return [
    {
      severity: "error",
      path: ["guard", "sides", index, "corner"],
      what: `a post of ${name} is not square: one post at a corner shows a face of one width to both sides`,
      fix: "use square posts, or make the corner with two posts (corner: two posts)",
    },
  ];
}
