// A straight deck by the usual rules of thumb (tests/support/jobs) worked by hand: each line is written out here and compared with the plan, so that a slip in the way
// the plan puts its formulas together cannot hide behind formulas that are right by themselves.
//
// Sources: metallic area of a 1x19 strand 0.76 pi D^2/4 and modulus 130 GPa: EN 1993-1-11:2006 tables 2.2 and 3.1 (secondary);
// pull, string and push: elementary statics, worked below; rules of thumb: common practice, no source.
import { describe, expect, test } from "vitest";
import { changedText, planOf } from "../../support/example-jobs.ts";

const IN = 25.4;
const LBF = 4.4482216152605;
// Nothing is added for heat and settling, so that what the criterion asks can be followed line by line.
const noAllowance = { "tightening:\n": "tightening:\n  allow for: nothing\n" };
const plan = planOf(changedText("rule-of-thumb", noAllowance));
const run = plan.runs[0];
if (run === undefined) throw new Error("the example has a run");
const span = run.spans[0];
if (span === undefined) throw new Error("the run has a span");

describe("a deck by rule of thumb, by hand", () => {
  test("five posts: 272.5 in between the centres of the end posts, four bays of 68.125 in, within 6 ft", () => {
    const centres = plan.verticals.filter((vertical) => vertical.kind === "post").map((post) => post.station / IN);
    // 23 ft = 276 in; half a dressed 4x4 (3.5 in) at each end.
    const exact = [1.75, 69.875, 138, 206.125, 274.25];
    expect(centres).toHaveLength(5);
    centres.forEach((centre, index) => {
      expect(centre).toBeCloseTo(exact[index] ?? 0, 9);
    });
  });

  test("a bay of 64.625 in takes one 1-1/2 in spacer and leaves 31.5625 in of free cable", () => {
    // 68.125 - 3.5 = 64.625; (64.625 - 1.5) / 2 = 31.5625 <= 36.
    for (const bay of plan.bays) expect(bay.free / IN).toBeCloseTo(31.5625, 9);
  });

  test("heights: bottom of the opening at 2 + 3-1/2 in, 2.9 in each, to the sixteenth", () => {
    // 5.5 + 2.9 k: 8.4 11.3 14.2 17.1 20 22.9 25.8 28.7 31.6 -> sixteenths 134.4 180.8 227.2 273.6 320 366.4 412.8 459.2 505.6
    const sixteenths = [134, 181, 227, 274, 320, 366, 413, 459, 506];
    expect(plan.courses.map((course) => (course.height / IN) * 16)).toEqual(sixteenths.map((value) => expect.closeTo(value, 6)));
  });

  test("path between bearing faces: nut and collar bear on the outer faces of the end posts, 276 in apart", () => {
    expect(run.pathLength / IN).toBeCloseTo(276, 9);
  });

  test("elongation T L / EA, nut turns of a 1/4-28 thread", () => {
    const area = (0.76 * Math.PI * 3.175 ** 2) / 4;
    const stiffness = 130_000 * area;
    const elongation = (run.tension.target * 276 * IN) / stiffness;
    expect(run.takeUp.elongation).toBeCloseTo(elongation, 6);
    // The posts bend towards each other under all cables: what that takes is checked in step-targets.test.ts.
    const travel = elongation + 0.0005 * 276 * IN + IN / 16 + run.takeUp.closing;
    expect(run.takeUp.travel).toBeCloseTo(travel, 6);
    expect(run.takeUp.turns).toBeCloseTo((travel * 28) / IN, 5);
  });

  test("245.3 lbf hold 12 lbf in a 31.5625 in span, cables free to slide: 250 lbf at least, 275 lbf or more to aim at", () => {
    // Push on a sphere of 4 in between cables whose drilled spacing is 47/16 in; tension rises with the stretch of the whole run.
    const sixteenths = [134, 181, 227, 274, 320, 366, 413, 459, 506];
    const spacing = Math.max(...sixteenths.slice(1).map((height, index) => height - (sixteenths[index] ?? 0))) / 16;
    expect(plan.target.worstSpacing / IN).toBeCloseTo(spacing, 9);
    const peak = (tension_N: number): number => {
      const [half, centres, length] = [(spacing * IN) / 2, ((4 + 1 / 8) * IN) / 2, 31.5625 * IN];
      // The low end of the band of EN 1993-1-11 for stainless strand: 130 - 10 GPa.
      const stiffness = (130_000 - 10_000) * ((0.76 * Math.PI * 3.175 ** 2) / 4);
      let most = 0;
      for (let step = 0; step <= 4000; step++) {
        const angle = (Math.acos(half / centres) * step) / 4000;
        // Frictionless: the cable moves along the contact normal.
        const moved = centres - half / Math.cos(angle);
        const slant = Math.hypot(length / 2, moved);
        const tension = tension_N + (stiffness / (276 * IN)) * (2 * slant - length);
        most = Math.max(most, 2 * (2 * tension * (moved / slant)) * Math.sin(angle));
      }
      return most;
    };
    const step = 5 * LBF;
    expect(peak(run.tension.low)).toBeGreaterThanOrEqual(12 * LBF * (1 - 1e-3));
    expect(peak(run.tension.low - step)).toBeLessThan(12 * LBF * (1 + 1e-3));
    // The whole band of 10 % lies above what is needed: the target is the next 5 lbf above need / 0.9.
    expect(run.tension.target * 0.9).toBeGreaterThanOrEqual(245.2 * LBF);
    expect((run.tension.target - step) * 0.9).toBeLessThan(245.4 * LBF);
    expect(run.tension.low / LBF).toBeCloseTo(250, 9);
    expect(run.tension.target / LBF).toBeCloseTo(275, 9);
  });

  test("nine cables at 275 lbf pull 2,475 lbf on each end post, 20 in above the datum", () => {
    expect(plan.pulls.map((pull) => pull.postId)).toEqual(["P1", "P5"]);
    for (const pull of plan.pulls) {
      expect(pull.pull_target / LBF).toBeCloseTo(9 * 275, 6);
      expect(pull.height / IN).toBeCloseTo(20, 1);
    }
  });

  test("washers on wet Hem-Fir, 405 psi x 0.67 (NDS supplement, table 4A): 1-1/4 in are asked about, 1-3/4 in press little enough", () => {
    const ring_in2 = (washer: number, hole: number): number => (Math.PI / 4) * (washer ** 2 - hole ** 2);
    const ratio = (from: typeof plan, post: string) => from.checks.find((check) => check.id === `bearing-R1-${post}`);
    // Done, at the top of the band on the coldest day; or at work on it, at the top of the band of the highest reading of its table.
    const coldest = plan.tightening[0]?.days[0]?.readings ?? [];
    const steps = plan.tightening[0]?.steps ?? [];
    const atWork = Math.max(...steps.map(({ reading, reading_high }, nth) => ((coldest[nth] ?? 0) * reading_high) / reading));
    const done = 275 * LBF * 1.1 + (plan.climate[0]?.hardest.worst ?? 0);
    expect(atWork).toBeGreaterThan(done);
    const most_lbf = Math.min(Math.max(atWork, done), plan.target.workingLimit) / LBF;
    const wet_psi = 405 * 0.67;
    // The stud's bore is 5/16 in; the body of the grip lies in a 3/8 in counterbore.
    expect(ratio(plan, "P1")?.ratio).toBeCloseTo(most_lbf / (wet_psi * ring_in2(1.25, 5 / 16)), 3);
    expect(ratio(plan, "P5")?.ratio).toBeCloseTo(most_lbf / (wet_psi * ring_in2(1.25, 3 / 8)), 3);
    expect(ratio(plan, "P5")?.verdict).toBe("ask");
    const wider = planOf(
      changedText("rule-of-thumb", { ...noAllowance, "  grip: { washer: 1-1/4 in }\n": "  grip: { washer: 1-3/4 in }\n" }),
    );
    expect(ratio(wider, "P5")?.ratio).toBeCloseTo(most_lbf / (wet_psi * ring_in2(1.75, 3 / 8)), 3);
    expect(ratio(wider, "P5")?.verdict).toBe("pass");
  });

  test("a bay may be 31.9 in long at most: there 250 lbf hold 12 lbf just so", () => {
    const stop = span.free_stop ?? 0;
    expect(stop).toBeGreaterThan(span.free);
    // The push falls off with the length about as 1/L: from 245.3 lbf needed at 31.5625 in to 250 lbf.
    expect(stop / IN).toBeLessThan(31.5625 * (250 / 245) * 1.01);
  });

  test("pitch of the loose-wire string, (1/2L) sqrt(T/m), lies at the low end of the band", () => {
    const string_Hz = (1 / (2 * (span.free / 1000))) * Math.sqrt(span.tension / plan.job.cable.mass_kgPerM.value);
    expect(span.pitch_Hz.low).toBeGreaterThanOrEqual(string_Hz * (1 - 1e-9));
    expect(span.pitch_Hz.low).toBeLessThan(string_Hz * 1.01);
  });

  test("9 cables of 25 ft, 9 gripping ends and a spare, 9 nuts and a spare", () => {
    const line = (item: string) => plan.order.find((one) => one.item === item);
    expect(line("ready cable")?.quantity).toBe(9);
    expect(line("ready cable")?.pieceLength).toBeCloseTo(25 * 304.8, 9);
    expect(line("gripping end")?.quantity).toBe(10);
    expect(line("nut, stainless")?.quantity).toBe(10);
  });
});
