// Z-603: which hole goes where, in which post?
import type { Bore, Plan, Vertical } from "../../plan/plan.ts";
import { angleDegrees } from "../../units/print.ts";
import type { Block, Cell, Column, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction, roleName } from "../wording.ts";
import {
  blank,
  caution,
  column,
  count,
  evenly,
  facts,
  list,
  listed,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  strong,
  table,
  tick,
} from "./kit.ts";

/** Verticals that are bored alike; the first one stands for all. */
export interface BoreGroup {
  readonly verticals: readonly Vertical[];
  readonly bores: readonly Bore[];
}

/** Tick columns that fit beside the others. */
const GROUP_PLAIN = 7;
const GROUP_WIDE = 4;

export const boresSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  const groups = boreGroups(plan);
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.bores)] : []),
    ...beforeBoring(context),
    bitsTable(context),
    ...groups.map((group, index) => groupTable(context, group, index)),
    list(
      `Heights run from the datum to the middle of the bore, to the nearest ${context.show.tape(plan.job.limits.tapeStep.value)}. Faces are left and right as seen from the deck, looking out.`,
      "Every bore goes right through at its diameter; a counterbore is bored on top of it. Across: from the middle of the post, + away from the deck; without that column, on the middle.",
      "Mark heights with one stick, marked once from the datum end, and use it on every post. Write at its foot which end stands on the datum.",
      "Bore straight: a drill stand or guide, the bit square to the face both ways. Bore from the face named; a waste block behind keeps the far face clean.",
      "Write the real height in the last column where it is not as planned, with the post's mark in a group.",
    ),
  ]);
};

function beforeBoring(context: SheetContext): readonly Block[] {
  const { plan } = context;
  const { posts, frame } = plan.job;
  const metal = posts.section.material !== "wood";
  return [
    caution(
      "warning",
      "Eye protection on. Look for bolts, screws and brackets in the path of every bore before you start; stop at once when the bit meets metal that should not be there.",
      ...(metal
        ? ["Metal: clamp the post or the stand, centre-punch, use cutting oil, keep chips off stainless parts, deburr both walls."]
        : []),
      ...(posts.treatment === "treated" && !metal
        ? [
            `Treated wood: dust mask; treat every bore before the cable goes in, as the product's label says ${sourceMark("wood-preservative-m4")}.`,
          ]
        : []),
    ),
    facts("bores-facts", [
      ["Datum", frame.datum, true],
      ["Bores in all", `${plan.bores.length} in ${count(plan.verticals.length, "upright")}`],
      ["First", `bore one scrap of the same section, slide the bought fittings in, and compare with ${refer(context, "survey")}`],
    ]),
  ];
}

function bitsTable({ plan, show }: SheetContext): Table {
  return table({
    id: "bores-bits",
    caption: "Bits",
    columns: [
      column("bit", "Bit", 0.25),
      column("use", "For", 0.25),
      column("holes", "Bores", 0.12, { align: "right" }),
      column("deepest", "Deepest", 0.2),
      column("length", "Bit at least this long", 0.23),
    ],
    rows: plan.bits.map((bit) => [
      strong(show.diameter(bit.diameter)),
      bit.use,
      String(bit.holes),
      show.tapeBoth(bit.deepest),
      show.tapeBoth(bit.bitLength_min),
    ]),
  });
}

/** "-05", and the run behind it where two bores share a height. */
const suffixOf = (bore: Bore | undefined): Text => bore?.mark.slice(bore.verticalId.length) ?? "";

/** Where a bushing goes: in both walls of metal, in wood at the face where the cable leaves at an angle. */
function bushingPlace(plan: Plan, bore: Bore): Text {
  const vertical = plan.verticals.find(({ id }) => id === bore.verticalId);
  const section = vertical?.kind === "spacer" ? plan.job.spacers.section : plan.job.posts.section;
  if (!bore.bushing || section.material !== "wood") {
    return bore.bushing ? "both faces" : "no";
  }
  return plan.bays.some(({ kind, leftId }) => kind === "corner" && leftId === bore.verticalId) ? "right" : "left";
}

/** What stands in the table for one vertical, without its own mark: two with the same pattern share a table. */
const patternOf = (plan: Plan, vertical: Vertical, bores: readonly Bore[]): string =>
  JSON.stringify([
    vertical.kind,
    vertical.sectionName,
    bores.map((bore) => {
      const { height, offset, diameter, counterbore, entryFace, kind, bend } = bore;
      return [suffixOf(bore), height, offset, diameter, counterbore, entryFace, kind, angleDegrees(bend), bushingPlace(plan, bore)];
    }),
  ]);

export function boreGroups(plan: Plan): readonly BoreGroup[] {
  const byPattern = new Map<string, readonly BoredVertical[]>();
  for (const vertical of plan.verticals) {
    const bores = plan.bores
      .filter(({ verticalId }) => verticalId === vertical.id)
      .toSorted((a, b) => a.height - b.height || a.offset - b.offset);
    const pattern = patternOf(plan, vertical, bores);
    byPattern.set(pattern, [...(byPattern.get(pattern) ?? []), { vertical, bores }]);
  }
  return [...byPattern.values()].flatMap(splitGroup).filter(({ bores }) => bores.length > 0);
}

interface BoredVertical {
  readonly vertical: Vertical;
  readonly bores: readonly Bore[];
}

/** A long group is cut into tables that fit the page; each shows the bores of its own first upright. */
function splitGroup(alike: readonly BoredVertical[]): readonly BoreGroup[] {
  const most = columnsNeeded(alike[0]?.bores ?? []).some(Boolean) ? GROUP_WIDE : GROUP_PLAIN;
  return evenly(alike, most).map((part) => ({ verticals: part.map(({ vertical }) => vertical), bores: part[0]?.bores ?? [] }));
}

const columnsNeeded = (bores: readonly Bore[]): readonly [across: boolean, counterbore: boolean, bushing: boolean] => [
  bores.some(({ offset }) => offset !== 0),
  bores.some(({ counterbore }) => counterbore !== null),
  bores.some(({ bushing }) => bushing),
];

function groupTable(context: SheetContext, group: BoreGroup, index: number): Table {
  const { plan, show } = context;
  const [across, counterbored, bushed] = columnsNeeded(group.bores);
  const alone = group.verticals.length === 1;
  const ticks = group.verticals.map(
    ({ id }): Column => column(`done-${id}`, alone ? "Done" : id, alone ? 0.09 : 0.055, { align: "center" }),
  );
  const columns: readonly Column[] = [
    column("mark", "Mark", alone ? 0.12 : 0.08),
    column("height", "Height", 0.3, { sub: "from the datum" }),
    ...(across ? [column("across", "Across", 0.1)] : []),
    column("bore", "Bore", 0.15, { sub: "through" }),
    ...(counterbored ? [column("counterbore", "Counterbore", 0.2, { sub: "diameter x depth, face" })] : []),
    column("entry", "Bit in at", 0.1, { sub: "face" }),
    ...(bushed ? [column("bushing", "Bushing", 0.14, { sub: "face, bend" })] : []),
    ...ticks,
    column("actual", "Actual", 0.12, { sub: "if not as planned" }),
  ];
  return table({
    id: `bores-${index + 1}`,
    caption: groupCaption(group),
    columns,
    rows: group.bores.map((bore): readonly Cell[] => [
      alone ? bore.mark : suffixOf(bore),
      strong(show.tapeBoth(bore.height)),
      ...(across
        ? [bore.offset === 0 ? "middle" : `${bore.offset > 0 ? "+" : "-"}${show.tape(bore.offset > 0 ? bore.offset : -bore.offset)}`]
        : []),
      show.diameter(bore.diameter),
      ...(counterbored ? [counterboreText(bore, show)] : []),
      bore.entryFace,
      ...(bushed ? [bore.bend === 0 ? bushingPlace(plan, bore) : `${bushingPlace(plan, bore)}, ${show.angle(bore.bend)}`] : []),
      ...ticks.map(() => tick),
      blank(show.lengthUnit),
    ]),
    rowHeads: true,
    writeIn: true,
  });
}

const counterboreText = ({ counterbore }: Bore, show: SheetContext["show"]): Text =>
  counterbore ? `${show.tape(counterbore.diameter)} x ${show.tape(counterbore.depth)}, ${counterbore.face}` : "none";

function groupCaption({ verticals, bores }: BoreGroup): Text {
  const [first] = verticals;
  if (!first) {
    return "";
  }
  const kinds = [...new Set(bores.map(({ kind }) => kind))].join(", ");
  const names = listed(verticals.map(({ id }) => id));
  const places =
    verticals.length === 1
      ? roleName[first.role]
      : `(${verticals.length} PLS) ${[...new Set(verticals.map(({ role }) => roleName[role]))].join(", ")}; put the post's mark before the row's, e.g. ${first.id}${suffixOf(bores[0])}`;
  return `**${names}** ${places}; ${first.sectionName}; ${kinds}`;
}
