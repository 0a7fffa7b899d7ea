import { describe, expect, test } from "vitest";
import { longestFree, requiredTension } from "../../src/plan/criterion.ts";
import { changedText, jobOf, planOf } from "../support/example-jobs.ts";
import { LBF } from "../support/in-plan.ts";

const text = changedText("rule-of-thumb", {
  "kind: sphere": "kind: stated",
  "    diameter: 4 in\n    force: 12 lbf\n": "    tension: 45 lbf\n",
  "agreed with: example value, to be confirmed by the authority on sheet Z-002": "stated by: an engineer (invented)",
});
const job = jobOf(text);
const demand = { free: 1200, spacing: 76, runLength: 9000 };
type Criterion = (typeof job)["tightening"]["criterion"];
const under = (criterion: Criterion) => ({ ...job, tightening: { ...job.tightening, criterion } });
const sag = { kind: "sag", weight: 50, sag_max: 12, agreedWith: "nobody" } as const;

/** Tension before the weight, by hand: W = 2 T' sin, T' = T + (EA + T) longer / run, at half the span and the sag. */
function bySag(span: number, runLength: number): number {
  const half = span / 2;
  const side = Math.hypot(half, sag.sag_max);
  const share = (2 * (side - half)) / runLength;
  const bent = sag.weight / (2 * (sag.sag_max / side));
  return (bent - job.cable.stiffness.value.low * share) / (1 + share);
}

describe("a stated tension", () => {
  test("of 45 lbf is what a straight run is pulled to; the low end of its band, a tenth less, is what each span needs", () => {
    expect(planOf(text).runs.map(({ tension }) => tension.target)).toEqual([expect.closeTo(45 * LBF, 9)]);
    const { band } = job.tightening;
    expect(requiredTension(demand, job)).toEqual({ value: expect.closeTo(45 * LBF * (1 - band.value), 9), problems: [] });
  });

  test("names no longest span", () => expect(longestFree(demand, 1000, job)).toBeNull());
});

describe("a sag under a weight", () => {
  test("of 12 mm under 50 N in the middle of 1200 mm needs W / (2 sin) less what the sag itself adds along the run (by hand)", () => {
    const { value, problems } = requiredTension(demand, under(sag));
    expect(problems).toEqual([]);
    expect((value ?? 0) / bySag(demand.free, demand.runLength)).toBeCloseTo(1, 5);
  });

  test("holds up to the planned span at that tension, and to a tenth of a millimetre no further", () => {
    const longest = longestFree(demand, bySag(demand.free, demand.runLength), under(sag));
    expect(longest ?? 0).toBeGreaterThan(demand.free - 0.2);
    expect(longest ?? 0).toBeLessThanOrEqual(demand.free + 0.1);
  });

  test("a longer span makes a longer run: at the tension that 1500 mm of a run of 9300 need the longest is 1500 mm", () => {
    const longest = longestFree(demand, bySag(1500, 9300), under(sag));
    expect(longest ?? 0).toBeGreaterThan(1499.8);
    expect(longest ?? 0).toBeLessThanOrEqual(1500.1);
  });

  test("that the breaking force would not keep is refused, with what would help", () => {
    const { value, problems } = requiredTension(demand, under({ ...sag, sag_max: 0.1, weight: 500 }));
    expect(value).toBeUndefined();
    expect(problems[0]).toMatchObject({ severity: "error", path: ["tightening", "criterion"] });
    expect(problems[0]?.what).toContain("no tension in reach");
  });

  test("nobody looks beyond twice the planned span", () => {
    expect(longestFree(demand, 1e6, under(sag))).toBe(2 * demand.free);
  });
});

describe("a sphere under a force", () => {
  const sphere = { kind: "sphere", diameter: 101.6, force: 200, agreedWith: "nobody" } as const;

  test("just holds at the tension that it needs, in the planned span and no longer one; at less the longest is shorter", () => {
    const { value = 0 } = requiredTension(demand, under(sphere));
    const longest = longestFree(demand, value, under(sphere)) ?? 0;
    expect(Math.abs(longest - demand.free)).toBeLessThan(0.2);
    expect(longestFree(demand, value * 0.9, under(sphere)) ?? 0).toBeLessThan(demand.free - 1);
  });

  test("that slips through between cables at rest needs no tension in reach", () => {
    const { value, problems } = requiredTension({ ...demand, spacing: 120 }, under(sphere));
    expect(value).toBeUndefined();
    expect(problems).toHaveLength(1);
  });
});

describe("the code's table", () => {
  // NCC 2022, ABCB Housing Provisions, table 11.3.6a, wire of 3 mm, 1 x 19, spacing 80 mm: 1025 N at 1200 mm; struck out at 2500 mm.
  const table = under({ kind: "table", source: "ncc-2022" });
  const wire = { ...table, cable: { ...table.cable, construction: "1x19" as const, diameter: 3 } };

  test("asks 1025 N of wire of 3 mm over 1200 mm at a spacing of 80 mm, and is not read beyond its rows", () => {
    expect(requiredTension({ ...demand, spacing: 80 }, wire)).toEqual({ value: 1025, problems: [] });
    const { value, problems } = requiredTension({ ...demand, spacing: 80, free: 2500 }, wire);
    expect(value).toBeUndefined();
    expect(problems[0]).toMatchObject({ severity: "error", path: ["tightening", "criterion"] });
    expect(problems[0]?.what).toContain("has no tension for 1x19 of 3 mm");
    expect(longestFree(demand, 1025, wire)).toBeNull();
  });
});
