import { describe, expect, test } from "vitest";
import { alongPost, guardFrame, sideState } from "../../src/mechanics/guard-frame.ts";
import type { GuardFrameInput } from "../../src/mechanics/guard-frame-build.ts";

const post = { E: 10_000, A: 8000, I: 6e6, base: "fixed" as const };
const SLOPE = Math.atan2(7, 10.5);
const feet = [0, 1500, 3000].map((station) => ({ ...post, station, foot: station * Math.tan(SLOPE) }));
const rail = { EA: 4e7, EI: 2e10, joint: "pinned" as const };
const raked: GuardFrameInput = {
  posts: feet,
  height: 900,
  topRail: rail,
  bottomRail: { ...rail, height: 90 },
  cables: [300, 600].map((height) => ({ left: 0, right: 2, height, slope_left: SLOPE, slope_right: SLOPE })),
};

describe("a guard frame on a slope", () => {
  // Two cantilevers: along the cable each gives cos^2 h^3 / 3EI by bending and sin^2 h / EA by its own length.
  test("of two posts without rails closes by 2 (cos^2 h^3 / (3 E I) + sin^2 h / (E A)) under 1 N along the slope", () => {
    const { flexibility } = guardFrame({
      posts: [feet[0], feet[1]].flatMap((one) => (one === undefined ? [] : [one])),
      height: 900,
      topRail: null,
      bottomRail: null,
      cables: [{ left: 0, right: 1, height: 600, slope_left: SLOPE, slope_right: SLOPE }],
    });
    const bending = 600 ** 3 / (3 * 10_000 * 6e6);
    const stretch = 600 / (10_000 * 8000);
    const closed = 2 * (Math.cos(SLOPE) ** 2 * bending + Math.sin(SLOPE) ** 2 * stretch);
    expect(flexibility[0]?.[0]).toBeCloseTo(closed, 12);
  });

  test("of two posts, level at one and on the slope at the other, closes by the sum of what each does", () => {
    const posts = [feet[0], feet[1]].flatMap((one) => (one === undefined ? [] : [one]));
    const bending = 600 ** 3 / (3 * 10_000 * 6e6);
    const sloped = Math.cos(SLOPE) ** 2 * bending + (Math.sin(SLOPE) ** 2 * 600) / (10_000 * 8000);
    for (const ends of [{ slope_left: SLOPE }, { slope_right: SLOPE }]) {
      const cables = [{ left: 0, right: 1, height: 600, ...ends }];
      const { flexibility } = guardFrame({ posts, height: 900, topRail: null, bottomRail: null, cables });
      expect(flexibility[0]?.[0]).toBeCloseTo(bending + sloped, 12);
    }
  });

  test("has a symmetric flexibility, and cables that lie within it leave no force on its bases together", () => {
    const guard = guardFrame(raked);
    expect(guard.flexibility[0]?.[1]).toBeCloseTo(guard.flexibility[1]?.[0] ?? 0, 12);
    const { baseShear, baseThrust } = sideState(guard, { tensions: [1000, 1200] });
    const total = (forces: readonly number[]): number => forces.reduce((sum, force) => sum + force, 0);
    expect(total(baseShear)).toBeCloseTo(0, 6);
    expect(total(baseThrust)).toBeCloseTo(0, 6);
  });

  test("lifts the post at its foot and presses down on the one at its head", () => {
    const { baseThrust } = sideState(guardFrame(raked), { tensions: [1000, 1200] });
    expect(baseThrust[0]).toBeLessThan(0);
    expect(baseThrust[2]).toBeGreaterThan(0);
    const guard = guardFrame(raked);
    const state = sideState(guard, { tensions: [1000, 1200] });
    for (const nth of feet.keys()) expect(alongPost(guard, state, nth)(0).thrust).toBeCloseTo(baseThrust[nth] ?? Number.NaN, 6);
  });

  test("without slope is the level frame, number for number", () => {
    const level = { ...raked, posts: raked.posts.map(({ foot: _foot, ...one }) => one), cables: [{ left: 0, right: 2, height: 300 }] };
    const flat = { ...level, cables: [{ left: 0, right: 2, height: 300, slope_left: 0, slope_right: 0 }] };
    expect(guardFrame(flat).flexibility).toEqual(guardFrame(level).flexibility);
  });

  test("seen in a mirror closes as much", () => {
    const mirrored = {
      ...raked,
      posts: raked.posts.map((one) => ({ ...one, station: 3000 - one.station })).toReversed(),
      cables: raked.cables.map((one) => ({ ...one, slope_left: -SLOPE, slope_right: -SLOPE })),
    };
    expect(guardFrame(mirrored).flexibility[0]?.[1]).toBeCloseTo(guardFrame(raked).flexibility[0]?.[1] ?? 0, 12);
  });

  test("answers the same wherever it stands: its bases 700 mm further along and 300 mm higher, one of its tops held", () => {
    const here = {
      ...raked,
      posts: feet.map((one, nth) => (nth === 2 ? { ...one, top: "fixed" as const } : one)),
      blocks: [1200, 600, 2250],
    };
    const there = {
      ...here,
      posts: here.posts.map((one) => ({ ...one, station: one.station + 700, foot: one.foot + 300 })),
      blocks: [1300, 1900, 2950],
    };
    const [one, other] = [guardFrame(here), guardFrame(there)];
    expect(other.flexibility.flat()).toEqual(one.flexibility.flat().map((entry) => expect.closeTo(entry, 12)));
    expect(other.perDeckStrain.closing).toEqual(one.perDeckStrain.closing.map((closing) => expect.closeTo(closing, 6)));
    const moves = ({ perDeckStrain }: typeof one) => perDeckStrain.response.nodes.flatMap(({ x, y }) => [x, y]);
    expect(moves(other)).toEqual(moves(one).map((move) => expect.closeTo(move, 6)));
  });

  test("with blocks under its bottom rail holds that rail where the blocks stand, and moves no more than without", () => {
    const blocked = guardFrame({ ...raked, blocks: [750, 2250] });
    const free = guardFrame(raked);
    // A block stands under the rail on the line between its ends, so it takes no load from cables that lie along the slope alone.
    expect(blocked.built.frame.nodes.length).toBe(free.built.frame.nodes.length + 2);
    const props = blocked.built.frame.nodes.filter(({ support }) => support !== undefined && "y" in support && !("x" in support));
    expect(props.map(({ x, y }) => y - x * Math.tan(SLOPE)).map((above) => above.toFixed(9))).toEqual(["90.000000000", "90.000000000"]);
    expect(blocked.flexibility[0]?.[0]).toBeLessThanOrEqual((free.flexibility[0]?.[0] ?? 0) * (1 + 1e-9));
  });

  // A deck that grows as a whole moves every point away from the first base in proportion: the cable's anchors part by its length times the strain.
  test("on free posts follows a strain of its deck by the length of the cable along the slope", () => {
    const { perDeckStrain } = guardFrame({ ...raked, topRail: null, bottomRail: null });
    expect(perDeckStrain.closing[0]).toBeCloseTo(-3000 / Math.cos(SLOPE), 6);
  });
});
