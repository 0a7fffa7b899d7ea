// How the guard stands: what is measured where hardware is in the way?
import type { SheetContext } from "./kit.ts";
import { groupBy, listed } from "./kit.ts";
import { accessWords, offBy, practice, RAIL_mm, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

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

/** What interrupts the guard: its width sets where the next side starts, but no cable. */
export const interruptionRows = ({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] =>
  plan.job.sides.flatMap(({ id, interrupted }, index): readonly SurveyRow[] =>
    interrupted === null
      ? []
      : [
          [
            `guard / sides / ${id} / interrupted`,
            `Width of the ${interrupted.what} between sides ${id} and ${plan.sides[index + 1]?.id ?? ""}`,
            show.feetBoth(interrupted.width),
            interrupted.what === "gate" ? "the gate does not close by itself, or its posts are not those of the plan" : "-",
          ],
        ],
  );

/** Posts that are not like the others: what was found there is measured and looked at again. */
export const asFoundRows = ({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] =>
  plan.job.posts.asFound.flatMap(({ post, access, behind, section, leans }): readonly SurveyRow[] => [
    ...(access === null
      ? []
      : ([["posts / as found", `Behind ${post}${behind === null ? "" : `: ${behind}`}`, accessWords[access], "it does not"]] as const)),
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
    ...(leans === null
      ? []
      : ([
          [
            "posts / as found",
            `Post ${post} leans ${leans.out < 0 ? "towards" : "away from"} the deck, at ${show.tape(leans.over)} above the datum`,
            show.tape(leans.out < 0 ? -leans.out : leans.out),
            `${offBy(RAIL_mm, { show })} ${practice}`,
          ],
        ] as const)),
  ]);
