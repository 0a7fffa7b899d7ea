// How are the sheets read? The few rules that stand under the index of the cover.
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { refer, type SheetContext } from "./kit.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

export function howToRead(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const step = plan.job.limits.tapeStep;
  const last = String(plan.courses.length).padStart(2, "0");
  return [
    `**How to read it.** Stand on the ${floorWord(plan.job)} and look out: everything counts from left to right, and faces are left and right so.`,
    `Courses count upward: R1-${last} is cable ${last} of run R1, P1-${last} its bore in post P1; S1 is a spacer, A1 a bay of side A.`,
    `Heights: datum to the middle of the bore, rounded once to ${show.tape(step.value)} ${sourceMark(step.source)}. Never add lengths or scale drawings.${slopeRule(context)}`,
    `Marks: [practice] has no source, [job] is from the job file, [memory] was not looked up; all others: ${refer(context, "sources")}.`,
    `Fill in blank boxes with ink; no erasing: one line through a wrong number, initials beside it.${context.home ? ` The words are explained on ${refer(context, "steps")}.` : ""}`,
  ];
}

/** A height of the middle is bored on no face of a slope. */
const slopeRule = (context: SheetContext): Text =>
  context.plan.rakes.length === 0
    ? ""
    : ` **On ${sidesWord(slopedSides(context.plan))} a bore slopes: bore by ${refer(context, "stairs")}**; lengths of the side and stations are level.`;
