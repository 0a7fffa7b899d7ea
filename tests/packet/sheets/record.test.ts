import { describe, expect, test } from "vitest";
import { examplePlan } from "../../support/example-jobs.ts";
import { cellText, examples, packetOf, sheetOf, tableOf, tablesOf, textsOf } from "../read-packet.ts";

describe("recordSheet", () => {
  test.each(examples)("%s: every bore of every upright has its place: one column for each run that it holds", (_, plan) => {
    const tables = tablesOf(sheetOf(packetOf(plan, "record"), "Z-901").blocks).filter(({ id }) => id.startsWith("record-bores"));
    const level = tables.filter(({ id }) => /^record-bores-\d+$/.test(id));
    const heads = level.flatMap(({ columns }) => columns.slice(2).map(({ head }) => head));
    const wanted = plan.verticals.flatMap(({ id, slope }) => {
      if (slope !== 0) return [];
      const runs = [...new Set(plan.bores.filter(({ verticalId }) => verticalId === id).map(({ runId }) => runId))];
      return runs.length < 2 ? [id] : runs.map((run) => `${id} ${run}`);
    });
    expect(heads).toEqual(wanted);
    // On a slope a bore has two heights, so an upright has two columns.
    const sloped = tables.filter((one) => !level.includes(one)).flatMap(({ columns }) => columns.slice(3).map(({ head }) => head));
    expect([...sloped].sort()).toEqual(plan.verticals.flatMap(({ id, slope }) => (slope === 0 ? [] : [id, id])).sort());
  });

  test("0006: the post that two runs share has a column for each, and a row for how far its bores lie from the middle", () => {
    const plan = examplePlan("0006-porch-existing-posts");
    const tables = tablesOf(sheetOf(packetOf(plan, "record"), "Z-901").blocks).filter(({ id }) => id.startsWith("record-bores"));
    const shared = plan.verticals.find(({ role }) => role === "shared")?.id ?? "";
    const table = tables.find(({ columns }) => columns.some(({ head }) => head === `${shared} R1`));
    const across = table?.rows.find(([first = ""]) => cellText(first).startsWith("Across"));
    const column = table?.columns.findIndex(({ head }) => head === `${shared} R1`) ?? -1;
    expect(across?.[column]).toMatchObject({ blank: expect.any(String) });
    expect(cellText(across?.[1] ?? "")).toContain(`${shared} R2`);
  });

  test.each(examples)("%s: who holds a printed set is written down, to call it in", (_, plan) => {
    const { columns, rows, writeIn } = tableOf(packetOf(plan, "record"), "record-sets");
    expect(columns.map(({ head }) => head)).toEqual(["Issue and revision", "Pages", "To whom", "For", "Given on, by", "Called in on, by"]);
    expect([rows.length, writeIn]).toEqual([5, true]);
    expect(rows.flat().every((cell) => typeof cell === "object" && "blank" in cell)).toBe(true);
  });

  test("0006: cables bought in two lengths are two lots that name their lengths", () => {
    const plan = examplePlan("0006-porch-existing-posts");
    const lengths = plan.order.flatMap(({ group, pieceLength }) => (group === "cable" && pieceLength !== null ? [pieceLength] : []));
    const items = tableOf(packetOf(plan, "record"), "record-lots").rows.map(([first = ""]) => cellText(first));
    expect(lengths.length).toBeGreaterThan(1);
    // 1 ft = 304.8 mm; the catalogue of the example holds whole feet.
    for (const length of lengths)
      expect
        .soft(
          items.some((item) => item.includes(`${length / 304.8}'-0"`)),
          `${length} mm`,
        )
        .toBe(true);
  });

  test.each(examples)("%s: every cable has a row, deviations name who accepted them, and the rules of ink stand on top", (_, plan) => {
    const packet = packetOf(plan, "record");
    const rows = plan.runs.flatMap(({ id }) => tableOf(packet, `record-cables-${id}`).rows.map(([mark = ""]) => cellText(mark)));
    expect(rows).toEqual(plan.cables.map(({ mark }) => mark));
    expect(tableOf(packet, "record-deviations").columns.map(({ head }) => head)).toContain("Accepted by");
    const rules = sheetOf(packet, "Z-901").blocks.flatMap(textsOf).join(" ");
    expect(rules).toMatch(/ink[\s\S]*one line through[\s\S]*initials/);
  });

  test.each(examples)("%s: every cable has the planned stop of each pass beside the blank for what was read", (_, plan) => {
    for (const { runId, passes, steps } of plan.tightening) {
      const { columns, rows } = tableOf(packetOf(plan, "record"), `record-cables-${runId}`);
      for (const { number } of passes) {
        const at = columns.findIndex(({ key }) => key === `stop-${number}`);
        const unit = plan.job.units === "inch" ? 4.4482216152605 : 1;
        for (const row of rows) {
          const step = steps.find(({ mark, pass }) => pass === number && mark === cellText(row[0] ?? ""));
          expect.soft(Number(cellText(row[at] ?? "")) * unit).toBeCloseTo(step?.reading ?? Number.NaN, 6);
          expect.soft(row[at + 1]).toMatchObject({ blank: expect.any(String) });
        }
      }
    }
  });

  test.each(examples)("%s: each pulling end has its reading, turns and thread left; the bay of the proof has its reading", (_, plan) => {
    for (const run of plan.runs) {
      const { columns } = tableOf(packetOf(plan, "record"), `record-cables-${run.id}`);
      for (const { postId } of run.takeUp.ends) {
        const heads = columns.filter(({ sub }) => new RegExp(`^at ${postId}\\b`).test(sub ?? "")).map(({ head }) => head);
        expect.soft(heads).toEqual(["Last reading", "Turns", "Thread left"]);
      }
      expect.soft(columns.map(({ sub }) => sub)).toContain(`in bay ${run.proof.bayId}`);
    }
  });
});
