// Which ends of runs are drawn, and which of them look the same?
import { pierNamed } from "../../plan/pier.ts";
import type { Bore, Plan, Run, RunEnd, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { guardEnds } from "../guard-ends.ts";
import type { Text } from "../packet.ts";
import { signOf } from "./detail-parts.ts";
import { verticalOf } from "./kit.ts";

export interface EndCase {
  readonly run: Run;
  readonly end: RunEnd;
  readonly post: Vertical;
  readonly bore: Bore;
  /** Clear gap to a wall behind the post; null where there is none. */
  readonly gap: Mm | null;
  /** What the gap is measured to: "wall", "column", "house corner". */
  readonly against: Text;
}

export function endCases(plan: Plan): readonly EndCase[] {
  const places = guardEnds(plan);
  return plan.runs.flatMap((run) =>
    ([run.left, run.right] as const).map((end, which): EndCase => {
      const bore = plan.bores.find((one) => one.runId === run.id && one.verticalId === end.postId);
      if (bore === undefined) throw new RangeError(`no bore for ${run.id} at ${end.postId}`);
      const place = places.find(({ post, hand }) => post.id === end.postId && hand === (which === 0 ? "left" : "right"));
      const gap = place?.end.kind === "wall" ? (place.end.gap ?? 0) : null;
      return { run, end, post: drawnPart(plan, end), bore, gap, against: place?.against ?? "wall" };
    }),
  );
}

/** A post as it is; of a pier what lies about the anchor, or its hole could not be seen. */
function drawnPart(plan: Plan, { postId }: RunEnd): Vertical {
  const post = verticalOf(plan, postId);
  if (post.kind !== "pier") return post;
  const { depth, flange } = pierNamed(plan.job, postId).anchor;
  return {
    ...post,
    along: Math.min(post.along, PIER_depths * depth.value),
    across: Math.min(post.across, PIER_flanges * flange.value),
  };
}

const PIER_depths = 1.4;
const PIER_flanges = 4;

/** What must be the same for two ends to share one drawing. */
export const caseKey = ({ end, post, bore, gap, against }: EndCase): string =>
  JSON.stringify([
    end.kind,
    end.access,
    gap,
    gap === null ? "" : against,
    post.sectionName,
    bore.diameter,
    bore.counterbore?.depth ?? 0,
    end.pulls,
    // Rising or falling outwards.
    bore.angle * signOf(end),
    bore.through,
  ]);
