// Which outline and which runs: where the slope changes, do the cables pass or do two runs end there?
import type { Job } from "../job/job.ts";
import { hasErrors, type Outcome } from "../problem/problem.ts";
import type { Mm } from "../units/quantity.ts";
import { seatOf } from "./end-fitting.ts";
import { type EndedAt, layOutSides } from "./outline.ts";
import type { SidePlan } from "./plan.ts";
import { bestOf, type Cut, chooseCuts, cutsOf, mayPull } from "./splits.ts";
import { firstStations } from "./verticals.ts";

/** An outline with its best runs; null where no choice of runs keeps the limits. */
export interface OutlineOption {
  readonly endedAt: EndedAt;
  readonly sides: readonly SidePlan[];
  readonly cuts: readonly Cut[] | null;
}

export interface OutlineChoice {
  readonly chosen: OutlineOption;
  /** All that were compared. */
  readonly options: readonly OutlineOption[];
  /** Numbers of the sides at whose right-hand end the slope changes. */
  readonly changes: readonly number[];
}

/** Up to so many changes of slope every choice of ends is compared; with more, those with two ends at most. */
const ALL_UP_TO = 6;

export function chooseOutline(job: Job): Outcome<OutlineChoice> {
  const changes = job.sides.flatMap(({ rake, interrupted }, index) => {
    const next = job.sides[index + 1];
    return next === undefined || interrupted !== null || (rake?.slope ?? 0) === (next.rake?.slope ?? 0) ? [] : [index];
  });
  const passing = layOutSides(job);
  if (passing.value === undefined || hasErrors(passing.problems)) return { value: undefined, problems: passing.problems };
  const options = subsetsOf(changes).flatMap((ended): readonly OutlineOption[] => {
    const endedAt = new Set(ended);
    const { value: sides, problems } = ended.length === 0 ? passing : layOutSides(job, endedAt);
    return sides === undefined || hasErrors(problems) ? [] : [{ endedAt, sides, cuts: cutOutline({ sides, endedAt, changes }, job) }];
  });
  const chosen = bestOption(options);
  if (chosen === undefined) throw new RangeError("no outline was laid out");
  return { value: { chosen, options, changes }, problems: passing.problems };
}

/** Fewest runs, then fewest extra posts, then the shortest longest run; the first of all where none can be run. */
export const bestOption = (options: readonly OutlineOption[]): OutlineOption | undefined => bestOf(options) ?? options[0];

function subsetsOf(changes: readonly number[]): readonly (readonly number[])[] {
  const most = changes.length <= ALL_UP_TO ? changes.length : 2;
  const sets: (readonly number[])[] = [[]];
  for (const change of changes) sets.push(...sets.filter(({ length }) => length < most).map((set) => [...set, change]));
  return sets;
}

export const longestCable = ({ supply }: Job): Mm =>
  supply.kind === "ready" ? Math.max(...supply.lengths.value) : supply.spoolLength - supply.allowance.value;

/** A cable reaches over the bevelled washers at its ends too. */
const thickestSeat = (sides: readonly SidePlan[], job: Job): Mm =>
  Math.max(...sides.flatMap(({ slope }) => [seatOf("stud", slope, job), seatOf("grip", slope, job)]));

/** Runs that end where they are told to, and pass all other changes of slope. */
function cutOutline(
  { sides, endedAt, changes }: Pick<OutlineOption, "sides" | "endedAt"> & Pick<OutlineChoice, "changes">,
  job: Job,
): readonly Cut[] | null {
  const cuts = cutsOf(sides, firstStations(sides, job), job);
  const longest = longestCable(job) - 2 * thickestSeat(sides, job);
  const pulls = mayPull(cuts, sides);
  if (changes.length === 0) return chooseCuts(cuts, job, longest, pulls);
  const at = (index: number): number => cuts.findIndex(({ kind, sideIndex }) => kind === "corner" && sideIndex === index);
  if ([...endedAt].some((index) => at(index) < 0)) return null;
  const passed = new Set(changes.filter((index) => !endedAt.has(index)).map(at));
  const ends = [...endedAt].map(at);
  return chooseCuts(
    cuts,
    job,
    longest,
    (from, to) => pulls(from, to) && !passed.has(from) && !passed.has(to) && !ends.some((end) => from < end && end < to),
  );
}
