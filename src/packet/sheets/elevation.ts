// Z-201 and on: how does one side look, and at which heights do its cables run?
import type { Sheet, Table } from "../packet.ts";
import { introduction, roleName } from "../wording.ts";
import { drawnElevations } from "./drawn.ts";
import { column, facts, pageBreak, prose, type SheetContext, type SheetMaker, sheet, strong, table } from "./kit.ts";

export const elevationSheet: SheetMaker = (context, head): Sheet => {
  const { plan, show } = context;
  const side = plan.sides[head.sideIndex];
  if (!side) {
    throw new RangeError(`no side at position ${head.sideIndex}`);
  }
  return sheet(head, "landscape", [
    ...(context.home ? [prose(...introduction.elevation)] : []),
    ...drawnElevations(plan, head.sideIndex),
    facts(`${head.slug}-facts`, [
      ["Datum", plan.job.frame.datum, true],
      ["Guard height above it", show.tapeBoth(plan.opening.guardHeight), true],
      ...(head.sideIndex === 0 ? [] : ([["Heights of the bores", `the same on every side: table on ${firstElevation(context)}`]] as const)),
      ["Cables fill", `from ${show.tapeBoth(plan.opening.bottom)} to ${show.tapeBoth(plan.opening.top)} above the datum`],
    ]),
    ...(head.sideIndex === 0 ? [pageBreak, heightsTable(context, head.slug)] : []),
    baysTable(context, head.slug, side.id),
  ]);
};

const firstElevation = ({ index }: SheetContext): string => index.find(({ key }) => key === "elevation")?.id ?? "";

function heightsTable({ plan, show }: SheetContext, slug: string): Table {
  const gaps = plan.gaps;
  return table({
    id: `${slug}-heights`,
    caption: `Heights of the bores above the datum, ${plan.courses.length} courses (${plan.courses.length} PLS)`,
    columns: [
      column("course", "Course", 0.16),
      column("height", "Height", 0.28, { sub: "drilled" }),
      column("below", "Spacing below", 0.28, { sub: "centre to centre, or to the rail" }),
      column("clear", "Clear below", 0.28, { sub: "what a sphere meets" }),
    ],
    rows: [
      ...plan.courses.map((course, index) => {
        const gap = gaps[index];
        return [
          String(course.number).padStart(2, "0"),
          strong(show.tapeBoth(course.height)),
          gap ? show.tapeBoth(gap.spacing) : "-",
          gap ? show.tape(gap.clear) : "-",
        ];
      }),
      ...gaps
        .slice(plan.courses.length)
        .map((gap) => [gap.above, `(${show.tapeBoth(plan.opening.top)})`, show.tapeBoth(gap.spacing), show.tape(gap.clear)]),
    ],
    rowHeads: true,
  });
}

function baysTable({ plan, show }: SheetContext, slug: string, sideId: string): Table {
  const roleOf = (id: string): string => {
    const vertical = plan.verticals.find((each) => each.id === id);
    return vertical ? `${id} (${roleName[vertical.role]})` : id;
  };
  return table({
    id: `${slug}-bays`,
    caption: `Bays of side ${sideId}`,
    columns: [column("bay", "Bay", 0.14), column("left", "From", 0.3), column("right", "To", 0.3), column("free", "Free length", 0.26)],
    rows: plan.bays
      .filter((bay) => bay.sideId === sideId)
      .map((bay) => [
        bay.id,
        roleOf(bay.leftId),
        roleOf(bay.rightId),
        bay.kind === "pair gap" ? `${show.tapeBoth(bay.free)}, between two runs` : show.tapeBoth(bay.free),
      ]),
    rowHeads: true,
  });
}
