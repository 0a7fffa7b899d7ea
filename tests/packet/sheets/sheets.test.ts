import { describe, expect, test } from "vitest";
import { readForce } from "../read-force.ts";
import { cellText, examples, packetOf, readPrinted, sheetOf, tableOf, textsOf } from "../read-packet.ts";

describe("cablesSheet", () => {
  test.each(examples)("%s: path, outside and order length of each run are those of the plan, the order length never short", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "cables-lengths");
    expect(rows.length).toBe(plan.runs.length);
    for (const [index, run] of plan.runs.entries()) {
      const cells = rows[index]?.map(cellText) ?? [];
      expect.soft(cells[0]).toBe(run.id);
      expect.soft(Number(cells[2])).toBe(plan.cables.filter(({ runId }) => runId === run.id).length);
      expect.soft(Math.abs(readPrinted(cells[3] ?? "") - run.pathLength)).toBeLessThan(0.8);
      expect.soft(Math.abs(readPrinted(cells[4] ?? "") - run.outsideLength)).toBeLessThan(0.8);
      expect.soft(readPrinted(cells[5] ?? "")).toBeGreaterThanOrEqual(run.orderLength - 1e-6);
    }
  });

  test.each(examples)("%s: every cable of the plan stands once", (_, plan) => {
    const { columns, rows } = tableOf(packetOf(plan, "crew"), "cables-marks");
    // Cables stand side by side: the marks are read down one part of the table, then down the next.
    const marks = columns.flatMap(({ key }, at) => (key.startsWith("mark") ? rows.map((row) => cellText(row[at] ?? "")) : []));
    expect(marks.filter((mark) => mark !== "")).toEqual(plan.cables.map(({ mark }) => mark));
  });
});

describe("orderSheet", () => {
  test.each(examples)("%s: each line of the order stands with its net, spare and quantity", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const { rows } = tableOf(packet, "order-list");
    expect(rows.length).toBe(plan.order.length);
    const printed = rows.map((row) => row.slice(2, 5).map((cell) => Number.parseInt(cellText(cell), 10)));
    expect(printed).toEqual(plan.order.map(({ net, spare, quantity }) => [net, spare, quantity]));
  });
});

describe("lumberSheet", () => {
  test.each(examples)("%s: each part stands with its count, and the cut plans hold exactly the parts", (_, plan) => {
    if (plan.cuts.length === 0) return;
    const packet = packetOf(plan, "crew");
    const wanted = new Map(plan.cuts.map(({ mark, count }) => [mark, count]));
    expect(tableOf(packet, "lumber-cuts").rows.map((row) => [cellText(row[0] ?? ""), Number(cellText(row[4] ?? ""))])).toEqual([...wanted]);
    const cut = new Map<string, number>();
    for (const row of tableOf(packet, "lumber-plan").rows) {
      for (const [, n = "0", mark = ""] of cellText(row[3] ?? "").matchAll(/(\d+) x ([A-Z]+\d*) \(/g))
        cut.set(mark, (cut.get(mark) ?? 0) + Number(n));
    }
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(wanted));
  });
});

describe("surveySheet", () => {
  test.each(examples)("%s: the stop value of the clear opening keeps the top gap within its limit", (_, plan) => {
    const rows = tableOf(packetOf(plan, "crew"), "survey-measure").rows.map((row) => row.map(cellText));
    const row = rows.find((cells) => cells.at(-1) === "frame / clear opening") ?? [];
    const stop = readPrinted((row[2] ?? "").replace("above ", ""));
    const top = plan.gaps.at(-1);
    if (!top) throw new Error("a plan without gaps");
    expect(top.spacing + stop - plan.job.frame.clearOpening).toBeLessThanOrEqual(plan.job.limits.cableSpacing_max.value + 1e-6);
  });

  test.each(examples)("%s: asks for a counterbore only where one is bored, and always for the strand's certificate", (_, plan) => {
    const keys = tableOf(packetOf(plan, "crew"), "survey-measure").rows.map((row) => cellText(row.at(-1) ?? ""));
    expect(keys.includes("fittings / grip / counterbore")).toBe(plan.bores.some(({ counterbore }) => counterbore !== null));
    expect(keys.includes("fittings / bushing bore")).toBe(plan.bores.some(({ bushing }) => bushing));
    expect(keys).toContain("cable / breaking force");
  });
});

describe("coverSheet", () => {
  test.each(examples)("%s: carries the hash of the job file, the version, all checks and a bar of 100 mm", (_, plan) => {
    const packet = packetOf(plan, "permit");
    const cover = sheetOf(packet, "Z-001");
    const texts = cover.blocks.flatMap(textsOf).join(" ");
    expect(texts).toContain("0123456789ab");
    expect(texts).toContain("0.0.0-test");
    expect(tableOf(packet, "cover-checks").rows.length).toBe(plan.checks.length);
    expect(cover.blocks.some(({ kind }) => kind === "drawing")).toBe(true);
  });
});

describe("detailsSheet", () => {
  test.each(examples)("%s: names each size that is bored, and no other", (_, plan) => {
    const facts = sheetOf(packetOf(plan, "crew"), "Z-301").blocks.find((block) => block.kind === "facts");
    if (facts?.kind !== "facts") throw new Error("no facts on Z-301");
    const printed = facts.facts.flatMap(({ value }) =>
      [...value.matchAll(/(?:bore|counterbore) ([\d/-]+(?: mm|"))/g)].map(([, size = ""]) => readPrinted(size)),
    );
    const bored = plan.bores.flatMap(({ diameter, counterbore }) => [diameter, ...(counterbore ? [counterbore.diameter] : [])]);
    // Printed to 1/32 in or 0.1 mm.
    const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 25.4 / 64 + 1e-6;
    expect(printed.length).toBeGreaterThan(1);
    expect(printed.filter((size) => !bored.some((each) => isNear(size, each)))).toEqual([]);
    expect(bored.filter((size) => !printed.some((each) => isNear(size, each)))).toEqual([]);
  });
});

describe("authoritySheet", () => {
  test.each(examples)(
    "%s: the force that holds the sphere back is rounded down, in the bay of each side that is tested first",
    (_, plan) => {
      const { rows } = tableOf(packetOf(plan, "permit"), "authority-push");
      expect([...new Set(rows.map((row) => cellText(row[0] ?? "").split(",")[0]))]).toEqual(plan.openingBayIds);
      for (const row of rows) {
        const [bayId, runId] = cellText(row[0] ?? "").split(", ");
        const span = plan.runs.find(({ id }) => id === runId)?.spans.find((each) => each.bayId === bayId);
        expect.soft(readForce(cellText(row[3] ?? ""))).toBeLessThanOrEqual((span?.pushThrough.sliding ?? 0) * (1 + 1e-9));
        expect.soft(readForce(cellText(row[4] ?? ""))).toBeLessThanOrEqual((span?.pushThrough.held ?? 0) * (1 + 1e-9));
      }
    },
  );

  test.each(examples)("%s: question on openings at the foot names the gap under the bottom rail where there is one", (_, plan) => {
    const rows = tableOf(packetOf(plan, "permit"), "authority-questions").rows.map((row) => row.map(cellText));
    const row = rows.find((cells) => (cells[1] ?? "").startsWith("Are there rules on the gap under the guard")) ?? [];
    expect(row[2]).toContain(plan.job.frame.bottomRail === null ? "no bottom rail" : "under the bottom rail");
  });

  test("NCC 2022: the table of tensions is the way taken, and the cone test of H5V1 is not claimed", () => {
    const [, plan] = examples.find(([, each]) => each.job.tightening.criterion.kind === "table") ?? [];
    if (!plan) throw new Error("no example uses a table");
    const notes = (tableOf(packetOf(plan, "permit"), "authority-push").notes ?? []).join(" ");
    expect(notes).toMatch(/Way of compliance taken here: .*table 11\.3\.6a.*H5V1.*not claimed/);
  });
});
