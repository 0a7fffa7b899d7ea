import { describe, expect, test } from "vitest";
import { cellText, examples, packetOf, readPrinted, sheetOf, stepsOf, tableOf, textsOf } from "../read-packet.ts";

const LB_N = 4.4482216152605;

/** "275 lbf (1.22 kN)" or "824 N (185 lbf)": the first value in N, read by a reader of the test's own. */
function readForce(text: string): number {
  const match = /^([\d.]+) (lbf|N|kN)/.exec(text);
  if (!match) throw new Error(`not a printed force: ${text}`);
  const [, digits = "", unit] = match;
  return Number(digits) * (unit === "lbf" ? LB_N : unit === "kN" ? 1000 : 1);
}

/** Three significant figures, or whole pounds: half a unit of the last printed digit at most. */
const forceSlack = (value: number): number => Math.max(0.51 * LB_N, value * 0.0051);

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
    const { rows } = tableOf(packetOf(plan, "crew"), "cables-marks");
    expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(plan.cables.map(({ mark }) => mark));
  });
});

describe("tighteningSheet", () => {
  test.each(examples)("%s: the log of each run holds every step with its reading, and blanks to fill in", (_, plan) => {
    const packet = packetOf(plan, "crew");
    for (const { runId, steps } of plan.tightening) {
      const { rows } = tableOf(packet, `tightening-log-${runId}`);
      expect(rows.map((row) => cellText(row[2] ?? ""))).toEqual(steps.map(({ mark }) => mark));
      for (const [index, step] of steps.entries()) {
        const cells = rows[index] ?? [];
        expect.soft(Math.abs(readForce(cellText(cells[3] ?? "")) - step.reading), step.mark).toBeLessThan(forceSlack(step.reading));
        const [low = "", high = ""] = cellText(cells[4] ?? "").split(" - ");
        expect.soft(readForce(low), `${step.mark}: the low end is rounded inward`).toBeGreaterThanOrEqual(step.reading_low - 1e-6);
        expect.soft(readForce(high), `${step.mark}: the high end is rounded inward`).toBeLessThanOrEqual(step.reading_high + 1e-6);
        expect.soft(cells.slice(5).every((cell) => typeof cell === "object" && "blank" in cell)).toBe(true);
      }
    }
  });

  test.each(examples)(
    "%s: says that the order is customary, without a source, and that the effect of later cables is not computed",
    (_, plan) => {
      const texts = sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join(" ");
      expect(texts).toContain("customary one: from the middle cable outward, one above, one below [practice]");
      expect(texts).toContain("not computed yet");
    },
  );

  test.each(examples)("%s: the plumb log has a row for every post that holds an end", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "tightening-plumb");
    expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual([
      ...new Set(plan.runs.flatMap(({ left, right }) => [left.postId, right.postId])),
    ]);
  });

  test.each(examples)("%s: every span of every run has a gauge, pitch and sag value", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "tightening-spans");
    const spans = plan.runs.flatMap((run) => run.spans.map((span) => ({ run, span })));
    expect(rows.length).toBe(spans.length);
    for (const [index, { run, span }] of spans.entries()) {
      const cells = rows[index]?.map(cellText) ?? [];
      expect.soft(cells.slice(0, 2)).toEqual([run.id, span.bayId]);
      expect.soft(Math.abs(readForce(cells[3] ?? "") - span.tension)).toBeLessThan(forceSlack(span.tension));
      expect.soft(Math.abs(Number.parseFloat(cells[4] ?? "") - span.pitch_Hz.nominal)).toBeLessThanOrEqual(0.0501);
    }
  });
});

describe("proofSheet", () => {
  test.each(examples)("%s: every bay that a sphere can meet has a row with blanks", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "permit"), "proof-openings");
    expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(plan.bays.filter(({ kind }) => kind !== "pair gap").map(({ id }) => id));
    expect(rows.every((row) => row.slice(3).every((cell) => typeof cell === "object" && "blank" in cell))).toBe(true);
  });

  test.each(examples)("%s: hold points H0 to H4 are there, as in the homeowner's steps", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const points = tableOf(packet, "proof-holds").rows.map((row) => cellText(row[0] ?? ""));
    const held = stepsOf(sheetOf(packet, "Z-801").blocks).flatMap(({ hold }) => (hold === undefined ? [] : [hold.slice(0, 2)]));
    expect(points.flatMap((point) => /^H\d/.exec(point)?.[0] ?? [])).toEqual(["H0", "H1", "H2", "H3", "H4"]);
    expect(held).toEqual(["H0", "H1", "H2", "H3", "H4"]);
  });
});

describe("orderSheet", () => {
  test.each(examples)("%s: each line of the order stands with its net, spare and quantity", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const rows = sheetOf(packet, "Z-604").blocks.flatMap((block) => (block.kind === "table" ? block.rows : []));
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
    expect(tableOf(packet, "lumber-cuts").rows.map((row) => [cellText(row[0] ?? ""), Number(cellText(row[5] ?? ""))])).toEqual([...wanted]);
    const cut = new Map<string, number>();
    for (const index of plan.cutPlans.keys()) {
      for (const row of tableOf(packet, `lumber-plan-${index + 1}`).rows) {
        for (const [, n = "0", mark = ""] of cellText(row[2] ?? "").matchAll(/(\d+) x ([A-Z]+\d*) \(/g))
          cut.set(mark, (cut.get(mark) ?? 0) + Number(n));
      }
    }
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(wanted));
  });
});

describe("surveySheet", () => {
  test.each(examples)("%s: the stop value of the clear opening keeps the top gap within its limit", (_, plan) => {
    const row = tableOf(packetOf(plan, "crew"), "survey-frame").rows[0]?.map(cellText) ?? [];
    expect(row[0]).toBe("frame / clear opening");
    const stop = readPrinted((row[3] ?? "").replace("above ", ""));
    const top = plan.gaps.at(-1);
    if (!top) throw new Error("a plan without gaps");
    expect(top.spacing + stop - plan.job.frame.clearOpening).toBeLessThanOrEqual(plan.job.limits.cableSpacing_max.value + 1e-6);
  });
});

describe("recordSheet", () => {
  test.each(examples)("%s: every upright, cable and end post has its place, and deviations name who accepted them", (_, plan) => {
    const packet = packetOf(plan, "record");
    const heads = sheetOf(packet, "Z-901").blocks.flatMap((block) =>
      block.kind === "table" && block.id.startsWith("record-bores") ? block.columns.slice(2).map(({ head }) => head) : [],
    );
    expect(heads).toEqual(plan.verticals.map(({ id }) => id));
    expect(tableOf(packet, "record-cables").rows.length).toBe(plan.cables.length);
    expect(tableOf(packet, "record-deviations").columns.map(({ head }) => head)).toContain("Accepted by");
    const rules = sheetOf(packet, "Z-901").blocks.flatMap(textsOf).join(" ");
    expect(rules).toMatch(/ink[\s\S]*one line through[\s\S]*initials/);
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
