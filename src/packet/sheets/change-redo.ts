// What must be done about a change where the work was done from an old sheet already?
import type { Change, Subject } from "../../changes/changes.ts";
import type { Text } from "../packet.ts";
import { peopleOf } from "../wording.ts";
import { refer, type SheetContext } from "./kit.ts";

type Words = (change: Change, context: SheetContext) => Text;

/** Short sentences: they are read beside the work. */
export const redoWords = (change: Change, context: SheetContext): Text => words[change.subject](change, context);

const office = ({ home }: SheetContext): Text => peopleOf(home).office;

/** More of it, or less? 0 where a property is no number or does not differ. */
function growth({ differences }: Change, of: string): number {
  const found = differences.find((one) => one.of === of);
  const [from, to] = [found?.from ?? null, found?.to ?? null].map((value) =>
    value === null || typeof value === "string" ? 0 : value.value,
  );
  return (to ?? 0) - (from ?? 0);
}

const upright: Words = ({ subject, what, differences }, context) => {
  if (what === "renamed") return "Cross out the old mark on each. Write the new one, and on its bores too.";
  if (what === "added") return `Set it, have the frame accepted again, then bore it: ${refer(context, "bores")}.`;
  if (what === "removed") return `Leave it out. If it stands: ask ${office(context)} before you take it out.`;
  if (differences.some(({ of }) => of === "section" || of.startsWith("size ")))
    return `If it stands: replace it, and bore the new one by ${refer(context, "bores")}.`;
  if (what === "moved") return `If it stands: move it.${subject === "spacer" ? "" : " Have its foot and the frame accepted again."}`;
  return "Nothing is redone for this alone: its bores are told by themselves.";
};

const bore: Words = (change, context) => {
  const { todo, what, left, differences } = change;
  if (what === "removed") return `Leave it out. If it is bored: ask ${office(context)} about the hole.`;
  if (what === "renamed") return "The same hole: write the new mark.";
  if (what === "moved" || what === "added") return beside(todo === "ask", left, context);
  if (todo === "ask") return `If it is bored: the hole is too wide, too deep or on the wrong face. Stop. Ask ${office(context)}.`;
  if (todo === "read") return "If it is bored: the hole stays as it is.";
  if (differences.every(({ of }) => of.startsWith("height") || of === "across" || of === "course"))
    return `If the old one is bored: it may stay, off by a mark of the tape. Write that down on ${refer(context, "bores")}.`;
  return differences.every(({ of }) => of === "bushing" || of === "for")
    ? "If it is bored: the hole stays. Fit what the sheet says."
    : "If it is bored: clamp a guide on and open the hole in its middle.";
};

function beside(isNear: boolean, left: number | undefined, context: SheetContext): Text {
  if (left === undefined) return "Bore it.";
  const between = left > 0 ? `${context.show.tapeDown(left)} is left between old and new hole` : "Old and new hole cut each other";
  return isNear
    ? `If the old one is bored: **stop**, ask ${office(context)}. ${between}.`
    : `If the old one is bored: tell ${office(context)}, then bore. ${between}.`;
}

const cable: Words = (change, context) => {
  const { what } = change;
  if (what === "renamed") return "Write the new mark on the cables and their tags.";
  if (what === "removed") return "Leave it out. Keep the cable, or give it back.";
  if (what === "added") return `Order and fit it: ${refer(context, "cables")}.`;
  const more = growth(change, "number of cables") > 0 ? " Cut what is missing." : "";
  return growth(change, "outside to outside") > 0
    ? `If it is cut to its old length: too short, take a new cable. Measure the run first.${more}`
    : `If it is cut: long enough. Measure the run, then shorten it.${more}`;
};

const part: Words = (change) => {
  const { what } = change;
  if (what === "renamed") return "Write the new mark on the part.";
  if (what === "removed") return "Do not cut it. If it is cut: keep it, it may do for another part.";
  if (what === "added") return "Cut it, to the standing frame.";
  if (change.differences.some(({ of }) => of === "section")) return "If it is cut: cut another one to the standing frame.";
  const length = growth(change, "length");
  if (length > 0) return "If it is cut: too short. Cut a new one to the standing frame.";
  if (length < 0) return "If it is cut: shorten it to the standing frame.";
  const more = growth(change, "number");
  if (more === 0) return "If it is cut: compare it with the standing frame.";
  return more > 0 ? `Cut ${more} more.` : `Cut ${-more} fewer. Keep what is cut already.`;
};

const item: Words = (change) => {
  const more = growth(change, "order");
  if (change.what === "removed") return "If it is bought: give it back.";
  return more > 0 ? `Buy ${more}${change.what === "added" ? "" : " more"}.` : `If it is bought: ${-more} too many.`;
};

const words: Readonly<Record<Subject, Words>> = {
  side: (_, context) => `Measure the side again (${refer(context, "survey")}) before anything else is set out.`,
  rail: () => "If a rail is fixed: take it off and fix it at the new height.",
  post: upright,
  spacer: upright,
  pier: upright,
  bore,
  strand: (_, context) =>
    `If it is bought or fitted: do not use it. Cable and fittings must suit each other: measure them again (${refer(context, "survey")}).`,
  cable,
  end: (_, context) => `If it is fitted: ask ${office(context)}. An end that was pressed or gripped on is not used again.`,
  tension: (_, context) =>
    `If it is tightened: begin the log again (${refer(context, "tightening")}). First slacken what pulls more than its new reading.`,
  reading: (_, context) => `If it is read by pitch, sag or turns: read it again, by ${refer(context, "tightening")}.`,
  part,
  item,
  tool: ({ what }) => (what === "removed" ? "Nothing: it is not needed." : "Have it ready."),
  check: ({ todo }, context) =>
    todo === "ask" ? `Go on when there is an answer: ${refer(context, "cover")}.` : "Nothing is redone for this.",
};
