// What must be known of posts in sleeves: where nuts bear, how the holes are made, what is measured?

import type { Sleeve } from "../../job/standing.ts";
import { SLEEVE_USE } from "../../plan/bores.ts";
import type { Plan } from "../../plan/plan.ts";
import type { BitUse } from "../../plan/purchase.ts";
import { recessIn } from "../../plan/sleeve.ts";
import type { StepItem, Text } from "../packet.ts";
import { isNarrow } from "./ends.ts";
import { listed, refer, type SheetContext, unique } from "./kit.ts";
import { offBy, practice, RAIL_mm, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

/** What a sleeve does in the years after it is bored. */
const stuffs: Readonly<Record<Sleeve["material"], Text>> = {
  wood: "Boards shrink and swell",
  vinyl: "Vinyl grows with heat and creeps",
  composite: "Composite grows with heat and creeps",
};

/** Where it matters that a sleeve carries nothing: at the details. */
export function sleeveBearing({ plan, show }: SheetContext): readonly Text[] {
  const { sleeve, section } = plan.job.posts;
  if (sleeve === null) return [];
  return [
    `**Never tighten against a sleeve.** Washers lie on the ${section.name} inside, at the floor of their holes: look into each before it is tightened. ${stuffs[sleeve.material]}: a nut on it loses its tension, and the sleeve is crushed.`,
    `Rails and their brackets are fastened to the ${section.name}, through the sleeve, with a solid block in the gap of ${show.fine((sleeve.along - section.along) / 2 - sleeve.wall)}: strength and movement here are those of the ${section.name} alone.`,
  ];
}

/** Beside free lengths, which a tape cannot find with the sleeves on. */
export const sleeveFreeNotes = (context: SheetContext): readonly Text[] =>
  context.plan.job.posts.sleeve === null
    ? []
    : [
        `Free lengths count from wood to wood: the holes in the sleeves are wider and hold no cable. At each sleeve a tape finds ${context.show.fine(recessIn(context.plan.job))} less; what to measure with it stands on ${refer(context, "survey")}.`,
      ];

/** For the card of the ends: what is looked at in each hole. */
export const sleeveEndItems = ({ job: { posts } }: Plan): readonly StepItem[] =>
  posts.sleeve === null
    ? []
    : [{ text: `Every washer lies on the ${posts.section.name}, none on a sleeve: looked into each hole with a light.`, killer: true }];

/** For the card of the frame: with what an engineer or the authority accepts. */
export const sleeveFrameWords = ({ job: { posts } }: Plan): Text =>
  posts.sleeve === null ? "" : ` Rails reach the ${posts.section.name} in every sleeve; each sleeve is centred.`;

/** Posts whose washer's hole is sawn on a side that only a hand reaches. */
const narrowIds = (plan: Plan): readonly string[] =>
  plan.job.posts.sleeve === null
    ? []
    : unique(plan.runs.flatMap(({ left, right }) => [left, right].filter(isNarrow).map(({ postId }) => postId)));

/** Behind what is said of washer's holes: where a hole saw may find no room. */
export const sleeveRoomWords = (plan: Plan): Text =>
  narrowIds(plan).length === 0 ? "" : `; at ${listed(narrowIds(plan))} room for the saw tried before`;

/** The same in short sentences. */
export const sleeveRoomSteps = (plan: Plan): readonly StepItem[] =>
  narrowIds(plan).length === 0
    ? []
    : [
        {
          text: `Behind ${listed(narrowIds(plan))} only a hand reaches. Hold drill and hole saw in there before you begin.`,
          more: "No room? Stop and ask. The holes are then cut with the sleeve off its post.",
          killer: true,
        },
      ];

/** For the sheet of questions: what the program cannot know of what is fastened through a sleeve. */
export function sleeveQuestions({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly (readonly [Text, Text])[] {
  const { sleeve, section } = plan.job.posts;
  if (sleeve === null) return [];
  return [
    [
      `How are rails and brackets fastened to the ${section.name} in the sleeves (engineer)? A sleeve carries nothing.`,
      `through the sleeve into the ${section.name}, with a solid block in the gap of ${show.fine((sleeve.along - section.along) / 2 - sleeve.wall)}; the fastening is by others: **to be decided**`,
    ],
  ];
}

/** How the holes of sleeved posts are made. */
export function sleeveBoring({ plan, show }: SheetContext): readonly Text[] {
  const { sleeve, section } = plan.job.posts;
  if (sleeve === null) return [];
  const washers = unique(plan.bores.flatMap(({ counterbore }) => (counterbore === null ? [] : [show.diameterOne(counterbore.diameter)])));
  const narrow = narrowIds(plan);
  return [
    `Sleeved posts, in this order. First the washer's hole (${washers.join(", ")}) with a hole saw, through the wall of the sleeve only: **stop at the ${section.name}**.${narrow.length === 0 ? "" : ` **Behind ${listed(narrow)} only a hand reaches:** hold drill and saw in there first; no room: stop and ask.`} Then the bore right through, to come out in the middle of it. Last open the sleeve's own holes, on **both faces** where the cable only passes, on the cable's side at an end, to the size under Sleeve.`,
    `${stuffs[sleeve.material]}: its holes are wider than the bores ${practice}, so that it never touches a cable. If the sleeve is not in the middle of its post, mark and bore from the middle of the ${section.name}.`,
  ];
}

/** Both are measured, and whether the one stands in the middle of the other. */
export function sleeveRows({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] {
  const { sleeve, section } = plan.job.posts;
  if (sleeve === null) return [];
  const size = `${offBy(SIZE_mm, { show })} ${practice}`;
  return [
    ["posts / sleeve / size", "Sleeve, outside: along x across the side", `${show.tape(sleeve.along)} x ${show.tape(sleeve.across)}`, size],
    [
      "posts / sleeve / wall",
      `Sleeve of ${sleeve.material}: thickness of its wall`,
      show.fine(sleeve.wall),
      `${offBy(RAIL_mm, { show })} ${practice}`,
    ],
    [
      "posts / sleeve",
      `Sleeve to the ${section.name} inside, from its outer face, all four sides (probe through a small hole)`,
      show.fine((sleeve.along - section.along) / 2),
      `${offBy(RAIL_mm, { show })}: centre it, or ask ${practice}`,
    ],
  ];
}

/** One step drill opens all holes for the cable in sleeves: one row of the bits. */
export function sleeveInOne(bits: readonly BitUse[]): readonly (BitUse & { readonly diameters: readonly number[] })[] {
  const opened = bits.filter(({ use }) => use.startsWith(SLEEVE_USE));
  const [first] = opened;
  const others = bits.filter((bit) => !opened.includes(bit)).map((bit) => ({ ...bit, diameters: [bit.diameter] }));
  if (first === undefined) return others;
  const holes = opened.reduce((sum, bit) => sum + bit.holes, 0);
  return [...others, { ...first, use: SLEEVE_USE, holes, diameters: opened.map(({ diameter }) => diameter) }];
}
