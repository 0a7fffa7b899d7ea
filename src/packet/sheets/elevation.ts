// Z-201 and on: how does one side look, and at which heights do its cables run?
import type { Sheet, Table } from "../packet.ts";
import { introduction } from "../wording.ts";
import { drawnElevations } from "./drawn.ts";
import { bold, column, prose, refer, type SheetContext, type SheetMaker, sheet, sideBySide, strong, table } from "./kit.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

export const elevationSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  if (!plan.sides[head.sideIndex]) {
    throw new RangeError(`no side at position ${head.sideIndex}`);
  }
  return sheet(head, "landscape", [
    ...(context.home ? [prose(...introduction.elevation)] : []),
    ...(head.sideIndex === 0 && plan.sides[0]?.slope === 0 ? [] : [prose(heightsWords(context, head.sideIndex))]),
    ...drawnElevations(plan, head.sideIndex),
    ...(head.sideIndex === 0 ? [heightsTable(context, head.slug)] : []),
  ]);
};

/** On a slope no face of a post is bored at the height of the middle. */
function heightsWords(context: SheetContext, sideIndex: number): string {
  const isLevel = context.plan.sides[sideIndex]?.slope === 0;
  return isLevel
    ? sameHeights(context)
    : `**Heights to bore at stand on ${refer(context, "stairs")}**, for each face of a post; here and in the first elevation they are those in the middle of the post. Length and stations are level; free lengths, along the slope: ${refer(context, "plan")}.`;
}

const sameHeights = (context: SheetContext): string =>
  `The heights of the bores are the same on every side: table on ${context.index.find(({ key }) => key === "elevation")?.id ?? ""}. Free lengths: ${refer(context, "plan")}.`;

/** Rows of courses side by side, so that drawing and heights stand on one page. */
const BESIDE = 3;

function heightsTable(context: SheetContext, slug: string): Table {
  const { plan, show } = context;
  const { gaps, opening, job } = plan;
  const columns = [
    column("course", "Course", 0.08),
    column("height", "Height", 0.13, { sub: "drilled" }),
    column("other", "Height", 0.09, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
    column("spacing", "Spacing", 0.09, { sub: "below" }),
  ];
  const rows = [
    ...plan.courses.map((course, index) => [
      bold(String(course.number).padStart(2, "0")),
      strong(show.tape(course.height)),
      show.tapeOther(course.height),
      show.tape(gaps[index]?.spacing ?? 0),
    ]),
    ...gaps
      .slice(plan.courses.length)
      .map((gap) => [gap.above, `(${show.tape(opening.top)})`, `(${show.tapeOther(opening.top)})`, show.tape(gap.spacing)]),
  ];
  const sloped =
    plan.rakes.length === 0
      ? ""
      : `; on ${sidesWord(slopedSides(plan))} they hold in the middle of a post only: bore there by ${refer(context, "stairs")}`;
  return table({
    id: `${slug}-heights`,
    caption: `Heights of the bores above the datum (${job.frame.datum}), ${plan.courses.length} courses; spacing is middle to middle; the guard is ${show.tapeBoth(opening.guardHeight)} high${sloped}`,
    ...sideBySide(columns, rows, BESIDE),
  });
}
