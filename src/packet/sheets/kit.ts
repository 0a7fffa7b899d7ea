// What is a sheet made from, and which small builders keep its blocks alike?
import type { Revised } from "../../changes/changes.ts";
import type { Issue } from "../../job/job.ts";
import type { Plan, Run, RunEnd, Vertical } from "../../plan/plan.ts";
import type { Comparison } from "../../record/record.ts";
import type { SourceId } from "../../sources/sources.ts";
import { roundTo, roundUp } from "../../units/round.ts";
import type { DifferingSheet } from "../differing-sheets.ts";
import { catalogue, issueName, type SheetHead, type SheetKey } from "../issues.ts";
import type { Block, Cell, Column, Sheet, Stamp, StepItem, Steps, Table, Text } from "../packet.ts";
import type { Show } from "../show-number.ts";

/** What every sheet is made from. */
export interface SheetContext {
  readonly plan: Plan;
  readonly issue: Issue;
  readonly stamp: Stamp;
  readonly show: Show;
  /** True when each step and term is explained. */
  readonly home: boolean;
  /** False for the crew's issue: checks that pass are left out. */
  readonly whole: boolean;
  /** False for those who build: the rules behind the plan are for the office and the authority. */
  readonly rules: boolean;
  /** The sheets of this issue. */
  readonly index: readonly SheetHead[];
  /** Sources marked on the sheets made before this one; the sheet of sources comes last. */
  readonly marked: readonly SourceId[];
  /** What was built, once there is a record of it. */
  readonly built?: Comparison | undefined;
  /** What was issued before, and what has changed since. */
  readonly revised?: Revised | undefined;
  /** How the sheets made before this one differ from those that were issued. */
  readonly differing?: readonly DifferingSheet[];
}

export type Orientation = Sheet["orientation"];
export type SheetMaker = (context: SheetContext, head: SheetHead) => Sheet;

export const sheet = (head: Pick<SheetHead, "id" | "name" | "slug">, orientation: Orientation, blocks: readonly Block[]): Sheet => ({
  id: head.id,
  name: head.name,
  slug: head.slug,
  orientation,
  blocks,
});

export const heading = (id: string, text: Text): Block => ({ kind: "heading", id, text });
export const prose = (...text: readonly Text[]): Block => ({ kind: "prose", text });
export const list = (...items: readonly Text[]): Block => ({ kind: "list", items });
export const pageBreak: Block = { kind: "break" };
export const caution = (level: "danger" | "warning" | "caution" | "notice", ...text: readonly Text[]): Block => ({
  kind: "caution",
  level,
  text,
});
export const facts = (id: string, rows: readonly (readonly [name: Text, value: Text, strong?: true])[]): Block => ({
  kind: "facts",
  id,
  facts: rows.map(([name, value, isStrong]) => (isStrong ? { name, value, strong: true } : { name, value })),
});
export const blanks = (id: string, title: Text, rows: readonly (readonly [label: Text, unit: string, key?: string])[]): Block => ({
  kind: "blanks",
  id,
  title,
  rows: rows.map(([label, unit, key]) => (key === undefined ? { label, unit } : { label, unit, key })),
});
export const signatures = (id: string, ...roles: readonly Text[]): Block => ({ kind: "signatures", id, roles });
/** A table whose columns share its width: the shares given are brought to a sum of one. */
export function table(parts: Omit<Table, "kind">): Table {
  let total = 0;
  for (const { width = 0 } of parts.columns) total += width;
  const columns = parts.columns.map((each) =>
    each.width === undefined ? each : columnOf(each.key, each.head, roundTo(each.width / total, SHARE_decimals), each),
  );
  // What is spread comes first: the engine copies it at once, and adds the rest.
  return { ...parts, kind: "table", columns };
}

const SHARE_decimals = 4;

/** The fewest lists of at most so many items, as even as they can be. */
export function evenly<T>(items: readonly T[], most: number): readonly (readonly T[])[] {
  if (items.length === 0) {
    return [];
  }
  const size = roundUp(items.length / roundUp(items.length / most, 1), 1);
  return items.flatMap((_, start) => (start % size === 0 ? [items.slice(start, start + size)] : []));
}
export const steps = (parts: {
  readonly id: string;
  readonly title: Text;
  readonly mode: Steps["mode"];
  readonly items: readonly StepItem[];
  readonly hold?: Text;
}): Steps => ({ ...parts, kind: "steps" });

/** A column with its share of the table's width. */
export const column = (key: string, head: Text, width: number, more: ColumnMore = {}): Column => columnOf(key, head, width, more);
type ColumnMore = Pick<Column, "sub" | "align">;

/** Written out, not spread: hundreds are made for a packet, and spreading makes each property anew. */
function columnOf(key: string, head: Text, width: number, { sub, align }: ColumnMore): Column {
  if (sub === undefined) return align === undefined ? { key, head, width } : { key, head, width, align };
  return align === undefined ? { key, head, width, sub } : { key, head, width, sub, align };
}
const emptyBlank: Cell = { blank: "" };
export const blank = (unit = ""): Cell => (unit === "" ? emptyBlank : { blank: unit });
export const tick: Cell = { tick: true };
/** A critical value, printed large: what is drilled, cut, ordered or read on a gauge. */
export const strong = (text: Text): Cell => ({ text, strong: true });
/** What is looked up, not read: printed small. */
export const minor = (text: Text): Cell => ({ text, minor: true });
export const bold = (text: Text): Text => `**${text}**`;
export const blankRow = (columns: readonly Column[], ...first: readonly Cell[]): readonly Cell[] => [
  ...first,
  ...blankCells(columns.length - first.length),
];
export const blankCells = (count: number, unit = ""): readonly Cell[] => new Array<Cell>(Math.max(0, count)).fill(blank(unit));

/** "Z-603", or "Z-603 (crew issue)" when this issue does not hold it. */
export function refer(context: SheetContext, key: SheetKey): Text {
  const head = context.index.find((entry) => entry.key === key);
  if (head) {
    return head.id;
  }
  const [holder = "crew"] = catalogue[key].issues;
  return `${catalogue[key].id} (${issueName[holder].toLowerCase()})`;
}

export const upperFirst = (text: Text): Text => text.charAt(0).toUpperCase() + text.slice(1);

/** "1 post", "3 posts" */
export const count = (n: number, one: Text, many: Text = `${one}s`): Text => `${n} ${n === 1 ? one : many}`;

/** "P1, P2 and P3" */
export function listed(items: readonly Text[]): Text {
  return items.length < 2 ? (items[0] ?? "none") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

/** A narrow table with its rows side by side in at most so many parts, read down each; the last places may be empty. */
export function sideBySide(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  most: number,
): { readonly columns: readonly Column[]; readonly rows: readonly (readonly Cell[])[] } {
  const height = roundUp(rows.length / most, 1);
  const count = roundUp(rows.length / height, 1);
  const empty: readonly Cell[] = columns.map(() => "");
  const allColumns = [...columns];
  for (let part = 1; part < count; part++) {
    for (const each of columns) allColumns.push({ ...each, key: `${each.key}-${part + 1}` });
  }
  const lines: Cell[][] = [];
  for (let line = 0; line < height; line++) {
    const cells: Cell[] = [];
    for (let part = 0; part < count; part++) cells.push(...(rows[part * height + line] ?? empty));
    lines.push(cells);
  }
  return { columns: allColumns, rows: lines };
}

/** Items of one key together, in the order in which the keys first come. */
export function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return [...groups.values()];
}

export const unique = <T>(items: readonly T[]): readonly T[] => [...new Set(items)];

export const pullingEnds = (run: Run): readonly RunEnd[] => [run.left, run.right].filter((end) => end.pulls);
export const postsOf = (plan: Plan): readonly Vertical[] => plan.verticals.filter(({ kind }) => kind === "post");
export const spacersOf = (plan: Plan): readonly Vertical[] => plan.verticals.filter(({ kind }) => kind === "spacer");
/** The posts that hold the ends of runs: they bend under all cables. */
export const endPostIds = (plan: Plan): readonly string[] =>
  unique(plan.runs.flatMap((run) => [run.left, run.right].filter(({ kind }) => kind !== "anchor").map(({ postId }) => postId)));

/** "Cables end on P1, P4 (corner post) and P7": not every such post is an end of the guard. */
export const endsOnWords = (plan: Plan): Text => {
  const named = endPostIds(plan).map((id) => {
    const role = plan.verticals.find((vertical) => vertical.id === id)?.role;
    return `${id}${role === "corner" ? " (corner post)" : role === "shared" ? " (two runs)" : ""}`;
  });
  return `Cables end on ${listed(named)}`;
};

export const greatest = (values: readonly number[]): number => values.reduce((most, value) => Math.max(most, value), 0);
export const least = (values: readonly number[]): number =>
  values.reduce((lowest, value) => Math.min(lowest, value), Number.POSITIVE_INFINITY);
