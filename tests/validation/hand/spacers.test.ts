// Spacers under the code's load on the infill, worked out by hand from the job files of 0001 and 0005.
import { describe, expect, test } from "vitest";
import type { FrameCheck } from "../../../src/plan/frame-plan.ts";
import { makePlan } from "../../../src/plan/make-plan.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, jobOf, planOf } from "../../support/example-jobs.ts";
import { INCH, LBF } from "../../support/in-plan.ts";

const PSI = LBF / INCH ** 2;

function rowOf({ frame }: Plan, kind: string): FrameCheck {
  const found = frame.checks.find(({ id }) => id.startsWith(`spacer-${kind}-`));
  if (found === undefined) throw new Error(`no row of ${kind}`);
  return found;
}

// 0001: 2x2 spacers that name no wood, so Hem-Fir No.2, treated and cut by knives, wet; 29 in between the rails, nine cables 2.9 in apart, bores of
// 1/4 in; IRC 2021: 50 lbf on 1 ft2. Four cables cross 12 in.
describe("a 2x2 of 29 in", () => {
  const plan = examplePlan("0001-level-deck-straight");

  // Cables 4 to 7 at 11.6, 14.5, 17.4, 20.3 in, 12.5 lbf each: 22.5 lbf at the foot, at cable 5 22.5 x 14.5 - 12.5 x 2.9 = 290 lbf in.
  // On the face it is 50 (2 x 29 - 12) / 8 = 287.5 lbf in. S = 1.5 (1.5^3 - 0.25^3) / (6 x 1.5) = 0.5599 in3: 518 psi.
  // 850 psi x 1.6 (ten minutes) x 0.85 (wet, 850 x 1.5 is above 1150) x 1.5 (size) x 0.8 (incised) = 1387 psi.
  test("bends with 290 lbf in, 518 psi of 1387 psi", () => {
    const { parts, demand, capacity, ratio, verdict } = rowOf(plan, "bending");
    // Heights are drilled on marks of 1/16 in.
    expect((parts.find(({ name }) => name === "M")?.value ?? 0) / LBF / INCH / 290).toBeCloseTo(1, 2);
    expect(demand / PSI / 518).toBeCloseTo(1, 2);
    expect(capacity / PSI).toBeCloseTo(1387, 0);
    expect(ratio).toBeCloseTo(518 / 1387, 2);
    expect(verdict).toBe("pass");
  });

  // 50 (1 - 12 / 58) = 39.66 lbf; 1.5 x 39.66 / (1.5 x 1.25 in2) = 31.7 psi of 150 x 1.6 x 0.97 x 0.8 = 186.2 psi.
  test("is sheared by 39.7 lbf, 31.7 psi of 186 psi, and so much each of its fixings must hold", () => {
    const { demand, capacity } = rowOf(plan, "shear");
    expect(demand / PSI).toBeCloseTo(31.7, 1);
    expect(capacity / PSI).toBeCloseTo(186.2, 1);
    const fixing = rowOf(plan, "fixing");
    expect(fixing.demand / LBF).toBeCloseTo(39.66, 2);
    expect(fixing.verdict).toBe("ask");
  });

  // 50 x 29^3 / (48 x 1.3e6 x 0.9 x 0.95 x 1.5^4 / 12) = 0.0542 in.
  test("gives way by 0.054 in", () => {
    expect(rowOf(plan, "deflection").demand / INCH).toBeCloseTo((50 * 29 ** 3 * 12) / (48 * 1.3e6 * 0.9 * 0.95 * 1.5 ** 4), 6);
  });

  test("a fixing that holds 40 lbf by its report is enough, one of 35 lbf is not", () => {
    const holding = (force: string): FrameCheck =>
      rowOf(
        planOf(
          changedText("0001-level-deck-straight", {
            "  longest free length: 3 ft": `  longest free length: 3 ft\n  fixing capacity: ${force}`,
          }),
        ),
        "fixing",
      );
    expect(holding("40 lbf").verdict).toBe("pass");
    expect(holding("40 lbf").ratio).toBeCloseTo(39.655 / 40, 4);
    expect(holding("35 lbf").verdict).toBe("fail");
    expect(holding("35 lbf").advice).toContain("(spacers: fixing capacity)");
  });

  test("of Southern Pine No.1 it is allowed 1500 x 1.6 x 0.85 psi, not cut and with its size in the table", () => {
    const pine = changedText("0001-level-deck-straight", {
      "  longest free length: 3 ft": "  longest free length: 3 ft\n  species: Southern Pine\n  grade: No.1",
    });
    expect(rowOf(planOf(pine), "bending").capacity / PSI).toBeCloseTo(1500 * 1.6 * 0.85, 0);
  });

  test("a board has no design values: its demand is asked about", () => {
    const board = planOf(changedText("0001-level-deck-straight", { "spacers:\n  size: 2x2": "spacers:\n  size: 1-1/2 in x 3/4 in" }));
    expect(rowOf(board, "ask").verdict).toBe("ask");
    expect(board.frame.checks.filter(({ id }) => /^spacer-(bending|shear)/.test(id))).toEqual([]);
  });
});

// 0005: flat bars of 316, 10 mm along and 40 mm across, 880 mm between the rails; 500 N on 2000 mm2 (AS/NZS 1170.1, from memory), which one
// cable takes. Bores of 8 mm.
describe("a flat bar of 880 mm", () => {
  const plan = examplePlan("0005-steel-balcony");

  test("bends with what the cable nearest to its middle brings, over 10 (40^3 - 8^3) / (6 x 40) mm3, at most 206 / 1.67 MPa", () => {
    const feet = plan.opening.bottom;
    const places = plan.courses.map(({ height }) => height - feet);
    const most = Math.max(...places.map((at) => (500 * at * (880 - at)) / 880));
    const { demand, capacity } = rowOf(plan, "bending");
    expect(demand).toBeCloseTo(Math.max(most, (500 * (2 * 880 - Math.sqrt(2000))) / 8) / ((10 * (40 ** 3 - 8 ** 3)) / 240), 6);
    expect(capacity).toBeCloseTo(206 / 1.67, 6);
  });

  test("each fixing holds 500 (1 - 44.7 / 1760) N", () => {
    expect(rowOf(plan, "fixing").demand).toBeCloseTo(500 * (1 - Math.sqrt(2000) / 1760), 6);
  });

  // 5 x 60 mm: 1.9 x 193,000 x 5^2 / (880 x 60) = 174 MPa, before it yields at 206 MPa.
  test("one of 5 x 60 mm turns over before it yields", () => {
    const thin = planOf(changedText("0005-steel-balcony", { "size: 10 mm x 40 mm ": "size: 5 mm x 60 mm " }));
    const { capacity, factors } = rowOf(thin, "bending");
    const E = (factors.find(({ name }) => name.startsWith("stress"))?.value ?? 0) * ((880 * 60) / (1.9 * 25));
    expect(E).toBeCloseTo(plan.frame.spacers?.modulus.value ?? 0, 3);
    expect(capacity * 1.67).toBeCloseTo((1.9 * E * 25) / (880 * 60), 6);
    expect(capacity).toBeLessThan(206 / 1.67);
  });

  // 109 N m over 5 (20^3 - 8^3) / (6 x 20) = 312 mm3: 349 MPa; over 736 mm3 of 5 x 30 mm 148 MPa; over 1323 mm3 of 5 x 40 mm 82 MPa.
  test("one of 5 x 20 mm fails; with the remedy written into the job file nothing does", () => {
    const weak = { "size: 10 mm x 40 mm ": "size: 5 mm x 20 mm " };
    const failing = planOf(changedText("0005-steel-balcony", weak));
    expect(failing.frame.checks.filter(({ verdict }) => verdict === "fail").map(({ id }) => id)).toEqual(["spacer-bending-S1"]);
    expect(rowOf(failing, "bending").demand).toBeCloseTo(349, -1);
    expect(failing.verdict).toBe("fail");
    expect(failing.frame.remedy?.write).toBe("spacers: size: 5 mm x 40 mm");
    expect(failing.frame.remedy?.change).toBe("spacers of 5 mm x 40 mm bar instead of 5 x 20 mm");
    const held = planOf(changedText("0005-steel-balcony", { "size: 10 mm x 40 mm ": "size: 5 mm x 40 mm " }));
    expect(held.frame.checks.filter(({ verdict }) => verdict === "fail")).toEqual([]);
  });
});

test("a spacer of tube has its wall checked as posts and rails have", () => {
  const tube = planOf(changedText("0005-steel-balcony", { "size: 10 mm x 40 mm ": "size: 40 mm x 40 mm\n  wall: 1 mm " }));
  const wall = tube.frame.checks.find(({ id }) => id === "wall-spacers");
  expect(wall?.parts.find(({ name }) => name === "b")?.value).toBeCloseTo(40 - 2 * 0.93, 9);
});

test("where no load on the infill is known, spacers are in the question about the guard's loads", () => {
  const { value } = makePlan(
    jobOf(changedText("0001-level-deck-straight", { "edition: IRC 2021": "edition: other\n  guard height: 36 in\n  opening: 4 in" })),
  );
  expect(value?.frame.checks.filter(({ id }) => id.startsWith("spacer-"))).toEqual([]);
  expect(value?.frame.checks.find(({ id }) => id === "guard-loads")?.advice).toContain("posts, rails and spacers");
});
