// What is a sheet made from, and which small builders keep its blocks alike?
import type { Issue } from "../../job/job.ts";
import type { Plan, Run, RunEnd, Vertical } from "../../plan/plan.ts";
import type { SourceId } from "../../sources/sources.ts";
import { roundTo, roundUp } from "../../units/round.ts";
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
}

export type Orientation = Sheet["orientation"];
export type SheetMaker = (context: SheetContext, head: SheetHead) => Sheet;

export const sheet = (head: SheetHead, orientation: Orientation, blocks: readonly Block[]): Sheet => ({
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
  const total = parts.columns.reduce((sum, { width }) => sum + (width ?? 0), 0);
  const columns = parts.columns.map((each) =>
    each.width === undefined ? each : { ...each, width: roundTo(each.width / total, SHARE_decimals) },
  );
  return { kind: "table", ...parts, columns };
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
}): Steps => ({ kind: "steps", ...parts });

/** A column with its share of the table's width. */
export const column = (key: string, head: Text, width: number, more: Partial<Column> = {}): Column => ({ key, head, width, ...more });
export const blank = (unit = ""): Cell => ({ blank: unit });
export const tick: Cell = { tick: true };
/** A critical value, printed large: what is drilled, cut, ordered or read on a gauge. */
export const strong = (text: Text): Cell => ({ text, strong: true });
/** What is looked up, not read: printed small. */
export const minor = (text: Text): Cell => ({ text, minor: true });
export const bold = (text: Text): Text => `**${text}**`;
export const blankRow = (columns: readonly Column[], ...first: readonly Cell[]): readonly Cell[] => [
  ...first,
  ...columns.slice(first.length).map(() => blank()),
];

/** "Z-603", or "Z-603 (crew issue)" when this issue does not hold it. */
export function refer(context: SheetContext, key: SheetKey): Text {
  const head = context.index.find((entry) => entry.key === key);
  if (head) {
    return head.id;
  }
  const [holder = "crew"] = catalogue[key].issues;
  return `${catalogue[key].id} (${issueName[holder].toLowerCase()})`;
}

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
  const parts = Array.from({ length: roundUp(rows.length / height, 1) }, (_, part) => rows.slice(part * height, (part + 1) * height));
  const empty: readonly Cell[] = columns.map(() => "");
  return {
    columns: parts.flatMap((_, part) => columns.map((each) => (part === 0 ? each : { ...each, key: `${each.key}-${part + 1}` }))),
    rows: Array.from({ length: height }, (_, line) => parts.flatMap((part) => part[line] ?? empty)),
  };
}

export const unique = <T>(items: readonly T[]): readonly T[] => [...new Set(items)];

export const pullingEnds = (run: Run): readonly RunEnd[] => [run.left, run.right].filter((end) => end.pulls);
export const postsOf = (plan: Plan): readonly Vertical[] => plan.verticals.filter(({ kind }) => kind === "post");
export const spacersOf = (plan: Plan): readonly Vertical[] => plan.verticals.filter(({ kind }) => kind === "spacer");
/** The posts that hold the ends of runs: they bend under all cables. */
export const endPostIds = (plan: Plan): readonly string[] => unique(plan.runs.flatMap((run) => [run.left.postId, run.right.postId]));
export const greatest = (values: readonly number[]): number => values.reduce((most, value) => Math.max(most, value), 0);
export const least = (values: readonly number[]): number =>
  values.reduce((lowest, value) => Math.min(lowest, value), Number.POSITIVE_INFINITY);
