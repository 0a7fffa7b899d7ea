// Z-901: how far did posts move, what was accepted by whom, and from which lots was it built?
import type { BuiltPost, Lot } from "../../record/as-built.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Cell, Column, Table, Text } from "../packet.ts";
import { blank, blankCells, blankRow, column, type SheetContext, table } from "./kit.ts";
import { leansOf } from "./readings.ts";
import { writtenOr } from "./record-built.ts";

const DEVIATION_ROWS = 10;
const LOT_ROWS = 3;
const SET_ROWS = 5;

/** A sheet of an older revision on site is the dearest error: who holds one is known, and each set is called in. */
export function setsTable({ home }: SheetContext): Table {
  const columns: readonly Column[] = [
    column("set", "Issue and revision", 0.17),
    column("pages", "Pages", 0.07),
    column("to", "To whom", 0.24),
    column("for", "For", 0.2, { sub: "comment, permit, construction, record" }),
    column("sent", "Given on, by", 0.16),
    column("back", "Called in on, by", 0.16),
  ];
  return table({
    id: "record-sets",
    caption: home ? "Who was given a printed set" : "Sets given out: to be called in when a new revision is issued",
    columns,
    rows: Array.from({ length: SET_ROWS }, () => blankCells(columns.length)),
    writeIn: true,
  });
}

export function plumbTable({ plan, show, built }: SheetContext): Table {
  const posts = built?.asBuilt.posts ?? [];
  const leaning = (off: Mm): Text => (off < 0 ? `${show.measured(0 - off)} other way` : show.measured(off));
  const cells = (post: BuiltPost | undefined): readonly Cell[] =>
    post === undefined
      ? [...blankCells(3, show.lengthUnit), blank()]
      : [leaning(post.before), leaning(post.after), leaning(post.after - post.before), writtenOr(post.note)];
  const asked = leansOf(plan);
  const others = posts.filter(({ postId }) => asked.every((lean) => lean.postId !== postId));
  return table({
    id: "record-plumb",
    caption: "Posts that hold or bend cables: plumb before the first and after the last pass",
    columns: [
      column("post", "Post", 0.12),
      column("way", "Leans to", 0.18, { sub: "plan" }),
      column("before", "Before", 0.17),
      column("after", "After", 0.17),
      column("moved", "Moved", 0.17),
      column("note", "Note", 0.19),
    ],
    rows: [
      ...asked.map(({ postId, way }) => [postId, way, ...cells(posts.find((post) => post.postId === postId))]),
      ...others.map((post) => [post.postId, "not asked for", ...cells(post)]),
    ],
    rowHeads: true,
    writeIn: true,
  });
}

export function deviationTable({ built }: SheetContext): Table {
  const columns: readonly Column[] = [
    column("no", "No.", 0.05),
    column("mark", "Mark", 0.1),
    column("planned", "Planned", 0.17),
    column("built", "Built", 0.17),
    column("why", "Why", 0.24),
    column("accepted", "Accepted by", 0.17),
    column("date", "Date", 0.1),
  ];
  const written = built?.asBuilt.deviations ?? [];
  return table({
    id: "record-deviations",
    caption: "Deviations and who accepted them",
    columns,
    rows: Array.from({ length: Math.max(DEVIATION_ROWS, written.length) }, (_, index) => {
      const deviation = written[index];
      if (deviation === undefined) return blankRow(columns, `${index + 1}`);
      const { mark, planned, built: made, why, acceptedBy, date } = deviation;
      return [`${index + 1}`, mark, planned, made, why, acceptedBy, date];
    }),
    writeIn: true,
  });
}

/** Each lot stands in the row of its item, by the words of the order or by their beginning; one item may come from many lots. */
export function lotTable({ plan, show, built }: SheetContext): Table {
  const columns: readonly Column[] = [
    column("item", "Item", 0.34),
    column("lot", "Lot or spool number", 0.2),
    column("paper", "Certificate, date", 0.2),
    column("from", "Bought from", 0.26),
  ];
  // Cables of two lengths are two rows that are told apart by nothing else.
  const items = plan.order
    .filter(({ group }) => group === "cable" || group === "fittings" || group === "bushings and washers")
    .map(({ item, size, pieceLength }) =>
      [item, size, pieceLength === null ? "" : show.feet(pieceLength)].filter((part) => part !== "").join(", "),
    );
  const written = (built?.asBuilt.lots ?? []).map((lot) => ({ lot, item: itemOf(lot, items) }));
  return table({
    id: "record-lots",
    caption: "Lots",
    columns,
    rows: [
      ...items.flatMap((item) => {
        const own = written.filter((one) => one.item === item);
        return own.length === 0 ? [blankRow(columns, item)] : own.map(({ lot }) => lotRow(item, lot));
      }),
      ...written.flatMap(({ lot, item }) => (item === undefined ? [lotRow(lot.item, lot)] : [])),
      ...Array.from({ length: LOT_ROWS }, () => blankRow(columns)),
    ],
    writeIn: true,
  });
}

/** The only ordered item that is meant: "ready cable" where cables of one length are ordered. */
function itemOf({ item }: Lot, items: readonly Text[]): Text | undefined {
  const asked = item.toLowerCase();
  const same = items.find((one) => one.toLowerCase() === asked);
  const beginning = items.filter((one) => one.toLowerCase().startsWith(`${asked},`));
  return same ?? (beginning.length === 1 ? beginning[0] : undefined);
}

const lotRow = (item: Text, { lot, certificate, from }: Lot): readonly Cell[] => [item, lot, writtenOr(certificate), writtenOr(from)];
