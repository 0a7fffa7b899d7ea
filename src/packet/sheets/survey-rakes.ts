// What is measured of a side that slopes, and past which value does the packet not fit?
import type { SheetContext } from "./kit.ts";
import { offBy, practice, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

/** Half a degree moves the exit of a bore by a sixteenth of an inch in a post of 6 in: common practice, no source. */
const SLOPE_rad = Math.PI / 360;

/** What a side that slopes is planned with: its slope first, since every bore follows it. */
export const rakeRows = ({ plan, show }: SheetContext): readonly SurveyRow[] =>
  plan.rakes.flatMap(({ sideId, slope, rise, opening, guardHeight_min, triangle, kind }): readonly SurveyRow[] => {
    const key = `guard / sides / ${sideId} / rake`;
    const above = kind === "stair" ? "the nosings" : "the ramp";
    const sized = `${offBy(SIZE_mm, { show })} ${practice}`;
    return [
      [
        key,
        `Slope of side ${sideId}, ${rise > 0 ? "up" : "down"} to the right, on a long board`,
        show.angle(Math.abs(slope)),
        `off by more than ${show.angle(SLOPE_rad)} ${practice}`,
      ],
      ...(triangle === null
        ? []
        : ([
            [`${key} / riser`, `Riser of side ${sideId}: mean of the flight`, show.tapeBoth(triangle.riser), sized],
            [`${key} / tread`, `Tread of side ${sideId}, nosing to nosing, level`, show.tapeBoth(triangle.tread), sized],
          ] as const)),
      [
        "frame / on rakes",
        `Clear between the rails of side ${sideId}, plumb: the largest of all posts`,
        show.tapeBoth(opening.top - opening.bottom),
        sized,
      ],
      [
        "frame / on rakes",
        `From ${above} to the underside of the bottom rail, side ${sideId}, plumb`,
        show.tapeBoth(plan.job.frame.onRakes.gapBelow.value),
        sized,
      ],
      [
        "(result)",
        `Guard height of side ${sideId}, plumb above ${above}`,
        show.tapeBoth(opening.guardHeight),
        `below ${show.tape(guardHeight_min.value)}`,
      ],
    ];
  });
