import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { capstanRatio, drawInLoss, greatestAt, leastBetween, tensionAt, tensionProfile } from "../../src/mechanics/corner.ts";

const RIGHT = Math.PI / 2;
const run = {
  length: 12_000,
  bends: [{ at: 4000, angle: RIGHT }],
  friction: 0.3,
  wobble_perMm: 0,
  pull_left: 1000,
  pull_right: null,
} as const;

describe("greatestAt", () => {
  it("at a bend it is the side towards the pull: the whole of it at the first bend, while the least is 0.624 of it behind", () => {
    const profile = tensionProfile(run);
    expect(greatestAt(profile, 4000)).toBe(1000);
    expect(tensionAt(profile, 4000)).toBeCloseTo(1000 * Math.exp(-0.15 * Math.PI), 9);
    expect(greatestAt(profile, 9000)).toBeCloseTo(tensionAt(profile, 9000), 9);
  });

  it("refuses a place off the run", () => expect(() => greatestAt(tensionProfile(run), 12_001)).toThrow(RangeError));
});

describe("capstanRatio", () => {
  it("a right angle at a friction of 0.3 leaves 0.624 of the pull, to the left or to the right (exp(-0.15 pi))", () => {
    expect(capstanRatio({ friction: 0.3, angle: RIGHT })).toBeCloseTo(Math.exp(-0.15 * Math.PI), 15);
    expect(capstanRatio({ friction: 0.3, angle: -RIGHT })).toBe(capstanRatio({ friction: 0.3, angle: RIGHT }));
  });

  it("refuses a friction below 0", () => {
    expect(() => capstanRatio({ friction: -0.1, angle: 1 })).toThrow(RangeError);
  });
});

describe("tensionProfile", () => {
  it("a straight run without wobble keeps its pull to the far end", () => {
    const profile = tensionProfile({ ...run, bends: [] });
    expect(profile.segments).toEqual([{ from: 0, to: 12_000, tension_from: 1000, tension_to: 1000 }]);
    expect(profile).toMatchObject({ least: 1000, leastAt: 0, integral_NMm: 12e6 });
  });

  it("with wobble alone, pulled from both ends of 12 m, the least tension stands in the middle: T exp(-kappa L / 2)", () => {
    const profile = tensionProfile({ ...run, bends: [], wobble_perMm: 1e-5, pull_right: 1000 });
    expect(profile.segments).toHaveLength(2);
    expect(profile.leastAt).toBeCloseTo(6000, 9);
    expect(profile.least).toBeCloseTo(1000 * Math.exp(-0.06), 9);
    // Closed form of the integral of both halves.
    expect(profile.integral_NMm).toBeCloseTo((2 * 1000 * (1 - Math.exp(-0.06))) / 1e-5, 3);
  });

  it("with wobble alone, pulled from one end, the least tension stands at the other: T exp(-kappa L)", () => {
    const profile = tensionProfile({ ...run, bends: [], wobble_perMm: 1e-5 });
    expect(profile.leastAt).toBe(12_000);
    expect(profile.least).toBeCloseTo(1000 * Math.exp(-0.12), 9);
  });

  it("where nothing rubs, a bend leaves the pull as it is", () => {
    expect(tensionProfile({ ...run, friction: 0 })).toMatchObject({ least: 1000, integral_NMm: 12e6 });
    expect(capstanRatio({ friction: 0, angle: RIGHT })).toBe(1);
  });

  it("with unequal pulls and wobble the profiles meet where exp(-kappa x) 1000 = exp(-kappa (L - x)) 950", () => {
    const profile = tensionProfile({ ...run, bends: [], wobble_perMm: 1e-5, pull_right: 950 });
    const meet = 6000 + Math.log(1000 / 950) / 2e-5;
    expect(profile.leastAt).toBeCloseTo(meet, 6);
    expect(profile.least).toBeCloseTo(1000 * Math.exp(-1e-5 * meet), 9);
  });

  it("takes bends in any order and on the same post, and a bend at the very end", () => {
    const bends = [
      { at: 4000, angle: -0.5 },
      { at: 0, angle: 0.1 },
      { at: 4000, angle: 0.25 },
      { at: 12_000, angle: 0.1 },
    ];
    const profile = tensionProfile({ ...run, bends });
    expect(profile.segments).toHaveLength(2);
    expect(profile.segments[0]?.tension_from).toBeCloseTo(1000 * Math.exp(-0.03), 9);
    expect(profile.segments[1]?.tension_from).toBeCloseTo(1000 * Math.exp(-0.3 * 0.85), 9);
  });

  it("pulled from the right alone, 1000 N stand right of the corner and 624 N left of it", () => {
    const profile = tensionProfile({ ...run, pull_left: null, pull_right: 1000 });
    expect(profile.segments.map((segment) => segment.tension_from)).toEqual([1000 * Math.exp(-0.3 * RIGHT), 1000]);
    expect(profile.leastAt).toBe(0);
  });

  it("a pull of 0 leaves nothing anywhere", () => {
    const slack = tensionProfile({ ...run, wobble_perMm: 1e-5, pull_left: 0 });
    expect(slack).toMatchObject({ least: 0, integral_NMm: 0 });
    expect(tensionAt(slack, 5000)).toBe(0);
  });

  it("refuses a run that nobody pulls, of no length, with a bend off it, or with friction or wobble below 0", () => {
    for (const wrong of [
      { pull_left: null },
      { length: 0, bends: [] },
      { bends: [{ at: 12_001, angle: 1 }] },
      { bends: [{ at: -1, angle: 1 }] },
      { friction: -0.1 },
      { wobble_perMm: -1 },
    ]) {
      expect(() => tensionProfile({ ...run, ...wrong })).toThrow(RangeError);
    }
  });

  const bendList = fc.array(fc.record({ at: fc.integer({ min: 1, max: 11_999 }), angle: fc.double({ min: -2, max: 2, noNaN: true }) }), {
    maxLength: 6,
  });

  it("law: the mirrored run has the mirrored tensions, and pulling the other end too lowers none", () => {
    fc.assert(
      fc.property(bendList, fc.double({ min: 0, max: 2e-5, noNaN: true }), (bends, wobble_perMm) => {
        const both = { ...run, bends, wobble_perMm, pull_right: 800 };
        const profile = tensionProfile(both);
        const mirrored = tensionProfile({
          ...both,
          bends: bends.map(({ at, angle }) => ({ at: run.length - at, angle })),
          pull_left: 800,
          pull_right: 1000,
        });
        expect(mirrored.least).toBeCloseTo(profile.least, 6);
        expect(mirrored.integral_NMm / profile.integral_NMm).toBeCloseTo(1, 9);
        const single = tensionProfile({ ...both, pull_right: null });
        for (const at of [0, 1234, 6000, 9876, 12_000]) {
          expect(tensionAt(mirrored, run.length - at)).toBeCloseTo(tensionAt(profile, at), 6);
          expect(tensionAt(profile, at)).toBeGreaterThanOrEqual(tensionAt(single, at) - 1e-9);
        }
      }),
    );
  });

  it("law: twice the pull is twice the tension and the stretch", () => {
    fc.assert(
      fc.property(bendList, (bends) => {
        const once = tensionProfile({ ...run, bends, wobble_perMm: 1e-6 });
        const twice = tensionProfile({ ...run, bends, wobble_perMm: 1e-6, pull_left: 2000 });
        expect(twice.least).toBeCloseTo(2 * once.least, 9);
        expect(twice.integral_NMm / once.integral_NMm).toBeCloseTo(2, 12);
      }),
    );
  });
});

describe("tensionAt", () => {
  const profile = tensionProfile(run);

  it("is 1000 N before the corner at 4000 mm and 624 N behind it; at the corner, the smaller", () => {
    expect(tensionAt(profile, 3999)).toBe(1000);
    expect(tensionAt(profile, 4001)).toBeCloseTo(624.23, 2);
    expect(tensionAt(profile, 4000)).toBeCloseTo(624.23, 2);
  });

  it("refuses a place off the run", () => {
    expect(() => tensionAt(profile, 12_001)).toThrow(RangeError);
    expect(() => tensionAt(profile, -1)).toThrow(RangeError);
  });
});

describe("leastBetween", () => {
  const profile = tensionProfile(run);

  it("a span that ends at the corner has 1000 N, one that begins there 624 N, one across it 624 N", () => {
    expect(leastBetween(profile, 1000, 4000)).toBe(1000);
    expect(leastBetween(profile, 4000, 5000)).toBeCloseTo(624.23, 2);
    expect(leastBetween(profile, 1000, 5000)).toBeCloseTo(624.23, 2);
  });

  it("a span of no length is a place", () => {
    expect(leastBetween(profile, 5000, 5000)).toBeCloseTo(624.23, 2);
  });

  it("under wobble the far end of a span is its least", () => {
    const wobbly = tensionProfile({ ...run, bends: [], wobble_perMm: 1e-5 });
    expect(leastBetween(wobbly, 2000, 3000)).toBeCloseTo(1000 * Math.exp(-0.03), 9);
  });
});

describe("drawInLoss", () => {
  it("without friction 5 mm of slip on 20 m of EA 555,750 kN loses s EA / L along the whole run", () => {
    const { reach, loss } = drawInLoss({ slip: 5, stiffness: 555.75e6, loss_NPerMm: 0, length: 20_000 });
    expect(reach).toBe(20_000);
    expect(loss).toBeCloseTo((5 * 555.75e6) / 20_000, 6);
  });

  it("the two forms meet where the reach is the length: s = p L^2 / EA", () => {
    const end = { stiffness: 8e5, loss_NPerMm: 0.05, length: 6000 };
    const slip = (0.05 * 6000 ** 2) / 8e5;
    const [inside, beyond] = [drawInLoss({ ...end, slip: slip * (1 - 1e-9) }), drawInLoss({ ...end, slip: slip * (1 + 1e-9) })];
    expect(inside.reach).toBeCloseTo(6000, 4);
    expect(inside.loss).toBeCloseTo(beyond.loss, 4);
    expect(beyond.reach).toBe(6000);
  });

  it("an end that does not slip loses nothing, with friction or without", () => {
    expect(drawInLoss({ slip: 0, stiffness: 8e5, loss_NPerMm: 0.05, length: 6000 }).loss).toBe(0);
    expect(drawInLoss({ slip: 0, stiffness: 8e5, loss_NPerMm: 0, length: 6000 }).loss).toBe(0);
  });

  it("refuses a stiffness or length of 0 and a slip or loss below 0", () => {
    expect(() => drawInLoss({ slip: 1, stiffness: 1, loss_NPerMm: 1, length: 0 })).toThrow(RangeError);
    expect(() => drawInLoss({ slip: 1, stiffness: 1, loss_NPerMm: -1, length: 1 })).toThrow(RangeError);
    expect(() => drawInLoss({ slip: 1, stiffness: 0, loss_NPerMm: 1, length: 1 })).toThrow(RangeError);
    expect(() => drawInLoss({ slip: -1, stiffness: 1, loss_NPerMm: 1, length: 1 })).toThrow(RangeError);
  });
});
