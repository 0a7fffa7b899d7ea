// What is said of the frame wherever it matters: does it hold, what fails, what makes it hold?
import type { FrameCheck } from "../plan/frame-plan.ts";
import type { Plan } from "../plan/plan.ts";
import { decimal } from "../units/print.ts";
import type { Text } from "./packet.ts";

type Framed = Pick<Plan, "frame">;

/** The sheet that shows the frame; every issue holds it. */
export const FRAME_SHEET = "Z-805";

export const failingChecks = ({ frame }: Framed): readonly FrameCheck[] => frame.checks.filter(({ verdict }) => verdict === "fail");

export const frameFails = (plan: Framed): boolean => failingChecks(plan).length > 0;

/** The check that comes nearest to its capacity, or passes it by most; none where nothing could be compared. */
export const worstCheck = ({ frame }: Framed): FrameCheck | undefined =>
  frame.checks
    .filter(({ verdict }) => verdict === "pass" || verdict === "fail")
    .reduce<FrameCheck | undefined>((worst, one) => (worst === undefined || one.ratio > worst.ratio ? one : worst), undefined);

/** A member that buckles before it can answer has no ratio: from here on it is told by words. */
const RATIO_most = 99;

export const isBeyond = (ratio: number): boolean => ratio >= RATIO_most;

/** Never too small: 1.001 is above 1. */
export const ratioText = (ratio: number): Text =>
  isBeyond(ratio) ? `over ${RATIO_most}` : decimal(ratio, { decimals: 2, rounding: "up" });

export const FRAME_STAMP: Text = `frame must be changed or reviewed by a licensed engineer, see ${FRAME_SHEET}`;

/** What makes the frame hold, and what to write; or that nothing was found. Empty where nothing fails. */
export function remedyTexts(plan: Framed): readonly Text[] {
  if (!frameFails(plan)) return [];
  const { remedy } = plan.frame;
  return remedy === null
    ? ["No change that was tried, alone or with others, makes the frame hold: a licensed engineer must design it."]
    : [
        `Change that makes it hold: **${remedy.change}**. The guard was computed again with it: the highest ratio of what fails now is then ${ratioText(remedy.ratio)}.`,
        `Write in the job file: **${remedy.write}**. Then make the packet again.`,
      ];
}

/** Said wherever somebody could think that the frame is somebody else's matter, or none. */
export const frameWords = (plan: Framed): Text =>
  frameFails(plan)
    ? `**The frame FAILS its checks on ${FRAME_SHEET}.** Bore nothing. It must be changed, or reviewed by a licensed engineer.`
    : `The frame is computed on ${FRAME_SHEET}, not tested. A licensed engineer or the authority must accept posts, rails, post feet and their fasteners in writing before anything is bored.`;
