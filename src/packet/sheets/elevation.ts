// Z-201 and on: how does one side look, and at which heights do its cables run?
import type { SidePlan } from "../../plan/plan.ts";
import { courseHeight, type Level, levelGaps } from "../../plan/set-off.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { introduction } from "../wording.ts";
import { drawnElevations } from "./drawn.ts";
import { bold, column, prose, refer, type SheetContext, type SheetMaker, sheet, sideBySide, strong, table } from "./kit.ts";
import { alongPlanNotes } from "./leaning.ts";
import { sidesAsHighAs } from "./set-off-words.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

export const elevationSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  const side = plan.sides[head.sideIndex];
  if (side === undefined) throw new RangeError(`no side at position ${head.sideIndex}`);
  const holdsTable = side === tableSide(plan, side);
  return sheet(head, "landscape", [
    ...(context.home ? [prose(...introduction.elevation)] : []),
    ...(holdsTable ? [] : [prose(otherHeights(context, side))]),
    ...alongPlanNotes(context, head.sideIndex).map((note) => prose(note)),
    ...drawnElevations(plan, head.sideIndex),
    ...(holdsTable ? [heightsTable(context, head.slug, side)] : []),
  ]);
};

/** The heights that are drilled stand once, on the sheet of the first level side that has them; a guard that slopes all along has them on Z-401 alone. */
const tableSide = (plan: SheetContext["plan"], level: Level): SidePlan | undefined =>
  sidesAsHighAs(plan, level).find(({ slope }) => slope === 0);

function otherHeights(context: SheetContext, side: SidePlan): Text {
  const { plan, index } = context;
  if (side.slope !== 0)
    return `**Heights to bore at stand on ${refer(context, "stairs")}**, for each face of a post; here${tableSide(plan, side) === undefined ? "" : " and in the table of the level sides"} they are those in the middle of the post. Length and stations are level; free lengths, along the slope: ${refer(context, "plan")}.`;
  const of = index.filter(({ key }) => key === "elevation")[tableSide(plan, side)?.index ?? 0];
  const which = plan.setOff !== null ? asHigh(plan, side) : plan.rakes.length === 0 ? "every side" : "every level side";
  return `The heights of the bores are the same on ${which}: table on ${of?.id ?? ""}. Free lengths: ${refer(context, "plan")}.`;
}

const asHigh = (plan: SheetContext["plan"], side: SidePlan): Text => sidesWord(sidesAsHighAs(plan, side).map(({ id }) => id));

/** Rows of courses side by side, so that drawing and heights stand on one page. */
const BESIDE = 3;

function heightsTable(context: SheetContext, slug: string, side: SidePlan): Table {
  const { plan, show } = context;
  const { opening, job } = plan;
  const gaps = levelGaps(plan, side);
  const columns = [
    column("course", "Course", 0.08),
    column("height", "Height", 0.13, { sub: "drilled" }),
    column("other", "Height", 0.09, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
    column("spacing", "Spacing", 0.09, { sub: "below" }),
  ];
  const rows = [
    ...plan.courses.map((course, index) => [
      bold(String(course.number).padStart(2, "0")),
      strong(show.tape(courseHeight(course, side))),
      show.tapeOther(courseHeight(course, side)),
      show.tape(gaps[index]?.spacing ?? 0),
    ]),
    ...gaps
      .slice(plan.courses.length)
      .map((gap) => [gap.above, `(${show.tape(opening.top)})`, `(${show.tapeOther(opening.top)})`, show.tape(gap.spacing)]),
  ];
  const all = `${plan.courses.length} courses; spacing is middle to middle; the guard is ${show.tapeBoth(opening.guardHeight)} high`;
  return table({
    id: `${slug}-heights`,
    caption:
      plan.setOff !== null
        ? `Heights of the bores on ${asHigh(plan, side)} above the datum (${job.frame.datum}), ${all}; **elsewhere they are ${show.tape(plan.setOff.by)} ${side.isRaised === true ? "lower" : "higher"}**`
        : plan.rakes.length === 0
          ? `Heights of the bores above the datum (${job.frame.datum}), ${all}`
          : `Heights of the bores above the datum, ${all}; on ${sidesWord(slopedSides(plan))} they hold in the middle of a post only: bore there by ${refer(context, "stairs")}`,
    ...sideBySide(columns, rows, BESIDE),
  });
}
