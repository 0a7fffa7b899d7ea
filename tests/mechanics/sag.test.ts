import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSag, levelSag, shallowSag } from "../../src/mechanics/sag.ts";

const cable = { span: 1200, weight_NPerMm: 5e-4 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("levelSag", () => {
  it("a taut cable is a parabola: 1200 mm of 0.5 N/m at 1000 N sag w L^2 / 8 H = 0.09 mm", () => {
    expect(shallowSag({ ...cable, tension: 1000 })).toBeCloseTo(0.09, 12);
    // The next term of the series: f = w L^2 / 8 H (1 + (w L / 2 H)^2 / 12).
    expect(levelSag({ ...cable, tension: 1000 })).toBeCloseTo(0.09 * (1 + (0.6 / 2000) ** 2 / 12), 14);
  });

  it("a cable without weight does not sag", () => {
    expect(levelSag({ span: 1000, weight_NPerMm: 0, tension: 10 })).toBe(0);
  });

  it("refuses no span, a negative weight and no tension", () => {
    expect(() => levelSag({ ...cable, span: 0, tension: 1 })).toThrow(RangeError);
    expect(() => levelSag({ ...cable, weight_NPerMm: -1, tension: 1 })).toThrow(RangeError);
    expect(() => levelSag({ ...cable, tension: 0 })).toThrow(RangeError);
    expect(() => shallowSag({ ...cable, tension: 0 })).toThrow(RangeError);
  });

  it("law: more tension, less sag, and never less than the parabola", () => {
    fc.assert(
      fc.property(number(0.2, 1000), number(1.01, 10), (tension, factor) => {
        const sag = levelSag({ ...cable, tension });
        expect(levelSag({ ...cable, tension: tension * factor })).toBeLessThan(sag);
        expect(sag).toBeGreaterThanOrEqual(shallowSag({ ...cable, tension }) * (1 - 1e-12));
      }),
    );
  });
});

describe("fromSag", () => {
  it("law: the sag of the tension found is the sag, and T^2 = H^2 + (w S / 2)^2 at the ends", () => {
    fc.assert(
      fc.property(number(0.01, 1500), (sag) => {
        const { tension_horizontal, tension_end, length } = fromSag({ ...cable, sag });
        expect(levelSag({ ...cable, tension: tension_horizontal }) / sag).toBeCloseTo(1, 6);
        expect(Math.hypot(tension_horizontal, (cable.weight_NPerMm * length) / 2) / tension_end).toBeCloseTo(1, 9);
        expect(length).toBeGreaterThan(cable.span);
      }),
    );
  });

  it("refuses a sag of 0", () => {
    expect(() => fromSag({ ...cable, sag: 0 })).toThrow(RangeError);
    expect(() => fromSag({ ...cable, weight_NPerMm: 0, sag: 5 })).toThrow(RangeError);
  });
});
