// What is measured of the frame: heights of its rails, sizes of its members?
import type { Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { type SheetContext, upperFirst } from "./kit.ts";
import { sleeveRows } from "./sleeves.ts";
import { levelWords } from "./survey-rakes.ts";
import { aboveWords, offBy, practice, RAIL_mm, SIZE_mm, type SurveyRow } from "./survey-rows.ts";
import { hardwareRows } from "./survey-standing.ts";

/** Heights of the level sides; those of slopes stand with their slope. */
function levelRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const { frame, limits, code } = plan.job;
  // The lowest cables have the widest gap to the top rail.
  const top = plan.gaps.at(-1);
  const room = top ? limits.cableSpacing_max.value - top.spacing : 0;
  const name = (text: Text): Text => (plan.rakes.length === 0 ? upperFirst(text) : `${levelWords({ plan })}${text}`);
  return [
    [
      "frame / clear opening",
      name(`clear between ${frame.bottomRail ? "the rails" : `the ${floorWord(plan.job)} and the rail`}: the largest of all posts`),
      show.tapeBoth(frame.clearOpening),
      aboveWords(show.tapeDown(frame.clearOpening + room), show.tape(frame.clearOpening)),
    ],
    [
      "frame / gap below",
      name(`from ${plan.rakes.length === 0 ? frame.datum : "the datum"} to the underside of the bottom rail`),
      show.tapeBoth(frame.gapBelow),
      `${offBy(RAIL_mm, { show })} at the opening ${practice}`,
    ],
    [
      "(result)",
      name("guard height above the datum"),
      show.tapeBoth(plan.opening.guardHeight),
      `below ${show.tape(code.guardHeight_min.value)}`,
    ],
  ];
}

export function frameRows(context: SheetContext): readonly SurveyRow[] {
  const { plan, show } = context;
  const { frame, posts, spacers } = plan.job;
  const hasLevel = plan.rakes.length < plan.sides.length;
  const size = `${offBy(SIZE_mm, { show })} ${practice}`;
  const rail = `${offBy(RAIL_mm, { show })} at the opening ${practice}`;
  const section = ({ along, across }: { readonly along: number; readonly across: number }): Text =>
    `${show.tape(along)} x ${show.tape(across)}`;
  return [
    ...(hasLevel ? levelRows(context) : []),
    ["frame / top rail", "Top rail: depth x width", `${show.tape(frame.topRail.depth)} x ${show.tape(frame.topRail.width)}`, rail],
    ...(frame.bottomRail
      ? ([
          [
            "frame / bottom rail",
            "Bottom rail: depth x width",
            `${show.tape(frame.bottomRail.depth)} x ${show.tape(frame.bottomRail.width)}`,
            rail,
          ],
        ] as const)
      : []),
    ...hardwareRows({ plan, show }),
    ["posts / size", `Post${posts.sleeve === null ? "" : " in its sleeve"}: along x across the side`, section(posts.section), size],
    ...sleeveRows({ plan, show }),
    ["spacers / size", "Spacer: along x across the side", section(spacers.section), size],
  ];
}
