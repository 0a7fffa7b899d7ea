// How the guard stands: what is measured where hardware is in the way?
import { gatesOf } from "../guard-ends.ts";
import type { SheetContext } from "./kit.ts";
import { groupBy, listed } from "./kit.ts";
import { sideOf } from "./leaning.ts";
import { accessStop, accessWords, offBy, practice, RAIL_mm, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

/** Hardware of one kind in one row: its heights on all the posts that have it. */
export function hardwareRows({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] {
  return groupBy(plan.hardware, ({ what, from, to }) => `${what}\n${from}\n${to}`).map((same): SurveyRow => {
    const [{ what, from, to }] = same;
    return [
      "posts / hardware",
      `${what} on ${listed(same.map(({ postId }) => postId))}: lower and upper end above the datum`,
      `${show.tape(from)} to ${show.tape(to)}`,
      `below ${show.tape(from)} or above ${show.tape(to)}: draw it before boring ${practice}`,
    ];
  });
}

/** What interrupts the guard: its width and its step set where the next side starts, but no cable. */
export function interruptionRows({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] {
  const gates = gatesOf(plan);
  return plan.job.sides.flatMap(({ id, interrupted }, index): readonly SurveyRow[] => {
    if (interrupted === null) return [];
    const { what, width, out } = interrupted;
    const next = plan.sides[index + 1]?.id ?? "";
    const key = `guard / sides / ${id} / interrupted`;
    const off = `${offBy(SIZE_mm, { show })} ${practice}`;
    const gate = gates.find(({ sides }) => sides[0] === id);
    return [
      [
        `${key} / width`,
        gate === undefined
          ? `Width of the ${what === "open" ? "opening" : what} between sides ${id} and ${next}`
          : `Gate between ${listed(gate.posts)}: from face to face of the posts`,
        show.feetBoth(width),
        gate === undefined
          ? off
          : `${off}; or anything of the gate is fixed to ${gate.posts.join(" or ")} and no engineer checked them with it`,
      ],
      ...(out === 0
        ? []
        : ([
            [
              `${key} / ${out > 0 ? "out" : "in"}`,
              `Side ${next} starts ${out > 0 ? "away from" : "towards"} the deck, square from the line of side ${id}`,
              show.feetBoth(Math.abs(out)),
              off,
            ],
          ] as const)),
    ];
  });
}

/** Posts that are not like the others: what was found there is measured and looked at again. */
export const asFoundRows = ({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] =>
  plan.job.posts.asFound.flatMap(({ post, access, behind, section, leans }): readonly SurveyRow[] => [
    ...(access === null
      ? []
      : ([
          ["posts / as found", `Behind ${post}${behind === null ? "" : `: ${behind}`}`, accessWords[access], accessStop(access)],
        ] as const)),
    ...(section === null
      ? []
      : ([
          [
            "posts / as found",
            `Post ${post}: along x across the side`,
            `${show.tape(section.along)} x ${show.tape(section.across)}`,
            `${offBy(SIZE_mm, { show })} ${practice}`,
          ],
        ] as const)),
    ...(leans === null || (leans.out === 0 && leans.right !== 0)
      ? []
      : ([
          [
            "posts / as found",
            `Post ${post} leans ${leans.out < 0 ? "towards" : "away from"} the deck, at ${show.tape(leans.over)} above the datum`,
            show.tape(leans.out < 0 ? -leans.out : leans.out),
            `${offBy(RAIL_mm, { show })} ${practice}`,
          ],
        ] as const)),
    ...(leans === null || leans.right === 0
      ? []
      : ([
          [
            "posts / as found",
            `Post ${post} leans to the ${sideOf(leans.right)} (seen from the deck), from plumb over ${show.tape(leans.over)} of height: hold a level to its side face`,
            show.tape(Math.abs(leans.right)),
            `${offBy(SIZE_mm, { show })} ${practice}`,
          ],
        ] as const)),
  ]);
