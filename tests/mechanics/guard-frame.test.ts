import fc from "fast-check";
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { alongPost, type GuardFrame, guardFrame, largestMovement, sideState } from "../../src/mechanics/guard-frame.ts";
import type { GuardFrameInput, GuardPost } from "../../src/mechanics/guard-frame-build.ts";

/** A 4x4 of Douglas fir, as in the example jobs, on a base that turns. */
const post = (station: number, more: Partial<GuardPost> = {}): GuardPost => ({
  station,
  E: 11_000,
  A: 7903,
  I: 5.205e6,
  base: 3e7,
  ...more,
});
const heights = [100, 300, 500, 700, 850];
const side: GuardFrameInput = {
  posts: [post(0), post(1500), post(3000)],
  height: 915,
  topRail: { EA: 11_000 * 5322, EI: 11_000 * 6.4e5, joint: "pinned" },
  bottomRail: null,
  cables: heights.map((height) => ({ left: 0, right: 2, height })),
};
const even = heights.map(() => 1000);

const anySide = fc
  .record({
    inner: fc.array(fc.integer({ min: 1, max: 29 }), { maxLength: 3 }),
    bases: fc.array(fc.constantFrom<"fixed" | number>("fixed", 3e7, 2e8), { minLength: 5, maxLength: 5 }),
    I: fc.double({ min: 5e5, max: 5e7, noNaN: true }),
    shear: fc.option(fc.double({ min: 5e5, max: 1e8, noNaN: true }), { nil: undefined }),
    rail: fc.option(
      fc.record({
        EA: fc.oneof(fc.constant("rigid" as const), fc.double({ min: 1e6, max: 1e9, noNaN: true })),
        EI: fc.double({ min: 1e8, max: 1e11, noNaN: true }),
        joint: fc.constantFrom("pinned" as const, "rigid" as const),
      }),
      { nil: null },
    ),
    bottom: fc.option(
      fc.record({
        EA: fc.double({ min: 1e6, max: 1e9, noNaN: true }),
        EI: fc.constantFrom(0, 1e9),
        joint: fc.constantFrom("pinned" as const, "rigid" as const),
        height: fc.integer({ min: 40, max: 200 }),
      }),
      { nil: null },
    ),
    blocks: fc.array(fc.integer({ min: 0, max: 29 }), { maxLength: 2 }),
    cables: fc.uniqueArray(fc.integer({ min: 60, max: 900 }), { minLength: 2, maxLength: 6 }),
  })
  .map(({ inner, bases, I, shear, rail, bottom, blocks, cables }): GuardFrameInput => {
    const stations = [0, ...new Set(inner)].sort((a, b) => a - b).map((at) => at * 100);
    const more = { I, ...(shear === undefined ? {} : { GA: shear }) };
    const posts = [...stations, 3000].map((station, index) => post(station, { ...more, base: bases[index] ?? "fixed" }));
    return {
      posts,
      height: 915,
      topRail: rail,
      bottomRail: bottom,
      blocks: bottom === null ? [] : blocks.map((at) => 50 + 100 * at),
      cables: cables.map((height, index) => ({ left: 0, right: index % 2 === 0 ? posts.length - 1 : 1, height })),
      loads: [{ post: 0, height: 915 }],
    };
  });

const flat = ({ flexibility }: GuardFrame): readonly number[] => flexibility.flat();
const largest = (values: readonly number[]): number => Math.max(...values.map(Math.abs));

function mirrored(input: GuardFrameInput): GuardFrameInput {
  const last = input.posts.length - 1;
  const length = input.posts[last]?.station ?? 0;
  return {
    ...input,
    posts: input.posts.map((one) => ({ ...one, station: length - one.station })).reverse(),
    blocks: (input.blocks ?? []).map((at) => length - at),
    cables: input.cables.map(({ left, right, height }) => ({ left: last - right, right: last - left, height })),
    loads: [{ post: last, height: input.height }],
  };
}

describe("guardFrame", () => {
  it("two free posts: F_ij is twice the cantilever with a base spring, a b / k + a^2 (3 b - a) / 6 EI (beam tables; spring by hand)", () => {
    const free = guardFrame({
      ...side,
      posts: [post(0), post(3000)],
      topRail: null,
      cables: side.cables.map((one) => ({ ...one, right: 1 })),
    });
    const EI = 11_000 * 5.205e6;
    for (const [i, a] of heights.entries()) {
      for (const [j, b] of heights.entries()) {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(free.flexibility[i]?.[j]).toBeCloseTo(2 * ((a * b) / 3e7 + (low ** 2 * (3 * high - low)) / (6 * EI)), 12);
      }
    }
    expect(free.perPull[4]?.baseMoment[0]).toBeCloseTo(850, 9);
    expect(free.perPull[4]?.baseMoment[1]).toBeCloseTo(-850, 9);
    expect(free.perPull[4]?.topRailThrust).toEqual([]);
  });

  it("with shear, the two free posts' F_ij grows by 2 x the lower height / GA", () => {
    const free = { ...side, topRail: null, posts: [post(0), post(3000)], cables: side.cables.map((one) => ({ ...one, right: 1 })) };
    const [plain, soft] = [guardFrame(free), guardFrame({ ...free, posts: free.posts.map((one) => ({ ...one, GA: 4e6 })) })];
    for (const [i, a] of heights.entries()) {
      for (const [j, b] of heights.entries()) {
        expect((soft.flexibility[i]?.[j] ?? 0) - (plain.flexibility[i]?.[j] ?? 0)).toBeCloseTo((2 * Math.min(a, b)) / 4e6, 12);
      }
    }
  });

  it("a top held by a wall is a prop: P a^2 (3 L - a) / 2 L^3 on a fixed base (beam tables, from memory)", () => {
    const wall = guardFrame({
      ...side,
      topRail: null,
      posts: [post(0, { base: "fixed", top: "fixed" }), post(3000, { base: "fixed", top: 1e15 })],
      cables: [{ left: 0, right: 1, height: 500 }],
    });
    const prop = (500 ** 2 * (3 * 915 - 500)) / (2 * 915 ** 3);
    expect(wall.perPull[0]?.baseMoment[0]).toBeCloseTo(500 - prop * 915, 6);
    expect(wall.perPull[0]?.baseMoment[1]).toBeCloseTo(prop * 915 - 500, 6);
    expect(wall.perPull[0]?.baseShear[0]).toBeCloseTo(1 - prop, 9);
  });

  it("a rail that does not give acts as one that is a million times stiffer than this one, to 5 in a million", () => {
    const EA = 11_000 * 5322 * 1e6;
    const [rigid, stiff] = [
      guardFrame({ ...side, topRail: { EA: "rigid", EI: 7e9, joint: "pinned" } }),
      guardFrame({ ...side, topRail: { EA, EI: 7e9, joint: "pinned" } }),
    ];
    for (const [index, value] of flat(rigid).entries())
      expect(Math.abs(value - (flat(stiff)[index] ?? 0))).toBeLessThan(5e-6 * largest(flat(rigid)));
  });

  it("a bottom rail takes thrust and closes the anchors less; blocks under a rail that is hinged at the posts change nothing", () => {
    const bottomRail = { EA: 3e7, EI: 5e9, joint: "pinned" as const, height: 80 };
    const [bare, railed, blocked] = [side, { ...side, bottomRail }, { ...side, bottomRail, blocks: [2250, 750] }].map(guardFrame);
    if (!bare || !railed || !blocked) throw new Error("no frames");
    for (const i of heights.keys()) expect(railed.flexibility[i]?.[i]).toBeLessThan(bare.flexibility[i]?.[i] ?? 0);
    expect(railed.perPull[0]?.bottomRailThrust).toHaveLength(2);
    for (const { baseShear, topRailThrust, bottomRailThrust } of railed.perPull) {
      // The left post alone: base and rails hold against the pull of 1 N.
      expect(bottomRailThrust[0]).toBeGreaterThan(0);
      expect((baseShear[0] ?? 0) + (topRailThrust[0] ?? 0) + (bottomRailThrust[0] ?? 0)).toBeCloseTo(1, 9);
    }
    for (const [index, value] of flat(blocked).entries()) expect(value).toBeCloseTo(flat(railed)[index] ?? 0, 12);
  });

  it("a bottom rail of bars between two posts takes X = f_bj / (f_bb + L / EA) of a pull j and leaves F_ij - f_bi X (force method, by hand)", () => {
    const EA = 3e7;
    const cables = [...heights, 80].map((height) => ({ left: 0, right: 1, height }));
    const bare = { ...side, posts: [post(0), post(3000)], cables };
    const [without, railed] = [guardFrame(bare), guardFrame({ ...bare, bottomRail: { EA, EI: 0, joint: "pinned", height: 80 } })];
    const at = (i: number, j: number): number => without.flexibility[i]?.[j] ?? Number.NaN;
    const b = heights.length;
    for (const j of heights.keys()) {
      const X = at(b, j) / (at(b, b) + 3000 / EA);
      expect(railed.perPull[j]?.bottomRailThrust[0]).toBeCloseTo(X, 6);
      for (const i of heights.keys()) expect(railed.flexibility[i]?.[j]).toBeCloseTo(at(i, j) - at(b, i) * X, 12);
    }
  });

  it("in an open bay no bottom rail stands: posts behind it bend alone, P h^3 / 3EI + P h^2 / k, those before it share one bar (by hand)", () => {
    const [EA, E, I, k, low, h] = [3e7, 11_000, 5.205e6, 3e7, 80, 500];
    const bottomRail = { EA, EI: 0, joint: "pinned" as const, height: low, openBays: [1] };
    const frame = guardFrame({ ...side, topRail: null, bottomRail, cables: [{ left: 1, right: 2, height: h }] });
    // Of a lone post: movement at a by 1 N at b, a <= b: a^2 (3b - a) / 6EI + a b / k.
    const lone = (a: number, b: number): number => (a ** 2 * (3 * b - a)) / (6 * E * I) + (a * b) / k;
    const X = lone(low, h) / (2 * lone(low, low) + 1500 / EA);
    const held = lone(h, h) - lone(low, h) * X;
    expect(frame.perPull[0]?.bottomRailThrust).toHaveLength(2);
    expect(frame.perPull[0]?.bottomRailThrust[0]).toBeCloseTo(0 - X, 9);
    expect(frame.perPull[0]?.bottomRailThrust[1]).toBe(0);
    expect(frame.flexibility[0]?.[0]).toBeCloseTo(held + lone(h, h), 12);
  });

  it("blocks under a rail that is rigid with the posts stiffen it", () => {
    const bottomRail = { EA: 3e7, EI: 5e9, joint: "rigid" as const, height: 80 };
    const [railed, blocked] = [
      { ...side, bottomRail },
      { ...side, bottomRail, blocks: [750, 2250] },
    ].map(guardFrame);
    expect(blocked?.flexibility[4]?.[4]).toBeLessThan((railed?.flexibility[4]?.[4] ?? 0) * (1 - 1e-6));
  });

  it("runs that meet on an inner post: pulls of one run open the other", () => {
    const two = guardFrame({
      ...side,
      cables: [
        { left: 0, right: 1, height: 500 },
        { left: 1, right: 2, height: 500 },
      ],
    });
    expect(two.flexibility[0]?.[1]).toBeLessThan(0);
    expect(two.flexibility[0]?.[1]).toBeCloseTo(two.flexibility[1]?.[0] ?? Number.NaN, 15);
  });

  it("warmth: without rails the anchors part by the strain of the deck times the distance, with a rail of the same stuff too", () => {
    const free = guardFrame({ ...side, topRail: null });
    for (const closing of free.perDeckStrain.closing) expect(closing).toBeCloseTo(-3000, 6);
    for (const closing of free.perRailStrain.closing) expect(closing).toBe(0);
    const railed = guardFrame(side);
    for (const cable of heights.keys()) {
      expect((railed.perDeckStrain.closing[cable] ?? 0) + (railed.perRailStrain.closing[cable] ?? 0)).toBeCloseTo(-3000, 5);
    }
    expect(railed.perRailStrain.closing[4]).toBeLessThan(railed.perRailStrain.closing[0] ?? 0);
  });

  it("refuses a frame without posts, and a base that only a spring of nothing holds", () => {
    expect(() => guardFrame({ ...side, posts: [], topRail: null, cables: [] })).toThrow(RangeError);
    expect(() => guardFrame({ ...side, topRail: null, posts: [post(0, { base: 0 }), post(3000)], cables: [] })).toThrow("mechanism");
  });

  it("law: F is symmetric and positive definite, whatever the frame", () => {
    fc.assert(
      fc.property(anySide, (input) => {
        const { flexibility } = guardFrame(input);
        const size = largest(flexibility.flat());
        const even = new Matrix(
          flexibility.map((row, i) =>
            row.map((value, j) => {
              const other = flexibility[j]?.[i] ?? Number.NaN;
              expect(Math.abs(value - other)).toBeLessThanOrEqual(1e-7 * size);
              return (value + other) / 2;
            }),
          ),
        );
        expect(new CholeskyDecomposition(even).isPositiveDefinite()).toBe(true);
      }),
    );
  });

  it("law: the closing of a cable per load is the movement of the load's place per pull (reciprocity)", () => {
    fc.assert(
      fc.property(anySide, (input) => {
        const guard = guardFrame(input);
        for (const [cable, row] of guard.closingPerLoad.entries()) {
          expect(Math.abs((row[0] ?? 0) - (guard.perPull[cable]?.loaded[0] ?? Number.NaN))).toBeLessThanOrEqual(
            1e-8 * largest(flat(guard)),
          );
        }
      }),
    );
  });

  it("law: the mirrored side has the same F", () => {
    fc.assert(
      fc.property(anySide, (input) => {
        const [mine, theirs] = [guardFrame(input), guardFrame(mirrored(input))];
        const size = largest(flat(mine));
        for (const [index, value] of flat(mine).entries())
          expect(Math.abs(value - (flat(theirs)[index] ?? 0))).toBeLessThanOrEqual(1e-7 * size);
        // Towards greater stations is the other way round there.
        for (const [cable, state] of mine.perPull.entries()) {
          expect(Math.abs((state.loaded[0] ?? 0) + (theirs.perPull[cable]?.loaded[0] ?? Number.NaN))).toBeLessThanOrEqual(1e-7 * size);
        }
      }),
    );
  });

  it("law: a pull adds nothing to the sum of what the bases carry along the side, a load adds itself; thrusts on the bases and blocks sum to nothing", () => {
    fc.assert(
      fc.property(anySide, (input) => {
        const guard = guardFrame(input);
        const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);
        for (const state of guard.perPull) expect(sum(state.baseShear)).toBeCloseTo(0, 5);
        for (const state of guard.perLoad) expect(sum(state.baseShear)).toBeCloseTo(1, 5);
        for (const state of [...guard.perPull, ...guard.perLoad]) {
          expect(sum(state.response.reactions.map(({ y }) => y))).toBeCloseTo(0, 5);
          if ((input.blocks ?? []).length === 0) expect(sum(state.baseThrust)).toBeCloseTo(0, 5);
        }
      }),
    );
  });

  it("law: a stiffer rail closes the anchors less", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e6, max: 1e9, noNaN: true }), fc.double({ min: 1.2, max: 20, noNaN: true }), (EA, more) => {
        const of = (axial: number) => guardFrame({ ...side, topRail: { EA: axial, EI: 7e9, joint: "pinned" } });
        const [soft, stiff] = [of(EA), of(EA * more)];
        for (const i of heights.keys()) expect(stiff.flexibility[i]?.[i]).toBeLessThan(soft.flexibility[i]?.[i] ?? 0);
      }),
    );
  });
});

describe("sideState", () => {
  it("law: the state under tensions is the sum of the unit states times these", () => {
    fc.assert(
      fc.property(
        anySide,
        fc.array(fc.integer({ min: 0, max: 1500 }), { minLength: 6, maxLength: 6 }),
        fc.integer({ min: -900, max: 900 }),
        (input, sizes, load) => {
          const guard = guardFrame(input);
          const tensions = input.cables.map((_, index) => sizes[index] ?? 0);
          const state = sideState(guard, { tensions, loads: [load] });
          for (const [post] of input.posts.entries()) {
            const top = tensions.reduce(
              (sum, tension, cable) => sum + tension * (guard.perPull[cable]?.top[post] ?? 0),
              load * (guard.perLoad[0]?.top[post] ?? 0),
            );
            expect(Math.abs((state.top[post] ?? Number.NaN) - top)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(top)));
          }
        },
      ),
    );
  });

  it("closing of the anchors is F T, and warmth adds its own", () => {
    const guard = guardFrame(side);
    const state = sideState(guard, { tensions: even, deckStrain: 1e-4, railStrain: 2e-4 });
    for (const [i, row] of guard.flexibility.entries()) {
      const warmth = 1e-4 * (guard.perDeckStrain.closing[i] ?? 0) + 2e-4 * (guard.perRailStrain.closing[i] ?? 0);
      expect(state.closing[i]).toBeCloseTo(row.reduce((sum, one) => sum + one * 1000, 0) + warmth, 9);
    }
  });

  it("a load that is not named is none", () => {
    const guard = guardFrame({ ...side, loads: [{ post: 1, height: 500 }] });
    expect(sideState(guard, { tensions: even })).toEqual(sideState(guard, { tensions: even, loads: [0] }));
  });

  it("refuses tensions and loads that are not one for each", () => {
    const guard = guardFrame(side);
    expect(() => sideState(guard, { tensions: [1] })).toThrow("1 tensions for 5 cables");
    expect(() => sideState(guard, { tensions: even, loads: [1] })).toThrow("1 sizes for 0 loads");
  });
});

describe("alongPost", () => {
  const guard = guardFrame(side);
  const state = sideState(guard, { tensions: even });
  const left = alongPost(guard, state, 0);

  it("at the base it gives the base moment and shear, at the top the rail's thrust less what that takes", () => {
    expect(left(0).moment).toBeCloseTo(state.baseMoment[0] ?? Number.NaN, 6);
    expect(left(0).shear).toBeCloseTo(state.baseShear[0] ?? Number.NaN, 9);
    expect(left(0).movement).toBe(0);
    expect(left(0).lean).toBeCloseTo((state.baseMoment[0] ?? Number.NaN) / 3e7, 12);
    expect(left(915).moment).toBeCloseTo(0, 5);
    expect(left(915).shear).toBeCloseTo(-(state.topRailThrust[0] ?? Number.NaN), 6);
    expect(left(915).movement).toBeCloseTo(state.top[0] ?? Number.NaN, 12);
    expect(left(400).thrust).toBeCloseTo(state.baseThrust[0] ?? Number.NaN, 9);
  });

  it("the moment falls by shear times height between loads, and the shear by 1000 N at each cable", () => {
    expect(left(300).moment - left(500).moment).toBeCloseTo(left(400).shear * 200, 5);
    expect(left(500).shear - left(500.001).shear).toBeCloseTo(1000, 5);
  });

  it("refuses a height off the post and a post that is not there", () => {
    expect(() => left(916)).toThrow("height 916 mm is not on post 0");
    expect(() => left(-1)).toThrow(RangeError);
    expect(() => alongPost(guard, state, 3)(0)).toThrow("no post 3");
  });
});

describe("largestMovement", () => {
  it("of a deck that grows is that of the base", () => {
    const guard = guardFrame({ ...side, topRail: null });
    expect(largestMovement(guard, guard.perDeckStrain, { post: 2, towards: 1 }).movement).toBeCloseTo(3000, 9);
  });

  it("of a railed post lies between the cables, where the post stands upright; of a free one at its top", () => {
    const guard = guardFrame(side);
    const state = sideState(guard, { tensions: even });
    const { movement, height } = largestMovement(guard, state, { post: 0, towards: 1 });
    expect(alongPost(guard, state, 0)(height).lean).toBeCloseTo(0, 7);
    expect(movement).toBeGreaterThan(state.top[0] ?? 0);
    expect(largestMovement(guard, state, { post: 2, towards: -1 }).movement).toBeCloseTo(movement, 9);
    const free = guardFrame({ ...side, topRail: null, bottomRail: { EA: 1e6, EI: 0, joint: "pinned", height: 80 } });
    expect(largestMovement(free, sideState(free, { tensions: even }), { post: 0, towards: 1 }).height).toBe(915);
    expect(largestMovement(free, sideState(free, { tensions: even }), { post: 0, towards: -1 })).toEqual({ movement: 0, height: 0 });
  });
});

describe("largestMovement under loads at any heights", () => {
  it("law: no place on the post moves further that way, though the post swings to both sides between its loads", () => {
    const load = fc.record({ height: fc.integer({ min: 20, max: 900 }), size: fc.integer({ min: -2000, max: 2000 }) });
    fc.assert(
      fc.property(fc.array(load, { minLength: 2, maxLength: 5 }), fc.constantFrom(1 as const, -1 as const), (sizes, towards) => {
        const held = { ...post(0), base: "fixed" as const, top: "fixed" as const };
        const loads = sizes.map(({ height }) => ({ post: 0, height }));
        const guard = guardFrame({ posts: [held], height: 915, topRail: null, bottomRail: null, cables: [], loads });
        const state = sideState(guard, { tensions: [], loads: sizes.map(({ size }) => size) });
        const { movement, height } = largestMovement(guard, state, { post: 0, towards });
        const along = alongPost(guard, state, 0);
        expect(movement).toBeCloseTo(towards * along(height).movement, 12);
        const places = Array.from({ length: 62 }, (_, index) => towards * along(15 * index).movement);
        expect(movement).toBeGreaterThanOrEqual(Math.max(...places) - 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a cable whose bend pushes a post", () => {
  const posts = [0, 1500, 3000].map((station) => ({ station, E: 10_000, A: 7900, I: 5.2e6, base: 25e6 }));
  const rails = { height: 900, topRail: { EA: 5e7, EI: 6e9, joint: "pinned" as const }, bottomRail: null };
  const cables = [{ left: 0, right: 1, height: 400 }];
  const push = { post: 2, height: 500 };
  const factor = -0.7;

  it("closes by F + 2 p c + p^2 u: the cable alone, what its push adds to it twice (Maxwell), and the push alone", () => {
    const bare = guardFrame({ posts, ...rails, cables, loads: [push] });
    const pushed = guardFrame({ posts, ...rails, cables: [{ left: 0, right: 1, height: 400, pushes: [{ ...push, factor }] }] });
    const [own = 0] = bare.flexibility[0] ?? [];
    const [coupled = 0] = bare.closingPerLoad[0] ?? [];
    const alone = bare.perLoad[0]?.loaded[0] ?? 0;
    expect(pushed.flexibility[0]?.[0]).toBeCloseTo(own + 2 * factor * coupled + factor ** 2 * alone, 12);
  });

  it("a bend that pushes a free post upwards too adds p^2 h / EA; two such cables close each other alike (Maxwell)", () => {
    const up = { post: 2, height: 500, factor: 0, factor_up: 0.6 };
    const free = { posts, height: 900, topRail: null, bottomRail: null };
    const [bare, pushed] = [[], [up]].map((pushes) => guardFrame({ ...free, cables: [{ left: 0, right: 1, height: 400, pushes }] }));
    const more = (pushed?.flexibility[0]?.[0] ?? 0) - (bare?.flexibility[0]?.[0] ?? 0);
    expect(more / ((0.6 ** 2 * 500) / (10_000 * 7900))).toBeCloseTo(1, 6);
    const both = guardFrame({
      posts,
      ...rails,
      cables: [
        { left: 0, right: 1, height: 400, pushes: [{ ...up, factor }] },
        { left: 0, right: 2, height: 700, slope_left: 0.3 },
      ],
    });
    expect(both.flexibility[0]?.[1]).toBeCloseTo(both.flexibility[1]?.[0] ?? Number.NaN, 12);
  });

  it("a top that is held moves with the deck: bases and top 1 mm apart for each mm, and the anchors of a held post with them", () => {
    const held = posts.map((post, index) => (index === 2 ? { ...post, top: "fixed" as const } : post));
    const { perDeckStrain } = guardFrame({ posts: held, ...rails, cables });
    expect(perDeckStrain.top[2]).toBeCloseTo(3000, 6);
  });
});
