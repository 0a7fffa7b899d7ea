// What wood bears where a cable bends, worked out by hand in pounds and inches. Values of wood: NDS Supplement, table 4D (posts and
// timbers, as remembered in src/tables/timber-strength.ts): Southern Pine No.1, across the grain 375 psi, wet or dry; Douglas Fir-Larch
// No.1, 625 psi across and 1000 psi along the grain, wet 0.67 and 0.91, permanent load 0.9. Formulas: NDS 2018, eq. 3.10-1 (from memory),
// and equilibrium of what lies in the bore.
import { describe, expect, test } from "vitest";
import { hardestPull } from "../../../src/plan/check-tension.ts";
import type { Check, Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";

const N_PER_LBF = 4.4482216152605;
const rowOf = ({ checks }: Plan, id: string): Check => {
  const row = checks.find((one) => one.id === id);
  if (row === undefined) throw new Error(`no row ${id}`);
  return row;
};
const limitOf = (plan: Plan, id: string): number => (rowOf(plan, id).limit?.value ?? 0) / N_PER_LBF;
const pullOf = (plan: Plan, runId: string): number => {
  const run = plan.runs.find(({ id }) => id === runId);
  if (run === undefined) throw new Error(`no run ${runId}`);
  return hardestPull(plan, run);
};

const CORNERS = "0002-deck-two-corners";
const TUBE = / {2}bushing bore: .*\n {2}bushing: .*\n/;
const withoutTube = planOf(changedText(CORNERS, { [TUBE.exec(changedText(CORNERS, {}))?.[0] ?? "no tube"]: "" }));

describe("a corner of two posts", () => {
  // Half of 90 deg at each post: 2 sin(22.5 deg) = 0.76537; the first bend behind the nut has its whole pull.
  test("pushes with 0.765 of the pull at the nut", () => {
    const plan = examplePlan(CORNERS);
    expect(rowOf(plan, "bend-R1").demand?.value).toBeCloseTo(0.7653668647 * pullOf(plan, "R1"), 6);
  });

  // 375 psi x 1/4 in x 3/8 in = 35.16 lbf if it pressed evenly; sqrt(2) - 1 of it, as it is loaded at its mouth: 14.56 lbf.
  test("a bushing of 1/4 in, 3/8 in long, may press with 14.56 lbf: far less than the cable does", () => {
    expect(limitOf(withoutTube, "bend-R1")).toBeCloseTo(14.56, 2);
    expect(rowOf(withoutTube, "bend-R1")).toMatchObject({ verdict: "ask", where: "P4, R1" });
    expect(rowOf(withoutTube, "bend-R1").ratio).toBeGreaterThan(20);
  });

  // In mm: tube 15.875 x 0.93 x 1.984 = 1.845 wall, inside 12.185; S = pi (15.875^4 - 12.185^4) / (32 x 15.875) = 256.5 mm3; at
  // 206 / 1.67 MPa it takes 31 640 N mm. Wood 2.5855 MPa: straight 0.41421 x 2.5855 x 15.875 x 139.7 = 2375 N, bent
  // sqrt(2 x 2.5855 x 15.875 x 31 640) = 1612 N.
  test("a tube of 5/8 in x 5/64 in right through a 6x6 bends first, at 1612 N", () => {
    expect(rowOf(examplePlan(CORNERS), "bend-R1").limit?.value).toBeCloseTo(1611.6, 1);
    expect(rowOf(examplePlan(CORNERS), "bend-R1").verdict).toBe("pass");
  });
});

describe("one post at a corner, on the mitre", () => {
  // Both ends of a tube are cut at 45 deg, and the cable presses to the arris that the bore cuts off: to the shorter side, which begins
  // sqrt(r^2 - z^2) deep at z off the middle. In mm, about the middle of the mouth: 5/8 in x 5/64 in takes 31 640 N mm (above), so shear is
  // nothing at sqrt(2 x 31 640 / (2.5855 x 15.875) + 15.875^2 / 6) = 39.80, of which pi x 15.875 / 8 = 6.23 bear nothing:
  // 2.5855 x 15.875 x 33.56 = 1378 N.
  // Chord 5.5 in / sqrt(2) = 98.783: loaded at both mouths one of 3/4 in presses evenly over 98.783 - pi x 19.05 / 4 = 83.821,
  // 2.5855 x 19.05 x 83.821 / 2 = 2064 N at each; x 1/8 in it would bend at 2185 N.
  test("its tube of 5/8 in x 5/64 in bends first, at 1378 N; one of 3/4 in x 1/8 in stays straight up to 2064 N", () => {
    expect(rowOf(examplePlan("0014-corners-of-one-post"), "bend-R1").limit?.value).toBeCloseTo(1377.5, 1);
    const thick = planOf(
      changedText("0014-corners-of-one-post", {
        "tube wall: 5/64 in": "tube wall: 1/8 in",
        "bushing bore: 5/8 in": "bushing bore: 3/4 in",
      }),
    );
    expect(rowOf(thick, "bend-R1").limit?.value).toBeCloseTo(2064.3, 1);
  });

  // With 1/16 in: 220.3 mm3, 27 179 N mm, 36.97 - 6.23 = 30.73: 1261 N. Square ends would have borne 1494 N, and the cable presses with 1281 N.
  test("a wall of 1/16 in, which square ends would have made enough, is asked about", () => {
    const thin = planOf(
      changedText("0014-corners-of-one-post", { "tube wall: 5/64 in": "tube wall: 1/16 in", "force: 9 lbf": "force: 10 lbf" }),
    );
    expect(rowOf(thin, "bend-R1").limit?.value).toBeCloseTo(1261.3, 1);
    expect(rowOf(thin, "bend-R1")).toMatchObject({ verdict: "ask", where: "P4, R1" });
    expect(rowOf(thin, "bend-R1").sourceWhere).toContain("the cable presses on its shorter side");
  });
});

describe("where the slope changes, from the landing to the stair", () => {
  // Between the posts the cable falls 1 in on 3 (18.435 deg), on the stair 2 on 3 (33.690 deg): at P4 it bends by 15.255 deg and presses
  // 26.0625 deg from plumb. Along the grain 1000 x 0.9 x 0.91 = 819 psi, across 625 x 0.67 = 418.75 psi:
  // 819 x 418.75 / (819 x 0.19303 + 418.75 x 0.80697) = 691.4 psi. On 1/2 in x 1 in, 0.41421 of it: 143.2 lbf.
  test("wood at P4 bears 691.4 psi in the way of the push, so 143.2 lbf under a bushing of 1/2 in x 1 in", () => {
    const plan = examplePlan("0012-stair-from-landing");
    expect(rowOf(plan, "bend-R1").where).toBe("P4, R1");
    expect(limitOf(plan, "bend-R1")).toBeCloseTo(143.2, 1);
    expect(rowOf(plan, "bend-R1").demand?.value).toBeCloseTo(2 * Math.sin((15.25511870305778 * Math.PI) / 360) * pullOf(plan, "R1"), 4);
  });
});
