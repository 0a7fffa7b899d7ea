import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { atAngleToGrain, bendPush, plugCapacity } from "../../src/mechanics/mouth-bearing.ts";

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
  const plug = { pressure: 2, diameter: 6, length: 10, mouths: 1, moment_Nmm: Number.POSITIVE_INFINITY } as const;

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
    const long = plugCapacity({ pressure: Fe, diameter: D, length: 500, mouths: 1, moment_Nmm });
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
      expect(() => plugCapacity({ ...plug, ...wrong })).toThrow(RangeError);
    }
  });
});
