// At which heights are all bores of the grid made?
import { courseHeight } from "../../plan/set-off.ts";
import { courseName } from "../drawings/kit.ts";
import type { Cell, Table } from "../packet.ts";
import { isHeight, withDeltas } from "./deltas.ts";
import { bold, column, type SheetContext, sideBySide, strong, table } from "./kit.ts";
import { crossedIds, levelGroups } from "./set-off-words.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

/** Rows of courses side by side: they leave the page to the grid. */
const BESIDE = 4;

/** The heights of the grid. */
export function heightsTable(context: SheetContext): Table {
  const { plan, show } = context;
  if (plan.setOff !== null) return twoHeightsTable(context);
  const columns = [
    column("course", "Course", 0.055),
    column("height", "Height", 0.12),
    column("other", "Height", 0.075, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
  ];
  const rows = plan.courses.map(({ number, height }) => [courseCell(context, number), strong(show.tape(height)), show.tapeOther(height)]);
  return table({
    id: "bores-heights",
    caption: `Heights from the datum (${plan.job.frame.datum}) to the middle of the bore: the same in every upright of the grid${plan.rakes.length === 0 ? "" : `, on ${sidesWord(slopedSides(plan))} in its middle only`}`,
    ...sideBySide(columns, rows, BESIDE),
  });
}

/** A course whose height has changed somewhere says so. */
const courseCell = (context: SheetContext, number: number): Cell =>
  withDeltas(context, bold(courseName(number)), (change) => isHeight(change) && change.marks.some((mark) => courseOf(mark) === number));

const courseOf = (mark: string): number => Number(/-(\d+)/.exec(mark)?.[1]);

/** Where the bores of two sides cross in a corner post each course has two heights: by its side. */
function twoHeightsTable(context: SheetContext): Table {
  const { plan, show } = context;
  const groups = levelGroups(plan);
  const columns = [
    column("course", "Course", 0.06),
    ...groups.flatMap(({ sideIds }, index) => [
      column(`height-${index}`, "Height", 0.13, { sub: sidesWord(sideIds) }),
      column(`other-${index}`, "Height", 0.09, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
    ]),
  ];
  const rows = plan.courses.map((course) => [
    courseCell(context, course.number),
    ...groups.flatMap(({ level }) => [strong(show.tape(courseHeight(course, level))), show.tapeOther(courseHeight(course, level))]),
  ]);
  return table({
    id: "bores-heights",
    caption: `Heights from the datum (${plan.job.frame.datum}) to the middle of the bore, **by the side of the run**: ${crossedIds(plan).join(", ")} has both, each on its own face`,
    ...sideBySide(columns, rows, 2),
  });
}
