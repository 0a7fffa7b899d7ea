// Z-901: at which heights were the bores made, against those of the plan, on level sides and on both faces of slopes?
import { heightOn } from "../../plan/bores.ts";
import type { Bore, Face, Vertical } from "../../plan/plan.ts";
import { courseHeight, type Level } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Block, Cell, Column, Table, Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { blank, blankRow, column, evenly, groupBy, listed, type SheetContext, table, unique } from "./kit.ts";
import { builtBore, heightCell, offBy, signed } from "./record-built.ts";
import { levelGroups, runLevel } from "./set-off-words.ts";

/** Uprights beside each other in one table. */
const UPRIGHTS = 8;
/** On a slope each takes two columns. */
const SLOPED = 4;

export const boreTables = (context: SheetContext): readonly Block[] => [
  ...levelGroups(context.plan)
    .flatMap(({ level }) =>
      evenly(
        boreColumns(context).filter((one) => one.level.isRaised === level.isRaised),
        UPRIGHTS,
      ).map((uprights) => ({ uprights, level })),
    )
    .map(({ uprights, level }, index) => boreTable(context, uprights, { index, level })),
  ...slopedGroups(context).flatMap((group) => evenly(group, SLOPED).map((uprights) => slopedTable(context, uprights))),
];

const isLevel = ({ slope }: Vertical): boolean => slope === 0;

/** A column of bores: an upright, or one run of an upright that two runs share. */
interface BoreColumn {
  readonly key: string;
  readonly head: Text;
  readonly bores: readonly Bore[];
  /** Planned distances from the middle of the upright, from the lowest course up, where its bores are set off sideways. */
  readonly offsets: readonly Mm[] | null;
  readonly level: Level;
}

function boreColumns({ plan }: SheetContext): readonly BoreColumn[] {
  return plan.verticals.filter(isLevel).flatMap((vertical): readonly BoreColumn[] => {
    const bores = plan.bores.filter(({ verticalId }) => verticalId === vertical.id);
    const runs = unique(bores.map(({ runId }) => runId));
    if (runs.length < 2) {
      const offsets = unique(bores.map(({ offset }) => offset));
      const level = runLevel(plan, runs[0] ?? "");
      return [{ key: vertical.id, head: vertical.id, bores, offsets: offsets.every((offset) => offset === 0) ? null : offsets, level }];
    }
    // Two runs that end on two faces of a post are bored in the middle of both.
    const inMiddle = bores.every(({ offset }) => offset === 0);
    return runs.map((runId) => ({
      key: `${vertical.id}-${runId}`,
      head: `${vertical.id} ${runId}`,
      bores: bores.filter((bore) => bore.runId === runId),
      offsets: inMiddle ? null : unique(bores.filter((bore) => bore.runId === runId).map(({ offset }) => offset)),
      level: runLevel(plan, runId),
    }));
  });
}

function boreTable(
  context: SheetContext,
  uprights: readonly BoreColumn[],
  { index, level }: { readonly index: number; readonly level: Level },
): Table {
  const { plan, show } = context;
  const columns: readonly Column[] = [
    column("course", "Course", 0.12),
    column("planned", "Planned", 0.16, { sub: "plan" }),
    ...uprights.map(({ key, head }) => column(key, head, 0.09, { sub: "built" })),
  ];
  const across = uprights.flatMap(({ head, offsets }) => (offsets === null ? [] : [`${head} ${offsetsWords(offsets, context)}`]));
  return table({
    id: `record-bores-${index + 1}`,
    caption: `Heights of the bores in ${listed(uprights.map(({ head }) => head))}, from the datum`,
    columns,
    rows: [
      ...plan.courses.map((course) => [
        String(course.number).padStart(2, "0"),
        show.tapeBoth(courseHeight(course, level)),
        ...uprights.map(({ bores }) => levelCell(context, bores, course.number)),
      ]),
      ...(across.length === 0
        ? []
        : [["Across, from the middle", across.join(", "), ...uprights.map(({ offsets }) => (offsets === null ? "-" : blank()))]]),
      ["Greatest difference", "built - planned", ...uprights.map(({ bores }) => greatestCell(context, bores, ["left"]))],
      blankRow(columns, "Sizes as planned?", "yes, or see deviations"),
    ],
    rowHeads: true,
    writeIn: true,
  });
}

/** Where a bore of a level side was made, or a place to write it. */
function levelCell(context: SheetContext, bores: readonly Bore[], course: number): Cell {
  const bore = bores.find((one) => one.course === course);
  const height = builtBore(context, bore)?.height ?? null;
  return bore === undefined || height === null
    ? blank(context.show.lengthUnit)
    : heightCell(context, bore, { planned: bore.height, built: height });
}

/** The difference that is furthest from nothing, of those that are written down; on a level side both faces have one height. */
function greatestCell(context: SheetContext, bores: readonly Bore[], on: readonly Face[]): Cell {
  const differences = bores.flatMap((bore) => {
    const built = builtBore(context, bore);
    return built === undefined
      ? []
      : on.map((face) => offBy({ planned: heightOn(bore, face), built: built.height ?? built[face] ?? 0 }, context));
  });
  const [first, ...others] = differences;
  if (first === undefined) return blank();
  return signed(
    others.reduce((most, difference) => (Math.abs(difference) > Math.abs(most) ? difference : most), first),
    context,
  );
}

/** Of a post that leans each course has its own: the lowest and the highest. */
const offsetsWords = (offsets: readonly Mm[], context: SheetContext): Text =>
  unique([offsets[0] ?? 0, offsets.at(-1) ?? 0])
    .map((offset) => offsetWords(offset, context))
    .join(" to ");

const offsetWords = (offset: Mm, { plan, show }: SheetContext): Text =>
  offset === 0 ? "in the middle" : `${show.fine(Math.abs(offset))} ${offset > 0 ? "away from" : "towards"} the ${floorWord(plan.job)}`;

const boresOf = ({ plan }: SheetContext, { id }: Vertical): readonly Bore[] => plan.bores.filter(({ verticalId }) => verticalId === id);

/** Uprights of a slope that are bored at the same heights on each face. */
const slopedGroups = (context: SheetContext): readonly (readonly Vertical[])[] =>
  groupBy(
    context.plan.verticals.filter((vertical) => !isLevel(vertical)),
    (vertical) =>
      boresOf(context, vertical)
        .map((bore) => `${bore.course} ${context.show.tape(heightOn(bore, "left"))} ${context.show.tape(heightOn(bore, "right"))}`)
        .toSorted()
        .join(),
  );

const faces: readonly Face[] = ["left", "right"];

function slopedCells(context: SheetContext, bores: readonly Bore[], course: number): readonly Cell[] {
  const bore = bores.find((one) => one.course === course);
  const built = builtBore(context, bore);
  return faces.map((face) => {
    const height = built?.[face] ?? null;
    return bore === undefined || height === null
      ? blank(context.show.lengthUnit)
      : heightCell(context, bore, { planned: heightOn(bore, face), built: height });
  });
}

/** A bore of a slope is right only when both its ends are. */
function slopedTable(context: SheetContext, uprights: readonly Vertical[]): Table {
  const { plan, show } = context;
  const [first] = uprights;
  const bores = first === undefined ? [] : boresOf(context, first);
  const names = listed(uprights.map(({ id }) => id));
  const columns: readonly Column[] = [
    column("course", "Course", 0.09),
    column("left", "Planned", 0.1, { sub: "left face" }),
    column("right", "Planned", 0.1, { sub: "right face" }),
    ...uprights.flatMap(({ id }) => [
      column(`${id}-left`, id, 0.09, { sub: "left, built" }),
      column(`${id}-right`, id, 0.09, { sub: "right, built" }),
    ]),
  ];
  return table({
    id: `record-bores-${uprights.map(({ id }) => id).join("-")}`,
    caption: `Slope: heights of the bores on the two faces of ${names}, plumb from the level mark`,
    columns,
    rows: [
      ...plan.courses.map(({ number }) => {
        const bore = bores.find(({ course }) => course === number);
        const planned = (["left", "right"] as const).map((face): Text => (bore === undefined ? "-" : show.tape(heightOn(bore, face))));
        return [
          String(number).padStart(2, "0"),
          ...planned,
          ...uprights.flatMap((upright) => slopedCells(context, boresOf(context, upright), number)),
        ];
      }),
      [
        "Greatest difference",
        "built - planned",
        "",
        ...uprights.flatMap((upright) => faces.map((face) => greatestCell(context, boresOf(context, upright), [face]))),
      ],
      blankRow(columns, "Sizes as planned?", "yes, or see deviations", ""),
    ],
    rowHeads: true,
    writeIn: true,
  });
}
