import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lateralResponse } from "../../src/mechanics/lateral.ts";
import { pushAtAngle, pushThroughBesideRail, pushThroughForce, tensionForPush } from "../../src/mechanics/push-through.ts";

const push = {
  solid: { kind: "sphere", diameter: 101.6 },
  spacing: 76.2,
  cableDiameter: 3.175,
  span: 914.4,
  tension: 1000,
  stiffness: 782e3,
  runLength: 6096,
  support: "sliding",
} as const;
/** Housing Provisions 2022 (H5V1): the cone of the Australian test. */
const cone = { kind: "cone", diameter: 125, length: 105, noseDiameter: 20 } as const;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const supports = fc.constantFrom("held" as const, "sliding" as const);

describe("pushThroughForce", () => {
  it("internal value for 48 in, 3.125 in spacing, 1/8 in cable, 225 lbf: the linear force is 5.372 lbf (computed by hand)", () => {
    const { linear } = pushThroughForce({ ...push, spacing: 79.375, span: 1219.2, tension: 225 * 4.4482216152605 });
    expect((linear ?? 0) / 4.4482216152605).toBeCloseTo(5.372, 3);
  });

  it("a sphere smaller than the clear gap drops through with 0 N, also by the linear form", () => {
    const free = pushThroughForce({ ...push, solid: { kind: "sphere", diameter: 76.2 - 3.175 } });
    expect(free).toEqual({ force: 0, linear: 0, travel: 0, toGo: 0, cableDeflection: 0, tension_peak: 1000 });
    expect(pushThroughForce({ ...push, solid: { kind: "sphere", diameter: 30 } })).toEqual(free);
  });

  it("a cone between cables that its nose does not clear jams: Infinity", () => {
    expect(pushThroughForce({ ...push, solid: cone, spacing: 20 }).force).toBe(Number.POSITIVE_INFINITY);
    expect(pushThroughForce({ ...push, solid: cone, spacing: 20 }).linear).toBeNull();
  });

  it("a sphere whose contact normal and friction angle make a right angle drags the cables along: Infinity", () => {
    const angle = Math.acos(76.2 / (101.6 + 3.175));
    const jamming = Math.tan(Math.PI / 2 - angle);
    expect(pushThroughForce({ ...push, friction: jamming * 1.001 }).force).toBe(Number.POSITIVE_INFINITY);
    expect(pushThroughForce({ ...push, friction: jamming * 0.9 }).force).toBeLessThan(Number.POSITIVE_INFINITY);
  });

  it("the frictionless cone of slope 1 in 2 peaks on its shoulder: 2 P(d) sin(atan 0.5) with d = (62.5 + r cos - 40) / cos", () => {
    const load = { ...push, solid: cone, spacing: 80, support: "held" as const };
    const slope = Math.atan(0.5);
    const d = (62.5 + (3.175 / 2) * Math.cos(slope) - 40) / Math.cos(slope);
    const half = push.span / 2;
    const tension = 1000 + ((782e3 + 1000) * (Math.hypot(half, d) - half)) / half;
    const { force, tension_peak, travel, toGo, cableDeflection } = pushThroughForce(load);
    expect(cableDeflection).toBeCloseTo(d, 6);
    expect(tension_peak).toBeCloseTo(tension, 6);
    expect(force).toBeCloseTo(2 * ((2 * tension * d) / Math.hypot(half, d)) * Math.sin(slope), 6);
    // The cone moves on by its widening, d / tan(slope) along the way of the cable d sin and across it d cos.
    expect(travel).toBeCloseTo((d * Math.cos(slope)) / Math.tan(slope) + d * Math.sin(slope), 6);
    // The cable lies on the shoulder, ahead of it by r sin, and was moved along by d sin.
    expect(toGo).toBeCloseTo((3.175 / 2 - d) * Math.sin(slope), 6);
  });

  it("a gap that only the shoulder of a cone grazes still asks a small force, and none when it clears the cylinder", () => {
    const graze = pushThroughForce({ ...push, solid: cone, spacing: 125 + 2.9 });
    expect(graze.force).toBeGreaterThan(0);
    expect(graze.force).toBeLessThan(1);
    // 1.45 mm from the edge of the cylinder to the cable's middle: the shoulder touches it at acos(1.45 / r), before the slope of the cone does.
    expect(graze.travel + graze.toGo).toBeCloseTo(Math.sqrt((3.175 / 2) ** 2 - 1.45 ** 2), 9);
    expect(pushThroughForce({ ...push, solid: cone, spacing: 125 + 3.175 }).force).toBe(0);
  });

  it("the middle of the span holds less than its quarter point", () => {
    expect(pushThroughForce(push).force).toBeLessThan(pushThroughForce({ ...push, at: push.span / 4 }).force);
  });

  it("refuses sizes, spans and frictions that cannot be", () => {
    for (const wrong of [
      { spacing: 0 },
      { cableDiameter: 0 },
      { solid: { kind: "sphere", diameter: 0 } },
      { solid: { ...cone, length: 0 } },
      { solid: { ...cone, noseDiameter: 125 } },
      { solid: { ...cone, noseDiameter: 0 } },
      { friction: -0.1 },
      { span: 0 },
      { tension: -1 },
    ] as const) {
      expect(() => pushThroughForce({ ...push, ...wrong })).toThrow(RangeError);
    }
  });

  it("law: a larger sphere, or cone, never passes easier", () => {
    fc.assert(
      fc.property(
        number(30, 200),
        number(1, 1.5),
        number(0, 4000),
        supports,
        number(0, 0.3),
        (diameter, factor, tension, support, friction) => {
          const load = { ...push, tension, support, friction };
          const sphere = (size: number) => pushThroughForce({ ...load, solid: { kind: "sphere", diameter: size } }).force;
          expect(sphere(diameter * factor)).toBeGreaterThanOrEqual(sphere(diameter) * (1 - 1e-12));
          const scaled = (size: number) => pushThroughForce({ ...load, solid: { ...cone, diameter: size + 20 } }).force;
          expect(scaled(diameter * factor)).toBeGreaterThanOrEqual(scaled(diameter) * (1 - 1e-12));
        },
      ),
    );
  });

  it("law: more tension, more push; closer cables, more push; a held span, no less push; friction, no less push", () => {
    fc.assert(
      fc.property(number(0, 4000), number(1, 1000), number(50, 100), supports, (tension, more, spacing, support) => {
        const load = { ...push, tension, spacing, support };
        const { force } = pushThroughForce(load);
        expect(pushThroughForce({ ...load, tension: tension + more }).force).toBeGreaterThan(force);
        expect(pushThroughForce({ ...load, spacing: spacing - 2 }).force).toBeGreaterThan(force);
        expect(pushThroughForce({ ...load, support: "held" }).force).toBeGreaterThanOrEqual(force);
        expect(pushThroughForce({ ...load, friction: 0.1 }).force).toBeGreaterThan(force);
      }),
    );
  });

  it("law: the place of the sphere mirrored gives the same push", () => {
    fc.assert(
      fc.property(number(0.05, 0.95), (share) => {
        const [one, other] = [share, 1 - share].map((part) => pushThroughForce({ ...push, at: part * push.span }).force);
        expect(one).toBeCloseTo(other ?? Number.NaN, 6);
      }),
    );
  });

  it("law: the linear form is never above the answer with rise of tension", () => {
    fc.assert(
      fc.property(number(10, 4000), number(55, 100), number(600, 2000), supports, (tension, spacing, span, support) => {
        const { force, linear } = pushThroughForce({ ...push, tension, spacing, span, support });
        expect(linear ?? Number.NaN).toBeLessThanOrEqual(force * (1 + 1e-9));
      }),
    );
  });
});

/**
 * Greatest push of a sphere by the parts of what it does to a cable: N across it and mu N along it, which bend the cable by d the way
 * that both together push. The rail beside it, if there is one, carries the part across and rubs with mu of that.
 */
function pushByParts({ offset, friction, isRail }: { offset: number; friction: number; isRail: boolean }): number {
  const centres = (push.solid.diameter + push.cableDiameter) / 2;
  const start = Math.acos(offset / centres);
  const pushes = Array.from({ length: 4001 }, (_, index) => {
    const angle = (start * index) / 4000;
    const [on, across] = [Math.sin(angle) + friction * Math.cos(angle), Math.cos(angle) - friction * Math.sin(angle)];
    const whole = Math.hypot(on, across);
    const deflection = Math.max(0, ((centres * Math.cos(angle) - offset) * whole) / across);
    const normal = lateralResponse({ ...push, deflection }).force / whole;
    return isRail ? normal * (on + friction * across) : 2 * normal * on;
  });
  return Math.max(...pushes);
}

describe("friction", () => {
  it.each([0.1, 0.2, 0.3])("of %f: between two cables, and beside a rail, the push is that of its parts (Coulomb)", (friction) => {
    const pair = pushThroughForce({ ...push, friction }).force;
    expect(pair / pushByParts({ offset: push.spacing / 2, friction, isRail: false })).toBeCloseTo(1, 6);
    const rail = pushThroughBesideRail({ ...push, gap: 90, friction }).force;
    expect(rail / pushByParts({ offset: 90 - push.solid.diameter / 2, friction, isRail: true })).toBeCloseTo(1, 6);
  });
});

describe("pushAtAngle", () => {
  it("nowhere on the way is the push above its peak; it is 0 at first touch and when the sphere is half through", () => {
    const peak = pushThroughForce(push).force;
    const start = Math.acos(76.2 / (101.6 + 3.175));
    const along = Array.from({ length: 101 }, (_, index) => pushAtAngle({ ...push, normal: (start * index) / 100 }));
    for (const state of along) expect(state.force).toBeLessThanOrEqual(peak * (1 + 1e-12));
    expect(along[0]).toMatchObject({ force: 0, toGo: 0 });
    expect(along.at(-1)?.force).toBeCloseTo(0, 9);
    // Before first touch nothing is deflected.
    expect(pushAtAngle({ ...push, normal: start * 1.1 }).cableDeflection).toBe(0);
  });
});

describe("pushThroughBesideRail", () => {
  it("without friction a rail at 76 mm is the mirror of a second cable: half the push of two cables 2 (76 - 50.8) mm apart", () => {
    const pair = pushThroughForce({ ...push, spacing: 2 * (76 - 50.8) });
    const rail = pushThroughBesideRail({ ...push, gap: 76 });
    expect(rail.force).toBeCloseTo(pair.force / 2, 9);
    expect(rail.linear ?? 0).toBeCloseTo((pair.linear ?? 0) / 2, 9);
  });

  it("rubbing on the rail as well as on the cable: more push with friction", () => {
    const smooth = pushThroughBesideRail({ ...push, gap: 90 }).force;
    expect(pushThroughBesideRail({ ...push, gap: 90, friction: 0.2 }).force).toBeGreaterThan(smooth * 1.2);
  });

  it("a gap of the sphere and half the cable lets it drop through; below half the sphere the cable is pinched: Infinity", () => {
    expect(pushThroughBesideRail({ ...push, gap: 101.6 + 3.175 / 2 }).force).toBe(0);
    expect(pushThroughBesideRail({ ...push, gap: 50 })).toMatchObject({
      force: Number.POSITIVE_INFINITY,
      linear: Number.POSITIVE_INFINITY,
    });
  });

  it("refuses a gap of 0", () => {
    expect(() => pushThroughBesideRail({ ...push, gap: 0 })).toThrow(RangeError);
  });
});

describe("tensionForPush", () => {
  const { tension: _tension, ...rest } = push;

  it("law: the tension found holds the force, to 1e-8", () => {
    fc.assert(
      fc.property(number(5, 150), number(60, 95), supports, (force, spacing, support) => {
        const tension = tensionForPush({ ...rest, spacing, support, force });
        // The search ends at 2 % of the axial stiffness, beyond any strand.
        const held = pushThroughForce({ ...rest, spacing, support, tension: Math.min(tension, 0.02 * rest.stiffness) }).force;
        if (tension === 0) expect(held).toBeGreaterThanOrEqual(force);
        else if (tension === Number.POSITIVE_INFINITY) expect(held).toBeLessThan(force);
        else expect(Math.abs(held / force - 1)).toBeLessThan(1e-8);
      }),
    );
  });

  it("is 0 where slack cables hold, and Infinity where the sphere drops through or the stated greatest tension does not hold", () => {
    expect(tensionForPush({ ...rest, spacing: 40, support: "held", force: 1 })).toBe(0);
    expect(tensionForPush({ ...rest, spacing: 120, force: 1 })).toBe(Number.POSITIVE_INFINITY);
    const needed = tensionForPush({ ...rest, force: 50 });
    expect(tensionForPush({ ...rest, force: 50, tension_max: needed * 0.99 })).toBe(Number.POSITIVE_INFINITY);
    expect(tensionForPush({ ...rest, force: 50, tension_max: needed * 1.01 })).toBeCloseTo(needed, 3);
  });

  it("never throws: nonsense is held by no tension", () => {
    expect(tensionForPush({ ...rest, spacing: Number.NaN, force: 50 })).toBe(Number.POSITIVE_INFINITY);
  });
});
