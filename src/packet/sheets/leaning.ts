// Which posts lean as they were found, and in which uprights are the holes off the middle for that or another reason?
import type { Bay, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { bold, listed, type SheetContext, unique } from "./kit.ts";

/** Marks of the posts that lean as found: all others must be plumb. */
export const leaning = ({ job }: Pick<Plan, "job">): readonly Text[] =>
  job.posts.asFound.flatMap(({ post, leans }) => (leans === null ? [] : [post]));

/** Of each post that leans: `P6 leans 3/8" away from the deck over 36" of height`. */
export const leaningWords = ({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly Text[] =>
  plan.job.posts.asFound.flatMap(({ post, leans }) =>
    leans === null ? [] : [`${post} leans ${listed(wayWords(leans, show))} over ${show.tape(leans.over)} of height`],
  );

/** The same as one clause; empty where none leans. */
export const leanWords = (context: Pick<SheetContext, "plan" | "show">): Text => leaningWords(context).join(", ");

const wayWords = ({ out, right }: Leans, show: SheetContext["show"]): readonly Text[] => [
  ...(out === 0 && right !== 0 ? [] : [`${show.tape(Math.abs(out))} ${out < 0 ? "towards" : "away from"} the deck`]),
  ...(right === 0 ? [] : [`${show.tape(Math.abs(right))} to the ${sideOf(right)}`]),
];

type Leans = NonNullable<Plan["job"]["posts"]["asFound"][number]["leans"]>;

/** Left and right are as seen from the deck, looking out. */
export const sideOf = (right: number): "left" | "right" => (right < 0 ? "left" : "right");

/** Where the stations of posts that lean along the guard are read: `18-1/2" above the datum (course 05)`; null where none leans so. */
export function readWords({ plan, show }: Pick<SheetContext, "plan" | "show">): Text | null {
  const leansAlong = plan.verticals.find((one) => one.leansAlong !== undefined)?.leansAlong;
  if (leansAlong === undefined) return null;
  const number = plan.courses.find(({ height }) => height === leansAlong.height)?.number ?? 0;
  return `${show.tape(leansAlong.height)} above the datum (course ${courseWord(number)})`;
}

const courseWord = (number: number): Text => String(number).padStart(2, "0");

/** ", the longest, at course 10": of a bay beside a post that leans along the guard. */
export const longestWords = ({ longestCourse }: Bay): Text =>
  longestCourse === undefined ? "" : `, the longest, at course ${courseWord(longestCourse)}`;

/** Marks of the posts that lean along the guard, of one side or of all. */
export const leaningAlongIds = ({ verticals }: Plan, side?: number): readonly Text[] =>
  verticals.flatMap(({ id, sideIndex, leansAlong }) =>
    leansAlong === undefined || (side !== undefined && side !== sideIndex) ? [] : [id],
  );

/** How the stations and free lengths beside posts that lean along the guard are meant, on the sheet of one side or of the whole. */
export function alongPlanNotes(context: Pick<SheetContext, "plan" | "show">, side?: number): readonly Text[] {
  const at = readWords(context);
  const marks = leaningAlongIds(context.plan, side);
  if (at === null || marks.length === 0) return [];
  const one = marks.length === 1;
  return [
    `${bold(listed(marks))} lean${one ? "s" : ""} along the guard: the ${one ? "station is that" : "stations are those"} at ${at}; drawn plumb. Free lengths beside ${one ? "it" : "them"} and lengths of runs are those of the longest cable: cut the rest off last. Measure rails and spacers there where they go before cutting.`,
  ];
}

/** How posts that lean along the guard are marked, bored, fitted and read. */
export function alongBoreNotes({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly Text[] {
  const posts = leaningAlongIds(plan);
  if (posts.length === 0) return [];
  const ends = posts.filter((id) => plan.runs.some(({ left, right }) => left.postId === id || right.postId === id));
  const bays = plan.bays.filter(({ longestCourse }) => longestCourse !== undefined).map(({ id }) => id);
  return [
    `${bold(listed(posts))} lean${posts.length === 1 ? "s" : ""} along the guard: **bore level**, not square to the face. Heights are plumb: hold tape or stick plumb beside the post; along its leaning face they come out a little low. Through them a bore is less than ${show.tape(plan.job.limits.tapeStep.value)} longer than the table says.`,
    ...(ends.length === 0
      ? []
      : [
          `${bold(listed(ends))}: washers bear on a face that is not square to the cable. Up to 1 in 20 they go on as they are ${sourceMark("practice")}; where one bears on its edge only, put a bevelled washer of the same metal under it.`,
        ]),
    `Bays ${listed(bays)} are shorter at other courses than planned: a pitch or a sag read there makes a cable look tighter than it is. Read tensions with a gauge, or in another bay.`,
  ];
}

/** Uprights whose holes are not on the middle line of their faces. */
export const offMiddle = ({ bores }: Pick<Plan, "bores">): readonly Text[] =>
  unique(bores.filter(({ offset }) => offset !== 0).map(({ verticalId }) => verticalId));

/** "plumb", or "plumb but for P6 (P6 leans ..., as found: no other way)". */
export function plumbWords(context: Pick<SheetContext, "plan" | "show">): Text {
  const marks = leaning(context.plan);
  return marks.length === 0 ? "plumb" : `plumb but for ${listed(marks)} (${leanWords(context)}, as found: no other way)`;
}

/** From the middle of the post to a bore that lies beside it. */
export function acrossWords(offset: number, { plan, show }: SheetContext): Text {
  const floor = floorWord(plan.job);
  if (offset === 0) {
    return "middle";
  }
  return offset > 0 ? `${bold(show.tapeBoth(offset))} away from ${floor}` : `${bold(show.tapeBoth(-offset))} towards ${floor}`;
}
