// What must be said of the drop and of ladders where it is deep, or where something is done on faces that the deck does not reach?
import { edgeProtection } from "../../plan/open-edge.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Block, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { boredFromOutside } from "./bore-corners.ts";
import { list, listed, type SheetContext, unique } from "./kit.ts";
import { ofUnitedStates } from "./safety-messages.ts";
import { overEdgeIds } from "./set-off-words.ts";

/** Where somebody works over the open edge: posts bored or pulled from outside, and all posts that stand on the fascia. */
function outsideWords(plan: Plan): Text {
  const ids = unique([...boredFromOutside(plan), ...overEdgeIds(plan)]);
  const fascia = plan.job.posts.mount === "fascia" ? ["the fasteners on the fascia"] : [];
  const places = [...(ids.length === 0 ? [] : [`the outer faces of ${listed(ids)}`]), ...fascia];
  return places.length === 0 ? "" : listed(places);
}

/** None where the drop is low and everything is reached from the walking surface. */
export function outsideRules({ plan }: SheetContext): readonly Block[] {
  const isHigh = edgeProtection(plan.job) === "fall protection";
  const outside = outsideWords(plan);
  if (!isHigh && outside === "") return [];
  const ladders = ofUnitedStates(plan.job.code.edition) ? `(29 CFR 1926.1053) ${sourceMark("memory")}` : sourceMark("practice");
  return [
    list(
      ...(isHigh
        ? [
            "Fall protection stands before an old guard or a rail comes off, and until every cable is proved. Local rules say which: a temporary guardrail, or a harness on an anchor point made for it.",
          ]
        : []),
      `Work from the walking surface${outside === "" ? "" : `; only ${outside} need somebody outside`}. Never lean out past the edge; never stand on rails or cables. Keep people away from below ${sourceMark("practice")}.`,
      `A ladder outside: firm, level ground, one out for four up, tied or held, one hand on it ${ladders}. Drilling and tightening take both hands: use a platform or scaffold.`,
    ),
  ];
}
