// What do all cables together ask of each post, for the engineer who checks the frame?
import type { Plan } from "../../plan/plan.ts";
import type { PostPull } from "../../plan/readings.ts";
import { FRAME_SHEET } from "../frame-verdict.ts";
import { hardestAt } from "../hardest-day.ts";
import type { Table, Text } from "../packet.ts";
import { floorWord, roleName } from "../wording.ts";
import { bold, column, type SheetContext, table } from "./kit.ts";

/** A demand only: no capacity stands beside it. */
export function pullsTable(context: SheetContext, id: string): Table {
  const { plan, show } = context;
  const day = hardestAt(plan, show);
  const bends = plan.pulls.some(({ cause }) => cause === "bend");
  return table({
    id,
    caption: "Pull of all cables on each post: for the engineer or the authority",
    columns: [
      column("post", "Post", 0.17),
      column("run", "Run", 0.06),
      column("cables", "Cables", 0.08, { align: "right" }),
      column("target", "At target", 0.17),
      column("high", "At greatest reading", 0.18, day === "" ? {} : { sub: day }),
      column("height", "Acts at", 0.12, { sub: "above datum" }),
      column("way", "Direction", 0.22),
    ],
    rows: plan.pulls.map((pull) => [
      `${bold(pull.postId)} ${roleOf(plan, pull.postId)}`,
      pull.runId,
      String(pull.cables),
      show.forceBoth(pull.pull_target),
      bold(show.forceBothUp(pull.pull_high)),
      show.tape(pull.height),
      wayOf(context, pull),
    ]),
    rowHeads: true,
    notes: [
      ...plan.cornerPulls.map(
        ({ postId, runIds, pull_target, pull_high }) =>
          `${bold(postId)} bears ${runIds[0]} and ${runIds[1]} at once: together ${show.forceBoth(pull_target)} at target, ${bold(show.forceBothUp(pull_high))} at the greatest reading, between the two sides, ${bendsToDeck(plan, postId) ? "towards" : "away from"} the ${floorWord(plan.job)}.`,
      ),
      ...behindBends(context),
      `${bends ? `End: along the guard; bend: half-way between its two spans${dragWords(context)}. ` : ""}What posts and bases make of it: ${FRAME_SHEET}.`,
    ],
  });
}

/** Friction pulls a post where a cable slips round it along the cable, off the middle of the turn by at most the angle of friction. */
function dragWords({ plan, show }: SheetContext): Text {
  const { value } = plan.job.tightening.friction;
  return value > 0 ? `, or up to ${show.angle(Math.atan(value))} off that, by friction, towards the end that is pulled` : "";
}

/** What holds a run behind its bends is spared by friction, which is a guess: less of it, and the whole pull of the other end comes through. */
function behindBends({ plan, show }: SheetContext): readonly Text[] {
  return plan.runs.flatMap(({ id, left, right, bends }) => {
    const holds = [left, right].find(({ pulls }) => !pulls);
    if (holds === undefined || bends.length === 0) return [];
    const pulling = holds === left ? right : left;
    return [
      `${bold(holds.postId)} holds ${id} behind bends, whose friction (${show.decimal(plan.job.tightening.friction.value, 2)}) keeps part of the pull from it. Where the cables slip more easily it bears up to as much of ${id} as ${pulling.postId}.`,
    ];
  });
}

/** What the post does, on one line of its narrow column. */
const roleOf = (plan: Plan, id: string): Text => {
  const role = plan.verticals.find((each) => each.id === id)?.role;
  if (role === undefined) return "";
  return role === "transition" ? "slope changes" : roleName[role];
};

/** The inside of a corner is the deck where the guard turns right, the outside of the deck where it turns left. */
function bendsToDeck(plan: Plan, postId: string): boolean {
  const onePost = plan.verticals.find(({ id }) => id === postId)?.corner;
  if (onePost !== undefined) return onePost.turn > 0;
  const index = plan.verticals.find(({ id }) => id === postId)?.sideIndex ?? 0;
  const first = plan.verticals.find(({ sideIndex, kind }) => sideIndex === index && kind === "post");
  // The first post of a side belongs to the corner before it, the last one to the corner after it.
  const corner = plan.sides[first?.id === postId ? index - 1 : index];
  return (corner?.turn ?? 0) > 0;
}

/** Straight on only the slope changes: the bend pushes up or down, in the plane of the guard. */
function slopeChangeAt(plan: Plan, postId: string): Text | null {
  const bay = plan.bays.find(({ kind, leftId, rightId }) => kind === "corner" && (leftId === postId || rightId === postId));
  const [before, after] = [bay?.leftId, bay?.rightId].map((id) => {
    const own = plan.verticals.find((one) => one.id === id);
    return plan.sides[own?.sideIndex ?? -1];
  });
  if (before === undefined || after === undefined || before.turn !== 0) return null;
  return after.slope < before.slope ? "down" : "up";
}

/** At an end the cables pull the post towards themselves; at a bend to the inside of the turn: the deck's side where the guard turns right. */
function wayOf({ plan, show }: SheetContext, { postId, runId, cause }: PostPull): Text {
  if (cause === "bend") {
    const change = slopeChangeAt(plan, postId);
    if (change !== null) return `bend: ${change}`;
    return `bend: ${bendsToDeck(plan, postId) ? "towards" : "away from"} the ${floorWord(plan.job)}`;
  }
  const corner = plan.verticals.find(({ id }) => id === postId)?.corner;
  const isLeft = plan.runs.some((run) => run.id === runId && run.left.postId === postId);
  if (corner !== undefined) return `end: along side ${isLeft ? corner.nextId : corner.homeId}`;
  const slope = plan.verticals.find(({ id }) => id === postId)?.slope ?? 0;
  const climbs = isLeft ? slope : 0 - slope;
  return `end: to the ${isLeft ? "right" : "left"}${slope === 0 ? "" : `, ${show.angle(Math.abs(slope))} ${climbs > 0 ? "up" : "down"}`}`;
}
