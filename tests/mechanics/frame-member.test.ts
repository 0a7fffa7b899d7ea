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

  it("refuses a load across a bar, and a couple on it", () => {
    const point = { at: 100, along: 0, across: 0, moment: 0 };
    expect(() => heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, across: 1 }] })).toThrow("loaded across");
    expect(() => heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, moment: 1 }] })).toThrow("loaded across");
    expect(heldForces(setMember(bar, ends), { ...idle, points: [{ ...point, along: 50 }] })[0]).toBeCloseTo(-49, 12);
  });
});

describe("stateWithin", () => {
  it("a member that is moved as a whole carries nothing", () => {
    const laid = layMember(beam, ends);
    const moved = stateWithin(laid, 1250, { ends: [1, 2, 0.001, 1, 7, 0.001], forces: [0, 0, 0, 0, 0, 0], action: idle });
    expect(moved).toEqual({ along: 1, across: 3.25, rotation: 0.001, tension: 0, shear: 0, moment: 0 });
  });
});
