// Posts in sleeves: nuts bear on the wood inside, spheres and tapes meet the sleeve. All sizes by hand, in inches.
import { describe, expect, test } from "vitest";
import { longestClear, longestFree } from "../../src/plan/free-stop.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { clearOf } from "../../src/plan/sleeve.ts";
import { changedText, examplePlan, jobOf, planOf } from "../support/example-jobs.ts";
import { boreOf, INCH } from "../support/in-plan.ts";

const NAME = "0017-vinyl-sleeves";
const plan = examplePlan(NAME);

describe("the sleeved posts of 0017", () => {
  test("measure what their sleeves do; a 6x6 of 5-1/2 in lies 1/2 in inside a sleeve of 6-1/2 in", () => {
    const posts = plan.verticals.filter(({ kind }) => kind === "post");
    for (const { along, across, core } of posts) {
      expect([along, across]).toEqual([6.5 * INCH, 6.5 * INCH]);
      expect(core?.along).toBeCloseTo(5.5 * INCH, 6);
      expect(core?.recess).toBeCloseTo(0.5 * INCH, 6);
    }
    expect(plan.verticals.filter(({ kind, core }) => kind === "spacer" && core !== undefined)).toEqual([]);
  });

  test("a cable and its free lengths count from wood to wood, what a tape finds from sleeve to sleeve", () => {
    // The corner: half a sleeve and 1-1/2 in, 4-3/4 in from the corner point to P4, at the end of 16 ft; 1/2 in less at each end.
    expect(plan.runs[0]?.pathLength).toBeCloseTo((192 - 4.75 - 1) * INCH, 6);
    // Side B: 9 ft less 4-3/4 in and the gap of 3-1/2 in to the wall.
    expect(plan.runs[1]?.outsideLength).toBeCloseTo((108 - 4.75 - 3.5 - 1) * INCH, 6);
    // P1 ends at 6-1/2 in, its wood at 6 in; S1, of 1-1/2 in, has its middle at 33-3/8 in.
    const [first] = plan.bays;
    expect(first?.free).toBeCloseTo((33.375 - 0.75 - 6) * INCH, 6);
    expect(plan.runs[0]?.spans[0]?.free).toBe(first?.free);
    expect(first && clearOf(first, plan)).toBeCloseTo((33.375 - 0.75 - 6.5) * INCH, 6);
    // The tape's stop is as much shorter as the tape's length: both leave the same to spare.
    expect(first && longestFree(plan, first.id) - longestClear(plan, first)).toBeCloseTo(0.5 * INCH, 6);
  });

  test("the criterion and the readings of a span count from wood to wood", () => {
    const [span] = plan.runs[0]?.spans ?? [];
    const L = (33.375 - 0.75 - 6) * INCH;
    expect(span?.demandSpan).toBeCloseTo(L, 6);
    // A string sounds at sqrt(T / m) / 2L; loose wires add less than 1 in 1,000 to it, the half inch in the sleeve 2 in 100.
    const string = Math.sqrt((span?.tension ?? 0) / plan.job.cable.mass_kgPerM.value) / (2 * (L / 1000));
    expect((span?.pitch_Hz.low ?? 0) / string).toBeCloseTo(1, 2);
    expect((span?.pitch_Hz.low ?? 0) / string).toBeLessThan(1.005);
  });

  test("a spacer is asked for where the wood is too far apart, though the sleeves are not", () => {
    // Two spans of 26-5/8 in, 26-1/8 in beside the sleeve: 26-3/8 in lie between.
    const { bays } = planOf(changedText(NAME, { "longest free length: 3 ft": "longest free length: 26-3/8 in" }));
    expect(bays.find(({ id }) => id === "A3")?.leftId).toBe("S2");
    const free = bays.filter(({ kind, sideId }) => kind === "bay" && sideId === "A").map((bay) => bay.free);
    expect(Math.max(...free)).toBeLessThan(26.375 * INCH);
  });

  test("an end has a hole in the sleeve for its washer, down to the wood, and one for the cable on the other face", () => {
    const stud = boreOf(plan, "P1-01");
    // Washer 1-1/2 in and 1/4 in; bore of the stud 5/16 in and 1/8 in.
    expect(stud.counterbore?.face).toBe("left");
    expect(stud.counterbore?.diameter).toBeCloseTo(1.75 * INCH, 6);
    expect(stud.counterbore?.depth).toBeCloseTo(0.5 * INCH, 6);
    expect(stud.sleeveHole).toBeCloseTo((7 / 16) * INCH, 6);
    expect(stud.drilledLength).toBeCloseTo(6.5 * INCH, 6);
    // A gripping fitting has no counterbore in the wood as well: its bore goes right through.
    const grip = boreOf(plan, "P4-01");
    expect(grip.counterbore?.depth).toBeCloseTo(0.5 * INCH, 6);
    expect(grip.diameter).toBe(plan.job.fittings.grip.boreNoBack.value);
  });

  test("where the cable only passes both faces of the sleeve are opened, 1/8 in wider than the bore", () => {
    const pass = boreOf(plan, "P2-01");
    expect(pass.counterbore).toBeNull();
    expect(pass.sleeveHole).toBeCloseTo((3 / 8) * INCH, 6);
    expect(boreOf(plan, "S1-01").sleeveHole).toBeUndefined();
    // Nine courses: three line posts with two faces, four end bores with one.
    const holes = plan.bits.filter(({ use }) => use.includes("each face")).reduce((sum, bit) => sum + bit.holes, 0);
    expect(holes).toBe(9 * (3 * 2 + 4));
    expect(plan.bits.find(({ use }) => use.startsWith("washer's hole"))?.holes).toBe(9 * 4);
  });

  test("sleeves are parts of their own, from the datum to under the top rail", () => {
    const [sleeve] = plan.cuts.filter(({ mark }) => mark === "SL");
    expect(sleeve).toMatchObject({ count: 7, material: "vinyl" });
    // 2 in, a bottom rail of 3-1/2 in, 29 in.
    expect(sleeve?.length).toBeCloseTo(34.5 * INCH, 6);
  });

  test("only the wood carries: a washer's hole in the sleeve takes nothing out of it, and the sleeve's wall adds nothing", () => {
    const check = plan.frame.checks.find(({ id }) => id === "post-cables-P4");
    // A 6x6 with a bore of 3/8 in right through along the side: (b - d) h^2 / 6.
    const S = ((5.5 - 0.375) * 5.5 ** 2) / 6;
    expect(check?.parts.find(({ unit }) => unit === "mm3")?.value).toBeCloseTo(S * INCH ** 3, 0);
    const thick = planOf(changedText(NAME, { "wall: 3/16 in": "wall: 1/2 in" }));
    expect(thick.frame).toEqual(plan.frame);
  });

  test("the edge of a bore counts to the edge of the wood", () => {
    // Without spacers the nearest is a grip bore of 3/8 in in wood of 5-1/2 in.
    const text = changedText(NAME, { "spacers: { size: 2x2,": "spacers: { size: 6x6," });
    const check = planOf(text).checks.find(({ id }) => id === "edge-distance");
    expect(check?.demand?.value).toBeCloseTo((5.5 / 2 - 3 / 16) * INCH, 6);
  });

  test("two runs that end on one post keep room for a washer's hole beside a sleeve's hole", () => {
    const stations = "stations: [3-1/4 in, 4 ft 9-3/4 in, 9 ft 4-1/4 in, 13 ft 10-3/4 in, 18 ft 5-1/4 in]";
    const text = changedText(NAME, {
      "- { length: 16 ft, turn: right 90 deg }\n    - { length: 9 ft }": `- { length: 18 ft 8-1/2 in, ${stations} }`,
      "end: { kind: wall, gap: 3-1/2 in, access: hand }": "end: { kind: post, access: drill }",
      "  largest spacing: 6 ft": "  existing: true\n  largest spacing: 6 ft",
      "limits: { most bends: 0 }": "limits: { most bends: 0, longest straight run: 12 ft }",
    });
    const one = planOf(text);
    const offset = one.runs[0]?.right.offset ?? Number.NaN;
    // Half of 1-3/4 in, half of (3/8 + 1/8) in, 1/4 in between: 1-3/8 in apart, 11/16 in each.
    expect(Math.abs(offset)).toBeCloseTo((11 / 16) * INCH, 6);
  });

  test("a cable that would turn in a sleeve is refused", () => {
    const { value, problems } = makePlan(jobOf(changedText(NAME, { "limits: { most bends: 0 }": "limits: { most bends: 2 }" })));
    expect(value).toBeUndefined();
    expect(problems.map(({ what }) => what).join()).toMatch(/would bear on the sleeve/);
  });
});
