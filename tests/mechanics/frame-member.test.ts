import { describe, expect, it } from "vitest";
import { heldForces, layMember, setMember, stateWithin } from "../../src/mechanics/frame-member.ts";

const ends = { from: { x: 0, y: 0 }, to: { x: 3000, y: 4000 } };
const beam = { from: 0, to: 1, EA: 1e8, EI: 1e10 };
const bar = { ...beam, EI: 0, hingedFrom: true, hingedTo: true };
const idle = { points: [], evenAlong: 0, evenAcross: 0, strain: 0 };

describe("layMember", () => {
  it("from 0, 0 to 3 m, 4 m it is 5 m long at a slope of 4 in 3", () => {
    expect(layMember(beam, ends)).toEqual({ member: beam, length: 5000, cos: 0.6, sin: 0.8 });
  });

  it("refuses a member of no length", () => {
    expect(() => layMember(beam, { from: ends.from, to: ends.from })).toThrow("the member from node 0 to node 1 has no length");
  });
});

describe("setMember", () => {
  it("a hinge at one end leaves 3 EI / L at the other, with shear 3 EI / (L (1 + 3 EI / (GA L^2)))", () => {
    const { stiffness } = setMember({ ...beam, hingedTo: true }, ends);
    expect(stiffness.get(2, 2)).toBeCloseTo((3 * 1e10) / 5000, 3);
    expect(stiffness.get(5, 5)).toBeCloseTo(0, 3);
    const soft = setMember({ ...beam, GA: 1e4, hingedTo: true }, ends).stiffness;
    expect(soft.get(2, 2)).toBeCloseTo((3 * 1e10) / 5000 / (1 + (3 * 1e10) / (1e4 * 5000 ** 2)), 3);
  });

  it("hinges at both ends leave the axial stiffness EA / L alone, as in a bar", () => {
    const [both, thin] = [setMember({ ...beam, hingedFrom: true, hingedTo: true }, ends).stiffness, setMember(bar, ends).stiffness];
    expect(both.get(0, 0)).toBe(1e8 / 5000);
    for (const end of [1, 2, 4, 5]) {
      expect(both.get(end, end)).toBeCloseTo(0, 6);
      expect(thin.get(end, end)).toBe(0);
    }
  });

  it("refuses stiffness that is not there, and a bar that is not hinged at both ends", () => {
    expect(() => setMember({ ...beam, EA: 0 }, ends)).toThrow("no stiffness");
    expect(() => setMember({ ...beam, EI: -1 }, ends)).toThrow("no stiffness");
    expect(() => setMember({ ...beam, GA: 0 }, ends)).toThrow("no stiffness");
    expect(() => setMember({ ...bar, hingedTo: false }, ends)).toThrow("cannot bend");
    expect(() => setMember({ ...bar, hingedFrom: false }, ends)).toThrow("cannot bend");
  });
});

describe("heldForces", () => {
  it("an even load w across a member with fixed ends: w L / 2 and w L^2 / 12; with a hinge 5 w L / 8 and w L^2 / 8 (beam tables)", () => {
    const [, left, moment, , right, other] = heldForces(setMember(beam, ends), { ...idle, evenAcross: -2 });
    expect([left, right]).toEqual([expect.closeTo(5000, 6), expect.closeTo(5000, 6)]);
    expect([moment, other]).toEqual([expect.closeTo((2 * 5000 ** 2) / 12, 3), expect.closeTo((-2 * 5000 ** 2) / 12, 3)]);
    const hinged = heldForces(setMember({ ...beam, hingedTo: true }, ends), { ...idle, evenAcross: -2 });
    expect(hinged[1]).toBeCloseTo((5 * 2 * 5000) / 8, 6);
    expect(hinged[2]).toBeCloseTo((2 * 5000 ** 2) / 8, 3);
    expect(hinged[5]).toBeCloseTo(0, 6);
  });

  // Beam tables, fixed beam with a couple M0 at a, b = L - a: reactions 6 M0 a b / L^3, moments at the ends M0 b (2 a - b) / L^2 and
  // M0 a (2 b - a) / L^2 (from memory).
  it.each([1000, 2500, 4200])("a couple %i mm from the first of two fixed ends", (a) => {
    const b = 5000 - a;
    const point = { at: a, along: 0, across: 0, moment: 1e6 };
    const [, left, moment, , right, other] = heldForces(setMember(beam, ends), { ...idle, points: [point] });
    expect(moment).toBeCloseTo((1e6 * b * (2 * a - b)) / 5000 ** 2, 4);
    expect(other).toBeCloseTo((1e6 * a * (2 * b - a)) / 5000 ** 2, 4);
    expect(left).toBeCloseTo((6 * 1e6 * a * b) / 5000 ** 3, 8);
    expect((left ?? 0) + (right ?? 0)).toBeCloseTo(0, 9);
    // All moments about the first end.
    expect((moment ?? 0) + (other ?? 0) + 1e6 + (right ?? 0) * 5000).toBeCloseTo(0, 4);
  });

  it("refuses a load across a bar, and a couple on it", () => {
    const point = { at: 100, along: 0, across: 0, moment: 0 };
    expect(() => heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, across: 1 }] })).toThrow("loaded across");
    expect(() => heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, moment: 1 }] })).toThrow("loaded across");
    expect(heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, along: 50 }] })[0]).toBeCloseTo(-49, 12);
  });
});

describe("stateWithin", () => {
  const held = [0, 0, 0, 0, 0, 0];

  it("between fixed ends under an even load w: shear w (L / 2 - z), w L^2 / 24 and w L^4 / 384 EI + w L^2 / 8 GA in the middle (beam tables)", () => {
    const set = setMember({ ...beam, GA: 1e5 }, ends);
    const action = { ...idle, evenAcross: -2 };
    const forces = heldForces(set, action);
    const at = (place: number) => stateWithin(set, place, { ends: held, forces, action });
    expect(at(1000).shear).toBeCloseTo(2 * 1500, 6);
    expect(at(4000).shear).toBeCloseTo(-2 * 1500, 6);
    expect(at(2500).moment).toBeCloseTo((2 * 5000 ** 2) / 24, 3);
    expect(at(2500).across).toBeCloseTo(-((2 * 5000 ** 4) / (384 * 1e10) + (2 * 5000 ** 2) / (8 * 1e5)), 6);
  });

  it("a load of 100 N along, 1 m from the first of two fixed ends of 5 m: 80 N of tension up to it, 20 N of compression behind", () => {
    const set = setMember(beam, ends);
    const action = { ...idle, points: [{ at: 1000, along: 100, across: 0, moment: 0 }] };
    const at = (place: number) => stateWithin(set, place, { ends: held, forces: heldForces(set, action), action });
    expect(at(1000).tension).toBeCloseTo(80, 9);
    expect(at(1001).tension).toBeCloseTo(-20, 9);
    expect(at(1000).along).toBeCloseTo((80 * 1000) / 1e8, 12);
    expect(at(5000).along).toBeCloseTo(0, 12);
  });

  it("a member that is moved as a whole carries nothing", () => {
    const laid = layMember(beam, ends);
    const moved = stateWithin(laid, 1250, { ends: [1, 2, 0.001, 1, 7, 0.001], forces: [0, 0, 0, 0, 0, 0], action: idle });
    expect(moved).toEqual({ along: 1, across: 3.25, rotation: 0.001, tension: 0, shear: 0, moment: 0 });
  });
});
