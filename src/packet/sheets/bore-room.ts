// Do a drill and its bit fit into the bays where bores begin?
import { bitOf } from "../../plan/bores.ts";
import type { Bay, Bore, Plan } from "../../plan/plan.ts";
import { clearOf } from "../../plan/sleeve.ts";
import type { Mm } from "../../units/quantity.ts";
import type { StepItem, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import type { SheetContext } from "./kit.ts";

/** A drill with its chuck, behind the bit: common practice, no source. */
const DRILL_mm: Mm = 250;

interface Place {
  readonly bay: Bay;
  /** Between what stands beside the bay. */
  readonly clear: Mm;
  readonly bit: Mm;
}

/** What to do where a drill does not fit behind its bit; nothing where each bay has room, or a bore begins outside the guard. */
export function drillRoomRules({ plan, show }: SheetContext): readonly Text[] {
  const tight = tightPlace(plan);
  if (tight === null) return [];
  const later = plan.verticals.some(({ kind }) => kind === "spacer") ? ", or bore each post before the spacers beside it are fixed" : "";
  return [
    `**Room for the drill**: bay ${tight.bay.id} is ${show.tapeDown(tight.clear)} long, a bit in it ${show.tape(tight.bit)}, and a drill with its chuck takes 8 to 10 in (200 to 250 mm) more ${sourceMark("practice")}. Where yours does not fit, begin with a short bit and put the long one into the begun hole, or take a right-angle drill${later}. Never bend a bit to get in.`,
  ];
}

/** The same for somebody who bores posts once. */
export const drillRoomItems = ({ plan, show }: SheetContext): readonly StepItem[] => {
  const tight = tightPlace(plan);
  if (tight === null) return [];
  return [
    {
      text: "No room for drill and long bit in a bay? Begin with a short bit. Then put the long one into the begun hole.",
      more: `Bay ${tight.bay.id} is only ${show.tapeDown(tight.clear)} long. A right-angle drill is shorter. Never bend a bit.`,
    },
  ];
};

/** Where the least is left behind the bit, if that is less than a drill takes. */
function tightPlace(plan: Plan): Place | null {
  const [tightest] = plan.bores.flatMap((bore) => placeOf(bore, plan)).toSorted((a, b) => roomIn(a) - roomIn(b));
  return tightest === undefined || roomIn(tightest) >= DRILL_mm ? null : tightest;
}

const roomIn = ({ clear, bit }: Place): Mm => clear - bit;

/** A bore begins in the bay beside its face; at an end of the guard and between two posts of a corner nothing is beside it but air. */
function placeOf(bore: Bore, plan: Plan): readonly Place[] {
  const bay = plan.bays.find(({ leftId, rightId }) => (bore.entryFace === "left" ? rightId : leftId) === bore.verticalId);
  return bay === undefined || bay.kind === "corner" ? [] : [{ bay, clear: clearOf(bay, plan), bit: bitOf(plan, bore).bitLength_min }];
}
