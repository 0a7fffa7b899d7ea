import { describe, expect, test } from "vitest";
import type { Cell, Packet, Table } from "../../../src/packet/packet.ts";
import { boreRows, isEven } from "../../../src/packet/sheets/bore-rows.ts";
import type { Bore, Plan } from "../../../src/plan/plan.ts";
import { cellText, examples, packetOf, readPrinted, sheetOf, tableOf, tablesOf } from "../read-packet.ts";

interface PrintedBore {
  readonly mark: string;
  readonly row: ReadonlyMap<string, string>;
  /** Where its real height is written: a box of its own. */
  readonly box: Cell;
}

/** Every bore that the sheet prints: a box of the grid, or a row of a table of one upright. */
function printedBores(packet: Packet, plan: Plan): readonly PrintedBore[] {
  const tables = tablesOf(sheetOf(packet, "Z-603").blocks);
  return tables.flatMap((table) => {
    if (table.id === "bores-grid") return gridBores(table, plan, (isRaised) => heightsOf(packet, isRaised));
    return /^bores-[PS]\d/.test(table.id) ? table.rows.map((row) => singleBore(table, row)) : [];
  });
}

/** Courses stand side by side in the table of heights; where bores cross in a corner post each has one height for lower sides and one for raised ones. */
function heightsOf(packet: Packet, isRaised: boolean): ReadonlyMap<string, string> {
  const { columns, rows } = tableOf(packet, "bores-heights");
  const height = isRaised ? 3 : 1;
  return new Map(
    columns.flatMap(({ key }, at) =>
      key.startsWith("course")
        ? rows.map((row): readonly [string, string] => [cellText(row[at] ?? ""), cellText(row[at + height] ?? "")])
        : [],
    ),
  );
}

const cellsOf = (table: Table, row: readonly Cell[]): ReadonlyMap<string, string> =>
  new Map(table.columns.map(({ key }, index) => [key, cellText(row[index] ?? "")]));

/** Whether a bore lies on a side whose courses are raised. */
const isRaised = ({ bores, runs }: Plan, mark: string): boolean =>
  runs.some(({ id, isRaised: raised }) => raised === true && bores.some((bore) => bore.mark === mark && bore.runId === id));

function gridBores(table: Table, plan: Plan, heightsAt: (raised: boolean) => ReadonlyMap<string, string>): readonly PrintedBore[] {
  return table.rows.flatMap((row) => {
    const cells = cellsOf(table, row);
    const [upright = "", behind] = (cells.get("upright") ?? "").split("/");
    // An upright with a table of its own has a row that says so, with no box.
    if (row.slice(1).some((cell) => cellText(cell) === "table below")) return [];
    return table.columns.flatMap(({ key, head }, at) => {
      if (!/^c\d+$/.test(key)) return [];
      const mark = `${upright}-${head}${behind === undefined ? "" : `/${behind}`}`;
      const heights = heightsAt(isRaised(plan, mark));
      expect.soft(heights.has(head), `course ${head} has its height in the table of heights`).toBe(true);
      return [{ mark, row: new Map([...cells, ["height", heights.get(head) ?? ""]]), box: row[at] ?? "" }];
    });
  });
}

function singleBore(table: Table, row: readonly Cell[]): PrintedBore {
  const cells = cellsOf(table, row);
  return { mark: cells.get("mark") ?? "", row: cells, box: row.at(-1) ?? "" };
}

/** Heights are drilled to the tape's step and printed to 1/16 in or 1 mm: half of the coarser one is the most they may differ. */
const HALF_STEP_mm = 25.4 / 32 + 1e-6;

/** "10 mm (3/8\") towards deck" */
function offsetOf(across: string): number {
  const [, size = "", way] = /^(.*) (towards|away from) deck$/.exec(across) ?? [];
  return size === "" ? 0 : readPrinted(size) * (way === "towards" ? -1 : 1);
}

function expectBore({ mark, row, box }: PrintedBore, bore: Bore, { verticals }: Plan): void {
  const near = (key: string, value: number): void =>
    expect
      .soft(Math.abs(readPrinted(row.get(key) ?? "") - value), `${mark} ${key}: ${row.get(key)} against ${value} mm`)
      .toBeLessThanOrEqual(HALF_STEP_mm);
  near("height", bore.height);
  const [bored = "", deep = ""] = (row.get("bore") ?? "").split(" x ");
  expect.soft(Math.abs(readPrinted(bored) - bore.diameter), `${mark} bore: ${bored}`).toBeLessThanOrEqual(HALF_STEP_mm);
  expect.soft(deep !== "", `${mark} is ${bore.through ? "right through" : "blind"}`).toBe(!bore.through);
  if (!bore.through)
    expect.soft(Math.abs(readPrinted(deep.replace(" deep", "")) - bore.drilledLength), mark).toBeLessThanOrEqual(HALF_STEP_mm);
  const corner = verticals.find(({ id }) => id === bore.verticalId)?.corner;
  // Two runs that end on it are bored each from the face that looks to its side.
  const towards = `to ${bore.entryFace === "right" && (!bore.through || corner?.isSetOff === true) ? corner?.nextId : corner?.homeId}`;
  expect.soft(row.get("entry"), `${mark} entry`).toBe(corner === undefined ? bore.entryFace : towards);
  if (corner !== undefined) {
    expect.soft(row.get("exit"), `${mark} exit`).toBe(bore.through ? (corner.isSetOff ? "opposite" : `to ${corner.nextId}`) : "blind");
    expect.soft(row.get("skew"), `${mark} skew`).toBe(bore.skew === 0 ? "square" : "45 deg");
    near("through", bore.drilledLength);
  }
  expect
    .soft(row.get("bushing") ?? "no", `${mark} bushing`)
    .toMatch(bore.bushing ? /left face|right face|both faces|both walls|through/ : /^no$/);
  const across = row.get("across") ?? "middle";
  expect.soft(Math.abs(offsetOf(across) - bore.offset), `${mark} across: ${across}`).toBeLessThanOrEqual(HALF_STEP_mm);
  expect.soft(typeof box === "object" && "blank" in box, `${mark} has a box to write in`).toBe(true);
  const [size = "", depth = ""] = (row.get("counterbore") ?? "none").split(" x ");
  if (bore.counterbore === null) {
    expect.soft(size, `${mark} counterbore`).toBe("none");
  } else {
    expect.soft(Math.abs(readPrinted(size) - bore.counterbore.diameter), mark).toBeLessThanOrEqual(HALF_STEP_mm);
    expect.soft(Math.abs(readPrinted(depth) - bore.counterbore.depth), mark).toBeLessThanOrEqual(HALF_STEP_mm);
    expect.soft(row.get("counterface"), mark).toBe(bore.counterbore.face);
  }
}

function expectAll(plan: Plan): void {
  const printed = printedBores(packetOf(plan, "crew"), plan);
  expect(printed.map(({ mark }) => mark).sort()).toEqual(plan.bores.map(({ mark }) => mark).sort());
  for (const each of printed) {
    const bore = plan.bores.find(({ mark }) => mark === each.mark);
    if (bore) expectBore(each, bore, plan);
  }
}

/** The same plan with the bores of one upright 25.4 mm higher. */
const withLifted = (plan: Plan, id: string): Plan => ({
  ...plan,
  bores: plan.bores.map((bore) => (bore.verticalId === id ? { ...bore, height: bore.height + 25.4 } : bore)),
});

describe("boresSheet", () => {
  test.each(examples)("%s: every bore of the plan stands once, with its height, size, faces and depth, and a box to write in", (_, plan) =>
    expectAll(plan),
  );

  test.each(examples)("%s: an upright whose bores stand 1 in higher has a table of its own, with its own heights", (_, plan) => {
    const lifted = withLifted(plan, "P2");
    expectAll(lifted);
    const ids = tablesOf(sheetOf(packetOf(lifted, "crew"), "Z-603").blocks).map(({ id }) => id);
    // A post that leans has a table of its own already.
    const before = tablesOf(sheetOf(packetOf(plan, "crew"), "Z-603").blocks).map(({ id }) => id);
    expect(before).not.toContain("bores-P2");
    expect(ids.filter((id) => id.startsWith("bores-P") && !before.includes(id))).toEqual(["bores-P2"]);
  });

  test.each(examples)("%s: the bits together bore as many holes as there are bores and counterbores, each size once", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "bores-bits");
    const holes = rows.reduce((sum, row) => sum + Number(cellText(row[2] ?? "")), 0);
    // In a sleeved post each face has a hole for the cable, or one for the washer.
    const inSleeves = plan.bores.filter(({ sleeveHole }) => sleeveHole !== undefined);
    const forCables = inSleeves.reduce((sum, { counterbore }) => sum + (counterbore === null ? 2 : 1), 0);
    expect(holes).toBe(plan.bores.length + plan.bores.filter(({ counterbore }) => counterbore !== null).length + forCables);
    const sizes = rows.map((row) => cellText(row[0] ?? ""));
    expect(sizes).toEqual([...new Set(sizes)]);
  });

  test.each(examples)("%s: a solid bar of metal has its bushings right through, never in two walls", (_, plan) => {
    const { material, wall } = plan.job.spacers.section;
    if (material === "wood" || wall !== null) return;
    const grid = tableOf(packetOf(plan, "crew"), "bores-grid");
    const at = grid.columns.findIndex(({ key }) => key === "bushing");
    const places = grid.rows.filter((row) => cellText(row[0] ?? "").startsWith("S")).map((row) => cellText(row[at] ?? ""));
    expect(new Set(places)).toEqual(new Set(["through"]));
  });
});

describe("boreRows", () => {
  test.each(examples)("%s: each bore is in one row, and a row holds the bores of one run in one upright", (_, plan) => {
    const rows = boreRows(plan);
    expect(rows.flatMap(({ bores }) => bores.map(({ mark }) => mark)).sort()).toEqual(plan.bores.map(({ mark }) => mark).sort());
    for (const { vertical, bores, first } of rows) {
      expect.soft(bores.every(({ verticalId, runId }) => verticalId === vertical.id && runId === first.runId)).toBe(true);
    }
  });
});

describe("isEven", () => {
  test.each(examples)("%s: a row is even until one of its bores is moved or made in another way", (_, plan) => {
    const isEvenWith = (change: Partial<Bore>): boolean => {
      const bores = plan.bores.map((bore) => (bore.mark === "P1-02" ? { ...bore, ...change } : bore));
      const row = boreRows({ ...plan, bores }).find(({ vertical }) => vertical.id === "P1");
      return row !== undefined && isEven(row, plan);
    };
    expect(isEvenWith({})).toBe(true);
    expect(isEvenWith({ height: 1 })).toBe(false);
    expect(isEvenWith({ diameter: 30 })).toBe(false);
    expect(isEvenWith({ bushing: true })).toBe(false);
  });
});
