import { describe, expect, it } from "vitest";
import { cantilever } from "../../src/mechanics/beam.ts";
import { type CoupledCable, cornerPulls, coupledFlexibility, lonePost, pullsOnSide } from "../../src/mechanics/coupling.ts";
import { guardFrame, sideState } from "../../src/mechanics/guard-frame.ts";

const RIGHT = Math.PI / 2;
const post = (station: number) => ({ station, E: 11_000, A: 7900, I: 5e6, base: 3e7 });
const sideOf = (length: number, heights: readonly number[]) =>
  guardFrame({
    posts: [post(0), post(length)],
    height: 915,
    topRail: { EA: 5e7, EI: 7e9, joint: "pinned" },
    bottomRail: null,
    cables: heights.map((height) => ({ left: 0, right: 1, height })),
    loads: [
      { post: 1, height: 400 },
      { post: 0, height: 700 },
    ],
  });
const sides = [sideOf(3000, [200, 600]), sideOf(2000, [200, 600])];
const cable = (index: number, far = 1): CoupledCable => ({
  legs: [
    { side: 0, cable: index, share: 1 },
    { side: 1, cable: index, share: far },
  ],
});

describe("cornerPulls", () => {
  it("at a right angle each side sees the tension of its own leg alone: 1000 N inward before it, 790 N after it", () => {
    const corner = cornerPulls({ before: 1000, after: 790, turn: RIGHT });
    expect(corner.alongBefore).toBeCloseTo(-1000, 9);
    expect(corner.alongAfter).toBeCloseTo(790, 9);
    expect(corner.loadBefore).toBeCloseTo(0, 9);
    expect(corner.loadAfter).toBeCloseTo(0, 9);
  });

  it("a cable that goes straight through pulls on nothing; half a right angle leaves T (1 - cos 45 deg) in each plane", () => {
    expect(cornerPulls({ before: 900, after: 900, turn: 0 })).toEqual({ alongBefore: 0, alongAfter: 0, loadBefore: 900, loadAfter: -900 });
    const half = cornerPulls({ before: 900, after: 900, turn: RIGHT / 2 });
    expect(half.alongBefore).toBeCloseTo(-900 * (1 - Math.SQRT1_2), 9);
    expect(half.alongAfter).toBeCloseTo(900 * (1 - Math.SQRT1_2), 9);
  });

  it("law: the size of the resultant is 2 T sin(turn / 2), whatever the turn", () => {
    for (const turn of [0.1, 0.7, RIGHT, 2]) {
      const { alongBefore, loadBefore } = cornerPulls({ before: 500, after: 500, turn });
      const square = 500 * Math.sin(turn);
      expect(Math.hypot(alongBefore, square)).toBeCloseTo(2 * 500 * Math.sin(turn / 2), 9);
      expect(loadBefore).toBeCloseTo(500 * Math.cos(turn), 9);
    }
  });
});

describe("coupledFlexibility", () => {
  it("two cables over two sides: each entry is the sum of both sides' own", () => {
    const F = coupledFlexibility(sides, [cable(0), cable(1)]);
    for (const i of [0, 1]) {
      for (const j of [0, 1]) {
        const own = sides.map(({ flexibility }) => flexibility[i]?.[j] ?? Number.NaN);
        expect(F[i]?.[j]).toBeCloseTo((own[0] ?? 0) + (own[1] ?? 0), 15);
      }
    }
  });

  it("with 0.79 of the pull behind the corner the far side counts 0.79, and F stays symmetric", () => {
    const F = coupledFlexibility(sides, [cable(0, 0.79), cable(1, 0.79)]);
    expect(F[0]?.[1]).toBeCloseTo((sides[0]?.flexibility[0]?.[1] ?? 0) + 0.79 * (sides[1]?.flexibility[0]?.[1] ?? 0), 15);
    expect(F[0]?.[1]).toBeCloseTo(F[1]?.[0] ?? Number.NaN, 15);
  });

  it("a cable on one side alone shares nothing with one on the other; a further load closes cables of its side", () => {
    const alone: CoupledCable = { legs: [{ side: 1, cable: 0, share: 1 }] };
    const loading: CoupledCable = { legs: [{ side: 0, cable: 1, share: 1 }], loads: [{ side: 1, load: 0, perPull: -0.5 }] };
    const F = coupledFlexibility(sides, [alone, loading]);
    expect(F[1]?.[0]).toBe(0);
    expect(F[0]?.[1]).toBeCloseTo(-0.5 * (sides[1]?.closingPerLoad[0]?.[0] ?? Number.NaN), 15);
    expect(F[1]?.[1]).toBeCloseTo(sides[0]?.flexibility[1]?.[1] ?? Number.NaN, 15);
  });

  it("refuses legs and loads that a side does not have", () => {
    expect(() => coupledFlexibility(sides, [{ legs: [{ side: 2, cable: 0, share: 1 }] }])).toThrow("no side 2");
    expect(() => coupledFlexibility(sides, [{ legs: [{ side: 0, cable: 2, share: 1 }] }])).toThrow("no cable 2");
    expect(() => coupledFlexibility(sides, [{ ...cable(0), loads: [{ side: 0, load: 2, perPull: 1 }] }])).toThrow("no column 2");
  });
});

describe("pullsOnSide", () => {
  it("1000 N and 800 N at the nuts are 790 N and 632 N on the far side, whose closing then is F times these", () => {
    const [, far] = sides;
    if (far === undefined) throw new Error("no side");
    const pulled = [
      { cable: cable(0, 0.79), pull: 1000 },
      {
        cable: {
          ...cable(1, 0.79),
          loads: [
            { side: 1, load: 0, perPull: 0.25 },
            { side: 0, load: 0, perPull: 9 },
          ],
        },
        pull: 800,
      },
    ];
    const under = pullsOnSide(far, 1, pulled);
    expect(under).toEqual({ tensions: [790, 632], loads: [200, 0] });
    expect(sideState(far, under).closing[0]).toBeCloseTo(
      790 * (far.flexibility[0]?.[0] ?? 0) + 632 * (far.flexibility[0]?.[1] ?? 0) + 200 * (far.closingPerLoad[0]?.[0] ?? 0),
      12,
    );
  });
});

describe("lonePost", () => {
  const heights = [300, 700];

  it("on a fixed base with a free top it is a cantilever: movement as in beam tables, base moment the height", () => {
    const { flexibility, baseMoment, baseShear, top } = lonePost({ post: { ...post(0), base: "fixed" }, height: 915, heights });
    const EI = 11_000 * 5e6;
    for (const [i, where] of heights.entries()) {
      for (const [j, at] of heights.entries()) {
        expect(flexibility[i]?.[j]).toBeCloseTo(cantilever({ length: 915, load: 1, at, EI }, where).deflection, 12);
      }
    }
    expect(baseMoment).toEqual([expect.closeTo(300, 9), expect.closeTo(700, 9)]);
    expect(baseShear).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
    expect(top[1]).toBeCloseTo(cantilever({ length: 915, load: 1, at: 700, EI }).deflection, 12);
  });

  it("a spring at its top takes part of the load and of the movement", () => {
    const [free, leaned] = [undefined, 20].map((top) => lonePost({ post: { ...post(0), ...(top && { top }) }, height: 915, heights }));
    if (!free || !leaned) throw new Error("no posts");
    const [u, f] = [free.top[1] ?? Number.NaN, lonePost({ post: post(0), height: 915, heights: [915] }).top[0] ?? Number.NaN];
    // The spring's force R moves the top by R f against the load: R = 20 (u - R f).
    const R = (20 * u) / (1 + 20 * f);
    expect(leaned.top[1]).toBeCloseTo(R / 20, 12);
    expect(leaned.baseShear[1]).toBeCloseTo(1 - R, 9);
    expect(leaned.baseMoment[1]).toBeCloseTo(700 - R * 915, 6);
  });
});
