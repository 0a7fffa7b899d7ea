// What can be wrong with piers at the ends of a guard?
import type { JobPath, Problem } from "../problem/problem.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { checkRating } from "./checks-rating.ts";
import type { PierFile } from "./pier-defaults.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

export const checkPiers = (guard: JobFile["guard"]): readonly Problem[] =>
  endsOf(guard).flatMap(({ path, end, side }) => (end.kind === "pier" ? ofPier(end, path, side) : []));

function ofPier(end: PierFile, path: JobPath, side: JobFile["guard"]["sides"][number] | undefined): readonly Problem[] {
  const { along, anchor } = end;
  const at = [...path, "anchor"];
  return [
    ...(side?.rake === undefined
      ? []
      : [
          wrong(
            [...path, "kind"],
            "anchors in a pier are planned for level sides only: on a slope the pull bends them",
            "stand an end post beside the pier and write { kind: wall, gap: 3-1/2 in }",
          ),
        ]),
    ...(anchor.depth >= along - SAME_mm
      ? [
          wrong(
            [...at, "depth"],
            "the hole of the anchor comes out at the back of the pier",
            "check both: along is the size of the pier along the guard; what must be left behind the hole, its maker says",
          ),
        ]
      : []),
    ...checkRating(anchor, at, { what: "anchor", by: "the report of the anchor with its number and page, or the engineer's letter" }),
  ];
}

interface EndAt {
  readonly path: JobPath;
  readonly end: JobFile["guard"]["start"];
  readonly side: JobFile["guard"]["sides"][number] | undefined;
}

/** All ends that a job file writes: of the guard, and at each interruption. */
export const endsOf = ({ start, end, sides }: JobFile["guard"]): readonly EndAt[] => [
  { path: ["guard", "start"], end: start, side: sides[0] },
  { path: ["guard", "end"], end, side: sides.at(-1) },
  ...sides.flatMap((side, index): readonly EndAt[] => {
    const { interrupted } = side;
    const path = ["guard", "sides", index, "interrupted"];
    if (interrupted === undefined) return [];
    return [
      { path: [...path, "end"], end: interrupted.end, side },
      { path: [...path, "start"], end: interrupted.start, side: sides[index + 1] },
    ];
  }),
];
