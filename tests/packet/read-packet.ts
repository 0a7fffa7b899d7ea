// How do the tests of the packet get at its words, cells and blocks?
import type { Issue } from "../../src/job/job.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import type { Block, Cell, Packet, Sheet, Steps, Table } from "../../src/packet/packet.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { exampleNames, exampleText, planOf } from "../support/example-jobs.ts";

export const issues: readonly Issue[] = ["crew", "homeowner", "permit", "record"];
export const stamp = { jobHash: "0123456789ab", programVersion: "0.0.0-test" };

/** The example jobs with their plans, each made once. */
export const examples: readonly (readonly [name: string, plan: Plan])[] = exampleNames.map((name) => [name, planOf(exampleText(name))]);

export const packetOf = (plan: Plan, issue: Issue, all = false): Packet => makePacket({ plan, issue, stamp, all });

export function sheetOf(packet: Packet, id: string): Sheet {
  const sheet = packet.sheets.find((each) => each.id === id);
  if (!sheet) throw new Error(`no sheet ${id} in the ${packet.issue} issue`);
  return sheet;
}

export const tablesOf = (blocks: readonly Block[]): readonly Table[] => blocks.filter((block) => block.kind === "table");
export const stepsOf = (blocks: readonly Block[]): readonly Steps[] => blocks.filter((block) => block.kind === "steps");
export const allTables = (packet: Packet): readonly Table[] => packet.sheets.flatMap(({ blocks }) => tablesOf(blocks));

export function tableOf(packet: Packet, id: string): Table {
  const table = allTables(packet).find((each) => each.id === id);
  if (!table) throw new Error(`no table ${id} in the ${packet.issue} issue`);
  return table;
}

/** What is printed in a cell, without the marks for bold; a place to write or tick prints nothing. */
export function cellText(cell: Cell): string {
  if (typeof cell === "string") return cell.replaceAll("**", "");
  return "text" in cell ? cell.text.replaceAll("**", "") : "";
}

/** Every text of a block, drawings left out: they are words of another file. */
export function textsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case "heading":
      return [block.text];
    case "prose":
    case "caution":
      return block.text;
    case "list":
      return block.items;
    case "facts":
      return block.facts.flatMap(({ name, value }) => [name, value]);
    case "blanks":
      return [block.title, ...block.rows.flatMap(({ label, unit }) => [label, unit])];
    case "signatures":
      return block.roles;
    case "table":
      return [
        block.caption,
        ...block.columns.flatMap(({ head, sub }) => [head, sub ?? ""]),
        ...block.rows.flatMap((row) => row.map(cellText)),
        ...(block.notes ?? []),
      ];
    case "steps":
      return [block.title, ...block.items.flatMap(({ text, more, value }) => [text, more ?? "", value ?? ""]), block.hold ?? ""];
    case "break":
    case "drawing":
      return [];
  }
}

/** Every text of a sheet, each on a line of its own, without the marks for bold. */
export const wordsOn = (plan: Plan, id: string, issue: Issue = "crew"): string =>
  sheetOf(packetOf(plan, issue), id).blocks.flatMap(textsOf).join("\n").replaceAll("**", "");

/** What is printed in the cells of a table. */
export const rowsOf = (plan: Plan, id: string, issue: Issue = "crew"): readonly (readonly string[])[] =>
  tableOf(packetOf(plan, issue), id).rows.map((row) => row.map(cellText));

/** "12'-6 1/2\" (3823 mm)" or "149 mm (5-7/8\")": the first value in mm, read by a reader of the test's own. */
export function readPrinted(text: string): number {
  const first = text.split("(")[0]?.trim() ?? "";
  const metric = /^(-?[\d.]+) mm$/.exec(first);
  if (metric) return Number(metric[1]);
  const match = /^(?:(\d+)'-)?(?:(\d+)(?![\d/]))?(?:[- ]?(\d+)\/(\d+))?"$/.exec(first);
  if (!match) throw new Error(`not a printed length: ${text}`);
  const [, feet = "0", inches = "0", numerator = "0", denominator = "1"] = match;
  return (Number(feet) * 12 + Number(inches) + Number(numerator) / Number(denominator)) * 25.4;
}
