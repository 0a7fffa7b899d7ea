import { describe, expect, test } from "vitest";
import { loadsOf } from "../../src/plan/frame-check-loads.ts";
import { CABLES_ALONE } from "../../src/plan/frame-check-row.ts";
import { checkFrame, tensionShare } from "../../src/plan/frame-checks.ts";
import type { FrameCheck } from "../../src/plan/frame-plan.ts";
import { changedText, exampleNames, exampleText, jobOf } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";
import { twoPosts } from "../support/two-posts.ts";

const STRAIGHT = "rule-of-thumb";

function checksOf(name: string, changes: Readonly<Record<string, string>> = {}): readonly FrameCheck[] {
  const job = jobOf(changedText(name, changes));
  const { plan, groups } = framesOf(job);
  return checkFrame({ ...plan, groups, job });
}

function row(checks: readonly FrameCheck[], start: string): FrameCheck {
  const found = checks.find(({ id }) => id.startsWith(start));
  if (found === undefined) throw new Error(`no row ${start} among ${checks.map(({ id }) => id).join(", ")}`);
  return found;
}

const part = (check: FrameCheck, name: string): number => check.parts.find((one) => one.name === name)?.value ?? Number.NaN;

/** 1000 N at half of 900 mm: by the beam tables of a propped cantilever 3 P L / 16 at the base, 5 P L / 32 at the load, prop 5 P / 16. */
function twoPostChecks(changes: Readonly<Record<string, string>> = {}, tension = 1000): readonly FrameCheck[] {
  const job = jobOf(changedText(STRAIGHT, changes));
  return checkFrame(twoPosts(framesOf(job).plan, job, { tension, height: 900, spacing: 1500 }));
}

describe("checkFrame against hand calculations", () => {
  test("a 4x4 of Southern Pine No.2: M = 3 x 1000 x 900 / 16 = 168,750 N mm at the base, Fb' = 1100 x 0.9 = 990 psi (NDS 4.3.1)", () => {
    const bending = row(
      twoPostChecks({ "  existing: false": "  existing: false\n  species: Southern Pine\n  grade: No.2" }),
      "post-cables",
    );
    expect(part(bending, "M")).toBeCloseTo(168_750, 0);
    // S = 88.9^3 / 6; wet service takes nothing from 1100 psi, which is below 1150 psi.
    expect(bending.demand).toBeCloseTo(168_750 / (88.9 ** 3 / 6), 3);
    expect(bending.capacity).toBeCloseTo(990 * 0.006894757, 3);
    expect(bending.height).toBe(0);
    expect(bending.factors.map(({ name }) => name)).toEqual(["Fb", "C_D", "C_M", "C_t", "C_F", "C_fu", "C_i", "C_r", "C_L"]);
  });

  test("a 4x4 of Hem-Fir No.2, incised and wet: Fb' = 850 x 0.9 x 0.85 x 1.5 x 0.8 = 780.3 psi", () => {
    expect(row(twoPostChecks(), "post-cables").capacity).toBeCloseTo(780.3 * 0.006894757, 3);
  });

  test("200 lbf square to the guard at 36 in add 889.6 x 914.4 = 813,464 N mm across the post at C_D 1.6", () => {
    const loaded = row(twoPostChecks(), "post-guard");
    const section = 88.9 ** 3 / 6;
    const allowed = ((780.3 * 1.6) / 0.9) * 0.006894757;
    expect(part(loaded, "M square")).toBeCloseTo(889.644 * 914.4, -1);
    expect(loaded.ratio).toBeCloseTo((168_750 + 889.644 * 914.4) / section / allowed, 3);
  });

  test("shear at the base: 11/16 of 1000 N, fv = 1.5 x 687.5 / 88.9^2, net of a 5/16 in bore at the bore", () => {
    const shear = row(twoPostChecks(), "post-shear");
    // Cables alone: 687.5 N through (88.9 - 7.9375) x 88.9 mm2; with 889.6 N square to it at 1.6 / 0.9 of the stress.
    const net = (88.9 - 7.9375) * 88.9;
    const Fv = 150 * 0.97 * 0.8 * 0.006894757;
    const [alone, loaded] = [(1.5 * 687.5) / net / (0.9 * Fv), (1.5 * Math.hypot(687.5, 889.644)) / net / (1.6 * Fv)];
    expect(shear.ratio).toBeCloseTo(Math.max(alone, loaded), 3);
  });

  test("a 2x6 laid flat over 1500 mm, pressed by the prop of 312.5 N: le/d = 39.4, C_P = 0.243, Fc' = 200 psi", () => {
    const rail = row(twoPostChecks(), "top-rail-cables");
    // NDS 3.7.1 by hand: Fc* = 1300 x 0.9 x 0.8 x 1.1 x 0.8 = 823.7 psi, Emin' = 470,000 x 0.9 x 0.95, FcE = 0.822 Emin' / (1500/38.1)^2 = 213.1 psi.
    expect(rail.demand).toBeCloseTo(312.5 / (38.1 * 139.7), 5);
    expect(rail.capacity / 0.006894757).toBeCloseTo(200.3, 0);
    expect(rail.factors.at(-1)).toMatchObject({ name: "C_P" });
    expect(rail.factors.at(-1)?.value).toBeCloseTo(0.2431, 3);
  });

  test("the same rail with 200 lbf down at mid-span: M = P L / 4, 0.0017 + 0.880 / (1 - 0.040) = 0.92 (NDS 3.9.2)", () => {
    const rail = row(twoPostChecks(), "top-rail-guard");
    expect(part(rail, "M upright")).toBeCloseTo((889.644 * 1500) / 4, -1);
    // Fb' = 850 x 1.6 x 1.3 x 1.15 x 0.8 = 1626.6 psi: C_M is 1 since 850 x 1.3 is below 1150 psi.
    expect(part(rail, "Fb' upright") / 0.006894757).toBeCloseTo(1626.6, 0);
    expect(rail.ratio).toBeCloseTo(0.9185, 2);
  });

  test("a steel tube of 2 x 2 x 1/8 in: 168,750 N mm over 7.96e3 mm3 of the metric table against 46 ksi / 1.67", () => {
    const tube = {
      "size: 4x4": "size: 2 in x 2 in\n  wall: 1/8 in",
      "  material: wood\n  treated: true\n  existing": "  material: steel\n  existing",
    };
    const bending = row(twoPostChecks(tube), "post-cables");
    // The table's walls have corners of another radius: within 1 %.
    expect(Math.abs(bending.demand / (168_750 / 7960) - 1)).toBeLessThan(0.01);
    expect(bending.capacity).toBeCloseTo((46 / 1.67) * 6.894757, 2);
    // b/t = 50.8 less two walls over 0.93 x 3.175, limit 1.4 sqrt(29000/46).
    expect(row(twoPostChecks(tube), "wall-posts").demand).toBeCloseTo(50.8 / (0.93 * 3.175) - 2, 3);
    expect(row(twoPostChecks(tube), "wall-posts").capacity).toBeCloseTo(35.15, 1);
  });

  test("a post under 200 lbf at 36 in moves by P h^3 / (3 E I) and by P h^2 / k on a base of 25 kN m per radian", () => {
    const deflected = row(twoPostChecks(), "post-deflection");
    const [P, h, I] = [889.644, 914.4, 88.9 ** 4 / 12];
    const E = 1.3e6 * 0.9 * 0.95 * 0.006894757;
    expect(deflected.demand).toBeCloseTo((P * h ** 3) / (3 * E * I) + (P * h ** 2) / 25e6, 1);
    expect(deflected.capacity).toBeCloseTo(914.4 / 24, 3);
  });

  test("the base must hold both moments together, and two bolts in 10 in below the datum at least that over 254 mm", () => {
    const base = row(twoPostChecks(), "base-guard");
    const moment = Math.hypot(168_750, 889.644 * 914.4);
    expect(base.verdict).toBe("ask");
    expect(base.demand).toBeCloseTo(moment, -1);
    expect(base.parts.at(-1)?.value).toBeCloseTo(moment / 254, 0);
  });
});

describe("checkFrame: laws", () => {
  const alone = (checks: readonly FrameCheck[]): readonly FrameCheck[] =>
    checks.filter(({ loads, unit }) => loads === CABLES_ALONE && unit !== "1");

  test("twice the tension makes twice the ratio of every row of plain bending, shear, thrust and movement under the cables", () => {
    const [one, two] = [twoPostChecks(), twoPostChecks({}, 2000)].map(alone);
    expect(one?.length).toBeGreaterThan(2);
    for (const check of one ?? []) expect(row(two ?? [], check.id).ratio / check.ratio).toBeCloseTo(2, 9);
  });

  test("a 4x6 is bent less than a 4x4 of the same wood, and a 6x4 less than both along the side", () => {
    const ratios = ["4x4", "4x6", "6x4"].map((size) => row(twoPostChecks({ "size: 4x4": `size: ${size}` }), "post-cables").ratio);
    expect(ratios[1]).toBeLessThan(ratios[0] ?? 0);
    expect(ratios[2]).toBeLessThan(ratios[1] ?? 0);
  });

  test("cables alone are weighed at C_D 0.9, with a guard load at 1.6", () => {
    const checks = twoPostChecks();
    const duration = (start: string) => row(checks, start).factors.find(({ name }) => name === "C_D")?.value;
    expect([duration("post-cables"), duration("post-guard"), duration("top-rail-guard")]).toEqual([0.9, 1.6, 1.6]);
  });

  test("a corner post that a run turns by 30 degrees is bent square to its side, and not at its top, which is hinged", () => {
    const job = jobOf(exampleText("boardwalk-6ft"));
    const { plan, groups } = framesOf(job);
    const corners = loadsOf({ ...plan, groups, job }).posts.filter(({ post }) => post.role === "corner");
    expect(corners).toHaveLength(2);
    for (const { places } of corners) {
      const largest = Math.max(...places.map(({ moment }) => moment.y));
      const top = places.reduce((highest, one) => (one.height > highest.height ? one : highest));
      expect(largest).toBeGreaterThan(0);
      expect(top.moment.y).toBeLessThan(1e-6 * largest);
    }
  });

  test("what the coldest day adds at each cable is pulled with too: 100 N more at 1000 N bend a post by a tenth more", () => {
    const job = jobOf(exampleText(STRAIGHT));
    const guard = twoPosts(framesOf(job).plan, job, { tension: 1000, height: 900, spacing: 1500 });
    const cold = guard.runs.map(({ id }) => ({
      runId: id,
      hardest: { each: [100], worst: 100, temperature: -10 },
    })) as unknown as typeof guard.climate;
    const [mild, hard] = [alone(checkFrame(guard)), alone(checkFrame({ ...guard, climate: cold }))];
    for (const check of mild) expect(row(hard, check.id).ratio / check.ratio).toBeCloseTo(1.1, 9);
  });

  test("lengths of top rail that load the posts of a side sum up to the side", () => {
    const job = jobOf(exampleText("two-corners-4x4"));
    const { plan, groups } = framesOf(job);
    const { posts } = loadsOf({ ...plan, groups, job });
    for (const side of plan.sides) {
      const own = posts.filter(({ post }) => post.sideId === side.id);
      expect(own.reduce((sum, { tributary }) => sum + tributary, 0)).toBeCloseTo(side.length, 6);
    }
  });
});

describe.each(exampleNames)("checkFrame of %s", (name) => {
  const job = jobOf(exampleText(name));
  const { plan, groups } = framesOf(job);
  const checks = checkFrame({ ...plan, groups, job });

  test("gives each row once, with finite numbers, advice where it fails, and no capacity where it asks", () => {
    expect(checks.length).toBeGreaterThan(10);
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
    for (const check of checks) {
      for (const value of [check.demand, check.capacity, check.ratio, ...check.parts.map((one) => one.value)])
        expect(Number.isFinite(value), `${check.id} ${JSON.stringify(check)}`).toBe(true);
      expect(check.verdict).toBe(check.capacity === 0 ? "ask" : check.ratio <= 1 ? "pass" : "fail");
      expect(check.advice === "").toBe(check.verdict === "pass");
    }
  });

  test("demand over capacity is the ratio, unless the member buckles first", () => {
    for (const { demand, capacity, ratio } of checks) if (capacity > 0) expect(demand / capacity).toBeCloseTo(ratio, 9);
  });

  test("at the tensions that tensionShare allows the worst row of the cables alone is 1", () => {
    const bound = tensionShare(checks);
    expect(bound).not.toBeNull();
    const share = bound?.share ?? 0;
    const runs = plan.runs.map((run) => ({ ...run, tension: { ...run.tension, high: share * run.tension.high } }));
    const climate = plan.climate.map((one) => ({
      ...one,
      hardest: { ...one.hardest, each: one.hardest.each.map((added) => share * added) },
    }));
    const scaled = checkFrame({ ...plan, runs, climate, groups, job }).filter(({ loads, unit }) => loads === CABLES_ALONE && unit !== "mm");
    expect(Math.max(...scaled.map(({ ratio }) => ratio))).toBeCloseTo(1, 4);
  });
});

describe("checkFrame: what nobody here can answer", () => {
  test("an edition without rules: cables alone are checked, and the loads on the top are a question", () => {
    const checks = checksOf(STRAIGHT, {
      "edition: IRC 2021": "edition: other\n  guard height: 36 in\n  opening: 4 in",
    });
    expect(row(checks, "guard-loads").verdict).toBe("ask");
    expect(checks.filter(({ id }) => id.includes("guard-P") || id.includes("deflection"))).toEqual([]);
    expect(row(checks, "post-cables").ratio).toBeGreaterThan(0);
  });

  test("a top rail of 5/4x6 has no design values: the moment is printed and asked about", () => {
    const rail = row(checksOf(STRAIGHT, { "size: 2x6, lay: flat": "size: 5/4x6, lay: flat" }), "top-rail-ask");
    expect(rail).toMatchObject({ verdict: "ask", ratio: 0, unit: "N mm" });
    expect(rail.demand).toBeCloseTo((889.644 * part(rail, "L")) / 4, -1);
  });

  test("a bottom rail of a board has no load of the code: its thrust is asked about", () => {
    const rail = row(checksOf(STRAIGHT, { "size: 2x4, lay: edge": "size: 1x4, lay: edge" }), "bottom-rail-ask");
    expect(rail).toMatchObject({ verdict: "ask", unit: "N" });
    expect(rail.demand).toBeGreaterThan(0);
  });

  test("6x6 posts of redwood have no row in the tables: their moment is asked about", () => {
    const checks = checksOf(STRAIGHT, { "size: 4x4": "size: 6x6\n  species: Redwood\n  grade: No.2" });
    expect(row(checks, "post-ask")).toMatchObject({ verdict: "ask", unit: "N mm" });
    expect(checks.some(({ id }) => id.startsWith("post-shear"))).toBe(false);
  });
});

describe("checkFrame: further rows", () => {
  test("a 2x6 laid flat over posts 8 ft apart is slenderer than 50 and fails by its shape, which no tension changes", () => {
    const rail = row(checksOf(STRAIGHT, { "largest spacing: 6 ft": "largest spacing: 8 ft" }), "top-rail-cables");
    expect(rail.formula).toBe("le / d <= 50");
    expect(rail.loads).not.toBe(CABLES_ALONE);
    expect(rail.verdict).toBe("fail");
  });

  test("a rail that the thrust buckles before anybody leans on it says so, and has a ratio that can be printed", () => {
    const rail = row(checksOf(STRAIGHT), "top-rail-guard");
    expect(rail.ratio).toBe(99);
    expect(rail.advice).toContain("buckles");
  });

  test("a base that holds 100 lbf at 36 in by its report fails under 200 lbf at the top", () => {
    const base = row(
      checksOf(STRAIGHT, { "  existing: false": "  existing: false\n  base capacity: { pull: 100 lbf, height: 36 in }" }),
      "base-guard",
    );
    expect(base.capacity).toBeCloseTo(444.822 * 914.4, -1);
    expect(base.verdict).toBe("fail");
  });

  test("with IBC 2021 and posts 6 ft apart the line load of 50 lbf/ft governs the line posts: more than 200 lbf on each", () => {
    const post = row(checksOf("boardwalk-6ft"), "post-deflection");
    expect(part(post, "P")).toBeGreaterThan(889.7);
    expect(post.loads).toContain("line load");
  });

  test("solid steel bars carry shear on two thirds of their net area and have no walls to check", () => {
    const checks = checksOf("steel-too-long", { "  wall: 3 mm\n  material: steel\n  existing": "  material: steel\n  existing" });
    expect(row(checks, "post-shear").ratio).toBeLessThan(0.1);
    expect(checks.some(({ id }) => id === "wall-posts")).toBe(false);
  });
});

describe("tensionShare", () => {
  test("has no bound where nothing is under the cables alone", () => {
    expect(tensionShare([])).toBeNull();
  });
});
