// Which ends of the guard are piers, where do they stand, and what holds the cables in them?
import type { GuardEnd, Job } from "../job/job.ts";
import type { Pier } from "../job/pier.ts";
import type { Mm } from "../units/quantity.ts";
import { leftMouth, rightMouth } from "./corner-post.ts";
import { guardEndsOf } from "./outline.ts";
import type { Run, RunEnd, SidePlan, Vertical } from "./plan.ts";
import type { PostPull } from "./readings.ts";

/** Piers of the guard from left to right: PR1, PR2 ... */
const piersOf = (job: Job): readonly Pier[] =>
  job.sides.flatMap((_, index) => {
    const { begins, ends } = guardEndsOf(job, index);
    return [begins, ends].flatMap((end) => (end?.pier === undefined ? [] : [end.pier]));
  });

const markOf = (nth: number): string => `PR${nth + 1}`;

/** @throws RangeError where the guard has no pier of this mark. */
export function pierNamed(job: Job, id: string): Pier {
  const pier = piersOf(job).find((_, nth) => markOf(nth) === id);
  if (pier === undefined) throw new RangeError(`no pier ${id}`);
  return pier;
}

/** The pier at one end of a side as a vertical: its face is that end of the side, and the cables lie in its middle. */
export function pierVertical(
  side: SidePlan,
  end: "begins" | "ends",
  place: (station: Mm) => Pick<Vertical, "centre" | "datum" | "slope">,
  counters: { pier: number },
): readonly Vertical[] {
  const pier = side[end]?.pier;
  if (pier === undefined) return [];
  const station = end === "begins" ? side.startsAt - pier.along / 2 : side.endsAt + pier.along / 2;
  const id = markOf(counters.pier);
  counters.pier += 1;
  return [
    {
      id,
      kind: "pier",
      role: "pier",
      sideIndex: side.index,
      sideId: side.id,
      station,
      ...place(station),
      direction: side.direction,
      along: pier.along,
      across: pier.across,
      sectionName: pier.of,
      lean: 0,
    },
  ];
}

export const isPier = (end: GuardEnd | null): boolean => end?.kind === "pier";

/** Where the rails of a side rest: in the middle of a post, at the face of a pier; in stations of the side. */
export function restOf(vertical: Vertical): Mm {
  if (vertical.kind !== "pier") return vertical.station;
  return isLeft(vertical) ? rightMouth(vertical) : leftMouth(vertical);
}

/** A pier where its side begins stands before the station 0. */
export const isLeft = ({ station }: Pick<Vertical, "station">): boolean => station < 0;

/**
 * Moment of all cables that end in a pier about the datum, at their greatest reading on the hardest day, where no rail bears on it [N mm].
 *
 * @throws never
 * Source: derived, force times height
 */
export const momentWithoutRails = (pulls: readonly PostPull[], id: string): number =>
  pulls.filter(({ postId }) => postId === id).reduce((sum, { pull_high, height }) => sum + pull_high * height, 0);

export interface AnchorAt {
  readonly run: Run;
  readonly end: RunEnd;
}

/** Ends of runs in piers, run by run. */
export const anchorEndsOf = ({ runs }: { readonly runs: readonly Run[] }): readonly AnchorAt[] =>
  runs.flatMap((run) => [run.left, run.right].filter(({ kind }) => kind === "anchor").map((end) => ({ run, end })));
