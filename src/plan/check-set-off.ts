// Do the bores of two runs keep clear of each other where they cross in one corner post?
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import type { Bore, Check, Vertical } from "./plan.ts";

type Crossed = Pick<Checked, "verticals" | "bores">;

/** Two bores of two runs in one corner post, and the wood that their heights leave between them. */
interface Crossing {
  readonly lower: Bore;
  readonly upper: Bore;
  readonly wood: Mm;
}

/** Corner posts behind which the runs of both their sides end. */
export const crossedPosts = ({ verticals }: Pick<Checked, "verticals">): readonly Vertical[] =>
  verticals.filter(({ corner }) => corner?.isSetOff === true);

/** The two bores that come nearest to each other in such a post: they lie square to each other, each level. */
export function nearestCrossed({ bores }: Pick<Crossed, "bores">, { id }: Vertical): Crossing {
  const own = bores.filter(({ verticalId }) => verticalId === id).toSorted((a, b) => a.height - b.height);
  const crossings = own.flatMap((lower) =>
    own
      .filter((upper) => upper.runId !== lower.runId && upper.height >= lower.height)
      .map((upper) => ({ lower, upper, wood: upper.height - lower.height - (upper.diameter + lower.diameter) / 2 })),
  );
  return crossings.reduce((least, one) => (one.wood < least.wood ? one : least));
}

export function setOffChecks(plan: Crossed, job: Job): readonly Check[] {
  const posts = crossedPosts(plan);
  if (posts.length === 0) return [];
  const ids = posts.map(({ id }) => id).join(", ");
  return [
    ...posts.map((post) => {
      const { lower, upper, wood } = nearestCrossed(plan, post);
      return limitCheck({
        id: `crossing-${post.id}`,
        name: "Wood between two bores that cross in a corner post",
        where: `${lower.mark} and ${upper.mark}`,
        rule: "at least",
        demand: wood,
        limit: job.limits.betweenBores_min,
        kind: "length",
        advice: "set the cables farther apart, or use fittings with smaller bores",
      });
    }),
    {
      ...question("crossing-split", "Splitting of corner posts that are bored both ways", {
        source: "derived",
        where: "all bores lie in line along the grain, washers press on two faces; only stress on the section that is left is computed",
        advice: `ask the engineer whether ${ids} may be bored both ways and pulled from two sides; split or checked wood is replaced first; or make the corner with two posts`,
      }),
      where: ids,
    },
  ];
}
