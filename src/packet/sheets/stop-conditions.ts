// When must the work stop, whatever the rest of the packet says?

import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { freeStop } from "./free-stop.ts";
import { refer, type SheetContext } from "./kit.ts";
import { leanWords } from "./leaning.ts";
import { pierFails } from "./piers.ts";
import { openingRoute } from "./route.ts";
import { sidesWord, slopedSides, slopesWords } from "./slopes.ts";
import { SLOPE_rad } from "./survey-rakes.ts";
import { practice } from "./survey-rows.ts";

/** As the opening is tried in this job. */
const pushed = { agreed: "at the agreed force", "if asked": "when set in by hand", never: "when set in by hand" } as const;

export function stopConditions(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const { limits, posts } = plan.job;
  const free = freeStop(context);
  const leans = leanWords(context);
  return [
    `the spacing of two cables, or to a rail or the ${floorWord(plan.job)}, would be above **${show.tape(limits.cableSpacing_max.value)}**, middle to middle${plan.rakes.length === 0 ? "" : `, on ${sidesWord(slopedSides(plan))} square to the cables`} ${sourceMark(limits.cableSpacing_max.source)}`,
    `a ${free.what} is above **${free.limit}** ${free.source}`,
    ...slopeStops(context),
    "a fitting that was bought does not fit its bore: measure the fittings before the first hole",
    "a bit meets metal, or a fastener is where a bore should go",
    `${posts.existing ? "a standing post" : "a post"} is cracked, out of plumb, or loose at its foot when pushed by hand${leans === "" ? "" : `; only ${leans}, as found: stop if it leans otherwise, and if another post leans`}`,
    `a cable reads above its band in the log, or **${show.forceDown(plan.target.workingLimit)}**, the strand's working limit, is reached`,
    `a post moves more than **${show.fine(plan.frame.movement_max.value)}** while cables are tightened ${sourceMark(plan.frame.movement_max.source)}, or a rail bows`,
    ...[pierFails(plan) ?? []].flat(),
    `a wire of the strand is broken, or the sphere passes ${pushed[openingRoute(context).push]}`,
    "a hold point is not signed, or a question to the authority is open",
  ];
}

/** Every bore of a slope follows its slope. */
const slopeStops = (context: SheetContext): readonly Text[] =>
  context.plan.rakes.length === 0
    ? []
    : [
        `the slope of a side is off by more than **${context.show.angle(SLOPE_rad)}** from **${slopesWords(context.plan, context.show.angle)}** ${practice}, or its rise, run or steps are past their stop on ${refer(context, "survey")}: every bore of that side changes`,
      ];
