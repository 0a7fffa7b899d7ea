import { describe, expect, test } from "vitest";
import type { Cell, Packet, Table } from "../../../src/packet/packet.ts";
import { boreGroups } from "../../../src/packet/sheets/bores.ts";
import type { Bore, Plan } from "../../../src/plan/plan.ts";
import { cellText, examples, packetOf, readPrinted, sheetOf, tableOf, tablesOf } from "../read-packet.ts";

interface PrintedBore {
  readonly mark: string;
  readonly row: ReadonlyMap<string, string>;
}

/** Every bore that the sheet prints: a row of a group stands for each upright that has a box to tick. */
function printedBores(packet: Packet): readonly PrintedBore[] {
  const tables = tablesOf(sheetOf(packet, "Z-603").blocks).filter(({ id }) => /^bores-\d+$/.test(id));
  return tables.flatMap((table) => table.rows.flatMap((row) => printedRow(table, row)));
}

function printedRow(table: Table, row: readonly Cell[]): readonly PrintedBore[] {
  const cells = new Map(table.columns.map(({ key }, index) => [key, cellText(row[index] ?? "")]));
  const uprights = table.columns.filter(({ key }) => key.startsWith("done-")).map(({ key }) => key.slice("done-".length));
  const mark = cells.get("mark") ?? "";
  return uprights.map((id) => ({ mark: uprights.length === 1 ? mark : `${id}${mark}`, row: cells }));
}

/** Heights are drilled to the tape's step and printed to 1/16 in or 1 mm: half of the coarser one is the most they may differ. */
const HALF_STEP_mm = 25.4 / 32 + 1e-6;

function expectBore({ mark, row }: PrintedBore, bore: Bore): void {
  const near = (key: string, value: number): void =>
    expect
      .soft(Math.abs(readPrinted(row.get(key) ?? "") - value), `${mark} ${key}: ${row.get(key)} against ${value} mm`)
      .toBeLessThanOrEqual(HALF_STEP_mm);
  near("height", bore.height);
  near("bore", bore.diameter);
  expect.soft(row.get("entry"), `${mark} entry`).toBe(bore.entryFace);
  expect.soft(row.get("bushing") ?? "no", `${mark} bushing`).toMatch(bore.bushing ? /left|right|both faces/ : /^no$/);
  const across = row.get("across") ?? "middle";
  const offset = across === "middle" ? 0 : Number(`${across[0]}1`) * readPrinted(across.slice(1));
  expect.soft(Math.abs(offset - bore.offset), `${mark} across: ${across}`).toBeLessThanOrEqual(HALF_STEP_mm);
  const [size = "", rest = ""] = (row.get("counterbore") ?? "none").split(" x ");
  if (bore.counterbore === null) {
    expect.soft(size, `${mark} counterbore`).toBe("none");
  } else {
    const [depth = "", face] = rest.split(", ");
    expect.soft(Math.abs(readPrinted(size) - bore.counterbore.diameter), mark).toBeLessThanOrEqual(HALF_STEP_mm);
    expect.soft(Math.abs(readPrinted(depth) - bore.counterbore.depth), mark).toBeLessThanOrEqual(HALF_STEP_mm);
    expect.soft(face, mark).toBe(bore.counterbore.face);
  }
}

describe("boresSheet", () => {
  test.each(examples)("%s: every bore of the plan stands once, with its height, size, faces and depth", (_, plan) => {
    const printed = printedBores(packetOf(plan, "crew"));
    expect(printed.map(({ mark }) => mark).sort()).toEqual(plan.bores.map(({ mark }) => mark).sort());
    for (const each of printed) {
      const bore = plan.bores.find(({ mark }) => mark === each.mark);
      if (bore) expectBore(each, bore);
    }
  });

  test.each(examples)("%s: the bits together bore as many holes as there are bores and counterbores", (_, plan) => {
    const table = tableOf(packetOf(plan, "crew"), "bores-bits");
    const holes = table.rows.reduce((sum, row) => sum + Number(cellText(row[2] ?? "")), 0);
    expect(holes).toBe(plan.bores.length + plan.bores.filter(({ counterbore }) => counterbore !== null).length);
  });
});

describe("boreGroups", () => {
  test.each(examples)("%s: uprights share a table only when all their bores are alike", (_, plan: Plan) => {
    for (const group of boreGroups(plan)) {
      const patterns = group.verticals.map(({ id }) =>
        JSON.stringify(
          plan.bores
            .filter(({ verticalId }) => verticalId === id)
            .map(({ height, diameter, offset, counterbore, entryFace, bushing }) => [
              height,
              diameter,
              offset,
              counterbore,
              entryFace,
              bushing,
            ])
            .sort(),
        ),
      );
      expect.soft(new Set(patterns).size, group.verticals.map(({ id }) => id).join(", ")).toBe(1);
    }
  });
});
