// What do all cables together ask of each post, for the engineer who checks the frame?
import type { Plan } from "../../plan/plan.ts";
import type { PostPull } from "../../plan/readings.ts";
import type { Table, Text } from "../packet.ts";
import { roleName } from "../wording.ts";
import { bold, column, type SheetContext, table } from "./kit.ts";

/** A demand only: no capacity stands beside it. */
export function pullsTable({ plan, show }: SheetContext, id: string): Table {
  const bends = plan.pulls.some(({ cause }) => cause === "bend");
  return table({
    id,
    caption: "Pull of all cables on each post: for the engineer or the authority",
    columns: [
      column("post", "Post", 0.18),
      column("run", "Run", 0.06),
      column("cables", "Cables", 0.08, { align: "right" }),
      column("target", "At target", 0.185),
      column("high", "At greatest reading", 0.2),
      column("height", "Acts at", 0.14, { sub: "above datum" }),
      column("way", "Direction", 0.155),
    ],
    rows: plan.pulls.map((pull) => [
      `${bold(pull.postId)} ${roleOf(plan, pull.postId)}`,
      pull.runId,
      String(pull.cables),
      show.forceBothUp(pull.pull_target),
      bold(show.forceBothUp(pull.pull_high)),
      show.tape(pull.height),
      wayOf(plan, pull),
    ]),
    rowHeads: true,
    notes: [
      `${bends ? "End: along the guard; bend: to the inside. " : ""}**The frame is NOT checked** and must be accepted before anything is bored.`,
    ],
  });
}

const roleOf = (plan: Plan, id: string): Text => {
  const vertical = plan.verticals.find((each) => each.id === id);
  return vertical ? roleName[vertical.role] : "";
};

/** At an end the cables pull the post towards themselves; at a bend towards the inside of the corner. */
function wayOf(plan: Plan, { postId, runId, cause }: PostPull): Text {
  if (cause === "bend") {
    return "bend: inward";
  }
  const isLeft = plan.runs.some((run) => run.id === runId && run.left.postId === postId);
  return `end: to the ${isLeft ? "right" : "left"}`;
}
