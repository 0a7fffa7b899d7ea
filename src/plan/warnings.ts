// What must the crew be warned of in this job in particular?

import type { Job } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import type { Checked } from "./check-row.ts";
import { isCorner, jointsOf, jointsWord } from "./joints.ts";
import type { RunEnd } from "./plan.ts";

export function warningsOf(plan: Checked, job: Job): readonly Problem[] {
  return [
    ...dateWarnings(job),
    ...exposureWarnings(job),
    ...solidWarnings(job),
    ...endWarnings(plan, job),
    ...slackWarnings(plan, job),
    ...cornerWarnings(plan, job),
  ];
}

const warning = (path: Problem["path"], what: string, fix: string): Problem => ({ severity: "warning", path, what, fix });

/** Dates are written as year-month-day, so they compare as they stand. */
function dateWarnings({ identity: { surveyDate, issueDate } }: Job): readonly Problem[] {
  if (issueDate >= surveyDate) return [];
  const what = `issued on ${issueDate}, before the survey of ${surveyDate}: the numbers of this set would be older than what was measured`;
  return [warning(["job", "issued"], what, "correct whichever date is wrong; if it was measured again, issue a new revision")];
}

function exposureWarnings(job: Job): readonly Problem[] {
  if (job.code.exposure === "inland" || job.cable.grade === "316") return [];
  const what = `stainless 304 at a place of exposure "${job.code.exposure}" stains and pits sooner than 316`;
  return [warning(["cable", "grade"], what, "use 316 for cable and fittings, and wash it more often")];
}

/** Square bars of metal are sold as posts up to some 1-1/4 in; beyond, it is a tube whose wall was forgotten. */
const SOLID_most: Mm = 32;

function solidWarnings({ posts, frame, units }: Job): readonly Problem[] {
  const { section } = posts;
  const members = [
    { path: ["posts", "size"], what: "posts", material: section.material, wall: section.wall, sizes: [section.along, section.across] },
    ...[["top rail", frame.topRail] as const, ["bottom rail", frame.bottomRail] as const].flatMap(([key, rail]) =>
      rail === null
        ? []
        : [{ path: ["frame", key, "size"], what: `the ${key}`, material: rail.material, wall: rail.wall, sizes: [rail.depth, rail.width] }],
    ),
  ];
  return members
    .filter(({ material, wall, sizes }) => material !== "wood" && wall === null && Math.min(...sizes) > SOLID_most)
    .map(({ path, what, material, sizes }) =>
      warning(
        path,
        `no wall is given for ${what}: solid ${material} of ${sizes.map((size) => length(size, { units, both: false })).join(" x ")} is checked, far stronger than a tube`,
        `add the wall of the tube, for example wall: ${units === "mm" ? "3 mm" : "1/8 in"}`,
      ),
    );
}

function endWarnings(plan: Checked, job: Job): readonly Problem[] {
  const ends = plan.runs.flatMap(({ left, right }) => [left, right]).filter(({ access }) => access === "hand");
  const isFull = ({ kind }: RunEnd): boolean => kind === "grip" && job.posts.section.material === "wood";
  const groups = [
    { ends: ends.filter((end) => !isFull(end)), how: "drilled from the cable's side" },
    { ends: ends.filter(isFull), how: "drilled through at full size from the cable's side" },
  ];
  // Posts that are bored alike stand in one warning.
  return groups.flatMap((same) => {
    const marks = [...new Set(same.ends.map(({ postId }) => postId))];
    if (marks.length === 0) return [];
    const what = `only a hand reaches behind ${marks.join(", ")}: bores there are ${same.how}`;
    return [warning(["guard"], what, "drill from the face that the bore sheet names")];
  });
}

function slackWarnings(plan: Checked, job: Job): readonly Problem[] {
  return plan.runs
    .filter((run) => run.takeUp.slackToPull > 0)
    .map((run) => {
      const what = `the thread of run ${run.id} is too short to take up all of its stretch and keep its reserve`;
      const fix = `pull ${length(run.takeUp.slackToPull, { units: job.units })} of slack out of each cable before its nut is turned, or use longer studs`;
      return warning(["fittings", "stud", "thread length"], what, fix);
    });
}

/** EN 1993-1-11 asks for saddles of a radius that no bored post gives; so a bend in a run is a place to look at. */
function cornerWarnings(plan: Checked, job: Job): readonly Problem[] {
  const bent = plan.runs.filter((run) => jointsOf([run]).length > 0).map((run) => run.id);
  if (bent.length === 0) return [];
  const corners = plan.verticals.flatMap(({ corner }) => corner ?? []);
  const passed = corners.every(({ isPassed }) => isPassed) ? "corner" : "corner that cables pass";
  const [where, each] = [jointsWord(plan, jointsOf(plan.runs)), jointsOf(plan.runs).every((id) => isCorner(plan, id)) ? passed : "bend"];
  const what = `${bent.join(", ")} ${bent.length === 1 ? "bends" : "bend"} at ${where}: a bored post is a much tighter bend than the saddle radius of EN 1993-1-11 (30 diameters, 400 wire diameters)`;
  return [
    warning(
      ["guard", "sides"],
      what,
      `fit bushings at ${corners.some(({ isPassed }) => isPassed) ? "every mouth of a bore" : "both posts"} of each ${each} and look at the strand there at every visit; broken wires mean: replace it${job.posts.section.material === "wood" ? `; a ${job.fittings.bushing.tubeWall === null ? "bushing" : "tube"} that has sunk into the wood has let the cable slacken: read it` : ""}`,
    ),
  ];
}
