// Is the gap between each end post and its wall narrow enough for the sphere, and wide enough for a hand?
import type { GuardEnd, Job } from "../job/job.ts";
import { type Checked, limitCheck } from "./check-row.ts";
import { mustBeOnFace } from "./face-end.ts";
import type { Check, Vertical } from "./plan.ts";

/** The first or the last post of a side. */
interface EndPost {
  readonly sideIndex: number;
  readonly which: "first" | "last";
}

interface EndPlace extends EndPost {
  readonly end: GuardEnd;
  readonly id: string;
  readonly where: string;
}

export function endPostOf({ verticals }: Pick<Checked, "verticals">, { sideIndex, which }: EndPost): Vertical | undefined {
  return verticals.filter((one) => one.sideIndex === sideIndex).at(which === "first" ? 0 : -1);
}

/** The two ends of the guard, and those at what interrupts it. */
export const guardEnds = ({ start, end, sides }: Job): readonly EndPlace[] => [
  { end: start, id: "start", where: "wall at the start of the guard", sideIndex: 0, which: "first" },
  { end, id: "end", where: "wall at the end of the guard", sideIndex: sides.length - 1, which: "last" },
  ...sides.flatMap(({ id, interrupted }, index) =>
    interrupted === null
      ? []
      : [
          {
            end: interrupted.end,
            id: `${id}-end`,
            where: `${interrupted.what} at the end of side ${id}`,
            sideIndex: index,
            which: "last" as const,
          },
          {
            end: interrupted.start,
            id: `${id}-start`,
            where: `${interrupted.what} at the start of side ${sides[index + 1]?.id ?? ""}`,
            sideIndex: index + 1,
            which: "first" as const,
          },
        ],
  ),
];

/** Beside a post that leans along its side the widest and the narrowest part of the gap are tried. */
export function wallChecks(plan: Pick<Checked, "verticals">, job: Job): readonly Check[] {
  return guardEnds(job).flatMap(({ end, id, where, ...beside }) => {
    if (end.gap === null) return [];
    const { widest, narrowest } = endPostOf(plan, beside)?.leansAlong?.gap ?? { widest: end.gap, narrowest: end.gap };
    const common = { name: "Gap between wall and end post", where, kind: "length" } as const;
    const gap = limitCheck({
      ...common,
      id: `wall-gap-${id}`,
      rule: "at most",
      demand: widest,
      limit: job.limits.wallGap_max,
      advice: "move the post nearer",
    });
    // Nobody reaches behind a post whose end stands on its face.
    if (mustBeOnFace(end.access, job)) return [gap];
    const reach = limitCheck({
      ...common,
      id: `wall-reach-${id}`,
      rule: "at least",
      demand: narrowest,
      limit: job.limits.wallGap_min,
      advice: `${job.posts.existing ? "" : "move the post away from the wall; or "}try hand and wrench there and state the gap in which they do (limits: narrowest wall gap); or hold the ends on the face of the post (fittings: face, access: none)`,
    });
    return [gap, reach];
  });
}
