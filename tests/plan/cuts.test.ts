import { describe, expect, test } from "vitest";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";

const IN = 25.4;

describe("cutLumber", () => {
  test("the top rails of a U of 2x6 are cut to the long points of their mitres: 5-1/2 in wide, 2-3/4 in beyond each corner point", () => {
    const rails = examplePlan("two-corners-4x4").cuts.filter((piece) => piece.use.startsWith("top rail"));
    // From the outer face of the end post, 3-1/2 in off the wall, to the corner point and 2-3/4 in beyond; the middle one from corner to corner.
    const [a, b, c] = [9 * 12 + 8 - 3.5 + 2.75, 15 * 12 + 4 + 2 * 2.75, 9 * 12 + 7.5 - 3.5 + 2.75];
    expect(rails.map((piece) => piece.length / IN)).toEqual([a, b, c].map((value) => expect.closeTo(value, 6)));
    for (const piece of rails) expect(piece.use).toContain("long point");
  });

  test("each mitre says its angle and its long point: two outside corners converge, an inside and an outside one are parallel", () => {
    const usesOf = (name: string): readonly string[] =>
      examplePlan(name).cuts.flatMap(({ use }) => (use.startsWith("top rail") ? [use] : []));
    const [first, middle] = usesOf("two-corners-4x4");
    expect(first).toBe("top rail, to the long point of its mitre: right end cut 45 deg off square, long point outside");
    expect(middle).toContain("both ends cut 45 deg off square, both long points outside (the cuts converge)");
    const [inner, between, outer] = usesOf("0009-bay-window-deck");
    // 45 deg to the left is an inside corner: there the edge towards the deck is the longer one.
    expect(inner).toContain("right end cut 22.5 deg off square, long point on the deck's side");
    expect(between).toContain("long point on the deck's side at the left end, outside at the right end (the cuts are parallel)");
    expect(outer).toContain("left end cut 22.5 deg off square, long point outside");
  });

  test("23 ft of top rail are joined over the middle post: two pieces of 11 ft 6 in from two lengths of 12 ft", () => {
    const plan = examplePlan("rule-of-thumb");
    const rails = plan.cuts.filter((piece) => piece.use === "top rail");
    expect(rails.map((piece) => [piece.length / 304.8, piece.count])).toEqual([[expect.closeTo(11.5, 6), 2]]);
    expect(plan.cutPlans.find((cut) => cut.sectionName === "2x6")?.bought).toBeCloseTo(24 * 304.8, 6);
  });

  test("posts are cut from the lengths that posts come in, 16 ft at most", () => {
    const bars = examplePlan("rule-of-thumb").cutPlans.find((cut) => cut.sectionName === "4x4")?.bars ?? [];
    for (const bar of bars) expect(bar.stockLength).toBeLessThanOrEqual(16 * 304.8 + 1e-6);
  });

  test.each(exampleNames)("%s: each piece is cut once and no bar is overfull, kerfs and end trims included", (name) => {
    const { cuts, cutPlans, job } = examplePlan(name);
    for (const piece of cuts) {
      const bars = cutPlans.find((cut) => cut.sectionName === piece.sectionName)?.bars ?? [];
      expect(bars.flatMap((bar) => bar.pieces).filter((cut) => cut.mark === piece.mark)).toHaveLength(piece.count);
    }
    for (const bar of cutPlans.flatMap((cut) => cut.bars)) {
      const solid = bar.pieces.reduce((sum, piece) => sum + piece.length, 0);
      const kerfs = Math.max(0, bar.pieces.length - 1) * job.stock.kerf.value;
      expect(solid + kerfs + 2 * job.stock.endTrim.value).toBeLessThanOrEqual(bar.stockLength + 1e-6);
    }
  });

  test("a post that stands already is not cut", () => {
    expect(examplePlan("0006-porch-existing-posts").cuts.map((piece) => piece.use)).not.toContain("post");
  });

  test("a top rail between posts 6 ft apart from stock of 5 ft is refused at stock: lengths", () => {
    const text = changedText("rule-of-thumb", {
      "tightening:\n": "stock: { lengths: [5 ft], post lengths: [8 ft] }\n\ntightening:\n",
    });
    expect(() => planOf(text)).toThrow(/longer than every stock length/);
  });
});
