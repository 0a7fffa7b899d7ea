// Which posts lean as they were found, and in which uprights are the holes off the middle for that or another reason?
import type { Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { bold, listed, type SheetContext, unique } from "./kit.ts";

/** Marks of the posts that lean as found: all others must be plumb. */
export const leaning = ({ job }: Pick<Plan, "job">): readonly Text[] =>
  job.posts.asFound.flatMap(({ post, leans }) => (leans === null ? [] : [post]));

/** "P6 leans 3/8" away from the deck over 36" of height"; empty where none leans. */
export const leanWords = ({ plan, show }: Pick<SheetContext, "plan" | "show">): Text =>
  plan.job.posts.asFound
    .flatMap(({ post, leans }) =>
      leans === null
        ? []
        : [
            `${post} leans ${show.tape(Math.abs(leans.out))} ${leans.out < 0 ? "towards" : "away from"} the deck over ${show.tape(leans.over)} of height`,
          ],
    )
    .join(", ");

/** Uprights whose holes are not on the middle line of their faces. */
export const offMiddle = ({ bores }: Pick<Plan, "bores">): readonly Text[] =>
  unique(bores.filter(({ offset }) => offset !== 0).map(({ verticalId }) => verticalId));

/** "plumb", or "plumb but for P6 (P6 leans ..., as found: no other way)". */
export function plumbWords(context: Pick<SheetContext, "plan" | "show">): Text {
  const marks = leaning(context.plan);
  return marks.length === 0 ? "plumb" : `plumb but for ${listed(marks)} (${leanWords(context)}, as found: no other way)`;
}

/** From the middle of the post to a bore that lies beside it. */
export function acrossWords(offset: number, { plan, show }: SheetContext): Text {
  const floor = floorWord(plan.job);
  if (offset === 0) {
    return "middle";
  }
  return offset > 0 ? `${bold(show.tapeBoth(offset))} away from ${floor}` : `${bold(show.tapeBoth(-offset))} towards ${floor}`;
}
