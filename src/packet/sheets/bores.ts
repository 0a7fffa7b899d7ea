// Z-603: which hole goes where, in which post?
import { goesThroughOneWall } from "../../plan/face-end.ts";
import { mergedBits } from "../../plan/merged-bits.ts";
import type { Bore } from "../../plan/plan.ts";
import { courseName } from "../drawings/kit.ts";
import type { Block, Cell, Column, Sheet, Table, Text } from "../packet.ts";
import { type Show, sourceMark } from "../show-number.ts";
import { marksOf } from "../templates/faces.ts";
import { floorWord, introduction, roleName } from "../wording.ts";
import { cornerBoreRules, cornerCells, cornerColumns, entryWords } from "./bore-corners.ts";
import { hardwareTable } from "./bore-hardware.ts";
import { heightsTable } from "./bore-heights.ts";
import { howToBore } from "./bore-how.ts";
import { bushingRule } from "./bore-kinds.ts";
import { type BoreRow, boreRows, bushingPlace, isEven, offHeight } from "./bore-rows.ts";
import { deltaNotes, isHeight, isOfBores, withDeltas } from "./deltas.ts";
import { blindWords } from "./face-ends.ts";
import {
  blank,
  blankCells,
  bold,
  caution,
  column,
  count,
  list,
  listed,
  pageBreak,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  strong,
  table,
  tick,
  unique,
} from "./kit.ts";
import { acrossWords, alongBoreNotes } from "./leaning.ts";
import { pierBoreRules, pierRoomRules } from "./piers.ts";
import { sleeveBoring, sleeveInOne } from "./sleeves.ts";

export const boresSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  const rows = boreRows(plan);
  const even = rows.filter((row) => isEven(row, plan));
  const odd = rows.filter((row) => !isEven(row, plan));
  return sheet(head, "landscape", [
    ...(context.home ? [prose(...introduction.bores)] : []),
    beforeBoring(context),
    bitsTable(context),
    ...hardwareTable(context),
    ...(even.length === 0
      ? [list(...howToBore(context))]
      : [heightsTable(context), list(...howToBore(context)), pageBreak, gridTable(context, even, rows)]),
    ...odd.map((row) => uprightTable(context, row)),
    list(...rules(context, rows)),
  ]);
};

function beforeBoring(context: SheetContext): Block {
  const { plan } = context;
  const { posts } = plan.job;
  const metal = posts.section.material !== "wood";
  return caution(
    "warning",
    `Eye protection on. Look for bolts, screws and brackets in the path of every bore before you start. Stop at once when the bit meets metal that should not be there. Nothing is bored before the frame is accepted. First bore one scrap of the same section, slide the bought fittings in, and compare with ${refer(context, "survey")}.`,
    ...(metal
      ? ["Metal: clamp the post or the stand, centre-punch, use cutting oil, keep chips off stainless parts, deburr both walls."]
      : []),
    ...(posts.treatment === "treated" && !metal
      ? [
          `Treated wood: dust mask; treat every bore before the cable goes in, as the product's label says ${sourceMark("wood-preservative-m4")}.`,
        ]
      : []),
  );
}

function bitsTable({ plan, show }: SheetContext): Table {
  return table({
    id: "bores-bits",
    caption: `Bits, for ${count(plan.bores.length, "bore")} in ${count(plan.verticals.length, "upright")}`,
    columns: [
      column("bit", "Bit", 0.24),
      column("use", "For", 0.32),
      column("holes", "Holes", 0.1, { align: "right" }),
      column("deepest", "Deepest", 0.17),
      column("length", "Bit at least this long", 0.17),
    ],
    rows: sleeveInOne(mergedBits(plan.bits)).map(({ diameters, ...bit }) => [
      strong(diameters.map(diameters.length > 1 ? show.diameterOne : show.diameter).join(", ")),
      bit.use,
      String(bit.holes),
      show.tapeBoth(bit.deepest),
      show.tapeBoth(bit.bitLength_min),
    ]),
  });
}

interface Needed {
  readonly across: boolean;
  readonly counterbore: boolean;
  readonly bushing: boolean;
  readonly sleeve: boolean;
  readonly angle: boolean;
  /** A corner of one post. */
  readonly skew: boolean;
  readonly blind: boolean;
}

const neededOf = (rows: readonly BoreRow[]): Needed => ({
  across: rows.some(({ bores }) => bores.some(({ offset }) => offset !== 0)),
  counterbore: rows.some(({ bores }) => bores.some(({ counterbore }) => counterbore !== null)),
  bushing: rows.some(({ bores }) => bores.some(({ bushing }) => bushing)),
  sleeve: rows.some(({ bores }) => bores.some(({ sleeveHole }) => sleeveHole !== undefined)),
  angle: rows.some(({ bores }) => bores.some(({ angle }) => angle !== 0)),
  skew: rows.some(({ vertical }) => vertical.corner !== undefined),
  blind: rows.some(({ bores }) => bores.some(({ through }) => !through)),
});

/** How a bore is made, in columns that the grid and the tables of single uprights share. */
const makeColumns = (needed: Needed): readonly Column[] => [
  ...(needed.across ? [column("across", "Across", 0.11, { sub: "from the middle" })] : []),
  column("bore", "Bore", needed.blind ? 0.105 : 0.07, { sub: needed.blind ? "through, or to a depth" : "through" }),
  column("entry", "Bit in", 0.05, { sub: "face" }),
  ...(needed.skew ? cornerColumns : []),
  ...(needed.angle
    ? [
        column("angle", "Angle", 0.065, { sub: "off level" }),
        column("in", "Goes in", 0.08, { sub: "from the height" }),
        column("out", "Comes out", 0.08, { sub: "from the height" }),
        column("long", "Long", 0.065, { sub: "face to face" }),
      ]
    : []),
  ...(needed.counterbore
    ? [
        column("counterbore", needed.sleeve ? "Washer's hole" : "Counterbore", 0.145, { sub: "diameter x depth" }),
        column("counterface", "from", 0.05, { sub: "face" }),
      ]
    : []),
  ...(needed.sleeve ? [column("sleeve", "Sleeve", 0.07, { sub: "for the cable" })] : []),
  ...(needed.bushing ? [column("bushing", "Bushing", 0.075, { sub: "place, bend" })] : []),
];

function makeCells(
  { first, vertical: { corner } }: Pick<BoreRow, "first" | "vertical">,
  needed: Needed,
  context: SheetContext,
): readonly Cell[] {
  const { plan, show } = context;
  const { offset, diameter, counterbore, bend, height, entryHeight, exitHeight, through, drilledLength } = first;
  const place = bushingPlace(plan, first);
  const oneWall = goesThroughOneWall(first, plan.job);
  return [
    ...(needed.across ? [acrossWords(offset, context)] : []),
    strong(`${show.diameterOne(diameter)}${through ? "" : oneWall ? ", one wall" : ` x ${show.fine(drilledLength)} deep`}`),
    entryWords(first, corner),
    ...(needed.skew ? cornerCells(first, corner, show) : []),
    ...(needed.angle
      ? [
          first.angle === 0 ? "level" : strong(show.angle(Math.abs(first.angle))),
          offHeight(entryHeight - height, show),
          offHeight(exitHeight - height, show),
          show.tape(first.drilledLength),
        ]
      : []),
    ...(needed.counterbore ? counterboreCells(counterbore, show) : []),
    ...(needed.sleeve ? [first.sleeveHole === undefined ? "-" : strong(show.diameterOne(first.sleeveHole))] : []),
    ...(needed.bushing
      ? [bend === 0 ? place : `${place}, ${corner === undefined ? show.angle(bend) : `${show.angle(bend / 2)} each`}`]
      : []),
  ];
}

const counterboreCells = (counterbore: Bore["counterbore"], show: Show): readonly Cell[] =>
  counterbore ? [strong(`${show.diameterOne(counterbore.diameter)} x ${show.tape(counterbore.depth)}`), counterbore.face] : ["none", "-"];

/** A row for each upright, a box for each bore. */
function gridTable(context: SheetContext, even: readonly BoreRow[], all: readonly BoreRow[]): Table {
  const { plan, show } = context;
  const needed = neededOf(even);
  const box =
    (0.56 - (needed.angle ? 0.16 : 0) - (needed.skew ? 0.12 : 0) - (needed.blind ? 0.035 : 0) - (needed.sleeve ? 0.07 : 0)) /
    plan.courses.length;
  return table({
    id: "bores-grid",
    caption: `Every bore: tick its box when it is bored at the height of its course; else write the difference, + is too high, in ${show.lengthUnit === "in" ? "sixteenths of an inch" : "mm"}`,
    columns: [
      column("upright", "Post", 0.065),
      ...makeColumns(needed),
      ...plan.courses.map(({ number }) =>
        column(`c${number}`, courseName(number), box, needed.angle || needed.skew ? {} : { sub: "course" }),
      ),
    ],
    rows: all.map((row) => [
      uprightCell(context, row),
      ...(even.includes(row)
        ? [...makeCells(row, needed, context), ...blankCells(plan.courses.length)]
        : [OWN_TABLE, ...new Array<Cell>(makeColumns(needed).length - 1 + plan.courses.length).fill("-")]),
    ]),
    rowHeads: true,
    writeIn: true,
    notes: [
      `${listed(roleWords(all))}. The mark of a bore is post, course and run: ${even[0]?.first.mark ?? ""} is in the first box of ${even[0]?.vertical.id ?? ""}.`,
    ],
  });
}

/** Its own changes, and those of how its bores are made: heights stand with their courses. */
function uprightCell(context: SheetContext, { vertical, behind, bores }: BoreRow): Cell {
  const own = new Set([vertical.id, ...bores.map(({ mark }) => mark)]);
  return withDeltas(
    context,
    `${vertical.id}${behind}`,
    (change) => isOfBores(change) && !isHeight(change) && change.marks.some((mark) => own.has(mark)),
  );
}

/** In the row of an upright that the grid cannot hold. */
const OWN_TABLE: Cell = { text: "**table below**" };

/** "P1, P5: end post"; a range only where all between belong to it. */
const roleWords = (rows: readonly BoreRow[]): readonly Text[] =>
  unique(rows.map(({ vertical }) => vertical.role)).map((role) => {
    const same = unique(rows.filter(({ vertical }) => vertical.role === role).map(({ vertical }) => vertical));
    return `${marksOf(same)}: ${roleName[role]}`;
  });

/** An upright whose bores stand at heights of their own. */
function uprightTable(context: SheetContext, row: BoreRow): Table {
  const { show } = context;
  const needed = neededOf([row]);
  const { vertical } = row;
  return table({
    id: `bores-${vertical.id}${row.behind.replace("/", "-")}`,
    caption: `${bold(`${vertical.id}${row.behind}`)} ${roleName[vertical.role]}; ${vertical.sectionName}`,
    columns: [
      column("mark", "Mark", 0.1),
      column("height", "Height", 0.12, { sub: "from the datum" }),
      column("height-other", "Height", 0.1, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
      ...makeColumns(needed),
      column("done", "Done", 0.07, { align: "center" }),
      column("actual", "Actual", 0.14, { sub: "if not as planned" }),
    ],
    rows: row.bores.map((bore) => [
      withDeltas(context, bore.mark, ({ subject, marks }) => subject === "bore" && marks.includes(bore.mark)),
      strong(show.tape(bore.height)),
      show.tapeOther(bore.height),
      ...makeCells({ first: bore, vertical }, needed, context),
      tick,
      blank(show.lengthUnit),
    ]),
    rowHeads: true,
    writeIn: true,
  });
}

function rules(context: SheetContext, rows: readonly BoreRow[]): readonly Text[] {
  const { plan, show } = context;
  const { across, counterbore, bushing, skew, blind } = neededOf(rows);
  return [
    `Heights are to the nearest ${show.tape(plan.job.limits.tapeStep.value)}. Faces are left and right as seen from the ${floorWord(plan.job)}, looking out. Every bore goes right through at its diameter${blind ? blindWords(context) : ""}${counterbore && plan.job.posts.sleeve === null ? "; a counterbore is bored FIRST, from the face in its own column, with a flat or piloted bit; then the through bore at the same height, from the face of its bit, so that the washer's side stays clean, to come out in the middle of the counterbore" : ""}.`,
    ...deltaNotes(context, isOfBores),
    ...pierBoreRules(plan),
    ...pierRoomRules(context),
    ...(across
      ? [
          `Across: from the middle of the post to the middle of the bore, square to the guard: towards the ${floorWord(plan.job)} or away from it. The sides are named so that no sign is needed.`,
        ]
      : []),
    ...alongBoreNotes(context),
    ...sleeveBoring(context),
    ...(skew ? cornerBoreRules(context) : []),
    ...(plan.rakes.length > 0
      ? [
          `On a rake the height holds in the middle of the upright, from a level mark where the datum crosses its middle line; on its two faces the bore is higher or lower, as the columns say. Heights of both faces, guide angle, bit: ${refer(context, "stairs")}.`,
        ]
      : []),
    ...(bushing ? [bushingRule(plan)] : []),
    ...(plan.job.posts.mount === "fascia"
      ? [
          `Posts on the fascia: heights count from the datum (${plan.job.frame.datum}), not from the foot of the post, which lies ${show.tapeBoth(plan.job.posts.belowDatum)} below it; mark the datum on each post before it is bored.`,
        ]
      : []),
  ];
}
