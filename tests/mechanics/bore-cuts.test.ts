import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blindHoleCuts, solidBoreCuts, tubeBoreCuts } from "../../src/mechanics/bore-cuts.ts";
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

  it("refuses counterbores that meet, and one narrower than its bore", () => {
    const meeting = { along: "x", diameter: 10, near: { diameter: 30, depth: 50 }, far: { diameter: 30, depth: 41 } } as const;
    expect(() => solidBoreCuts(post, meeting)).toThrow(/meet/);
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

  it("refuses a hole that is deeper than the piece", () => {
    expect(() => blindHoleCuts(post, { along: "x", diameter: 6, depth: 91, from: "near" })).toThrow(/deeper/);
  });
});
