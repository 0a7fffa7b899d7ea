import { describe, expect, it } from "vitest";
import { guardOfCase, solveFrameCase } from "../../../src/mechanics/cases/frame-case.ts";
import { frameCases } from "../../support/reference-cases.ts";

const [one] = frameCases;
if (one === undefined) throw new Error("no frame cases");
const bar = { shape: "AI", E: { MPa: 11_000 }, A: { "mm^2": 3000 } };

describe("guardOfCase", () => {
  it("F1-01: six posts, the first at 0 and the last at the length of the run, ten cables between them", () => {
    const { posts, cables, topRail } = guardOfCase(one.in);
    expect(posts.map(({ station }) => station)).toEqual([0, 1219.2, 2438.4, expect.closeTo(3657.6, 9), 4876.8, 6096]);
    expect(cables).toHaveLength(10);
    expect(cables[0]).toEqual({ left: 0, right: 5, height: 82.55 });
    expect(topRail?.joint).toBe("pinned");
  });

  it("intermediate posts that are not joined to the rails stand by themselves", () => {
    const apart = { ...one.in, intermediate_posts: one.in.intermediate_posts && { ...one.in.intermediate_posts, joined_to_rails: false } };
    expect(guardOfCase(apart).posts).toHaveLength(2);
  });

  it("a bottom rail is a row of bars at its height, whatever the key that ends in height is called", () => {
    for (const key of ["height", "axis_height"]) {
      const { bottomRail } = guardOfCase({ ...one.in, bottom_rail: { ...bar, [key]: { mm: 60 } } });
      expect(bottomRail).toEqual({ EA: 33e6, EI: 0, joint: "pinned", height: 60 });
    }
  });

  it("refuses a bottom rail without a height, and posts that are not equally spaced", () => {
    for (const height of [undefined, null, 60, { in: 2 }]) {
      expect(() => guardOfCase({ ...one.in, bottom_rail: { ...bar, height } })).toThrow("no height");
    }
    expect(() => guardOfCase({ ...one.in, bottom_rail: bar })).toThrow("no height");
    const uneven = one.in.intermediate_posts && { ...one.in.intermediate_posts, equally_spaced: false };
    expect(() => guardOfCase({ ...one.in, intermediate_posts: uneven })).toThrow("not equally spaced");
  });
});

describe("solveFrameCase", () => {
  it("a bottom rail takes up part of what the lowest cable pulls: its anchors close less, the take-up falls", () => {
    const [bare, railed] = [solveFrameCase(one.in), solveFrameCase({ ...one.in, bottom_rail: { ...bar, height: { mm: 60 } } })];
    const own = ({ flexibility_F }: typeof bare): number => flexibility_F["mm/N"][0]?.[0] ?? Number.NaN;
    expect(own(railed)).toBeLessThan(own(bare));
    expect(railed.final_take_up_all_at_target.mm[0]).toBeLessThan(bare.final_take_up_all_at_target.mm[0] ?? 0);
  });

  it("is plain data: as JSON and back it is the same", () => {
    const computed = solveFrameCase(one.in);
    expect(JSON.parse(JSON.stringify(computed))).toEqual(computed);
  });
});
