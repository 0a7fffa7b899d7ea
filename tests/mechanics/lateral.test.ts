import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deflectionUnder, lateralResponse, refuseSpan } from "../../src/mechanics/lateral.ts";

const span = { span: 1000, tension: 1000, stiffness: 782e3, runLength: 6000, support: "sliding" } as const;

const spans = fc.record({
  span: fc.double({ min: 100, max: 3000, noNaN: true }),
  tension: fc.double({ min: 0, max: 5000, noNaN: true }),
  stiffness: fc.double({ min: 1e5, max: 3e6, noNaN: true }),
  runLength: fc.double({ min: 3000, max: 20_000, noNaN: true }),
  support: fc.constantFrom("held" as const, "sliding" as const),
});

describe("lateralResponse", () => {
  it("no deflection asks no force and leaves the tension", () => {
    expect(lateralResponse({ ...span, deflection: 0 })).toEqual({ force: 0, tension: 1000 });
  });

  it("a 3-4-5 triangle: 2000 mm pushed 750 mm at the middle stretches by a quarter: T = 1.25 (EA + T0) - EA, P = 1.2 T", () => {
    const { force, tension } = lateralResponse({ ...span, span: 2000, support: "held", deflection: 750 });
    expect(tension).toBeCloseTo(1.25 * (782e3 + 1000) - 782e3, 6);
    expect(force).toBeCloseTo(1.2 * tension, 6);
  });

  it("off the middle: 2500 mm pushed 1200 mm at 900 mm makes sides of 1500 and 2000 mm, so P = T (0.8 + 0.6)", () => {
    const { force, tension } = lateralResponse({ ...span, span: 2500, at: 900, support: "held", deflection: 1200 });
    expect(tension).toBeCloseTo((3500 / 2500) * (782e3 + 1000) - 782e3, 6);
    expect(force).toBeCloseTo(1.4 * tension, 6);
  });

  it("in the limit of a small deflection P = T d (1/x + 1/(L - x))", () => {
    const { force } = lateralResponse({ ...span, at: 250, deflection: 1e-3 });
    expect(force / (1000 * 1e-3 * (1 / 250 + 1 / 750))).toBeCloseTo(1, 6);
  });

  it("a sliding run of one span is a held span", () => {
    const load = { ...span, deflection: 20, runLength: 1000 };
    expect(lateralResponse(load)).toEqual(lateralResponse({ ...load, support: "held" }));
  });

  it("refuses a deflection below 0", () => {
    expect(() => lateralResponse({ ...span, deflection: -1 })).toThrow(RangeError);
  });

  it("law: the push's place mirrored gives the same force and tension", () => {
    fc.assert(
      fc.property(spans, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (load, share) => {
        const [one, other] = [share, 1 - share].map((part) => lateralResponse({ ...load, at: part * load.span, deflection: 25 }));
        expect(one?.force).toBeCloseTo(other?.force ?? Number.NaN, 6);
        expect(one?.tension).toBeCloseTo(other?.tension ?? Number.NaN, 6);
      }),
    );
  });
});

describe("deflectionUnder", () => {
  it("no force, no deflection", () => {
    expect(deflectionUnder({ ...span, force: 0 })).toEqual({ deflection: 0, tension: 1000 });
  });

  it("law: the force of the deflection is the force, from a slack wire to a force that pulls it far out", () => {
    fc.assert(
      fc.property(
        spans,
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (load, force, share) => {
          const place = { ...load, at: share * load.span };
          const { deflection, tension } = deflectionUnder({ ...place, force });
          const back = lateralResponse({ ...place, deflection });
          expect(Math.abs(back.force / force - 1)).toBeLessThan(1e-12);
          expect(back.tension).toBe(tension);
        },
      ),
    );
  });

  it("law: more tension, less sag; a held span sags no more than a sliding one", () => {
    fc.assert(
      fc.property(
        spans,
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        (load, force, more) => {
          const sag = deflectionUnder({ ...load, force }).deflection;
          expect(deflectionUnder({ ...load, tension: load.tension + more, force }).deflection).toBeLessThan(sag);
          const [held, sliding] = (["held", "sliding"] as const).map((support) => deflectionUnder({ ...load, support, force }).deflection);
          expect(held ?? Number.NaN).toBeLessThanOrEqual((sliding ?? Number.NaN) * (1 + 1e-12));
        },
      ),
    );
  });

  it("law: in the linear part twice the force is twice the deflection, to 0.1 % at a ten-thousandth of the tension", () => {
    fc.assert(
      fc.property(fc.double({ min: 500, max: 5000, noNaN: true }), (tension) => {
        const once = deflectionUnder({ ...span, tension, force: tension * 1e-4 }).deflection;
        const twice = deflectionUnder({ ...span, tension, force: tension * 2e-4 }).deflection;
        expect(Math.abs(twice / once - 2)).toBeLessThan(0.002);
      }),
    );
  });

  it("refuses a force below 0", () => {
    expect(() => deflectionUnder({ ...span, force: -1 })).toThrow(RangeError);
  });
});

describe("refuseSpan", () => {
  it("refuses a push at the support, a negative tension, no stiffness and a sliding run shorter than its span", () => {
    for (const wrong of [{ at: 0 }, { at: 1000 }, { span: 0 }, { tension: -1 }, { stiffness: 0 }, { runLength: 999 }]) {
      expect(() => refuseSpan({ ...span, ...wrong })).toThrow(RangeError);
    }
    expect(() => refuseSpan({ ...span, support: "held", runLength: 1 })).not.toThrow();
  });
});
