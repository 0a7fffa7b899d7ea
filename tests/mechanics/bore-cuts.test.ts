import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blindHoleCuts, mitredSection, solidBoreCuts, tubeBoreCuts } from "../../src/mechanics/bore-cuts.ts";
import { netSection, rectangularTube, solidRectangle } from "../../src/mechanics/section.ts";

const post = solidRectangle({ x: 90, y: 80 });

describe("solidBoreCuts", () => {
  // Closed forms: (y - d) x^3 / 12 in the plane of the bore, x (y^3 - d^3) / 12 across it.
  it("a 10 mm bore along x through 90 x 80 mm leaves 70 x 90^3 / 12 along it and 90 (80^3 - 10^3) / 12 across it", () => {
    const net = netSection(post, solidBoreCuts(post, { along: "x", diameter: 10 }));
    expect(net.area_mm2).toBeCloseTo(90 * 70, 9);
    expect(net.x.inertia_mm4).toBeCloseTo((70 * 90 ** 3) / 12, 5);
    expect(net.y.inertia_mm4).toBeCloseTo((90 * (80 ** 3 - 10 ** 3)) / 12, 5);
  });

  it("along y it is the same with the axes changed, and an offset of 12 mm lies across the bore", () => {
    expect(solidBoreCuts(post, { along: "y", diameter: 10, offset: 12 })).toEqual([{ x: 10, y: 80, atX: 12, atY: 0 }]);
    expect(solidBoreCuts(post, { along: "x", diameter: 10, offset: 12 })).toEqual([{ x: 90, y: 10, atX: 0, atY: 12 }]);
  });

  it("counterbores of 30 mm, 20 mm deep from the near face and 5 mm from the far one, cut three stretches", () => {
    const cuts = solidBoreCuts(post, { along: "x", diameter: 10, near: { diameter: 30, depth: 20 }, far: { diameter: 30, depth: 5 } });
    expect(cuts).toEqual([
      { x: 20, y: 30, atX: -35, atY: 0 },
      { x: 65, y: 10, atX: 7.5, atY: 0 },
      { x: 5, y: 30, atX: 42.5, atY: 0 },
    ]);
  });

  it("law: a deeper counterbore leaves a lesser section modulus along the bore", () => {
    const depth = fc.double({ min: 0, max: 40, noNaN: true });
    fc.assert(
      fc.property(depth, depth, (one, other) => {
        const [shallow, deep] = [Math.min(one, other), Math.max(one, other) + 0.1];
        const modulus = (far: number) =>
          netSection(post, solidBoreCuts(post, { along: "x", diameter: 10, far: { diameter: 25, depth: far } })).x.modulus_mm3;
        expect(modulus(deep)).toBeLessThan(modulus(shallow));
      }),
    );
  });

  it("counterbores of one size that just meet are one bore of that size, and one as wide as its bore changes nothing", () => {
    const meeting = { along: "x", diameter: 10, near: { diameter: 30, depth: 50 }, far: { diameter: 30, depth: 40 } } as const;
    const wide = netSection(post, solidBoreCuts(post, { along: "x", diameter: 30 }));
    expect(netSection(post, solidBoreCuts(post, meeting)).x.inertia_mm4).toBeCloseTo(wide.x.inertia_mm4, 4);
    const same = netSection(post, solidBoreCuts(post, { along: "x", diameter: 30, near: { diameter: 30, depth: 20 } }));
    expect(same.x.inertia_mm4).toBeCloseTo(wide.x.inertia_mm4, 4);
  });

  it("refuses counterbores that meet, and one narrower than its bore", () => {
    const meeting = { along: "x", diameter: 10, near: { diameter: 30, depth: 50 }, far: { diameter: 30, depth: 41 } } as const;
    expect(() => solidBoreCuts(post, meeting)).toThrow("50 and 41 mm meet in 90 mm");
    expect(() => solidBoreCuts(post, { along: "x", diameter: 10, near: { diameter: 9, depth: 5 } })).toThrow(/narrower/);
  });
});

describe("tubeBoreCuts", () => {
  it("a 12 mm bore along x takes 12 mm out of both walls of a 50 mm tube, 23.5 mm from the middle", () => {
    const tube = rectangularTube({ x: 50, y: 50, wall: 3, corner: 0 });
    const cuts = tubeBoreCuts(tube, { along: "x", diameter: 12, wall: 3 });
    expect(cuts).toEqual([
      { x: 3, y: 12, atX: -23.5, atY: 0 },
      { x: 3, y: 12, atX: 23.5, atY: 0 },
    ]);
    const net = netSection(tube, cuts);
    expect(net.area_mm2).toBeCloseTo(564 - 72, 9);
    // Across the bore the cut lies at the neutral axis and costs little.
    expect(net.y.inertia_mm4 / tube.y.inertia_mm4).toBeGreaterThan(0.99);
    expect(net.x.inertia_mm4 / tube.x.inertia_mm4).toBeLessThan(0.85);
  });
});

describe("blindHoleCuts", () => {
  it("a 6 mm hole 60 mm deep from the near face of 90 mm lies 15 mm before the middle; from the far face behind it", () => {
    const hole = { along: "x", diameter: 6, depth: 60 } as const;
    expect(blindHoleCuts(post, { ...hole, from: "near" })).toEqual([{ x: 60, y: 6, atX: -15, atY: 0 }]);
    expect(blindHoleCuts(post, { ...hole, from: "far", offset: 4 })).toEqual([{ x: 60, y: 6, atX: 15, atY: 4 }]);
  });

  it("two of them from both faces that meet in the middle are one bore right through", () => {
    const half = { along: "x", diameter: 10, depth: 45 } as const;
    const both = [...blindHoleCuts(post, { ...half, from: "near" }), ...blindHoleCuts(post, { ...half, from: "far" })];
    const through = netSection(post, solidBoreCuts(post, { along: "x", diameter: 10 }));
    expect(netSection(post, both).x.inertia_mm4).toBeCloseTo(through.x.inertia_mm4, 4);
    expect(netSection(post, both).area_mm2).toBeCloseTo(through.area_mm2, 9);
  });

  it("as deep as the piece it is a bore right through; deeper is refused", () => {
    const through = solidBoreCuts(post, { along: "x", diameter: 6 });
    expect(blindHoleCuts(post, { along: "x", diameter: 6, depth: 90, from: "near" })).toEqual(through);
    expect(() => blindHoleCuts(post, { along: "x", diameter: 6, depth: 91, from: "near" })).toThrow("91 mm is deeper than 90 mm");
  });
});

type Point = readonly [x: number, y: number];

/** Area, and sums of x, y, x^2, y^2 and x y over a polygon, corner by corner: each with the origin makes a triangle. */
function sumsOver(corners: readonly Point[]): readonly number[] {
  const triangles = corners.map(([a, b], nth) => {
    const [c, d] = corners[(nth + 1) % corners.length] as Point;
    const twice = a * d - c * b;
    const [xx, yy, xy] = [a * a + a * c + c * c, b * b + b * d + d * d, a * d + 2 * a * b + 2 * c * d + c * b];
    return [twice / 2, (twice * (a + c)) / 6, (twice * (b + d)) / 6, (twice * xx) / 12, (twice * yy) / 12, (twice * xy) / 24];
  });
  return triangles.reduce((sum, one) => sum.map((value, nth) => value + (one[nth] as number)));
}

/** Stress at every corner of what polygons leave, by the rule for bending about axes that are not those of symmetry. */
function stresses(polygons: readonly (readonly Point[])[], [mx, my]: Point): readonly number[] {
  const [A, sx, sy, sxx, syy, sxy] = polygons.map(sumsOver).reduce((sum, one) => sum.map((value, nth) => value + (one[nth] as number))) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [cx, cy] = [sx / A, sy / A];
  const [ixx, iyy, ixy] = [sxx - A * cx * cx, syy - A * cy * cy, sxy - A * cx * cy];
  const under = ixx * iyy - ixy * ixy;
  const [a, b] = [(mx * iyy - my * ixy) / under, (my * ixx - mx * ixy) / under];
  return polygons.flat().map(([x, y]) => a * (x - cx) + b * (y - cy));
}

describe("mitredSection", () => {
  // A 6x6, 5-1/2 in wide, bored 5/8 in on the mitre from the left face to the near one: a small corner and the rest, as polygons.
  const [half, d] = [69.85, 15.875];
  const cut = d / Math.SQRT2;
  const left: readonly (readonly Point[])[] = [
    [
      [-half, -half],
      [-cut, -half],
      [-half, -cut],
    ],
    [
      [cut, -half],
      [half, -half],
      [half, half],
      [-half, half],
      [-half, cut],
    ],
  ];
  const net = mitredSection(solidRectangle({ x: 2 * half, y: 2 * half }), { diameter: d, wall: null });

  it("a 5/8 in bore through a 6x6 leaves 378985 mm3 for both moments together, and 17951.3 mm2 (polygons, corner by corner)", () => {
    const worst = Math.max(...stresses(left, [1e6, 1e6]).map(Math.abs));
    expect(2e6 / worst).toBeCloseTo(net.x.modulus_mm3, 4);
    expect(net.x.modulus_mm3).toBeCloseTo(378_985, -1);
    expect(net.y).toEqual(net.x);
    expect(net.area_mm2).toBeCloseTo(
      left.map(sumsOver).reduce((sum, one) => sum + (one[0] as number), 0),
      6,
    );
  });

  it("law: no corner of it is stressed more, whichever way both moments bend it", () => {
    const moment = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(moment, moment, (mx, my) => {
        const allowed = (Math.abs(mx) + Math.abs(my)) / net.x.modulus_mm3;
        for (const stress of stresses(left, [mx, my])) expect(Math.abs(stress)).toBeLessThanOrEqual(allowed * (1 + 1e-9) + 1e-12);
      }),
    );
  });

  it("of a 50 mm tube with sharp corners and walls of 3 mm it takes a hole out of two walls (by hand)", () => {
    const tube = rectangularTube({ x: 50, y: 50, wall: 3, corner: 0 });
    const bored = mitredSection(tube, { diameter: 8, wall: 3 });
    // Two holes, 8 sqrt 2 wide, at (-23.5, 0) and (0, -23.5): the middle moves c = a 23.5 / A both ways, and x y there sums to -A c^2.
    const [a, whole] = [8 * Math.SQRT2 * 3, (50 ** 4 - 44 ** 4) / 12];
    const A = 564 - 2 * a;
    const c = (a * 23.5) / A;
    const I = whole - a * (23.5 ** 2 + 3 ** 2 / 12) - (a * (8 * Math.SQRT2) ** 2) / 12 - A * c * c;
    expect(bored.area_mm2).toBeCloseTo(A, 9);
    expect(bored.x.modulus_mm3).toBeCloseTo((I - A * c * c) / (25 + c), 6);
  });

  it("refuses a post that is not square, and a bore that reaches the corner", () => {
    expect(() => mitredSection(post, { diameter: 8, wall: null })).toThrow("has no mitre from middle to middle");
    // A quarter of the diagonal is 17.68 mm: a bore of twice that touches the corner.
    for (const diameter of [36, 50 / Math.SQRT2]) {
      expect(() => mitredSection(solidRectangle({ x: 50, y: 50 }), { diameter, wall: null })).toThrow("reaches the corner");
    }
  });
});
