// Does the wood under a washer or a fitting bear the pull?
import type { Job } from "../job/job.ts";
import { bearingAcrossGrain_min } from "../tables/timber.ts";
import { length } from "../units/print.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { Checked } from "./check-row.ts";
import { counterboreDepth, endBore } from "./end-fitting.ts";
import type { Check, Run, RunEnd } from "./plan.ts";

/** Wood posts only: in a tube the wall bears on its edge, which is part of the frame's check. */
export function bearingChecks(plan: Checked, job: Job): readonly Check[] {
  if (job.posts.section.material !== "wood") return [];
  return plan.runs.flatMap((run) => [run.left, run.right].map((end) => bearingCheck(run, end, job)));
}

/** An "ask" above 1, as the species is not known: the fitting's maker and the wood decide. */
function bearingCheck(run: Run, end: RunEnd, job: Job): Check {
  const { stud, grip } = job.fittings;
  // The washer presses on what is left around its hole in the face: the bore, or the counterbore that the body lies in.
  const hole = counterboreDepth(end, job) > 0 ? grip.counterbore.value : endBore(end, job);
  const seat = (end.kind === "stud" ? stud : grip).washerDiameter.value;
  const force: Newton = run.tension.high;
  const capacity: Newton = bearingAcrossGrain_min.value * ringArea(seat, hole);
  const needed = Math.sqrt((4 * force) / (Math.PI * bearingAcrossGrain_min.value) + hole ** 2);
  const washer = length(needed, { units: job.units, step: 1 / 8, rounding: "up" });
  const keeps = force <= capacity;
  return {
    id: `bearing-${run.id}-${end.postId}`,
    name: "Bearing of the washer on the wood of the post",
    where: `${end.postId}, ${run.id}`,
    rule: "at most",
    demand: { value: force, kind: "force" },
    limit: { value: capacity, kind: "force" },
    ratio: force / capacity,
    source: bearingAcrossGrain_min.source,
    sourceWhere: bearingAcrossGrain_min.where,
    verdict: keeps ? "pass" : "ask",
    advice: keeps ? "" : `the washer may sink in: use one of at least ${washer}, or a plate`,
  };
}

const ringArea = (outside: Mm, inside: Mm): number => (Math.PI / 4) * (outside ** 2 - inside ** 2);
