// Does Z-805 say what holds, what fails and why, so that somebody can compute it again?
import { describe, expect, test } from "vitest";
import type { FrameCheck, Remedy } from "../../../src/plan/frame-plan.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { cite, fromMemory } from "../../../src/sources/cited.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { readForce } from "../read-force.ts";
import { cellText, examples, issues, packetOf, sheetOf, tableOf, tablesOf, textsOf } from "../read-packet.ts";

// Made by hand: M / S = 2e6 / 1e5 = 20 MPa; Fb' = 10 x 0.9 x 0.85 = 7.65 MPa; 20 / 7.65 = 2.614.
const failing: FrameCheck = {
  id: "post-cables-P1",
  name: "bending of end posts by the cables",
  member: "P1",
  height: 508,
  loads: "cables alone, at the top of their band on the hardest day",
  demand: 20,
  capacity: 7.65,
  unit: "MPa",
  ratio: 20 / 7.65,
  formula: "fb = M / S <= Fb'",
  parts: [
    { name: "M", value: 2e6, unit: "N mm" },
    { name: "S", value: 1e5, unit: "mm3" },
  ],
  factors: [
    { ...cite(10, "nds-design-values", "table 4A"), name: "Fb" },
    { ...cite(0.9, "nds-2018", "table 2.3.2"), name: "C_D" },
    { ...fromMemory(0.85, "NDS Supplement, table 4A"), name: "C_M" },
  ],
  source: "nds-2018",
  sourceWhere: "3.3.1",
  verdict: "fail",
  advice: "Use a larger post.",
};

const asked: FrameCheck = {
  ...failing,
  id: "base-guard-P1",
  name: "bases of end posts",
  height: 0,
  loads: "cables and single load at the top, square to the guard (IRC 2021, table R301.5)",
  demand: 813_490.769,
  capacity: 0,
  unit: "N mm",
  ratio: 0,
  formula: "M = sqrt(M along^2 + M square^2)",
  // 3-4-5: 488094 and 650793 N mm make 813491 N mm.
  parts: [
    { name: "M along", value: 488_094.461, unit: "N mm" },
    { name: "M square", value: 650_792.615, unit: "N mm" },
    { name: "V", value: 1000, unit: "N" },
  ],
  factors: [],
  source: "derived",
  sourceWhere: "a demand without a capacity",
  verdict: "ask",
  advice: "Compare the demand with the report.",
};

const remedy: Remedy = {
  change: "posts of 6x6 instead of 4x4",
  ratio: 0.731,
  checks: [{ kind: "post-cables", ratio: 0.731 }],
  write: "posts: size: 6x6",
};

const framed = (plan: Plan, checks: readonly FrameCheck[], found: Remedy | null = null): Plan => ({
  ...plan,
  frame: { ...plan.frame, checks, remedy: found },
});

const wood = examplePlan("0001-level-deck-straight");
const steel = examplePlan("0005-steel-balcony");
const weak = framed(wood, [failing, asked], remedy);
const sound = framed(wood, [{ ...failing, demand: 5, ratio: 5 / 7.65, verdict: "pass", advice: "" }, asked]);

const textOf = (plan: Plan, issue: (typeof issues)[number]): string =>
  sheetOf(packetOf(plan, issue), "Z-805").blocks.flatMap(textsOf).join(" ").replaceAll("**", "");
const rowOf = (plan: Plan, id: string, name: string): readonly string[] => {
  const row = tableOf(packetOf(plan, "permit"), id).rows.find(([cell]) => cellText(cell ?? "").startsWith(name));
  if (!row) throw new Error(`no row ${name} in ${id}`);
  return row.map(cellText);
};

describe("frameChecksSheet, for the office and the authority", () => {
  // By hand with 1 psi = 0.00689476 MPa: 20 MPa = 2900.8 psi goes up, 7.65 MPa = 1109.5 psi goes down, to four figures.
  test("the row of a check has member, height, loads, demand rounded up, capacity rounded down, ratio and verdict", () => {
    expect(rowOf(weak, "frame-checks", failing.name)).toEqual([
      failing.name,
      'P1, 20" over the datum',
      failing.loads,
      "2901 psi (20 MPa)",
      "1109 psi (7.65 MPa)",
      "2.62",
      "FAILS",
    ]);
  });

  test("in a job in mm the same row stands in MPa first, its formula in N mm", () => {
    const plan = framed(steel, [failing]);
    expect(rowOf(plan, "frame-checks", failing.name).slice(3, 5)).toEqual(["20 MPa (2901 psi)", "7.65 MPa (1109 psi)"]);
    expect(rowOf(plan, "frame-formulas", failing.name)[1]).toContain("2000000 N mm / 100000 mm3 = 20 MPa (2901 psi)");
  });

  // By hand: 2e6 N mm = 17701 in-lbf, 1e5 mm3 = 6.1024 cu in, 10 MPa = 1450.4 psi.
  test("the formula stands with its numbers, the chain of factors, the capacity and the ratio", () => {
    const [, formula = "", source] = rowOf(weak, "frame-formulas", failing.name);
    expect(formula).toContain("fb = M / S <= Fb': 17700 in-lbf / 6.102 cu in = 2901 psi (20 MPa)");
    expect(formula).toContain("Fb' = Fb 1450 psi x C_D 0.9 x C_M 0.85 = 1109 psi (7.65 MPa)");
    expect(formula).toContain("ratio 2.62");
    expect(source).toBe("[nds-2018] 3.3.1");
  });

  test("a factor stands with its value and its own source, one from memory is marked so", () => {
    const { columns, rows } = tableOf(packetOf(weak, "record"), "frame-factors");
    const texts = columns.flatMap(({ key }, at) =>
      key.startsWith("name")
        ? rows.map((row) =>
            row
              .slice(at, at + 3)
              .map(cellText)
              .join(" | "),
          )
        : [],
    );
    expect(texts.filter((text) => text !== " |  | ")).toEqual([
      "C_D | 0.9 | [nds-2018] table 2.3.2",
      "C_M | 0.85 | [memory] NDS Supplement, table 4A",
      "Fb | 1450 psi | [nds-design-values] table 4A",
    ]);
  });

  // 813490.769 N mm = 7200.00 in-lbf, its parts 4320 and 5760 in-lbf; 1000 N = 224.8 lbf, told as 225.
  test("a base without a capacity has its demand, no ratio, and leaves the capacity to the report of the hardware", () => {
    const [, , , demand, capacity, ratio, verdict] = rowOf(weak, "frame-checks", asked.name);
    expect([demand, capacity, ratio, verdict]).toEqual(["7200 in-lbf (813.5 N m)", "by the hardware's own report", "-", "ask"]);
    const [, formula] = rowOf(weak, "frame-formulas", asked.name);
    expect(formula).toContain("sqrt((4320 in-lbf)^2 + (5760 in-lbf)^2) = 7200 in-lbf (813.5 N m); V = 225 lbf.");
    expect(formula).not.toContain("ratio");
  });

  test("a member that buckles first has no number as its demand, and a ratio over 99", () => {
    const plan = framed(wood, [{ ...failing, unit: "1", demand: 99, capacity: 1, ratio: 99, formula: "sum <= 1", factors: [] }]);
    expect(rowOf(plan, "frame-checks", failing.name).slice(3, 6)).toEqual(["it buckles", "1", "over 99"]);
    expect(rowOf(plan, "frame-formulas", failing.name)[1]).toContain("it buckles first");
  });

  test.each(examples)("%s: every check stands once with its verdict, and those that pass have a ratio of at most 1", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "permit"), "frame-checks");
    expect(rows.map(([name]) => cellText(name ?? ""))).toEqual(plan.frame.checks.map(({ name }) => name));
    for (const row of rows.map((cells) => cells.map(cellText))) {
      const [ratio = "", verdict] = row.slice(5);
      if (verdict === "passes") expect.soft(Number(ratio), row.join(" ")).toBeLessThanOrEqual(1);
      if (verdict === "FAILS" && ratio !== "over 99") expect.soft(Number(ratio), row.join(" ")).toBeGreaterThan(1);
    }
  });

  // A reader with a pocket calculator: 1 in-lbf over 1 cu in is 1 psi, 1 N mm over 1 mm3 is 1 MPa.
  test.each(examples)("%s: M / S as printed gives the printed stress, the printed chain the printed capacity", (_, plan) => {
    const texts = tableOf(packetOf(plan, "permit"), "frame-formulas").rows.map((row) => cellText(row[1] ?? ""));
    const bending = texts.filter((text) => text.startsWith("fb = M / S"));
    expect(bending.length).toBeGreaterThan(0);
    for (const text of bending) {
      const [, M = "", S = "", f = ""] = /: ([\d.]+) (?:in-lbf|N mm) \/ ([\d.]+) (?:cu in|mm3) = ([\d.]+)/.exec(text) ?? [];
      // Three figures of the stress: half of one in a hundred.
      expect.soft(Math.abs(Number(M) / Number(S) / Number(f) - 1), text).toBeLessThan(0.006);
      const [, chain = "", capacity = ""] = /Fb' = (Fb .*?) = ([\d.]+)/.exec(text) ?? [];
      const numbers = [...chain.matchAll(/ ([\d.]+)/g)].map(([, digits = ""]) => Number(digits));
      if (chain !== "") {
        const product = numbers.reduce((sum, number) => sum * number, 1);
        expect.soft(Math.abs(product / Number(capacity) - 1), text).toBeLessThan(0.006);
      }
    }
  });

  test.each(examples)("%s: what was taken as given stands with sources: members, base, joint, loads, limits", (_, plan) => {
    const rows = tableOf(packetOf(plan, "permit"), "frame-inputs").rows.map((row) => row.map(cellText));
    const names = rows.map(([name]) => name);
    for (const name of ["Posts", "Posts: E", "Top rail", "Base of a post", "Joint of rails and posts", "Loads together", "Strand, E A"]) {
      expect.soft(names).toContain(name);
    }
    expect(names.includes("Posts: Emin")).toBe(plan.frame.posts.modulus_min !== null);
    expect(names.includes("Cables last")).toBe(plan.job.posts.wood !== null || plan.job.frame.topRail.wood !== null);
    expect(rows.filter(([, , source = ""]) => !/^\[[a-z0-9-]+\]/.test(source))).toEqual([]);
  });

  test.each(examples)("%s: each run has its window, the needs add up to the least reading", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "permit"), "frame-windows");
    expect(rows.map(([run]) => cellText(run ?? ""))).toEqual(plan.frame.windows.map(({ runId }) => runId));
    for (const cells of rows.map((row) => row.map(cellText))) {
      const parts = (cells[2] ?? "").split(" + ").map(readForce);
      const low = readForce(cells[1] ?? "");
      expect.soft(Math.abs(parts.reduce((sum, part) => sum + part, 0) / low - 1), cells.join(" ")).toBeLessThan(0.02);
    }
  });

  test("a window that nothing fits into says so", () => {
    const [window] = wood.frame.windows;
    if (!window) throw new Error("no window");
    const plan: Plan = { ...wood, frame: { ...sound.frame, windows: [{ ...window, low: 2000, high: 1500 }] } };
    expect(textOf(plan, "permit")).toMatch(/R1: no reading does both\. 450 lbf are needed, 337 lbf allowed/);
  });
});

describe("frameChecksSheet, for all", () => {
  test("each issue has the sheet; a frame that fails is a danger with its remedy and what to write, one that holds is not", () => {
    for (const issue of issues) {
      const [box] = sheetOf(packetOf(weak, issue), "Z-805").blocks.filter(({ kind }) => kind === "caution");
      expect.soft(box?.kind === "caution" ? box.level : "").toBe("danger");
      const text = textOf(weak, issue);
      expect.soft(text).toContain("The frame FAILS: 1 of 1 check.");
      expect.soft(text).toContain("posts of 6x6 instead of 4x4");
      expect.soft(text).toMatch(/highest ratio of what fails now is then 0\.74\b/);
      expect.soft(text).toContain("Write in the job file: posts: size: 6x6.");
      expect.soft(textOf(sound, issue)).not.toMatch(/FAILS|Write in the job file/);
      expect.soft(textOf(sound, issue)).toMatch(/No check of the frame fails \(1 made\)/);
    }
  });

  test("without a remedy an engineer must design the frame", () =>
    expect(textOf(framed(wood, [failing]), "crew")).toMatch(
      /No change that was tried, alone or with others, makes the frame hold: a licensed engineer/,
    ));

  test("whether it holds or not, it is called computed, and left to the engineer and the authority", () => {
    for (const plan of [weak, sound]) {
      for (const issue of issues) {
        expect.soft(textOf(plan, issue)).toContain("Computed, not tested.");
        expect
          .soft(textOf(plan, issue))
          .toContain("The authority having jurisdiction decides. A licensed engineer decides about the frame.");
      }
    }
  });

  // 7200 in lb and 200 lb at the datum: bolts 2 and 7 in below it take (7200 + 200 x 7) / 5 = 1720 lb and (7200 + 200 x 2) / 5 = 1520 lb, not
  // 720 lb each as a couple over 10 in says.
  test.each(examples)("%s: a force in bolts is never printed without what it leaves out: their distance and the shear", (_, plan) => {
    for (const issue of issues) {
      const words = sheetOf(packetOf(plan, issue), "Z-805").blocks.flatMap(textsOf).join("\n");
      const told = /Force in bolts: of the moment alone.*Half as far apart they take twice as much, .*the whole shear/.test(words);
      expect.soft(told, issue).toBe(words.includes("force in each of two bolts"));
    }
  });

  test("those who build see what fails and the demands of bases, neither formulas nor rows that pass", () => {
    for (const issue of ["crew", "homeowner"] as const) {
      const ids = tablesOf(sheetOf(packetOf(weak, issue), "Z-805").blocks).map(({ id }) => id);
      expect.soft(ids).toEqual(["frame-bases"]);
      expect
        .soft(textOf(weak, issue))
        .toContain('FAILS: bending of end posts by the cables (P1, 20" over the datum): 2910 psi against 1100 psi, ratio 2.62');
    }
  });

  test("a post pulled alike from both sides has no stress, not the dust that is left rounded up", () => {
    const even = framed(wood, [{ ...failing, demand: 1e-5, ratio: 1e-6, verdict: "pass", advice: "" }]);
    const demands = tableOf(packetOf(even, "permit"), "frame-checks").rows.map((row) => cellText(row[3] ?? ""));
    expect(demands).toEqual(["none"]);
  });

  test.each(examples)("%s: every post has its moment and shear at the base, never too small", (_, plan) => {
    const answers = plan.frame.sides.flatMap(({ posts }) => posts);
    const { rows } = tableOf(packetOf(plan, "permit"), "frame-posts");
    expect(rows.length).toBe(answers.length);
    for (const [index, row] of rows.entries()) {
      const cells = row.map(cellText);
      const answer = answers[index];
      expect.soft(cells[0]?.split(" ")[0]).toBe(answer?.postId);
      if (cells[4] !== "none") expect.soft(readForce(cells[4] ?? "")).toBeGreaterThanOrEqual(Math.abs(answer?.baseShear ?? 0) * (1 - 1e-9));
      // Both stand in the same units as the job.
      const moment = /^([\d.]+) (in-lbf|N m)/.exec(cells[3] ?? "");
      const size = Number(moment?.[1] ?? 0) * (moment?.[2] === "in-lbf" ? 112.98482902761668 : 1000);
      expect.soft(size + 1000).toBeGreaterThan(Math.abs(answer?.baseMoment_Nmm ?? 0));
    }
    const grouped = tableOf(packetOf(plan, "crew"), "frame-bases").rows.flatMap(([posts]) => cellText(posts ?? "").match(/PR?\d+/g) ?? []);
    expect([...grouped].sort()).toEqual([...new Set(answers.map(({ postId }) => postId))].sort());
    const most = Math.max(...answers.map(({ baseShear }) => Math.abs(baseShear)));
    const shears = tableOf(packetOf(plan, "crew"), "frame-bases").rows.map((row) => cellText(row[2] ?? ""));
    expect(Math.max(...shears.filter((text) => !text.startsWith("none")).map(readForce))).toBeGreaterThanOrEqual(most * (1 - 1e-9));
  });
});
