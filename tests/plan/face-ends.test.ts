// Ends on the faces of posts: which end pulls, where the holes lie, how long the cables are, and whether the fastening holds.
import { describe, expect, test } from "vitest";
import { explain } from "../../src/explain/explain.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, examplePlan, jobOf, planOf } from "../support/example-jobs.ts";
import { checkOf, endsOf, INCH, LBF } from "../support/in-plan.ts";

const NAME = "0015-ends-on-faces";
const plan = examplePlan(NAME);

describe("the ends of 0015", () => {
  test("stand on the face where nothing reaches the back, and on both faces where two runs meet; the other ends pull", () => {
    expect(endsOf(plan)).toEqual([
      ["P1 face false", "P4 stud true"],
      ["P5 stud true", "P9 face false"],
      ["P9 face false", "P13 stud true"],
    ]);
  });

  test("a cable counts from the face that it comes to", () => {
    // P1 stands at 4 in, P4 at 134-3/4 in: from P1's right face at 6-3/4 in to P4's right face at 137-1/2 in.
    expect(plan.runs[0]?.pathLength).toBeCloseTo(130.75 * INCH, 6);
    // P9 at 14 ft 10-3/4 in of side B: from the outer face of P5 at 0 to the left face of P9.
    expect(plan.runs[1]?.pathLength).toBeCloseTo((178.75 - 2.75) * INCH, 6);
  });

  test("are blind holes from the face of the cable, as deep as the screw", () => {
    const own = plan.bores.filter(({ through }) => !through);
    expect(new Set(own.map(({ verticalId, entryFace }) => `${verticalId} ${entryFace}`))).toEqual(
      new Set(["P1 right", "P9 left", "P9 right"]),
    );
    expect(own.length).toBe(3 * plan.courses.length);
    for (const { diameter, drilledLength, offset, kind } of own) {
      expect([kind, offset]).toEqual(["face end", 0]);
      expect(diameter).toBeCloseTo((13 / 64) * INCH, 9);
      expect(drilledLength).toBeCloseTo(2.375 * INCH, 9);
    }
  });

  test("hold by NDS 12.2.1 with a tip that holds nothing: 1800 x 0.55^1.5 x (5/16)^0.75 x 1-15/16 x 0.9 x 0.7 = 374.6 lbf", () => {
    const { limit, verdict } = checkOf(plan, "face-hold-R1-P1");
    const byHand = 1800 * 0.55 ** 1.5 * 0.3125 ** 0.75 * 1.9375 * 0.9 * 0.7;
    expect(byHand).toBeCloseTo(374.6, 1);
    expect((limit?.value ?? 0) / LBF).toBeCloseTo(byHand, 6);
    expect(verdict).toBe("pass");
  });

  test("hold somebody who leans on the cable by the same rule for ten minutes: 374.6 lbf x 1.6 / 0.9 = 666 lbf, and by the rating", () => {
    const [brief, rated] = [checkOf(plan, "face-brief-R1-P1"), checkOf(plan, "face-infill-R1-P1")];
    expect((brief.limit?.value ?? 0) / LBF).toBeCloseTo(1800 * 0.55 ** 1.5 * 0.3125 ** 0.75 * 1.9375 * 1.6 * 0.7, 6);
    expect((brief.limit?.value ?? 0) / LBF).toBeCloseTo(666, 0);
    expect((rated.limit?.value ?? 0) / LBF).toBeCloseTo(600, 6);
    // As the strand is checked.
    for (const { demand, verdict } of [brief, rated]) {
      expect(demand?.value).toBe(checkOf(plan, "infill-R1").demand?.value);
      expect(verdict).toBe("pass");
    }
  });

  test("bound the window of tensions from above, less what the hardest day adds and the band", () => {
    const [window] = plan.frame.windows;
    const bound = window?.allows.find(({ kind }) => kind === "face")?.tension ?? Number.NaN;
    const [run, climate] = [plan.runs[0], plan.climate[0]];
    const done = (374.6 * LBF - (climate?.hardest.worst ?? 0)) * ((run?.tension.target ?? 0) / (run?.tension.high ?? 0));
    expect(bound).toBeLessThanOrEqual(done + 0.5);
    expect(bound).toBeGreaterThan(run?.tension.target ?? 0);
    expect(window?.allows.find(({ kind }) => kind === "washer")?.tension).toBeGreaterThan(bound);
  });

  test("leave wood between the two screws of one post: 5-1/2 in less twice 2-3/8 in", () => {
    expect(checkOf(plan, "face-behind-R2-P9").demand?.value).toBeCloseTo(0.75 * INCH, 9);
    expect(checkOf(plan, "face-behind-R1-P1").demand?.value).toBeCloseTo(3.125 * INCH, 9);
  });

  test("shrink towards their screws: no drying moves them", () => {
    expect(plan.climate.map(({ shrinkage: { left, right } }) => [left === 0, right === 0])).toEqual([
      [true, false],
      [false, true],
      [true, false],
    ]);
  });

  test("need no washer, nut or gripping fitting: an eye and a fork for each", () => {
    const net = (item: string): number | undefined => plan.order.find((line) => line.item === item)?.net;
    expect(net("nut, stainless")).toBe(3 * plan.courses.length);
    expect(net("lag screw with an eye, stainless")).toBe(3 * plan.courses.length);
    expect(net("end fitting with a fork, for fitting on site")).toBe(3 * plan.courses.length);
    expect(net("gripping end")).toBeUndefined();
    expect(plan.checks.filter(({ id }) => id.startsWith("bearing-")).map(({ where }) => where)).toEqual(["P4, R1", "P5, R2", "P13, R3"]);
  });

  test.each(plan.checks.filter(({ id }) => id.startsWith("face-")).map(({ id }) => id))("%s is explained on both sides", (id) => {
    for (const side of ["demand", "limit"] as const) {
      const answer = explain(plan, `checks.${id}.${side}.value`);
      expect(answer.kind === "trace" && answer.trace.recomputed).toBeCloseTo(checkOf(plan, id)[side]?.value ?? Number.NaN, 6);
    }
  });
});

describe("other screws", () => {
  const changed = (from: string, to: string): Plan => planOf(changedText(NAME, { [from]: to }));

  test("a short one pulls out, and the plan says so", () => {
    const short = changed("thread length: 2-1/8 in", "thread length: 1-1/8 in");
    expect(checkOf(short, "face-hold-R1-P1").verdict).toBe("fail");
    expect(checkOf(short, "face-thread").verdict).toBe("fail");
    expect(short.verdict).toBe("fail");
  });

  test("two long ones meet in one post", () => {
    expect(checkOf(changed("depth: 2-3/8 in ", "depth: 2-3/4 in "), "face-behind-R3-P9").verdict).toBe("fail");
  });

  test("a pilot hole that is too wide for the wood", () => {
    expect(checkOf(changed("hole: 13/64 in", "hole: 1/4 in"), "face-pilot-most").verdict).toBe("fail");
    expect(checkOf(changed("hole: 13/64 in", "hole: 1/8 in"), "face-pilot-least").verdict).toBe("fail");
  });

  test("an eye that nobody rates is asked for; one that is rated too low fails", () => {
    const unrated = changed("    rated: 600 lbf\n    rated by: data sheet of its maker (invented)\n", "");
    expect(checkOf(unrated, "face-rating").verdict).toBe("ask");
    expect(checkOf(changed("rated: 600 lbf", "rated: 150 lbf"), "face-rated-R1-P1").verdict).toBe("fail");
  });
});

describe("ends on faces of metal", () => {
  const METAL = "0005-steel-balcony";
  const end = (face: string): Plan =>
    planOf(changedText(METAL, { "  hold end: stud\n": `  hold end: stud\n  ends: on the face\n  face: ${face}\n` }));
  const common = "hole: 5 mm, stand-out: 30 mm, flange: 16 mm";

  test("a thread in a wall of 4 mm, 3.72 mm by AISC 360, B4.2: 7/8 pi d L x 0.6 x the less of Fy / 1.67 and Fu / 2", () => {
    const tapped = end(`{ kind: tapped hole, thread: M6x1, least engagement: 0.6, ${common} }`);
    const { limit } = checkOf(tapped, "face-hold-R1-P1");
    // A500 grade B: 46 and 58 ksi.
    const byHand = (7 / 8) * Math.PI * 6 * (0.93 * 4) * 0.6 * Math.min(46 / 1.67, 58 / 2) * 6.894757293168361;
    expect(limit?.value).toBeCloseTo(byHand, 3);
    expect(new Set(tapped.bores.filter(({ through }) => !through).map(({ drilledLength }) => drilledLength))).toEqual(new Set([4]));
    const answer = explain(tapped, "checks.face-hold-R1-P1.limit.value");
    expect(answer.kind === "trace" && answer.trace.recomputed).toBeCloseTo(byHand, 3);
  });

  test("a rivet nut holds what its maker says, and no more is computed", () => {
    const riveted = end(`{ kind: rivet nut, thread: M6x1, rated: 2.4 kN, rated by: its maker (invented), ${common} }`);
    expect(checkOf(riveted, "face-rated-R1-P1").limit?.value).toBe(2400);
    expect(riveted.checks.some(({ id }) => id.startsWith("face-hold"))).toBe(false);
  });
});

test("a run between two posts whose backs nothing reaches cannot be pulled", () => {
  const { problems } = makePlan(
    jobOf(changedText(NAME, { "end: { kind: post, access: drill }, start": "end: { kind: post, access: none }, start" })),
  );
  expect(problems.map(({ what }) => what)).toContain("run R1 cannot be pulled: it ends on the face of P1 and on the face of P4");
});
