import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { netSection, rectangularTube, roundTube, solidRectangle } from "../../src/mechanics/section.ts";

describe("solidRectangle", () => {
  // Dressed sections in inches, closed form b d^3 / 12: 4x4 A 12.25, I 12.51, S 7.146; 2x6 I 20.80, S 7.563, flat 1.547 and 2.063.
  it("a 4x4 of 3.5 in has 12.25 in2, 12.51 in4, 7.146 in3; a 2x6 7.563 in3 on edge and 2.063 in3 flat", () => {
    const post = solidRectangle({ x: 3.5, y: 3.5 });
    expect(post.area_mm2).toBe(12.25);
    expect(post.x.inertia_mm4).toBeCloseTo(12.5052, 4);
    expect(post.y.modulus_mm3).toBeCloseTo(7.1458, 4);
    const rail = solidRectangle({ x: 5.5, y: 1.5 });
    expect(rail.x.modulus_mm3).toBeCloseTo(7.5625, 4);
    expect(rail.y.modulus_mm3).toBeCloseTo(2.0625, 4);
    expect(rail.y.inertia_mm4).toBeCloseTo(1.5469, 4);
  });

  it.each([
    { x: 0, y: 1 },
    { x: 1, y: 0 },
    { x: 1, y: Number.NaN },
  ])("refuses $x x $y mm", (size) => {
    expect(() => solidRectangle(size)).toThrow(RangeError);
  });
});

describe("rectangularTube", () => {
  // Closed form of a square tube with sharp corners: (B^4 - b^4) / 12.
  it("50 mm square, wall 3 mm, sharp corners: 564 mm2 and (50^4 - 44^4) / 12 mm4", () => {
    const tube = rectangularTube({ x: 50, y: 50, wall: 3, corner: 0 });
    expect(tube.area_mm2).toBeCloseTo(564, 9);
    expect(tube.x.inertia_mm4).toBeCloseTo((50 ** 4 - 44 ** 4) / 12, 6);
  });

  it("limit: corners of half the size make a ring of it", () => {
    const square = rectangularTube({ x: 60, y: 60, wall: 4, corner: 30 });
    const ring = roundTube({ outside: 60, wall: 4 });
    expect(square.area_mm2).toBeCloseTo(ring.area_mm2, 9);
    expect(square.x.inertia_mm4 / ring.x.inertia_mm4).toBeCloseTo(1, 12);
  });

  it("law: turning the tube turns the axes, and the taller axis is the stiffer", () => {
    const tall = rectangularTube({ x: 30, y: 60, wall: 2 });
    const lying = rectangularTube({ x: 60, y: 30, wall: 2 });
    expect(tall.x).toEqual(lying.y);
    expect(tall.y.inertia_mm4).toBeGreaterThan(tall.x.inertia_mm4);
  });

  it.each([
    { x: 50, y: 50, wall: 0 },
    { x: 50, y: 6, wall: 3 },
    { x: 6, y: 50, wall: 3 },
  ])("refuses a wall of $wall mm in $x x $y mm", (tube) => {
    expect(() => rectangularTube(tube)).toThrow(RangeError);
  });
});

describe("roundTube", () => {
  it("48.3 mm, wall 3.2 mm: area 453 mm2, I 116,000 mm4, as pi/4 and pi/64 of the powers", () => {
    const tube = roundTube({ outside: 48.3, wall: 3.2 });
    expect(tube.area_mm2).toBeCloseTo((Math.PI / 4) * (48.3 ** 2 - 41.9 ** 2), 9);
    expect(tube.y.inertia_mm4).toBeCloseTo((Math.PI / 64) * (48.3 ** 4 - 41.9 ** 4), 6);
    expect(tube.x.modulus_mm3).toBeCloseTo(tube.x.inertia_mm4 / 24.15, 9);
  });

  it.each([
    { outside: 40, wall: 0 },
    { outside: 40, wall: 20 },
  ])("refuses a wall of $wall mm in $outside mm", (tube) => {
    expect(() => roundTube(tube)).toThrow(RangeError);
  });
});

describe("netSection", () => {
  const post = solidRectangle({ x: 88.9, y: 88.9 });

  it("nothing cut out leaves the section as it is", () => {
    const net = netSection(post, []);
    expect(net.area_mm2).toBe(post.area_mm2);
    expect(net.x.inertia_mm4).toBe(post.x.inertia_mm4);
    expect(net.x.modulus_mm3).toBeCloseTo(post.x.modulus_mm3, 9);
  });

  it("a cut at one face moves the middle: a T-shape of 60 x 20 on a web of 20 x 60 has its centre 30 mm from the flange's face", () => {
    // Closed form: flange 60 x 20, web 20 x 60; centre (1200 x 10 + 1200 x 50) / 2400 = 30 from the face; I = 60 x 20^3/12 + 1200 x 20^2
    // + 20 x 60^3/12 + 1200 x 20^2 = 1,360,000; S to the far fibre = I / 50.
    const net = netSection(solidRectangle({ x: 80, y: 60 }), [
      { x: 60, y: 20, atX: 10, atY: 20 },
      { x: 60, y: 20, atX: 10, atY: -20 },
    ]);
    expect(net.area_mm2).toBe(2400);
    expect(net.x.inertia_mm4).toBeCloseTo(1_360_000, 6);
    expect(net.x.modulus_mm3).toBeCloseTo(27_200, 6);
  });

  it("refuses a cut that reaches outside along x or along y, and one that leaves nothing", () => {
    expect(() => netSection(post, [{ x: 10, y: 10, atX: 40, atY: 0 }])).toThrow(/reaches outside/);
    expect(() => netSection(post, [{ x: 10, y: 10, atX: 0, atY: -40 }])).toThrow(/reaches outside/);
    expect(() => netSection(post, [{ x: 88.9, y: 88.9, atX: 0, atY: 0 }])).toThrow(/leave nothing/);
  });

  it("law: a larger cut leaves less area and less of both section moduli", () => {
    const width = fc.double({ min: 1, max: 40, noNaN: true });
    fc.assert(
      fc.property(width, width, fc.double({ min: -20, max: 20, noNaN: true }), (one, other, atY) => {
        const [small, large] = [Math.min(one, other), Math.max(one, other) + 0.1];
        const cut = (y: number) => netSection(post, [{ x: 88.9, y, atX: 0, atY }]);
        expect(cut(large).area_mm2).toBeLessThan(cut(small).area_mm2);
        expect(cut(large).x.modulus_mm3).toBeLessThan(cut(small).x.modulus_mm3);
        expect(cut(large).y.modulus_mm3).toBeLessThan(cut(small).y.modulus_mm3);
      }),
    );
  });
});
