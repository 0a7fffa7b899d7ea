// Z-301: how are the ends, corners and bushings put together?
import type { Block, Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { drawnDetails } from "./drawn.ts";
import { facts, holdingEnds, list, listed, prose, pullingEnds, type SheetContext, type SheetMaker, sheet, unique } from "./kit.ts";

export const detailsSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.details)] : []),
    ...drawnDetails(context.plan),
    endFacts(context),
    list(...rules(context)),
  ]);

function endFacts({ plan, show }: SheetContext): Block {
  const { stud, grip, passBore, holdEnd } = plan.job.fittings;
  const at = (ends: readonly { readonly postId: string }[]): Text => listed(unique(ends.map(({ postId }) => postId)));
  const corners = plan.verticals.filter(({ role }) => role === "corner").map(({ id }) => id);
  const pairs = plan.verticals.filter(({ role }) => role === "pair").map(({ id }) => id);
  return facts("details-facts", [
    [
      "Pulling end (stud and nut)",
      `at ${at(plan.runs.flatMap(pullingEnds))}: bore ${show.diameter(stud.bore.value)}, thread ${stud.thread}, washer ${show.tape(stud.washerDiameter.value)}`,
    ],
    ...(plan.runs.some((run) => holdingEnds(run).length > 0)
      ? ([
          [
            `Holding end (${holdEnd})`,
            holdEnd === "grip"
              ? `at ${at(plan.runs.flatMap(holdingEnds))}: bore ${show.diameter(grip.bore.value)}; counterbore, where the table of bores has one, ${show.diameter(grip.counterbore.value)}, ${show.tapeBoth(grip.bodyLength.value)} deep`
              : `at ${at(plan.runs.flatMap(holdingEnds))}: a second stud, bore ${show.diameter(stud.bore.value)}`,
          ],
        ] as const)
      : []),
    ["Where the cable passes", `bore ${show.diameter(passBore.value)}`],
    ...(corners.length > 0
      ? ([["Corner posts", `${listed(corners)}: each corner has two posts, each turns the cable half-way`]] as const)
      : []),
    ...(pairs.length > 0
      ? ([
          [
            "Pairs of posts",
            `${listed(pairs)}: one run ends, the next begins; ${show.tapeBoth(plan.job.posts.pairGap.value)} clear between them`,
          ],
        ] as const)
      : []),
  ]);
}

function rules({ plan, show }: SheetContext): readonly Text[] {
  const { fittings, limits, posts } = plan.job;
  return [
    `A bushing goes in wherever the cable turns by more than ${show.angle(fittings.bushingAngle.value)} in its bore ${sourceMark(fittings.bushingAngle.source)}, and in every metal wall.`,
    `At least ${show.tapeBoth(limits.edgeDistance_min.value)} stays between a bore and the edge of its post ${sourceMark(limits.edgeDistance_min.source)}.`,
    "A flat washer lies under every nut and under every fitting that bears on a post.",
    posts.section.material === "wood"
      ? "The face under a washer is cut flat and treated; the washer must not sink in."
      : "Metal posts: deburr both walls; keep stainless steel and other metals apart with sleeves and washers of plastic.",
  ];
}
