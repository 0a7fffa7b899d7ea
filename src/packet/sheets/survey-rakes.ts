// What is measured of a side that slopes, and past which value does the packet not fit?
import type { RakePlan } from "../../plan/rake-plan.ts";
import type { Cited } from "../../sources/cited.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import { roundTo } from "../../units/round.ts";
import { slopeChanges } from "../joints.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { listed, type SheetContext, upperFirst } from "./kit.ts";
import { levelSides, onWhat, sidesWord, slopedSides, surfaceOf } from "./slopes.ts";
import { offBy, practice, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

/** Half a degree moves the exit of a bore by a sixteenth of an inch in a post of 6 in: common practice, no source. */
export const SLOPE_rad: Radian = Math.PI / 360;

/** A count that a job's own numbers miss by less is that count. */
const WHOLE = 0.01;

/** What a side that slopes is planned with: its slope first, since every bore follows it. */
export const rakeRows = (context: SheetContext): readonly SurveyRow[] =>
  context.plan.rakes.flatMap((rake): readonly SurveyRow[] => [
    ...slopeRows(context, rake),
    ...(rake.kind === "stair" ? stepRows(context, rake) : []),
    ...openingRows(context, rake),
  ]);

/** The slope on a board, and the rise over the whole length: each shows a slip in the other. */
function slopeRows({ plan, show }: SheetContext, { sideId, slope, rise, kind }: RakePlan): readonly SurveyRow[] {
  const key = `guard / sides / ${sideId} / rake`;
  const level = plan.sides.find(({ id }) => id === sideId)?.length ?? 0;
  const riseAt = (angle: Radian): Mm => level * Math.tan(angle);
  const steep = Math.abs(slope);
  return [
    [
      key,
      `Slope of side ${sideId}, ${rise > 0 ? "up" : "down"} to the right, on a long board on ${onWhat(kind)}`,
      show.angle(steep),
      `off by more than ${show.angle(SLOPE_rad)} ${practice}`,
    ],
    [
      `${key} / rise`,
      `Total rise of side ${sideId}, plumb, over its whole level length (${show.feet(level)})`,
      show.tapeBoth(Math.abs(rise)),
      `below ${show.tapeUp(riseAt(steep - SLOPE_rad))}, above ${show.tapeDown(riseAt(steep + SLOPE_rad))} ${practice}`,
    ],
  ];
}

/** Each step is looked at, since a flight with one odd step has no straight line of nosings. */
function stepRows({ plan, show }: SheetContext, { sideId, rise, triangle }: RakePlan): readonly SurveyRow[] {
  const key = `guard / sides / ${sideId} / rake`;
  const sized = `${offBy(SIZE_mm, { show })} ${practice}`;
  const least = plan.job.code.openingSphere.value;
  const count = triangle === null ? null : Math.abs(rise) / triangle.riser;
  const isWhole = count !== null && Math.abs(count - roundTo(count, 0)) < WHOLE;
  const [steps, counted] = isWhole ? [show.decimal(count, 0), "any other number"] : ["not known", "not as the stair was drawn"];
  const { nosing, openRisers = null } = plan.job.sides.find(({ id }) => id === sideId)?.rake ?? {};
  return [
    ...(triangle === null
      ? []
      : ([
          [
            `${key} / riser`,
            `Riser of side ${sideId}: mean of the flight; smallest and largest beside it`,
            show.tapeBoth(triangle.riser),
            sized,
          ],
          [`${key} / tread`, `Tread of side ${sideId}, nosing to nosing, level: mean`, show.tapeBoth(triangle.tread), sized],
        ] as const)),
    [`${key} / risers`, `Risers within the length of side ${sideId}; one below its end does not count`, steps, counted],
    [`${key} / treads`, `Treads within the length of side ${sideId}, from nosing to nosing`, steps, counted],
    ...(nosing === undefined ? [] : [overhangRow(key, sideId, nosing, show)]),
    [
      `${key} / open risers`,
      `Risers of side ${sideId}: closed, or open by how much`,
      OPEN[String(openRisers)] ?? "",
      openRisers === true ? "closed" : `open by ${show.tape(least)} or more: ask`,
    ],
  ];
}

const OPEN: Readonly<Record<string, Text>> = { true: "open", false: "closed", null: "not known" };

const overhangRow = (key: Text, sideId: string, { value, source }: Cited<Mm>, show: SheetContext["show"]): SurveyRow => [
  `${key} / nosing`,
  `Overhang of the nosings of side ${sideId}: from the edge of a tread back to the riser below it`,
  show.tapeBoth(value),
  `above ${show.tape(value)} ${sourceMark(source)}: the gap at riser and tread grows`,
];

function openingRows({ plan, show }: SheetContext, { sideId, opening, guardHeight_min, kind }: RakePlan): readonly SurveyRow[] {
  const { frame, code } = plan.job;
  const sized = `${offBy(SIZE_mm, { show })} ${practice}`;
  const above = onWhat(kind);
  const asHandrail = kind === "stair" && frame.railIsHandrail ? code.stairs.handrail : null;
  const low = Math.max(guardHeight_min.value, asHandrail?.low.value ?? 0);
  return [
    ...(frame.bottomRail === null
      ? []
      : ([
          [
            "frame / on rakes / gap below",
            `Side ${sideId}: from ${above} plumb to the underside of the bottom rail`,
            show.tapeBoth(frame.onRakes.gapBelow.value),
            sized,
          ],
        ] as const)),
    [
      "frame / on rakes / clear opening",
      `Side ${sideId}: clear ${frame.bottomRail === null ? `between ${above} and the rail` : "between the rails"}, plumb, not square: the largest of all posts`,
      show.tapeBoth(opening.top - opening.bottom),
      sized,
    ],
    [
      "(result)",
      `Side ${sideId}: height of the guard, plumb above ${above}`,
      show.tapeBoth(opening.guardHeight),
      `below ${show.tape(low)}${asHandrail?.high ? `, above ${show.tape(asHandrail.high.value)}: its top is the handrail` : ""}`,
    ],
  ];
}

/** Whose heights the rows of the level frame give: "level sides A and C: "; nothing where none slopes. */
export const levelWords = ({ plan }: Pick<SheetContext, "plan">): Text =>
  plan.rakes.length === 0 ? "" : `Level ${sidesWord(levelSides(plan))}: `;

/** How slopes are measured; nothing where none slopes. */
export function rakeMeasures({ plan }: SheetContext): readonly Text[] {
  if (plan.rakes.length === 0) return [];
  const stair = plan.rakes.some(({ kind }) => kind === "stair");
  return [
    `**${upperFirst(sidesWord(slopedSides(plan)))} slope${plan.rakes.length === 1 ? "s" : ""}.** Length of the side and stations are **level**: hold the tape level and plumb down to it, or measure along a leveled board. Free lengths, runs and rails are measured **along the slope**. Heights are plumb.`,
    `Slope: lay a straight board on ${surfaceOf(plan)}, as long as the side allows. Read an angle gauge on it, turn the gauge round and read again; the mean counts.${stair ? " Measure risers plumb and treads level, over the whole flight, and divide by their number: one step alone is off by more than the stop." : ""}`,
    ...slopeChanges(plan).map(
      ({ id }) =>
        `Change of slope ${id}: the point where the board on the slope meets the level surface. Mark it: lengths of both sides begin there.`,
    ),
    "Where slope, rise, run or steps differ from the job file past a stop, **stop: every bore of the side changes**. Correct the job file, make the packet again, destroy this one.",
  ];
}

/** What is assumed of the datum. */
export function datumWords({ plan }: SheetContext): Text {
  const { datum } = plan.job.frame;
  if (plan.rakes.length === 0) return `The datum (${datum}) is one level along all sides, or was leveled with a line`;
  const level = levelSides(plan);
  return `The datum (${datum}): ${level.length === 0 ? "" : `level along ${listed(level)}, or leveled with a line; `}straight along ${listed(slopedSides(plan))}: a long board touches ${surfaceOf(plan)} all along`;
}
