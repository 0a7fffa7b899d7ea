import { describe, expect, test } from "vitest";
import type { Table } from "../../../src/packet/packet.ts";
import { leansOf } from "../../../src/packet/sheets/readings.ts";
import type { Plan, Run } from "../../../src/plan/plan.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { forceStep, readForce } from "../read-force.ts";
import { cellText, examples, packetOf, sheetOf, tableOf, textsOf } from "../read-packet.ts";

const LB_N = 4.4482216152605;
const logOf = (plan: Plan, run: Run): Table => tableOf(packetOf(plan, "crew"), `tightening-log-${run.id}`);

/** The unit of the plan rows stands in the head of their column: "P1, lbf". */
function readIn(table: Table, row: number, column: number): number {
  const unit = /, (lbf|N)$/.exec(table.columns[column]?.sub ?? "")?.[1];
  return Number(cellText(table.rows[row]?.[column] ?? "")) * (unit === "lbf" ? LB_N : 1);
}

const columnsOfPass = (table: Table, pass: number): readonly number[] =>
  table.columns.flatMap(({ key }, index) => (key.startsWith(`pass-${pass}-`) ? [index] : []));

describe("logBlocks", () => {
  test.each(examples)("%s: one row for each cable in the order of tightening, with its number, and blanks in every pass", (_, plan) => {
    for (const { runId, order, steps } of plan.tightening) {
      const run = plan.runs.find(({ id }) => id === runId) as Run;
      const table = logOf(plan, run);
      const rows = table.rows.slice(3);
      expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(order.map((course) => steps.find((step) => step.course === course)?.mark));
      expect(rows.map((row) => Number(cellText(row[1] ?? "")))).toEqual(order.map((__, index) => index + 1));
      expect(rows.every((row) => row.slice(2).every((cell) => typeof cell === "object" && "blank" in cell))).toBe(true);
    }
  });

  test.each(examples)("%s: every step's reading and band stand above the column of its pass, the band rounded inward", (_, plan) => {
    for (const { runId, steps } of plan.tightening) {
      const table = logOf(plan, plan.runs.find(({ id }) => id === runId) as Run);
      for (const step of steps) {
        const columns = columnsOfPass(table, step.pass);
        expect.soft(columns.length, `${step.mark}, pass ${step.pass}`).toBeGreaterThan(0);
        for (const column of columns) {
          expect.soft(Math.abs(readIn(table, 0, column) - step.reading), step.mark).toBeLessThan(forceStep(step.reading));
          expect.soft(readIn(table, 1, column), `${step.mark} low`).toBeGreaterThanOrEqual(step.reading_low - 1e-6);
          expect.soft(readIn(table, 1, column), `${step.mark} low`).toBeLessThan(step.reading_low + forceStep(step.reading_low));
          expect.soft(readIn(table, 2, column), `${step.mark} high`).toBeLessThanOrEqual(step.reading_high + 1e-6);
          expect.soft(readIn(table, 2, column), `${step.mark} high`).toBeGreaterThan(step.reading_high - forceStep(step.reading_high));
        }
      }
    }
  });

  test.each(examples)("%s: a run pulled at both ends has a column of readings and of turns for each, named by its post", (_, plan) => {
    for (const run of plan.runs) {
      const table = logOf(plan, run);
      const posts = run.takeUp.ends.map(({ postId }) => postId);
      expect(columnsOfPass(table, 1).map((index) => table.columns[index]?.sub?.split(",")[0])).toEqual(posts);
      for (const { postId, turns } of run.takeUp.ends) {
        expect.soft(table.caption).toContain(`at ${postId} ${(Math.round(turns * 10) / 10).toFixed(1)}`);
      }
      const turns = table.columns.filter(({ key }) => key.startsWith("turns-"));
      expect(turns.length).toBe(posts.length === 1 ? plan.job.tightening.passes.value.length : posts.length);
    }
  });

  test("0003 has two runs of the same order: one diagram, and each log on a page of its own", () => {
    const plan = examplePlan("0003-long-boardwalk");
    const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-803");
    expect(plan.runs.length).toBeGreaterThan(1);
    expect(blocks.filter(({ kind }) => kind === "drawing").length).toBe(1);
    expect(blocks.filter(({ kind }) => kind === "break").length).toBe(plan.runs.length);
    expect(blocks.flatMap(textsOf).join(" ")).toContain("pass 1 on every run before pass 2 on any");
  });

  test("a run that needs more than its thread says how much slack is taken out first", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const runs = plan.runs.map((run) => ({ ...run, takeUp: { ...run.takeUp, slackToPull: 25.4 } }));
    const notes = (each: Plan): string => (tableOf(packetOf(each, "crew"), "tightening-log-R1").notes ?? []).join(" ");
    expect(notes({ ...plan, runs })).toContain('Slack to pull past hand-tight before the far end is set or cut: 1".');
    expect(notes(plan)).not.toContain("Slack");
    expect(notes(plan)).toMatch(/Thread left about .* keep .* for later visits/);
  });
});

describe("tighteningSheet", () => {
  test.each(examples)("%s: log, hold point H3 and owner's card print the same 'at least': the low end of the last pass", (_, plan) => {
    const packet = packetOf(plan, "crew", true);
    const held = tableOf(packet, "proof-holds").rows.map((row) => row.map(cellText));
    const h3 = held.find(([point]) => point?.startsWith("H3"))?.[2] ?? "";
    const card = sheetOf(packet, "Z-806").blocks.flatMap(textsOf);
    for (const run of plan.runs) {
      const low = /(?:^|; |: )R\d+ at least ([\d.]+ (?:lbf|N|kN)), at most ([\d.]+ (?:lbf|N|kN))/g;
      const printed = [...h3.matchAll(low)].find(([text]) => text.includes(`${run.id} `));
      if (!printed) throw new Error(`no ${run.id} in ${h3}`);
      const table = logOf(plan, run);
      const [column = 0] = columnsOfPass(table, plan.job.tightening.passes.value.length);
      expect.soft(readForce(printed[1] ?? "")).toBeCloseTo(readIn(table, 1, column), 6);
      expect.soft(readForce(printed[2] ?? "")).toBeCloseTo(readIn(table, 2, column), 6);
      expect.soft(card).toContain(`at least ${printed[1]}, at most ${printed[2]}`);
      expect.soft(readForce(printed[1] ?? "")).toBeGreaterThanOrEqual(run.tension.low - 1e-6);
    }
  });

  test.each(examples)("%s: says that the order is customary, without a source, and what is not computed", (_, plan) => {
    const texts = sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join(" ");
    expect(texts).toContain("customary one: from the middle cable outward, one above, one below [practice]");
    expect(texts).toContain("not computed yet");
  });

  test.each(examples)("%s: the plumb log has a row for its limit and one for every post that cables pull, with its runs", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "tightening-plumb");
    const posts = [...new Set(plan.pulls.map(({ postId }) => postId))];
    expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(["Limit", ...posts]);
    expect(rows[0]?.[3]).toMatchObject({ blank: expect.any(String) });
    for (const [index, post] of posts.entries()) {
      const holding = plan.runs
        .filter(({ left, right, bends }) => [left, right, ...bends].some(({ postId }) => postId === post))
        .map(({ id }) => id);
      expect.soft(cellText(rows[index + 1]?.[1] ?? "")).toBe(holding.join(", "));
    }
  });
});

describe("leansOf", () => {
  // From the sketch of 0002: its deck lies inside a U; both corners turn right, so their posts are pulled towards the deck.
  test("0002: end posts lean to the other posts, corner posts of right turns to the deck", () => {
    const ways = Object.fromEntries(leansOf(examplePlan("0002-deck-two-corners")).map(({ postId, way }) => [postId, way]));
    expect(ways).toEqual({
      P1: "the other posts",
      P3: "the deck",
      P4: "the deck",
      P7: "the deck",
      P8: "the deck",
      P10: "the other posts",
    });
  });
});

describe("spanTable", () => {
  /** "A1 to A8" or "B2": the bays of a row, in their order along the run. */
  function baysIn(run: Run, text: string): readonly string[] {
    const [from = "", to = from] = text.split(" to ");
    const bays = run.spans.map(({ bayId }) => bayId);
    return bays.slice(bays.indexOf(from), bays.indexOf(to) + 1);
  }

  // 12 in = 304.8 mm: corners and pairs of posts.
  test.each(examples)(
    "%s: every span of 12 in or more stands in one row, whose gauge value is the least of its spans at the low end",
    (_, plan) => {
      const { rows } = tableOf(packetOf(plan, "crew"), "tightening-spans");
      const seen = rows.flatMap((row) => {
        const [runId = "", bays = "", , gauge = "", pitch = ""] = row.map(cellText);
        const run = plan.runs.find(({ id }) => id === runId) as Run;
        const spans = baysIn(run, bays).map((bay) => run.spans.find(({ bayId }) => bayId === bay));
        const lows = spans.map((span) => ((span?.tension ?? 0) * run.tension.low) / run.tension.target);
        expect.soft(readForce(gauge), bays).toBeGreaterThanOrEqual(Math.min(...lows) - 1e-6);
        expect.soft(readForce(gauge), bays).toBeLessThan(Math.min(...lows) + forceStep(Math.min(...lows)));
        const [, , low = "", high = ""] = /^([\d.]+) Hz \(([\d.]+) - ([\d.]+)\)$/.exec(pitch) ?? [];
        for (const span of spans) {
          expect.soft(Number(low)).toBeLessThanOrEqual((span?.pitch_Hz.low ?? 0) + 0.5);
          expect.soft(Number(high)).toBeGreaterThanOrEqual((span?.pitch_Hz.high ?? 0) - 0.5);
        }
        return baysIn(run, bays).map((bay) => `${runId} ${bay}`);
      });
      const wanted = plan.runs.flatMap((run) => run.spans.filter(({ free }) => free >= 304.8).map(({ bayId }) => `${run.id} ${bayId}`));
      expect(seen).toEqual(wanted);
    },
  );

  test("0001: eight equal spans make one row, A1 to A8, with whole Hz above 50 Hz", () => {
    const { rows } = tableOf(packetOf(examplePlan("0001-level-deck-straight"), "crew"), "tightening-spans");
    expect(rows.map((row) => row.slice(0, 2).map(cellText))).toEqual([["R1", "A1 to A8"]]);
    expect(cellText(rows[0]?.[4] ?? "")).toMatch(/^\d+ Hz \(\d+ - \d+\)$/);
  });
});

describe("waysToRead", () => {
  test.each(examples)("%s: each way names the range it must cover, and that it is to be asked or tried", (_, plan) => {
    const texts = sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join("\n");
    expect(texts).toMatch(/Gauge\*\*: must read [\d.]+ (lbf|N|kN) to [\d.]+ (lbf|N|kN).*ask before you rent/);
    expect(texts).toMatch(/Pitch\*\*: must hear \d+ - \d+ Hz: try your tuner/);
    expect(texts).toMatch(/Sag\*\*: hang .* It moves .* here/);
  });
});
