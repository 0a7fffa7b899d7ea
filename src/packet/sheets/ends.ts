// How is a run begun and ended: where does the cable go in, and which ends are fitted once it lies in its bores?
import type { EndKind, Plan, Run, RunEnd } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { greatest, listed, unique } from "./kit.ts";
import { backOfEnd } from "./set-off-words.ts";

/** The end where reeving begins: the one that pulls. Its stud is on the cable before the cable goes in. */
export const startOf = (run: Run): RunEnd => (run.left.pulls ? run.left : run.right);
export const stopOf = (run: Run): RunEnd => (run.left.pulls ? run.right : run.left);

/** Those that stand on a side that slopes: their bores leave the face at an angle. */
export const slopedEnds = ({ runs, verticals }: Plan): readonly RunEnd[] =>
  runs.flatMap(({ left, right }) => [left, right]).filter(({ postId }) => verticals.some(({ id, slope }) => id === postId && slope !== 0));

/** Behind the post there is room for a hand at most: a wall, or the other post of a pair. */
export const isNarrow = (end: RunEnd): boolean => end.access !== "drill";

/** With room behind the post the cable goes in there; without, its plain end sets out in the first bay and the stud follows outward. */
export const startsInside = (run: Run): boolean => isNarrow(startOf(run));

export function startWords(plan: Pick<Plan, "verticals">, run: Run): Text {
  const start = startOf(run);
  const face = backOfEnd(plan, start);
  return startsInside(run) ? `${start.postId} (from inside, stud out at its ${face})` : `${start.postId} (in at its ${face})`;
}

export interface SiteEnds {
  /** Second studs, fitted when the cable has been pulled hand-tight and cut. */
  readonly studs: readonly RunEnd[];
  readonly grips: readonly RunEnd[];
  /** Fittings that are pinned to an eye on the face, fitted when the cable has been cut. */
  readonly faces: readonly RunEnd[];
}

export function siteEnds(run: Run): SiteEnds {
  const end = stopOf(run);
  const of = (kind: EndKind): readonly RunEnd[] => (end.kind === kind ? [end] : []);
  return { studs: of("stud"), grips: of("grip"), faces: [...of("face"), ...of("anchor")] };
}

export const secondStuds = (plan: Plan): readonly RunEnd[] => plan.runs.flatMap((run) => siteEnds(run).studs);
export const gripEnds = (plan: Plan): readonly RunEnd[] => plan.runs.flatMap((run) => siteEnds(run).grips);
/** Ends whose cable is marked, then cut, then fitted. */
export const cutEnds = (plan: Plan): readonly RunEnd[] => plan.runs.flatMap((run) => [...siteEnds(run).studs, ...siteEnds(run).faces]);
export const hasTails = (plan: Plan): boolean => gripEnds(plan).length > 0;

export const postsWith = (ends: readonly RunEnd[]): Text => listed(unique(ends.map(({ postId }) => postId)));

export interface Meeting {
  readonly first: RunEnd;
  readonly firstRun: string;
  readonly second: RunEnd;
  readonly secondRun: string;
}

/** Pairs of posts where the tails of two runs meet head-on. */
export function meetingTails(plan: Plan): readonly Meeting[] {
  return plan.bays
    .filter(({ kind }) => kind === "pair gap")
    .flatMap(({ leftId, rightId }) => {
      const before = plan.runs.find(({ right }) => right.postId === leftId && right.kind === "grip");
      const after = plan.runs.find(({ left }) => left.postId === rightId && left.kind === "grip");
      return before && after ? [{ first: before.right, firstRun: before.id, second: after.left, secondRun: after.id }] : [];
    });
}

/** Is strand cut on site at all: from a spool, for a second stud, or as a tail? */
export const cutsStrand = (plan: Plan): boolean => plan.job.supply.kind !== "ready" || hasTails(plan) || cutEnds(plan).length > 0;

/** Runs that are pulled at both ends. */
export const pulledAtBoth = (plan: Plan): readonly Run[] => plan.runs.filter(({ left, right }) => left.pulls && right.pulls);

/** The deepest of the posts that hold some ends, along the cable: so much slack draws an end back through its post. */
export const depthOf = (plan: Plan, ends: readonly RunEnd[]): Mm =>
  greatest(plan.verticals.filter(({ id }) => ends.some(({ postId }) => postId === id)).map(({ along }) => along));

/** What goes on a cable once it has been cut: "second stud", "fitting at an eye". */
export const farFitting = (plan: Plan): Text =>
  [
    ...(secondStuds(plan).length > 0 ? ["second stud"] : []),
    ...(plan.runs.some((run) => siteEnds(run).faces.length > 0) ? ["fitting at an eye"] : []),
  ].join(" or ");
