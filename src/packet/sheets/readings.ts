// What may a gauge show when a run is done, and what do its cables ask of each post? One print for every sheet.
import type { Plan, Run } from "../../plan/plan.ts";
import type { Mm, Newton } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { greatest, listed, refer, type SheetContext, unique } from "./kit.ts";

/** A lower limit: rounded up, so that what is printed is never less than what is needed. */
export const atLeast = (value: Newton, { show }: SheetContext): Text => show.forceUp(value);
/** An upper limit: rounded down. */
export const atMost = (value: Newton, { show }: SheetContext): Text => show.forceDown(value);

/** What every cable of a run must show at its nut: on the log, at the hold point and on the owner's card alike. */
export const lowAtNut = (run: Run, context: SheetContext): Text => atLeast(run.tension.low, context);
export const highAtNut = (run: Run, context: SheetContext): Text => atMost(run.tension.high, context);

/** "R1 at least 225 lbf, at most 275 lbf" */
export const bandWords = (run: Run, context: SheetContext): Text =>
  `${run.id} at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}`;

/** From here on a tuner shows no tenths. */
const WHOLE_Hz = 50;

/** A pitch as a tuner shows it, its unit beside it. */
export const pitchDigits = (value_Hz: number, { show }: SheetContext): Text => show.decimal(value_Hz, value_Hz > WHOLE_Hz ? 0 : 1);

/** Less than a plumb line tells. 1/64 in. */
const LEAST_mm = 0.4;

/** Cables pull harder in the cold: a band holds for one temperature, and whoever signs for it on another day has to move it. */
export const bandDay = (context: SheetContext): Text => {
  const { plan, show } = context;
  return `at ${show.heat(plan.job.site.reference.value)}; on another day moved as the table by temperature on ${refer(context, "tightening")} says`;
};

/** How far a post moves: "1/32\"", or "under 1/32\"" where no plumb line tells it, but never nothing. */
export function movedWords(movement: Mm, { show }: SheetContext): Text {
  const far = Math.abs(movement);
  return far < LEAST_mm ? `under ${show.fine(2 * LEAST_mm)}` : show.fine(far);
}

/** How far the post goes that moves most when all cables stand at their targets. */
export const mostMovedWords = (context: SheetContext): Text =>
  movedWords(greatest(context.plan.frame.sides.flatMap(({ posts }) => posts.map(({ movement }) => Math.abs(movement)))), context);

/**
 * The pull that whoever accepts the frame has accepted: "P1, P5 2480 lbf". Each run alone, as one may be tight before the next, and where
 * two runs end on one corner post, both together.
 */
export function pullWords({ plan, show }: SheetContext): Text {
  const pulls = greatestPulls(plan).map(([postId, pull]) => ({ postId, pull: show.forceUp(pull) }));
  const alone = unique(pulls.map(({ pull }) => pull)).map(
    (pull) => `${listed(pulls.filter((each) => each.pull === pull).map(({ postId }) => postId))} ${pull}`,
  );
  const both = plan.cornerPulls.map(
    ({ postId, runIds, pull_high }) => `${runIds[0]} and ${runIds[1]} at once ${postId} ${show.forceUp(pull_high)}`,
  );
  return [...alone, ...both].join("; ");
}

/** The greatest pull that one run puts on each post, in the order of the plan. */
function greatestPulls(plan: Plan): readonly (readonly [postId: string, pull: Newton])[] {
  const most = new Map<string, Newton>();
  for (const { postId, pull_high } of plan.pulls) {
    most.set(postId, Math.max(most.get(postId) ?? 0, pull_high));
  }
  return [...most];
}

export interface Lean {
  readonly postId: string;
  readonly runIds: readonly string[];
  /** Where its cables pull it. */
  readonly way: Text;
}

/** Every post that cables pull aside: those that hold ends, and those of corners. */
export function leansOf(plan: Plan): readonly Lean[] {
  return unique(plan.pulls.map(({ postId }) => postId)).map((postId) => {
    const own = plan.pulls.filter((pull) => pull.postId === postId);
    return {
      postId,
      runIds: unique(own.map(({ runId }) => runId)),
      way: unique(own.map(({ cause }) => (cause === "bend" ? bendWay(plan, postId) : endWay(plan, postId)))).join(", "),
    };
  });
}

/** A post on which runs end at both faces may lean either way; at a corner they pull it along both sides. */
const endWay = (plan: Plan, postId: string): Text =>
  plan.verticals.some(({ id, corner }) => id === postId && corner !== undefined) ? bendWay(plan, postId) : endWayAlong(plan, postId);

const endWayAlong = ({ runs }: Plan, postId: string): Text =>
  runs.some(({ right }) => right.postId === postId) && runs.some(({ left }) => left.postId === postId)
    ? "either way along"
    : "the other posts";

/** Who looks out and goes to the right has the deck at the right: a right turn pulls towards it. */
function bendWay(plan: Plan, postId: string): Text {
  const corner = plan.bays.find(({ kind, leftId, rightId }) => kind === "corner" && (leftId === postId || rightId === postId));
  const before = plan.verticals.find(({ id }) => id === corner?.leftId);
  const onePost = plan.verticals.find(({ id }) => id === postId)?.corner;
  const turn = onePost?.turn ?? plan.sides.find(({ id }) => id === before?.sideId)?.turn ?? 0;
  // Where only the slope changes the cables push up or down, and hardly along.
  if (turn === 0) return "either way along";
  const floor = floorWord(plan.job);
  return turn > 0 ? `the ${floor}` : `away from the ${floor}`;
}
