// Up to which measured length of a bay, a run, a gap or a post does the packet still fit?
import type { Access } from "../../job/job.ts";
import type { Wood } from "../../job/site.ts";
import { isOnFace, mustBeOnFace } from "../../plan/face-end.ts";
import { alloyOf } from "../../plan/frame-members.ts";
import type { Plan, RunEnd } from "../../plan/plan.ts";
import { recessIn } from "../../plan/sleeve.ts";
import type { Cited } from "../../sources/cited.ts";
import { alloys } from "../../tables/metal.ts";
import type { Megapascal, Mm } from "../../units/quantity.ts";
import { type GuardEndPlace, guardEnds } from "../guard-ends.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { faceOfEnd } from "./face-ends.ts";
import { groupBy, listed, postsOf, type SheetContext, unique } from "./kit.ts";
import { runRoom, sideRoom } from "./side-room.ts";

/** One thing to measure: key in the job file, what, plan value, and the value past which the packet does not fit. */
export type SurveyRow = readonly [key: Text, what: Text, planned: Text, stopIf: Text];

/** How far a measured size may be off before bores and fittings miss: common practice, no source. */
export const SIZE_mm: Mm = 3.175;
export const RAIL_mm: Mm = 1.5875;

export const offBy = (tolerance: Mm, { show }: Pick<SheetContext, "show">): Text => `off by more than ${show.tape(tolerance)}`;
export const practice = sourceMark("practice");

export const isLevel = ({ sides }: Plan, sideId: string): boolean => sides.find(({ id }) => id === sideId)?.slope === 0;

/** Posts that stand set the length of their side: it may be off by no more than they are. A new side may grow by what it has room for. */
export function sideStop({ plan, show }: SheetContext, sideId: string, length: Mm): Text {
  if (plan.job.posts.existing) return `${offBy(SIZE_mm, { show })} ${practice}`;
  return aboveWords(show.feetDown(length + sideRoom(plan, sideId)), show.feet(length));
}

export const NOTHING: Text = "nothing to spare";

/** It is said, so that nobody takes a stop that equals its plan for a slip. */
export const aboveWords = (stop: Text, planned: Text): Text => `above ${stop}${stop === planned ? `: ${NOTHING}` : ""}`;

export const runRows = ({ plan, show }: SheetContext): readonly SurveyRow[] =>
  plan.runs.map((run) => {
    // With the sleeves on a tape finds them, not the wood in them.
    const over = run.outsideLength + 2 * recessIn(plan.job);
    return [
      "(result)",
      `Run ${run.id}, ${measuredFrom(plan, run.left)} to ${measuredFrom(plan, run.right)}${run.sideIds.every((id) => isLevel(plan, id)) ? "" : ", along the cable"}`,
      show.feetBoth(over),
      aboveWords(show.feetDown(over + Math.min(runRoom(plan, run), standingRoom(plan))), show.feet(over)),
    ];
  });

/** An end on the face is measured to the face that the cable comes to; all others to the back of their post. */
const measuredFrom = (plan: Plan, end: RunEnd): Text =>
  isOnFace(end)
    ? `${faceOfEnd(plan, end)} of ${end.postId}`
    : `outside ${plan.job.posts.sleeve === null ? "" : "the sleeve of "}${end.postId}`;

/** Between two posts that stand, each off by its own tolerance. */
const standingRoom = ({ job }: Plan): Mm => (job.posts.existing ? 2 * SIZE_mm : Number.POSITIVE_INFINITY);

/** Two posts where runs meet: no sphere between them, and room for a hand. */
export function pairRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const { posts, code } = plan.job;
  return plan.bays
    .filter(({ kind }) => kind === "pair gap")
    .map(({ leftId, rightId }) => [
      "posts / pair gap",
      `Clear between ${leftId} and ${rightId}, for hand and wrench`,
      show.tapeBoth(posts.pairGap.value),
      `above ${show.tapeDown(code.openingSphere.value)}, or short by more than ${show.tape(SIZE_mm)} ${practice}`,
    ]);
}

/** Posts that stand already are measured one by one, along the side and up: the top rail lies on them. */
export function existingRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  if (!plan.job.posts.existing) return [];
  return [
    ...postsOf(plan).map(
      ({ id, sideId, station, leansAlong }): SurveyRow => [
        `guard / sides / ${sideId} / stations`,
        `Post ${id}: start of side ${sideId} to its middle${isLevel(plan, sideId) ? "" : ", level"}${leansAlong === undefined ? "" : `, at ${show.tape(leansAlong.height)} above the datum`}`,
        show.feetBoth(station),
        `${offBy(SIZE_mm, { show })} ${practice}`,
      ],
    ),
    [
      "frame / gap below, clear opening",
      `Height of the standing posts above ${plan.job.frame.datum}: lowest and highest`,
      show.tapeBoth(plan.opening.top),
      `${offBy(RAIL_mm, { show })}: the top rail lies on them ${practice}`,
    ],
  ];
}

const woodWords = ({ value }: Cited<Wood>): Text => `${value.species} ${value.grade}${value.incised ? ", incised" : ""}`;

/** Posts, rails and spacers of metal, by the alloy that was taken for each. */
export function metalParts({
  job,
  frame,
}: Plan): readonly { readonly parts: Text; readonly alloy: Text; readonly yieldStress: Cited<Megapascal> }[] {
  const members = [
    { part: "posts", material: job.posts.section.material },
    { part: "top rail", material: job.frame.topRail.material },
    ...(job.frame.bottomRail === null ? [] : [{ part: "bottom rail", material: job.frame.bottomRail.material }]),
    ...(frame.spacers === null ? [] : [{ part: "spacers", material: job.spacers.section.material }]),
  ].flatMap(({ part, material }) => (material === "wood" ? [] : [{ part, alloy: alloyOf[material] }]));
  return groupBy(members, ({ alloy }) => String(alloy)).map((same) => ({
    parts: listed(same.map(({ part }) => part)),
    alloy: String(same[0].alloy),
    yieldStress: alloys[same[0].alloy].yieldStress,
  }));
}

/** What the strength and stiffness of the frame were computed with: worse than that, and its checks no longer hold. */
export function strengthRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const { posts, spacers, frame, site } = plan.job;
  const { pull, height, movement } = plan.frame.trial;
  const members = [
    { key: "posts", wood: posts.wood },
    { key: "top rail", wood: frame.topRail.wood },
    { key: "bottom rail", wood: frame.bottomRail?.wood ?? null },
    { key: "spacers", wood: plan.frame.spacers === null ? null : spacers.wood },
  ].flatMap(({ key, wood }) => (wood === null ? [] : [{ key, planned: woodWords(wood) }]));
  return [
    ...groupBy(members, ({ planned }) => planned).map((same): SurveyRow => {
      const keys = listed(same.map(({ key }) => key));
      return [`${keys} / species, grade, incised`, `Grade stamp on ${keys}`, same[0].planned, "weaker, or no stamp"];
    }),
    ...metalParts(plan).map(
      ({ parts, alloy, yieldStress }): SurveyRow => [
        "(no key: assumed)",
        `Yield strength of ${parts}, from the certificate (assumed: ${alloy} ${sourceMark(yieldStress.source)})`,
        show.stress(yieldStress.value),
        `below ${show.stress(yieldStress.value, { both: false })}, or no certificate: ask the engineer`,
      ],
    ),
    [
      "posts: base",
      `End post without its rails, pulled along the side with ${show.force(pull)} at ${show.tape(height)}: moves there`,
      show.diameter(movement),
      `above ${show.fine(movement)}`,
    ],
    ...(posts.wood === null
      ? []
      : ([
          [
            "site / moisture at fitting",
            "Moisture of the posts, by a meter",
            `${show.decimal(site.moistureAtFitting_percent.value, 0)} %`,
            "above it",
          ],
        ] as const)),
  ];
}

export const accessWords: Readonly<Record<Access, Text>> = {
  drill: "a drill fits",
  hand: "hand and wrench fit",
  none: "nothing fits",
};

/** More room than planned does no harm. */
export const accessStop = (access: Access): Text => (access === "none" ? "-" : access === "hand" ? "they do not" : "it does not");

/** The gap to a wall and the room for hand or drill are two things. Like ends stand in one row, by the marks of their posts. */
export function endRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const { limits } = plan.job;
  const ends = guardEnds(plan);
  const gaps = ends.flatMap(({ end, ...place }) =>
    end.kind === "wall" && end.gap !== null ? [{ ...place, gap: end.gap, reached: !mustBeOnFace(end.access, plan.job) }] : [],
  );
  return [
    ...groupBy(gaps, ({ gap, against, reached }) => `${gap}\n${against}\n${reached}`).map((same): SurveyRow => {
      const [{ gap, against, reached }] = same;
      return [
        keysOf(same, "gap"),
        `Clear gap to the ${against} at ${listed(same.map(({ post }) => post.id))}${same.length === 1 ? "" : ": the widest and the narrowest"}`,
        show.tapeBoth(gap),
        // Where no tool goes behind the post, its gap may be as small as it is.
        `above ${show.tapeDown(limits.wallGap_max.value)}${reached ? `, below ${show.tape(limits.wallGap_min.value)}` : ""}`,
      ];
    }),
    ...groupBy(
      ends.filter(({ end }) => end.kind !== "pier"),
      ({ end }) => end.access,
    ).map((same): SurveyRow => {
      const [{ end }] = same;
      return [keysOf(same, "access"), `Behind ${listed(same.map(({ post }) => post.id))}`, accessWords[end.access], accessStop(end.access)];
    }),
  ];
}

/** "guard / start, end / gap", and those of the interruptions by their sides. */
function keysOf(ends: readonly GuardEndPlace[] | readonly Omit<GuardEndPlace, "end">[], word: Text): Text {
  const keys = ends.map(({ key }) => key);
  const own = keys.filter((key) => !key.startsWith("sides"));
  const sides = unique(keys.filter((key) => key.startsWith("sides")).map((key) => key.replace(/^sides . (\S+) .*$/, "$1")));
  return [
    ...(own.length === 0 ? [] : [`guard / ${own.join(", ")} / ${word}`]),
    ...(sides.length === 0 ? [] : [`guard / sides / ${sides.join(", ")} / interrupted / ${word}`]),
  ].join("; ");
}
