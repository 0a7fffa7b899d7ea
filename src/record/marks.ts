// Does a record speak of this plan? Every mark must be one of the plan's, and stand once.
import { nearest } from "../job/field.ts";
import { revisionOf } from "../job/identity.ts";
import { wrong } from "../job/wrong.ts";
import type { Plan, Vertical } from "../plan/plan.ts";
import type { JobPath, Problem } from "../problem/problem.ts";
import type { AsBuilt, BuiltBore, BuiltCable } from "./as-built.ts";

/** Errors where a mark, an end or a number of passes is none of the plan's; a warning where the revision is another. */
export const checkMarks = (asBuilt: AsBuilt, plan: Plan): readonly Problem[] => [
  ...checkHead(asBuilt, plan),
  ...known(
    asBuilt.bores.map(({ mark }) => mark),
    { list: "bores", key: "mark", name: "bore", marks: plan.bores.map(({ mark }) => mark) },
  ),
  ...checkFaces(asBuilt, plan),
  ...known(
    asBuilt.cables.map(({ mark }) => mark),
    { list: "cables", key: "mark", name: "cable", marks: plan.cables.map(({ mark }) => mark) },
  ),
  ...asBuilt.cables.flatMap((cable, index) => checkCable(cable, index, plan)),
  ...known(
    asBuilt.posts.map(({ postId }) => postId),
    { list: "posts", key: "post", name: "post", marks: plan.verticals.map(({ id }) => id) },
  ),
  ...checkDeviations(asBuilt, plan),
];

/** A deviation may be about anything; but what looks like a mark, and is none, accepts nothing. */
function checkDeviations({ deviations }: AsBuilt, { bores, cables, verticals, runs }: Plan): readonly Problem[] {
  const marks = [...[...bores, ...cables].map(({ mark }) => mark), ...[...verticals, ...runs].map(({ id }) => id)];
  const known = new Set(marks);
  return deviations.flatMap(({ mark }, index): readonly Problem[] => {
    if (known.has(mark) || !/^(?:PR?|S|R)\d/i.test(mark)) return [];
    const near = nearest(mark, marks);
    const what = `the plan has no ${mark}: this deviation accepts nothing`;
    const fix = near === null ? "write the mark of a bore, a cable, a run or an upright" : `did you mean ${near}?`;
    return [{ severity: "warning", path: ["deviations", index, "mark"], what, fix }];
  });
}

function checkHead({ jobNumber, revision }: AsBuilt, { job }: Plan): readonly Problem[] {
  const { number } = job.identity;
  const current = revisionOf(job.identity);
  if (jobNumber !== number) {
    const what = `this is the record of the job ${jobNumber}, and the job file beside it is that of ${number}`;
    return [wrong(["record", "job"], what, "give the record the name of its own job file, or correct the number")];
  }
  if (job.identity.revisions.some(({ mark }) => mark === revision)) return [];
  const what = `the job file has no revision ${revision}; it is at revision ${current}`;
  const fix = "name the revision that stands on the sheets that were built from";
  return [{ severity: "warning", path: ["record", "revision"], what, fix }];
}

interface Known {
  readonly list: string;
  readonly key: string;
  readonly name: string;
  readonly marks: readonly string[];
}

function known(written: readonly string[], { list, key, name, marks }: Known): readonly Problem[] {
  const all = new Set(marks);
  const before = new Set<string>();
  return written.flatMap((mark, index) => {
    const path: JobPath = [list, index, key];
    if (before.has(mark)) return [wrong(path, `the ${name} ${mark} stands twice in this record`, "keep what was measured last")];
    before.add(mark);
    if (all.has(mark)) return [];
    const near = nearest(mark, marks);
    return [
      wrong(path, `the plan has no ${name} ${mark}`, near === null ? `the plan's marks are ${span(marks)}` : `did you mean ${near}?`),
    ];
  });
}

const span = (marks: readonly string[]): string => `${marks[0] ?? ""} to ${marks.at(-1) ?? ""}`;

/** A bore of a slope comes out at another height than it goes in. */
function checkFaces({ bores: written }: AsBuilt, { bores, verticals }: Plan): readonly Problem[] {
  const uprights = new Map(verticals.map((vertical) => [vertical.id, vertical]));
  const uprightOf = new Map(bores.map(({ mark, verticalId }) => [mark, uprights.get(verticalId)]));
  return written.flatMap((bore, index) => checkFace(bore, index, uprightOf.get(bore.mark)));
}

function checkFace({ height }: BuiltBore, index: number, vertical: Vertical | undefined): readonly Problem[] {
  if (vertical === undefined || (vertical.slope === 0) === (height !== null)) return [];
  return vertical.slope === 0
    ? [
        wrong(
          ["bores", index],
          `${vertical.id} stands on a level side: its bores have one height`,
          "write height, and leave out left and right",
        ),
      ]
    : [
        wrong(
          ["bores", index],
          `${vertical.id} stands on a slope: its bores have a height on each face`,
          "write left and right in place of height",
        ),
      ];
}

function checkCable({ mark, passes, ends }: BuiltCable, index: number, plan: Plan): readonly Problem[] {
  const run = plan.runs.find(({ id }) => id === plan.cables.find((cable) => cable.mark === mark)?.runId);
  if (run === undefined) return [];
  const planned = plan.tightening.find(({ runId }) => runId === run.id)?.passes.length ?? 0;
  const pulling = run.takeUp.ends.map(({ postId }) => postId);
  return [
    ...(passes.length > planned
      ? [
          wrong(
            ["cables", index, "passes"],
            `${run.id} is tightened in ${planned === 1 ? "one pass" : `${planned} passes`}, and ${passes.length} are written`,
            "write one reading for each pass, in their order",
          ),
        ]
      : []),
    ...ends.flatMap(({ postId }, at) => {
      const path: JobPath = ["cables", index, "ends", at, "post"];
      if (ends.findIndex((one) => one.postId === postId) < at)
        return [wrong(path, `${postId} stands twice here`, "keep what was read last")];
      if (pulling.includes(postId)) return [];
      return [wrong(path, `${run.id} is not tightened at ${postId}`, `its cables are tightened at ${pulling.join(" and ")}`)];
    }),
  ];
}
