// Which holes can no full-size template show, because they lie beside the paper or beside the face?
import type { Job, Paper } from "../../job/job.ts";
import type { Bore, Plan, Vertical } from "../../plan/plan.ts";
import type { Problem } from "../../problem/problem.ts";
import { length } from "../../units/print.ts";
import type { Mm } from "../../units/quantity.ts";
import { BEYOND_mm } from "./hole-words.ts";
import { stripRoom } from "./strip-pages.ts";
import { FOLD_mm } from "./template-strips.ts";

const papers: readonly Paper[] = ["letter", "a4"];

/** A face that is wider than the paper is shown in its middle alone: a hole beside that part would be missing without a word. One for each post. */
export function beyondPaper({ job, verticals, bores }: Plan): readonly Problem[] {
  const shown = Math.min(...papers.map((paper) => stripRoom(paper, job, []).width / 2)) - FOLD_mm;
  return verticals.flatMap((upright): readonly Problem[] => {
    const farthest = Math.max(0, ...bores.filter(({ verticalId }) => verticalId === upright.id).map(reachOf));
    const isHidden = upright.across / 2 > shown && farthest + BEYOND_mm > shown;
    return isHidden || farthest > upright.across / 2 ? [problemOf(upright, farthest, { job, shown })] : [];
  });
}

/** From the middle of the face to the far edge of what is bored. */
const reachOf = ({ offset, diameter, counterbore }: Bore): Mm => Math.abs(offset) + Math.max(diameter, counterbore?.diameter ?? 0) / 2;

function problemOf({ id, across, lean }: Vertical, farthest: Mm, { job, shown }: { readonly job: Job; readonly shown: Mm }): Problem {
  const tape = { units: job.units, style: "tape" } as const;
  const found = job.posts.asFound.findIndex(({ post }) => post === id);
  const isOff = farthest > across / 2;
  return {
    severity: "error",
    path: lean === 0 || found < 0 ? ["posts", "size"] : ["posts", "as found", found, "leans"],
    what: isOff
      ? `a bore of ${id} reaches ${length(farthest, tape)} from the middle of its face, which ends at ${length(across / 2, tape)}`
      : `a bore of ${id} reaches ${length(farthest, tape)} from the middle of its face, and a template on paper shows ${length(shown, tape)} of it to each side`,
    fix: lean === 0 ? "give a larger section, or split the runs at two posts" : "set the post plumb, or replace it",
  };
}
