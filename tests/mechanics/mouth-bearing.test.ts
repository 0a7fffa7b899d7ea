import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atAngleToGrain, bendPush, plugCapacity, pressedSide, SQUARE } from "../../src/mechanics/mouth-bearing.ts";

const RIGHT = Math.PI / 2;
const positive = (max: number) => fc.double({ min: max / 1000, max, noNaN: true });

describe("bendPush", () => {
  it("a right angle pushes with sqrt(2) of the tension, either way round; no bend does not push", () => {
    expect(bendPush({ tension: 1000, angle: RIGHT })).toBeCloseTo(1414.2136, 4);
    expect(bendPush({ tension: 1000, angle: -RIGHT })).toBe(bendPush({ tension: 1000, angle: RIGHT }));
    expect(bendPush({ tension: 1000, angle: 0 })).toBe(0);
    expect(bendPush({ tension: 0, angle: RIGHT })).toBe(0);
  });

  // Inside the bore the cable lies along it, so that across it only the tension outside presses: less one, after friction, or the greater.
  it("law: never less than what presses across the bore, T sin a, whichever side pulls harder", () => {
    fc.assert(
      fc.property(
        positive(5000),
        fc.double({ min: 0, max: RIGHT, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (T, a, mu) => {
          const push = bendPush({ tension: T, angle: a });
          for (const outside of [T, T * Math.exp(-mu * a)]) expect(push).toBeGreaterThanOrEqual(outside * Math.sin(a) - 1e-9);
        },
      ),
    );
  });

  it("refuses a tension below 0", () => {
    expect(() => bendPush({ tension: -1, angle: 1 })).toThrow(RangeError);
  });
});

describe("atAngleToGrain", () => {
  it("along the grain it is the one value, square to it the other, at 45 deg their harmonic mean", () => {
    const wood = { along: 1000, across: 400 };
    expect(atAngleToGrain({ ...wood, angle: 0 })).toBeCloseTo(1000, 9);
    expect(atAngleToGrain({ ...wood, angle: RIGHT })).toBeCloseTo(400, 9);
    expect(atAngleToGrain({ ...wood, angle: Math.PI / 4 })).toBeCloseTo((2 * 1000 * 400) / 1400, 9);
  });

  it("law: falls from the value along the grain to that across it", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: RIGHT, noNaN: true }), fc.double({ min: 0, max: RIGHT, noNaN: true }), (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const at = (angle: number): number => atAngleToGrain({ along: 6, across: 2, angle });
        expect(at(high)).toBeLessThanOrEqual(at(low) + 1e-12);
      }),
    );
  });

  it("refuses a stress of 0", () => {
    expect(() => atAngleToGrain({ along: 0, across: 1, angle: 0 })).toThrow(RangeError);
    expect(() => atAngleToGrain({ along: 1, across: 0, angle: 0 })).toThrow(RangeError);
  });
});

describe("plugCapacity", () => {
  const plug = { pressure: 2, diameter: 6, length: 10, mouths: 1, moment_Nmm: Number.POSITIVE_INFINITY, slants: SQUARE } as const;

  // NDS 2018, 12.3.1, mode II (from memory): k1 = (sqrt(Re + 2 Re^2 (1 + Rt + Rt^2) + Rt^2 Re^3) - Re (1 + Rt)) / (1 + Re); two members
  // alike, Rt = Re = 1, load a dowel at the plane between them as a cable loads a bushing at its mouth.
  it("a stiff plug loaded at one mouth: k1 of a dowel between two members alike, 0.414 of even pressure", () => {
    const [Re, Rt] = [1, 1];
    const k1 = (Math.sqrt(Re + 2 * Re ** 2 * (1 + Rt + Rt ** 2) + Rt ** 2 * Re ** 3) - Re * (1 + Rt)) / (1 + Re);
    expect(plugCapacity(plug)).toBeCloseTo(k1 * 2 * 6 * 10, 9);
  });

  // NDS 2018, 12.3.1, mode IV (from memory): D^2 sqrt(2 Fem Fyb / (3 (1 + Re))), with the plastic moment Fyb D^3 / 6 of a round dowel.
  it("a long one that bends: a dowel of mode IV", () => {
    const [Fe, Fyb, D] = [20, 300, 8];
    const moment_Nmm = (Fyb * D ** 3) / 6;
    const long = plugCapacity({ pressure: Fe, diameter: D, length: 500, mouths: 1, moment_Nmm, slants: SQUARE });
    expect(long).toBeCloseTo(D ** 2 * Math.sqrt((2 * Fe * Fyb) / (3 * 2)), 9);
  });

  it("law: forces and moments about the mouth are in balance, the pressure changing sides once", () => {
    fc.assert(
      fc.property(positive(20), positive(30), positive(150), (pressure, diameter, length) => {
        const push = plugCapacity({ ...plug, pressure, diameter, length });
        const line = pressure * diameter;
        const change = (push / line + length) / 2;
        expect((change ** 2 - (length ** 2 - change ** 2)) / length ** 2).toBeCloseTo(0, 9);
      }),
    );
  });

  it("loaded alike at both mouths it presses evenly: half of all at each; bent, no more than at one", () => {
    expect(plugCapacity({ ...plug, mouths: 2 })).toBeCloseTo(60, 12);
    expect(plugCapacity({ ...plug, mouths: 2, moment_Nmm: 1 })).toBeCloseTo(Math.sqrt(2 * 2 * 6), 12);
  });

  it("law: at the moment that a stiff plug asks for both bounds meet; a greater moment brings nothing", () => {
    const straight = plugCapacity(plug);
    const moment_Nmm = straight ** 2 / (2 * 2 * 6);
    expect(plugCapacity({ ...plug, moment_Nmm })).toBeCloseTo(straight, 9);
    expect(plugCapacity({ ...plug, moment_Nmm: 2 * moment_Nmm })).toBeCloseTo(straight, 9);
    expect(plugCapacity({ ...plug, moment_Nmm: moment_Nmm / 2 })).toBeCloseTo(straight / Math.SQRT2, 9);
  });

  it("refuses a pressure, a diameter, a length or a moment of 0", () => {
    for (const wrong of [{ pressure: 0 }, { diameter: 0 }, { length: 0 }, { moment_Nmm: 0 }]) {
      expect(() => plugCapacity({ ...plug, ...wrong })).toThrow("must be positive");
    }
  });
});

/** A plug in slices from one side to the other: how long the pressure lies on each to one side, and what that makes about the mouth. */
function sliced(plug: { readonly diameter: number; readonly length: number; readonly slants: typeof SQUARE }, change: number) {
  const { diameter, length, slants } = plug;
  const count = 20_000;
  const sum = { area: 0, moment: 0, whole: 0, wholeMoment: 0 };
  for (let slice = 0; slice < count; slice += 1) {
    const z = ((slice + 0.5) / count - 0.5) * diameter;
    const off = Math.sqrt(diameter ** 2 / 4 - z ** 2);
    const [from, to] = [off * slants.near, length - off * slants.far];
    sum.area += change - from;
    sum.moment += (change ** 2 - from ** 2) / 2;
    sum.whole += to - from;
    sum.wholeMoment += (to ** 2 - from ** 2) / 2;
  }
  const width = diameter / count;
  return { area: sum.area * width, moment: sum.moment * width, whole: sum.whole * width, wholeMoment: sum.wholeMoment * width };
}

describe("plugCapacity of a plug whose ends are not square", () => {
  const stiff = { pressure: 2, diameter: 16, length: 99, mouths: 1, moment_Nmm: Number.POSITIVE_INFINITY } as const;
  const slants = fc.record({ near: fc.double({ min: -0.7, max: 1, noNaN: true }), far: fc.double({ min: -0.7, max: 1, noNaN: true }) });

  it("law: stiff, the pressure on its slices is in balance about the mouth, changing sides once", () => {
    fc.assert(
      fc.property(slants, (own) => {
        const plug = { ...stiff, slants: own };
        const { whole } = sliced(plug, 0);
        // The push is the pressure on what lies before the change less that on what lies behind it.
        const near = (Math.PI * plug.diameter * own.near) / 8;
        const change = (plugCapacity(plug) / plug.pressure + whole) / (2 * plug.diameter) + near;
        const { moment, wholeMoment } = sliced(plug, change);
        expect((2 * moment - wholeMoment) / wholeMoment).toBeCloseTo(0, 6);
      }),
      { numRuns: 20 },
    );
  });

  it("law: bent, its moment is the given one where the pressure on its slices has taken up the push", () => {
    fc.assert(
      fc.property(slants, fc.double({ min: 5e3, max: 3e4, noNaN: true }), (own, moment_Nmm) => {
        const plug = { ...stiff, length: 500, slants: own, moment_Nmm };
        const near = (Math.PI * plug.diameter * own.near) / 8;
        const change = plugCapacity(plug) / (plug.pressure * plug.diameter) + near;
        const { area, moment } = sliced(plug, change);
        expect((plug.pressure * area) / plugCapacity(plug)).toBeCloseTo(1, 5);
        // Push times its arm less the pressure times its arm is the pressure's moment about the mouth.
        expect((plug.pressure * moment) / moment_Nmm).toBeCloseTo(1, 5);
      }),
      { numRuns: 20 },
    );
  });

  // A tube of 16 mm in a bore of 99 mm on the mitre, both ends cut at 45 deg: its pressed side is 83 mm at the middle and 99 mm at its
  // edges, pi / 4 of the 16 mm less in the mean.
  it("on the mitre both ends take pi D / 8 from the even pressure: 86.43 of 99 mm bear", () => {
    const mitred = { ...stiff, mouths: 2, slants: { near: 1, far: 1 } } as const;
    expect(plugCapacity(mitred)).toBeCloseTo((2 * 16 * 86.43363) / 2, 4);
    expect(pressedSide(mitred)).toBeCloseTo(83, 12);
  });

  it("law: the shorter the pressed side, the less it bears; square ends are the case between", () => {
    for (const mouths of [1, 2] as const) {
      for (const moment_Nmm of [2e4, Number.POSITIVE_INFINITY]) {
        const at = (slant: number): number => plugCapacity({ ...stiff, mouths, moment_Nmm, slants: { near: slant, far: slant } });
        expect(at(1)).toBeLessThan(at(0.3));
        expect(at(0.3)).toBeLessThan(at(0));
        expect(at(0)).toBeLessThan(at(-0.3));
        expect(at(0)).toBeCloseTo(plugCapacity({ ...stiff, mouths, moment_Nmm, slants: SQUARE }), 12);
      }
    }
  });

  it("refuses slants that meet", () => {
    expect(() => plugCapacity({ ...stiff, length: 16, slants: { near: 1, far: 1 } })).toThrow(RangeError);
  });
});
