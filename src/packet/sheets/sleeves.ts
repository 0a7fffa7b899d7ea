// What must be known of posts in sleeves: where nuts bear, how the holes are made, what is measured?

import type { Sleeve } from "../../job/standing.ts";
import { SLEEVE_USE } from "../../plan/bores.ts";
import type { Plan } from "../../plan/plan.ts";
import type { BitUse } from "../../plan/purchase.ts";
import type { StepItem, Text } from "../packet.ts";
import { type SheetContext, unique } from "./kit.ts";
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

/** For the card of the ends: what is looked at in each hole. */
export const sleeveEndItems = ({ job: { posts } }: Plan): readonly StepItem[] =>
  posts.sleeve === null
    ? []
    : [{ text: `Every washer lies on the ${posts.section.name}, none on a sleeve: looked into each hole with a light.`, killer: true }];

/** For the card of the frame: with what an engineer or the authority accepts. */
export const sleeveFrameWords = ({ job: { posts } }: Plan): Text =>
  posts.sleeve === null ? "" : ` Rails reach the ${posts.section.name} in every sleeve; each sleeve is centred.`;

/** How the holes of sleeved posts are made. */
export function sleeveBoring({ plan, show }: SheetContext): readonly Text[] {
  const { sleeve, section } = plan.job.posts;
  if (sleeve === null) return [];
  const washers = unique(plan.bores.flatMap(({ counterbore }) => (counterbore === null ? [] : [show.diameterOne(counterbore.diameter)])));
  return [
    `Sleeved posts, in this order. First the washer's hole (${washers.join(", ")}) with a hole saw, through the wall of the sleeve only: **stop at the ${section.name}**. Then the bore right through sleeve, gap and ${section.name}, to come out in the middle of it. Last open the sleeve's own holes, on **both faces** where the cable only passes, on the cable's side at an end, to the size under Sleeve.`,
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
    ["posts / sleeve / wall", `Sleeve of ${sleeve.material}: thickness of its wall`, show.fine(sleeve.wall), size],
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
