// How are bores marked and made, in the words before the grid of all bores?
import { ownSheets } from "../issues.ts";
import type { Text } from "../packet.ts";
import { drillRoomRules } from "./bore-room.ts";
import { listed, refer, type SheetContext } from "./kit.ts";
import { leaningAlongIds } from "./leaning.ts";
import { cornerStick, stickMarks } from "./set-off-words.ts";
import { levelSides, sidesWord, slopedSides } from "./slopes.ts";

/** Before the grid, while its page has room; who bores once finds the room for the drill in the guide. */
export function howToBore(context: SheetContext): readonly Text[] {
  const { plan } = context;
  const along = leaningAlongIds(plan);
  return [
    markWords(context),
    `Bore straight: a drill stand or guide, the bit square to the face both ways${plan.rakes.length > 0 ? "; on a rake tilted by its angle, and square to the face as seen from above" : ""}${plan.bores.some((bore) => bore.skew !== 0) ? "; on the mitre by the block" : ""}${along.length === 0 ? "" : `; at ${listed(along)}, which lean${along.length === 1 ? "s" : ""} along the guard, level instead`}. Bore from the face named; a waste block behind keeps the far face clean.`,
    ...(context.home ? [] : drillRoomRules(context)),
  ];
}

/** One stick for level sides; on a slope the two faces of an upright are bored at two heights. */
function markWords(context: SheetContext): Text {
  const { plan } = context;
  const { templates, storyPole } = ownSheets;
  const level = levelSides(plan);
  if (level.length === 0) {
    return `No stick here: both faces of every post and spacer are marked by ${refer(context, "stairs")}, from the level mark of each. Every hole at full size: ${templates.id}, in a file of its own.`;
  }
  if (plan.setOff !== null) {
    return `**Mark heights with two sticks**, each marked once from the datum end and named by its sides: ${stickMarks(plan, context.show)}. ${cornerStick(plan)}. Every hole at full size: ${templates.id}; the strips for the sticks: ${storyPole.id}; both in files of their own.`;
  }
  const where =
    plan.rakes.length === 0
      ? "post"
      : `post of ${sidesWord(level)}, on none of ${sidesWord(slopedSides(plan))}: both faces there are marked by ${refer(context, "stairs")}`;
  return `Mark heights with one stick, marked once from the datum end, and use it on every ${where}. Write at its foot which end stands on the datum. Every hole at full size: ${templates.id}; the strip for the stick: ${storyPole.id}; both in files of their own.`;
}
