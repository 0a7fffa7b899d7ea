// Do the anchors in piers hold by what their maker states, and what does the pier itself have to stand?
import type { Job } from "../job/job.ts";
import type { Pier } from "../job/pier.ts";
import type { Mm } from "../units/quantity.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import { hardestPull, underInfill } from "./check-tension.ts";
import { type AnchorAt, anchorEndsOf, pierNamed } from "./pier.ts";
import type { Check } from "./plan.ts";

export function pierChecks(plan: Checked, job: Job): readonly Check[] {
  const ends = anchorEndsOf(plan);
  return ends.flatMap((at) => [...pullChecks(plan, at, job), ...placeChecks(plan, at, job), standsQuestion(at)]);
}

const ADVICE = "have an engineer choose anchors for this pull, or stand an end post beside the pier";

/** On the hardest day, and with the code's infill load on the cable as its strand is checked; nothing is known of an anchor but its rating. */
function pullChecks(plan: Checked, { run, end }: AnchorAt, job: Job): readonly Check[] {
  const { rated } = pierNamed(job, end.postId).anchor;
  const [pull, loaded] = [hardestPull(plan, run), underInfill(plan, run)];
  const where = `${end.postId}, ${run.id}`;
  const common = { where, rule: "at most", kind: "force", advice: ADVICE } as const;
  const id = (name: string): string => `anchor-${name}-${run.id}-${end.postId}`;
  if (rated === null) {
    return [
      {
        ...question(id("rating"), "Working load of the anchors in a pier, in tension", {
          source: "derived",
          where: "what an anchor holds in this pier, among its neighbours, is not computed",
          advice: "ask an engineer or the anchor's maker for it and write it as rated: and rated by: under anchor",
        }),
        where,
        demand: { value: Math.max(pull, loaded ?? 0), kind: "force" },
      },
    ];
  }
  return [
    limitCheck({ ...common, id: id("rated"), name: "Pull on an anchor in a pier, as rated", demand: pull, limit: rated }),
    ...(loaded === null
      ? []
      : [
          limitCheck({
            ...common,
            id: id("infill"),
            name: "The same under the code's infill load on its cable",
            demand: loaded,
            limit: rated,
          }),
        ]),
  ];
}

/** Where the holes lie in the pier, against what the maker of the anchors asks. */
function placeChecks(plan: Checked, { run, end }: AnchorAt, job: Job): readonly Check[] {
  const pier = pierNamed(job, end.postId);
  const { edge_min, spacing_min } = pier.anchor;
  const rows = [
    ["edge", "Middle of an anchor to the nearest edge or top of its pier", edgeOf(plan, pier), edge_min],
    ["spacing", "Anchors in a pier, one above the other", closestOf(plan), spacing_min],
  ] as const;
  return rows.map(([name, title, demand, limit]): Check => {
    const common = { id: `anchor-${name}-${run.id}-${end.postId}`, where: `${end.postId}, ${run.id}`, rule: "at least" } as const;
    if (limit !== null) return limitCheck({ ...common, name: title, demand, limit, kind: "length", advice: ADVICE });
    return {
      ...question(common.id, title, {
        source: "derived",
        where: "plan geometry; cones of concrete that would break out overlap where anchors stand close, and an edge cuts them off",
        advice: `ask an engineer or the anchor's maker for the least distance and write it as least ${name}: under anchor`,
      }),
      ...common,
      demand: { value: demand, kind: "length" },
    };
  });
}

/** The cables lie in the middle of the pier. */
export const edgeOf = ({ courses }: Pick<Checked, "courses">, { across, height }: Pier): Mm =>
  Math.min(across / 2, height - Math.max(...courses.map((course) => course.height)));

export const closestOf = ({ courses }: Pick<Checked, "courses">): Mm =>
  Math.min(...courses.slice(1).map(({ height }, below) => height - (courses[below]?.height ?? 0)));

const standsQuestion = ({ run, end }: AnchorAt): Check => ({
  ...question(`pier-stands-${run.id}-${end.postId}`, "Pier under the pull of all its cables", {
    source: "derived",
    where: "the frame takes a pier to stand still; its strength, its foot and the anchors as a group are not computed",
    advice: "have a licensed engineer accept the pier and its anchors for the pull of all cables and their moment (sheets Z-002, Z-805)",
  }),
  where: `${end.postId}, ${run.id}`,
});
